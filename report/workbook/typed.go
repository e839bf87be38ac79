package workbook

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/workbook/formula"
)

// typed finds the cells of the record's copied tables.
type typed struct {
	tables map[string]grid.Table // by the key of their names
	titles titles
}

func typedIn(b Book, t titles) typed {
	all := typed{map[string]grid.Table{}, t}
	for _, table := range b.Tables {
		all.tables[squash(table.Name)] = table
	}
	return all
}

// at is a cell that gives what stands at a place of the record, by a formula;
// known is false where the workbook holds no such cell.
func (t typed) at(p evidence.Place) (c cell, known bool) {
	at, ok := p.(celled)
	if !ok {
		return c, false
	}
	name, number, column := at.Cell()
	table, sheet := t.tables[squash(name)], t.titles.rows[squash(name)]
	i, found := slices.BinarySearchFunc(table.Rows, number, func(r grid.Row, n int) int { return r.Number - n })
	if !found || column < 1 || column > len(table.Rows[i].Cells) {
		return c, false
	}
	c = copied(table.Rows[i].Cells[column-1])
	c.formula = formula.Quoted(sheet) + "!" + formula.Name(column, number)
	return c, true
}
