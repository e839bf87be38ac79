package workbook

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/writer"
)

// typed finds the cells of the record's copied tables.
type typed struct {
	tables map[string]grid.Table // by the key of their names
	titles names.Titles
}

func typedIn(b Book, t names.Titles) typed {
	all := typed{map[string]grid.Table{}, t}
	for _, table := range b.Tables {
		all.tables[names.Squash(table.Name)] = table
	}
	return all
}

// at is a cell that gives what stands at a place of the record, by a formula;
// known is false where the workbook holds no such cell.
func (t typed) at(p evidence.Place) (c writer.Cell, known bool) {
	at, ok := p.(names.Celled)
	if !ok {
		return c, false
	}
	name, number, column := at.Cell()
	table := t.tables[names.Squash(name)]
	i, found := slices.BinarySearchFunc(table.Rows, number, func(r grid.Row, n int) int { return r.Number - n })
	if !found || column < 1 || column > len(table.Rows[i].Cells) {
		return c, false
	}
	c = writer.Copied(table.Rows[i].Cells[column-1])
	sheet, _ := t.titles.Sheet(name)
	c.Formula = formula.Quoted(sheet) + "!" + formula.Name(column, number)
	return c, true
}
