package formula

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// Cell is a cell of the workbook: its sheet, its column and its row, counted
// from 1. It holds a number, or the text of one: a fraction of the trade where
// it is one, such as 2 1/4.
type Cell struct {
	Sheet       string
	Column, Row int
	Number      bool
	Fraction    bool
}

// Ref is the cell as a formula of another sheet names it.
func (c Cell) Ref() string { return Quoted(c.Sheet) + "!" + Name(c.Column, c.Row) }

// Quoted is the name of a sheet within a formula.
func Quoted(sheet string) string { return "'" + strings.ReplaceAll(sheet, "'", "''") + "'" }

// Name is a cell by its column and row: B7.
func Name(column, row int) string { return grid.Letters(column) + strconv.Itoa(row) }

// Fixed is the same for a reference that stays where it is: $B$7.
func Fixed(column, row int) string { return "$" + grid.Letters(column) + "$" + strconv.Itoa(row) }

// Text is a text within a formula.
func Text(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }

// expr is a formula, or a part of one; Cell is set where it is one cell alone.
type expr struct {
	text string
	cell *Cell
}

func reference(c Cell) expr { return expr{c.Ref(), &c} }

// grouped are formulas with cells that lie one below another as ranges. Their
// order does not matter; where once is enough, each cell stands there once.
func grouped(all []expr, once bool) []string {
	var cells []Cell
	var parts []string
	for _, e := range all {
		if e.cell == nil {
			parts = append(parts, e.text)
		} else {
			cells = append(cells, *e.cell)
		}
	}
	slices.SortFunc(cells, func(a, b Cell) int {
		return cmp.Or(strings.Compare(a.Sheet, b.Sheet), a.Column-b.Column, a.Row-b.Row)
	})
	if once {
		cells, parts = slices.Compact(cells), slices.Compact(parts)
	}
	return append(ranges(cells), parts...)
}

func ranges(cells []Cell) []string {
	var parts []string
	for from := 0; from < len(cells); {
		to := from + 1
		for to < len(cells) && cells[to].under(cells[to-1]) {
			to++
		}
		part := cells[from].Ref()
		if last := cells[to-1]; to-from > 1 {
			part += ":" + Name(last.Column, last.Row)
		}
		parts, from = append(parts, part), to
	}
	return parts
}

func (c Cell) under(other Cell) bool {
	return c.Sheet == other.Sheet && c.Column == other.Column && c.Row == other.Row+1
}

// literal is a number within a formula, to the 15 digits that a spreadsheet
// holds.
func literal(x evidence.Exact) string {
	const digits = 15
	f, _ := strconv.ParseFloat(strconv.FormatFloat(x.Float(), 'g', digits, 64), 64)
	return number(f).text
}
