package workbook

import (
	"fmt"

	"firstboard/report/evidence"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/writer"
)

// sources lists the places behind a finding, the worst reading's first, as many
// as a few lines of the column hold, and leads to that one.
func sources(places []evidence.Place, t names.Titles, width float64) writer.Cell {
	const most = 3
	all := t.Runs(places)
	c := writer.Text(names.Words(all))
	for n := len(all) - 1; n > 0 && c.Look.Lines(c.Value.(string), width) > most; n-- {
		c = writer.Text(fmt.Sprintf("%s, and more: %d in all", names.Words(all[:n]), len(places)))
	}
	if len(places) > 0 {
		c = leadingTo(c, places[0], t, width)
	}
	return c
}

// leadingTo is a cell that leads to a place, where that place is a row of the
// record.
func leadingTo(c writer.Cell, p evidence.Place, t names.Titles, width float64) writer.Cell {
	to, known := t.Cell(p)
	if !known {
		return c
	}
	to.Column = max(to.Column, 1)
	return c.Leading(to.Ref(), width)
}
