package workbook

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/workbook/writer"
)

// typed is a cell that gives what stands at a place of the record, by a formula;
// known is false where the workbook holds no such cell.
func (d *desk) typed(p evidence.Place) (c writer.Cell, known bool) {
	at, known := d.titles.Cell(p)
	if !known {
		return c, false
	}
	rows := d.book.Tables[slices.Index(d.titles.Tables, at.Sheet)].Rows
	i, found := slices.BinarySearchFunc(rows, at.Row, func(r grid.Row, n int) int { return r.Number - n })
	if !found || at.Column < 1 || at.Column > len(rows[i].Cells) {
		return c, false
	}
	c = writer.Copied(rows[i].Cells[at.Column-1])
	c.Formula = at.Ref()
	return c, true
}
