package names

import (
	"cmp"
	"fmt"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
)

// celled is a place that can tell its cell: the table, and the numbers of row
// and column there, the column 0 for a whole row.
type celled interface {
	Cell() (table string, row, column int)
}

// Cell is a place as a cell of this workbook. One whose table is on no sheet is
// unknown, and goes by the name of the table; one that is no cell is empty.
func (t Titles) Cell(p evidence.Place) (c formula.Cell, known bool) {
	at, ok := p.(celled)
	if !ok {
		return c, false
	}
	table, row, column := at.Cell()
	sheet, known := t.Sheet(table)
	return formula.Cell{Sheet: cmp.Or(sheet, table), Column: column, Row: row}, known
}

// Place is a place as this workbook names it: Slab RH!J9.
func (t Titles) Place(p evidence.Place) string { return Words(t.Runs([]evidence.Place{p})) }

// Run is cells of one column that follow one another, or a place of another
// kind by its words alone.
type Run struct {
	sheet       string
	column      int
	first, last int // 0 for a place that is no cell
}

func (t Titles) runOf(p evidence.Place) Run {
	c, _ := t.Cell(p)
	if c == (formula.Cell{}) {
		return Run{sheet: p.String()}
	}
	return Run{c.Sheet, c.Column, c.Row, c.Row}
}

// Runs gathers places in their order.
func (t Titles) Runs(places []evidence.Place) []Run {
	var all []Run
	for _, p := range places {
		r := t.runOf(p)
		if n := len(all); n > 0 && r.first > 0 && all[n-1].sheet == r.sheet && all[n-1].column == r.column &&
			all[n-1].last+1 == r.first {
			all[n-1].last = r.last
			continue
		}
		all = append(all, r)
	}
	return all
}

// Words are runs in words, each sheet named once for those that stand together.
func Words(all []Run) string {
	var b strings.Builder
	for i, r := range all {
		switch {
		case i == 0:
			b.WriteString(r.sheet)
		case r.sheet != all[i-1].sheet:
			b.WriteString("; " + r.sheet)
		default:
			b.WriteString(", ")
		}
		if r.first > 0 {
			b.WriteString(r.cells(i == 0 || r.sheet != all[i-1].sheet))
		}
	}
	return b.String()
}

// cells are the cells of a run: !J7 or !J7:J12 behind the name of their sheet,
// or rows in words.
func (r Run) cells(first bool) string {
	before, s := "!", formula.Name(r.column, r.first)
	switch {
	case r.column == 0 && r.first == r.last:
		before, s = " row ", fmt.Sprint(r.first)
	case r.column == 0:
		before, s = " rows ", fmt.Sprintf("%d to %d", r.first, r.last)
	case r.last > r.first:
		s += ":" + formula.Name(r.column, r.last)
	}
	return lists.If(first, before, "") + s
}
