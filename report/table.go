package report

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// Table is one table of a record as it stands, for copying it unchanged.
type Table struct {
	Name   string // as the design names it: "Slab RH"
	Header []string
	Rows   []TableRow
}

// TableRow is one row and the number it has in its file or sheet, header and
// blank lines counted.
type TableRow struct {
	Number int
	Cells  []Cell
}

// Cell is one cell: its kind, decided by its column and not by its looks, and
// what was typed. A number is kept as Text with Places decimals; a day or a
// time is a clock time in UTC as well, without its zone.
type Cell struct {
	Kind   CellKind
	Text   string
	Places int
	Clock  time.Time
}

// CellKind is what a cell holds.
type CellKind int

// The kinds of cell.
const (
	BlankCell CellKind = iota
	TextCell
	NumberCell
	DayCell
	TimeCell
)

// Concerning is the table with the rows of one area, and those of the whole
// site, where it has a column of areas; else the table as it is.
func (t Table) Concerning(area string) Table {
	column := slices.IndexFunc(t.Header, func(h string) bool { return evidence.Same(h, "Area") })
	if column < 0 {
		return t
	}
	t.Rows = slices.DeleteFunc(slices.Clone(t.Rows), func(r TableRow) bool {
		if column >= len(r.Cells) {
			return false
		}
		text := r.Cells[column].Text
		return text != "" && !evidence.Same(text, area)
	})
	return t
}
