package faults

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record/sheet"
)

// Fault is one thing to mend in a record: where, and what to write instead.
// The same mistake in many rows of a column is one fault.
type Fault struct {
	Place  sheet.Place // of the first row
	Column string      // the header of the cell's column; empty for a whole row
	Text   string      // of the first row
	rows   []span      // all of them in order, none where it is one
	Order  int         // of its table, -1 for what comes before all
}

// span is a run of rows, its first and its last.
type span struct{ from, to int }

// Error is the fault as one line, led by its place.
func (f Fault) Error() string {
	at := f.Place.String()
	if f.Place.In.Sheet == "" && f.many() {
		at = f.Place.In.File + " " + f.spelledRows()
	}
	at += lists.If(f.Column != "", " "+evidence.Quote(f.Column), "")
	if f.Place.In.Sheet != "" && f.many() {
		at += " " + f.spelledRows()
	}
	return at + ": " + f.Text
}

func (f Fault) many() bool {
	return len(f.rows) > 1 || len(f.rows) == 1 && f.rows[0].from < f.rows[0].to
}

// spelledRows are the rows in words: rows 4, 7 and 12 to 67.
func (f Fault) spelledRows() string {
	const most = 8
	var runs []string
	for _, r := range f.rows[:min(len(f.rows), most)] {
		runs = append(runs, strconv.Itoa(r.from)+lists.If(r.to > r.from, " to "+strconv.Itoa(r.to), ""))
	}
	if len(f.rows) > most {
		return fmt.Sprintf("rows %s and others, to row %d", strings.Join(runs, ", "), f.rows[len(f.rows)-1].to)
	}
	if n := len(runs); n > 1 {
		return "rows " + strings.Join(runs[:n-1], ", ") + " and " + runs[n-1]
	}
	return "rows " + runs[0]
}

// Also takes a row with the same mistake into the fault.
func (f *Fault) Also(row int) {
	if f.rows == nil {
		f.rows = []span{{int(f.Place.Number), int(f.Place.Number)}}
	}
	last := &f.rows[len(f.rows)-1]
	switch {
	case row == last.to+1:
		last.to = row
	case row > last.to:
		f.rows = append(f.rows, span{row, row})
	}
}

// List are all the faults of a record, by table, row and column.
type List []Fault

// Error is every fault, one a line; of a record gone wrong from end to end the
// first thousand, and how many follow.
func (fs List) Error() string {
	const most = 1000
	lines := lists.Each(fs[:min(len(fs), most)], Fault.Error)
	if n := len(fs) - most; n > 0 {
		lines = append(lines, fmt.Sprintf("and %d more like these", n))
	}
	return strings.Join(lines, "\n")
}

func (fs List) Sort() {
	slices.SortStableFunc(fs, func(a, b Fault) int {
		return cmp.Or(a.Order-b.Order, int(a.Place.Number-b.Place.Number), int(a.Place.Column-b.Place.Column))
	})
}

// Complaint is what is wrong with an entry. Two that have one key are the same
// mistake, whatever was typed.
type Complaint struct{ Key, Text string }

// Mistake is a complaint about what was typed.
func Mistake(typed, format string, args ...any) Complaint {
	return Complaint{format, evidence.Saying(typed, format, args...)}
}

// Told is a complaint in words alone.
func Told(text string) Complaint { return Complaint{text, text} }

// About is a complaint about this entry alone: another entry is another mistake.
func About(typed, format string, args ...any) Complaint {
	text := evidence.Saying(typed, format, args...)
	return Complaint{text, text}
}
