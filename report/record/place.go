package record

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Place is a row or a cell of the record. Rows and columns count from 1; a
// CSV row is a line of the file. Column is 0 where the whole row is meant.
type Place struct {
	File   string // base name of the file
	Sheet  string // of a workbook, as it is spelled there; empty for CSV
	Table  string // as the design names it: "Slab RH"
	Number int    // of the row
	Column int
}

// String is the place as evidence: slab-rh.csv row 9.
func (p Place) String() string {
	at := p.File
	if p.Sheet != "" {
		at += " " + quote(p.Sheet)
	}
	return at + " row " + strconv.Itoa(p.Number)
}

// Row is the table the place lies in and the number of its row there.
func (p Place) Row() (table string, number int) { return p.Table, p.Number }

// Cell is the table the place lies in, and the numbers of its row and column
// there; column 0 for a whole row.
func (p Place) Cell() (table string, row, column int) { return p.Table, p.Number, p.Column }

// Fault is one thing to mend in a record: where, and what to write instead.
type Fault struct {
	Place  Place
	Column string // the header of the cell's column; empty for a whole row
	Text   string
	order  int // of the table
}

// Error is the fault as one line.
func (f Fault) Error() string {
	at := f.Place.String()
	if f.Column != "" {
		at += " " + quote(f.Column)
	}
	return at + ": " + f.Text
}

// Faults are all the faults of a record, by table, row and column.
type Faults []Fault

// Error is every fault, one a line; of a logger file gone wrong from end to
// end the first thousand, and how many follow.
func (fs Faults) Error() string {
	const most = 1000
	var lines []string
	for _, f := range fs[:min(len(fs), most)] {
		lines = append(lines, f.Error())
	}
	if n := len(fs) - most; n > 0 {
		lines = append(lines, fmt.Sprintf("and %d more like these", n))
	}
	return strings.Join(lines, "\n")
}

func (fs Faults) sort() {
	slices.SortStableFunc(fs, func(a, b Fault) int {
		return cmp.Or(a.order-b.order, a.Place.Number-b.Place.Number, a.Place.Column-b.Place.Column)
	})
}

// quote is what somebody typed, on one line and not too long of it.
func quote(s string) string {
	const longest = 60
	if utf8.RuneCountInString(s) > longest {
		s = string([]rune(s)[:longest]) + "..."
	}
	return strconv.Quote(s)
}

// saying is a complaint about what was typed.
func saying(typed, format string, args ...any) string {
	return quote(typed) + " " + fmt.Sprintf(format, args...)
}
