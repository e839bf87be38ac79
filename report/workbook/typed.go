package workbook

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/writer"
)

// typed finds the cells of the record's copied tables.
type typed struct {
	tables map[string]grid.Table // by the names of their sheets
	titles names.Titles
}

func typedIn(b Book, t names.Titles) typed {
	all := typed{map[string]grid.Table{}, t}
	for i, table := range b.Tables {
		all.tables[t.Tables[i]] = table
	}
	return all
}

// at is a cell that gives what stands at a place of the record, by a formula;
// known is false where the workbook holds no such cell.
func (t typed) at(p evidence.Place) (c writer.Cell, known bool) {
	at, known := t.titles.Cell(p)
	rows := t.tables[at.Sheet].Rows
	i, found := slices.BinarySearchFunc(rows, at.Row, func(r grid.Row, n int) int { return r.Number - n })
	if !known || !found || at.Column < 1 || at.Column > len(rows[i].Cells) {
		return c, false
	}
	c = writer.Copied(rows[i].Cells[at.Column-1])
	c.Formula = at.Ref()
	return c, true
}
