package workbook

import (
	"fmt"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
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
	if l, ok := p.(names.Celled); ok {
		table, row, column := l.Cell()
		if sheet, known := t.Sheet(table); known {
			return c.Leading(formula.Quoted(sheet)+"!"+formula.Name(max(column, 1), row), width)
		}
	}
	return c
}
