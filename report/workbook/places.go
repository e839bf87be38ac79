package workbook

import (
	"fmt"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/names"
)

// sources lists the places behind a finding, the worst reading's first, as many
// as a few lines of the column hold, and leads to that one.
func sources(places []evidence.Place, t names.Titles, width float64) cell {
	const most = 3
	all := t.Runs(places)
	c := text(names.Words(all))
	for n := len(all) - 1; n > 0 && c.look.Lines(c.value.(string), width) > most; n-- {
		c = text(fmt.Sprintf("%s, and more: %d in all", names.Words(all[:n]), len(places)))
	}
	if len(places) > 0 {
		c = leadingTo(c, places[0], t, width)
	}
	return c
}

// leadingTo is a cell that leads to a place, where that place is a row of the
// record.
func leadingTo(c cell, p evidence.Place, t names.Titles, width float64) cell {
	if l, ok := p.(names.Celled); ok {
		table, row, column := l.Cell()
		if sheet, known := t.Sheet(table); known {
			return c.leading(formula.Quoted(sheet)+"!"+formula.Name(max(column, 1), row), width)
		}
	}
	return c
}
