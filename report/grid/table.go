package grid

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Table is one table of a record as it stands, for copying it unchanged.
type Table struct {
	Name   string // as the design names it: "Slab RH"
	Header []string
	Rows   []Row
}

// Listing is a table that no record holds: how wide its columns stand, in
// digits, and how many of them are printed, 0 for all.
type Listing struct {
	Table
	Widths  []float64
	Printed int
}

// Row is one row and the number it has in its file or sheet, header and
// blank lines counted.
type Row struct {
	Number int
	Cells  []Cell
}

// Cell is one cell: its kind, decided by its column and not by its looks, and
// what was typed. A number is kept as Text with Places decimals.
type Cell struct {
	Text   string
	Kind   CellKind
	Places uint8
}

// Clock is the clock time of a day or a time, in UTC, without its zone.
func (c Cell) Clock() time.Time {
	t, _ := evidence.ParseClock(c.Text)
	return t
}

// CellKind is what a cell holds.
type CellKind uint8

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
	column := t.column("Area")
	if column < 0 {
		return t
	}
	t.Rows = slices.DeleteFunc(slices.Clone(t.Rows), func(r Row) bool {
		if column >= len(r.Cells) {
			return false
		}
		text := r.Cells[column].Text
		return text != "" && !evidence.Same(text, area)
	})
	return t
}

// With is the table with rows below its last one, each an entry for each of
// the columns named, as a person would type it. A column that the table lacks
// is added at its end. The table itself is left as it was.
func (t Table) With(columns []string, rows ...[]string) Table {
	old := len(t.Header)
	t.Header = slices.Clone(t.Header)
	at := make([]int, len(columns))
	for i, name := range columns {
		if at[i] = t.column(name); at[i] < 0 {
			at[i] = len(t.Header)
			t.Header = append(t.Header, name)
		}
	}
	t.Rows = t.widened(old)
	next := t.Last() + 1
	for i, entries := range rows {
		cells := make([]Cell, len(t.Header))
		for k, text := range entries {
			if text != "" {
				cells[at[k]] = Cell{Kind: TextCell, Text: text}
			}
		}
		t.Rows = append(t.Rows, Row{Number: next + i, Cells: cells})
	}
	return t
}

// widened are the rows, with a blank for each column beyond the old ones.
func (t Table) widened(old int) []Row {
	rows := slices.Clone(t.Rows)
	if len(t.Header) == old {
		return rows
	}
	for i, r := range rows {
		rows[i].Cells = append(slices.Clip(r.Cells), make([]Cell, len(t.Header)-len(r.Cells))...)
	}
	return rows
}

// Last is the number of the last row, the header's where there is no other.
func (t Table) Last() int {
	if n := len(t.Rows); n > 0 {
		return t.Rows[n-1].Number
	}
	return 1
}

func (t Table) column(name string) int {
	return slices.IndexFunc(t.Header, func(h string) bool { return evidence.Same(h, name) })
}

// Named is the table of a name among some, without columns where there is none.
func Named(tables []Table, name string) Table {
	t, known := lists.First(tables, func(t Table) bool { return t.Name == name })
	return lists.If(known, t, Table{Name: name})
}

// Put are tables with one of them in its new form, or with it behind them where
// it is new. The list given is left as it is.
func Put(tables []Table, t Table) []Table {
	at := slices.IndexFunc(tables, func(was Table) bool { return was.Name == t.Name })
	if at < 0 {
		return append(slices.Clip(tables), t)
	}
	tables = slices.Clone(tables)
	tables[at] = t
	return tables
}

// Letters are a column's letters in a spreadsheet: 28 is AB.
func Letters(column int) string {
	var s string
	for ; column > 0; column = (column - 1) / 26 {
		s = string(rune('A'+(column-1)%26)) + s
	}
	return s
}
