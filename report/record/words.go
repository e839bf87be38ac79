package record

import (
	"strings"

	"firstboard/report/evidence"
)

// either lists what may be written: in, mm or m.
func either(choices []string) string {
	n := len(choices)
	if n == 1 {
		return choices[0]
	}
	return strings.Join(choices[:n-1], ", ") + " or " + choices[n-1]
}

// oneOf is the word of a list that was typed, in the list's own spelling, or
// a complaint.
func oneOf(typed string, words []string) (word, complaint string) {
	for _, w := range words {
		if evidence.Same(typed, w) {
			return w, ""
		}
	}
	return "", saying(typed, "is not a word for this column; write %s", either(words))
}

// nearest is the choice that takes the fewest changes to reach from what was
// typed, or empty where there is no choice.
func nearest(typed string, choices []string) string {
	best, least := "", -1
	for _, c := range choices {
		n := changes([]rune(evidence.Key(typed)), []rune(evidence.Key(c)))
		if least < 0 || n < least {
			best, least = c, n
		}
	}
	return best
}

// changes counts the letters to insert, drop or replace on the way from a to
// b (Levenshtein's distance).
func changes(a, b []rune) int {
	const longest = 80
	a, b = a[:min(len(a), longest)], b[:min(len(b), longest)]
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range a {
		corner := i
		row[0] = i + 1
		for j, y := range b {
			step := corner
			if x != y {
				step++
			}
			corner = row[j+1]
			row[j+1] = min(step, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// index is the identifiers that a table lists, for other rows to name.
type index struct {
	table string
	ids   []string
	at    map[string]int
}

func listing(table string) index { return index{table: table, at: map[string]int{}} }

// add lists the identifier of a row and says whether it was new.
func (x *index) add(id string, row int) bool {
	key := evidence.Key(id)
	if _, ok := x.at[key]; ok {
		return false
	}
	x.at[key] = row
	x.ids = append(x.ids, id)
	return true
}

// find is the row that an identifier names: its position among the rows read.
func (x *index) find(id string) (int, bool) {
	if at, ok := x.at[id]; ok {
		return at, true
	}
	at, ok := x.at[evidence.Key(id)]
	return at, ok
}

// complaint says that an identifier is not listed, and which of the first
// ones may be meant.
func (x *index) complaint(id string) string {
	const first = 200
	if len(x.ids) == 0 {
		return saying(id, "is not listed in %s; list it there", x.table)
	}
	return saying(id, "is not listed in %s; list it there, or write one that is, such as %s", x.table, nearest(id, x.ids[:min(len(x.ids), first)]))
}
