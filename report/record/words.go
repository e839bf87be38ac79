package record

import (
	"slices"
	_ "time/tzdata"

	"firstboard/report/evidence"
	"firstboard/report/record/alike"
	"firstboard/report/record/faults"
)

// oneOf is the word of a list that was typed, in the list's own spelling, or
// a complaint.
func oneOf(typed string, words []string) (string, faults.Complaint) {
	for _, w := range words {
		if evidence.Same(typed, w) {
			return w, faults.Complaint{}
		}
	}
	if now := alike.WordNow(typed); now != "" && slices.Contains(words, now) {
		return "", faults.About(typed, "is now %s; write that", evidence.Quote(now))
	}
	return "", faults.About(typed, "is not a word for this column; write %s", evidence.Either(words))
}

// index is the identifiers that a table lists, for other rows to name.
type index struct {
	table  string
	unread bool // what it lists is not known
	absent bool // there is no such table
	ids    []string
	at     map[string]int
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

// lacks says whether an identifier is known not to be listed.
func (x *index) lacks(id string) bool {
	_, ok := x.find(id)
	return !ok && !x.unread
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
func (x *index) complaint(id string) faults.Complaint {
	const first = 200
	if x.absent {
		x.unread = true // one cause is told once
		return faults.About(id, "is listed nowhere: there is no table %s; add it, with a row for each that is named", x.table)
	}
	if len(x.ids) == 0 {
		return faults.About(id, "is not listed in %s; list it there", x.table)
	}
	return faults.About(id, "is not listed in %s; list it there, or write one that is, such as %s", x.table,
		evidence.Nearest(id, x.ids[:min(len(x.ids), first)]))
}
