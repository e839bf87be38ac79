package workbook

import (
	"strconv"
	"strings"

	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/live"
)

// workingPage is how an area's figures are worked out, formula by formula.
func workingPage(w live.Working) page {
	s := w.Sheet
	p := page{name: s.Name, widths: []float64{36, 30, 17, 17, 17, 17, 17, 17, 17, 17, 17, 17}, last: len(s.Rows), head: 1}
	var rows []row
	for _, r := range s.Rows {
		rows = append(rows, workingRow(r, len(p.widths)))
	}
	p.rows = numbered(rows)
	return p
}

func workingRow(r live.Row, across int) row {
	var out row
	for i, c := range r.Cells {
		switch {
		case r.Heading:
			out.cells = append(out.cells, cell{value: c.Label, look: look{bold: true}, across: across})
		case r.Header:
			out.cells = append(out.cells, cell{value: c.Label, look: look{tone: heading}})
		case c.Live():
			out.cells = append(out.cells, workingCell(c))
		case len(r.Cells) == 1:
			out.cells = append(out.cells, cell{value: c.Label, across: across})
		case c.Label == "" && i > 0:
			out.cells = append(out.cells, cell{})
		default:
			out.cells = append(out.cells, text(c.Label))
		}
	}
	return out
}

// workingCell is a formula with its value: a number with no more places than
// it needs, or a day or a time.
func workingCell(c live.Cell) cell {
	out := cell{formula: c.Formula.String(), value: c.Formula.Value(), look: look{boxed: true, form: number, places: decimals(c.Formula.Value())}}
	if _, failed := out.value.(formula.Error); failed {
		out.value = nil
	}
	switch c.Form {
	case live.Day:
		out.look.form = day
	case live.Minute:
		out.look.form = minute
	}
	return out
}

// decimals are the places a number needs, six at most.
func decimals(value any) int {
	const most = 6
	x, isNumber := value.(float64)
	if !isNumber {
		return 0
	}
	_, fraction, _ := strings.Cut(strings.TrimRight(strconv.FormatFloat(x, 'f', most, 64), "0"), ".")
	return len(fraction)
}
