package live

import (
	"strconv"

	"firstboard/report/workbook/formula"
)

// Sheet is the working of one area: labels and formulas row by row. Every row
// of it that holds formulas can be referred to.
type Sheet struct {
	Name string
	Rows []Row
}

// Row is one row. A heading tells what the rows below it are; a header names
// their columns.
type Row struct {
	Heading, Header bool
	Cells           []Cell
}

// Cell is a label, or a formula and how its value is written.
type Cell struct {
	Label   string
	Formula formula.Expr
	Form    Form
}

// Form is how a value is written.
type Form int

// The forms of a value.
const (
	Plain Form = iota
	Day
	Minute
)

// Live says whether the cell holds a formula.
func (c Cell) Live() bool { return c.Formula.String() != "" }

func label(s string) Cell                   { return Cell{Label: s} }
func plain(e formula.Expr) Cell             { return Cell{Formula: e} }
func formed(e formula.Expr, form Form) Cell { return Cell{Formula: e, Form: form} }
func (s *Sheet) heading(text string) {
	s.Rows = append(s.Rows, Row{}, Row{Heading: true, Cells: []Cell{label(text)}})
}

func (s *Sheet) header(names ...string) {
	s.Rows = append(s.Rows, Row{Header: true, Cells: labels(names)})
}

func labels(names []string) (cells []Cell) {
	for _, n := range names {
		cells = append(cells, label(n))
	}
	return cells
}

// add appends a row and gives the references of its cells.
func (s *Sheet) add(cells ...Cell) []formula.Expr {
	s.Rows = append(s.Rows, Row{Cells: cells})
	refs := make([]formula.Expr, len(cells))
	for i := range cells {
		refs[i] = s.ref(i, len(s.Rows))
	}
	return refs
}

// ref is the reference of a cell by its column, from 0, and row, from 1.
func (s *Sheet) ref(column, row int) formula.Expr {
	var value any
	if cells := s.Rows[row-1].Cells; column < len(cells) {
		switch c := cells[column]; {
		case c.Live():
			value = c.Formula.Value()
		case c.Label != "":
			value = c.Label
		}
	}
	return formula.Cell(address(column, row), value)
}

func address(column, row int) string { return "$" + columnName(column) + "$" + strconv.Itoa(row) }

func columnName(column int) string {
	name := ""
	for n := column + 1; n > 0; n = (n - 1) / 26 {
		name = string(rune('A'+(n-1)%26)) + name
	}
	return name
}

// column is a range of one column, from row to row inclusive.
func (s *Sheet) column(column, from, to int) formula.List {
	var cells []formula.Expr
	for row := from; row <= to; row++ {
		cells = append(cells, s.ref(column, row))
	}
	return formula.Range(address(column, from)+":"+address(column, to), cells)
}

// next is the number of the row to come.
func (s *Sheet) next() int { return len(s.Rows) + 1 }

// Abroad is an expression of the sheet as another sheet writes it.
func (s *Sheet) Abroad(e formula.Expr) formula.Expr {
	return e.Abroad(quoted(s.Name) + "!")
}
