package record

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"firstboard/report/evidence"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// lookAlikes faults what is no table of a record and looks like one: whoever
// named it meant it to be read.
func (d *decoder) lookAlikes(from *sheet.Source) {
	for _, o := range from.Others {
		table, now := resembled(o)
		if table == "" || o.Sheet && d.ours(o.Name) {
			continue
		}
		right := table
		if !o.Sheet {
			right = sheet.FileName(table)
		}
		mend := "put its rows into "
		if from.Tables[table] == nil {
			mend = "rename it "
		}
		text := fmt.Sprintf("looks like the table %s and is not read; %s%s, or give it a name and a header unlike any table's", table, mend, evidence.Quote(right))
		switch {
		case o.Odd:
			text = fmt.Sprintf("looks like the table %s and is no regular file; put the file itself there, named %s",
				table, right)
		case now:
			text = fmt.Sprintf("is now %s; rename it", evidence.Quote(right))
		}
		at := &sheet.Holder{File: o.Name, Table: table}
		if o.Sheet {
			at.Sheet = o.Name
		}
		d.faults = append(d.faults, faults.Fault{Place: sheet.Place{In: at}, Text: text, Order: -1})
	}
}

// hidden notes the tables whose rows may stand where they are not read, so that
// nobody is told of names that they may list.
func (d *decoder) hidden(others []sheet.Other) {
	for _, o := range others {
		if table, _ := resembled(o); table != "" {
			d.unknown(table)
		}
	}
}

// ours says whether a sheet is one of a decision workbook's own, by its name.
func (d *decoder) ours(name string) bool {
	if slices.Contains([]string{
		"Decision", "Limits", "Checks", "Cautions", "Plotted", "Sealed", "Figures",
		"As judged",
	}, name) {
		return true
	}
	if table, copied := strings.CutPrefix(name, "As judged "); copied {
		return slices.Contains(TableNames(), table)
	}
	for _, of := range []string{"Area ", "Working ", "Field "} {
		if id, about := strings.CutPrefix(name, of); about {
			return slices.ContainsFunc(d.areas.ids, func(listed string) bool { // a long one is cut
				return joined(id) != "" && strings.HasPrefix(joined(listed), joined(id))
			})
		}
	}
	return false
}

// resembled is the table that a sheet or a file looks like, or empty, and
// whether it has the table's old name.
func resembled(o sheet.Other) (table string, now bool) {
	name := o.Name
	if !o.Sheet {
		name = strings.ReplaceAll(baseOf(name), "_", " ")
	}
	if now := nowCalled(strings.ReplaceAll(name, "-", " "), tablesNow()); now != "" &&
		(o.Sheet || strings.EqualFold(filepath.Ext(o.Name), ".csv")) {
		return now, true
	}
	for _, s := range schemas() {
		if looksLike(name, s.title()) && (o.Sheet || sheet.IsText(o.Name)) {
			return s.title(), false
		}
	}
	return headedAs(o.First), false
}

// headedAs is the table that has two or more of a first row's names among its
// starred columns: the one with the most of them.
func headedAs(first []string) string {
	best, most := "", 1
	names := make([]string, len(first))
	for i, header := range first {
		name, _ := evidence.Parted(header)
		names[i] = evidence.Key(name)
	}
	for _, s := range schemas() {
		starred := 0
		for _, c := range s.heads() {
			if c.Star && slices.Contains(names, evidence.Key(c.Name)) {
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
	return !slices.Contains([]string{"copy", "of", "old", "new", "my"}, word) && !evidence.Digits(word)
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
		if !sheet.IsText(ext) && !slices.Contains([]string{".bak", ".old"}, strings.ToLower(ext)) {
			return file
		}
		file = strings.TrimSuffix(file, ext)
	}
}
