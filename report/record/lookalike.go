package record

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"firstboard/report/evidence"
)

// other is a sheet or a file that is no table of a record.
type other struct {
	name  string
	sheet bool
	first []string // its first row
	odd   bool     // no regular file
}

// lookAlikes faults what is no table of a record and looks like one: whoever
// named it meant it to be read.
func (d *decoder) lookAlikes(others []other) {
	for _, o := range others {
		table, now := resembled(o)
		if table == "" || o.sheet && d.ours(o.name) {
			continue
		}
		right := table
		if !o.sheet {
			right = fileOf(table)
		}
		text := fmt.Sprintf("looks like the table %s and is not read; put its rows into %s, or give it a name and a header unlike any table's", table, quote(right))
		switch {
		case o.odd:
			text = fmt.Sprintf("looks like the table %s and is no regular file; put the file itself there, named %s", table, right)
		case now:
			text = fmt.Sprintf("is now %s; rename it", quote(right))
		}
		place := Place{File: o.name, Table: table}
		if o.sheet {
			place.Sheet = o.name
		}
		d.faults = append(d.faults, Fault{Place: place, Text: text, order: -1})
	}
}

// hidden notes the tables whose rows may stand where they are not read, so that
// nobody is told of names that they may list.
func (d *decoder) hidden(others []other) {
	for _, o := range others {
		if table, _ := resembled(o); table != "" {
			d.unknown(table)
		}
	}
}

// ours says whether a sheet is one of a decision workbook's own, by its name.
func (d *decoder) ours(sheet string) bool {
	if slices.Contains([]string{"Decision", "Limits", "Checks", "Cautions", "Plotted", "Sealed", "Figures", "As judged"}, sheet) {
		return true
	}
	if table, copied := strings.CutPrefix(sheet, "As judged "); copied {
		return tableOfSheet(table) == table
	}
	for _, of := range []string{"Area ", "Working ", "Field "} {
		if id, about := strings.CutPrefix(sheet, of); about {
			_, listed := d.areas.find(id)
			return listed
		}
	}
	return false
}

// resembled is the table that a sheet or a file looks like, or empty, and
// whether it has the table's old name.
func resembled(o other) (table string, now bool) {
	name := o.name
	if !o.sheet {
		name = strings.ReplaceAll(baseOf(name), "_", " ")
	}
	if now := nowCalled(strings.ReplaceAll(name, "-", " "), tablesNow()); now != "" && (o.sheet || isCSV(o.name)) {
		return now, true
	}
	for _, s := range schemas() {
		if looksLike(name, s.title()) && (o.sheet || isText(o.name)) {
			return s.title(), false
		}
	}
	return headedAs(o.first), false
}

// headedAs is the table that has two or more of a first row's names among its
// starred columns: the one with the most of them.
func headedAs(first []string) string {
	best, most := "", 1
	for _, s := range schemas() {
		starred := 0
		for _, c := range s.heads() {
			if c.star && slices.ContainsFunc(first, func(header string) bool {
				name, _ := split(header)
				return evidence.Same(name, c.name)
			}) {
				starred++
			}
		}
		if starred > most {
			best, most = s.title(), starred
		}
	}
	return best
}

// looksLike says whether a name is a table's with something added or misspelt.
func looksLike(name, table string) bool {
	typed, known := joined(name), joined(table)
	if typed == "" {
		return false
	}
	const short, long = 4, 7 // letters in which one is misspelt, and two
	allowed := 0
	switch n := len(known); {
	case n >= long:
		allowed = 2
	case n >= short:
		allowed = 1
	}
	if evidence.Changes([]rune(typed), []rune(known)) <= allowed || typed == known+"s" {
		return true
	}
	words, of := wordsIn(name), wordsIn(table)
	if len(words) < len(of) {
		return false
	}
	before := len(words) - len(of)
	ends := slices.Equal(words[before:], of) && (len(of) > 1 || !slices.ContainsFunc(words[:before], tellsMore))
	return slices.Equal(words[:len(of)], of) || ends
}

// tellsMore says whether a word before a table's name makes it another thing:
// a copy of it is none.
func tellsMore(word string) bool {
	return !slices.Contains([]string{"copy", "of", "old", "new", "my"}, word) && !digits(word)
}

// joined is a name by its letters and digits alone, without case.
func joined(name string) string { return strings.Join(wordsIn(name), "") }

// wordsIn are the words of a name and its numbers, without case.
func wordsIn(name string) []string {
	var words []string
	var last rune
	for _, r := range strings.ToLower(name) {
		switch letter, digit := unicode.IsLetter(r), unicode.IsDigit(r); {
		case !letter && !digit:
		case len(words) == 0, letter != unicode.IsLetter(last), !unicode.IsLetter(last) && !unicode.IsDigit(last):
			words = append(words, string(r))
		default:
			words[len(words)-1] += string(r)
		}
		last = r
	}
	return words
}

// baseOf is a file's name without what says of which kind it is.
func baseOf(file string) string {
	for {
		ext := filepath.Ext(file)
		if !isText(ext) && !slices.Contains([]string{".bak", ".old"}, strings.ToLower(ext)) {
			return file
		}
		file = strings.TrimSuffix(file, ext)
	}
}

func isCSV(file string) bool { return strings.EqualFold(filepath.Ext(file), ".csv") }

// isText says whether a file may hold a table as text, by the end of its name.
func isText(file string) bool {
	lower := strings.ToLower(strings.TrimRight(file, "~"))
	for _, copy := range []string{".bak", ".old"} {
		lower = strings.TrimSuffix(lower, copy)
	}
	return slices.Contains([]string{".csv", ".tsv", ".txt", ".tab"}, filepath.Ext(lower))
}
