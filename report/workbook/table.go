package workbook

import (
	"iter"
	"time"

	"firstboard/report"
)

// tablePage is a table of the record: every row under the number it had, and
// every cell as it was typed.
func tablePage(t report.Table, name string) page {
	p := page{name: name, widths: tableWidths(t), rows: tableRows(t), last: 1, head: 1, frozen: true, grid: true}
	if n := len(t.Rows); n > 0 {
		p.last = t.Rows[n-1].Number
	}
	return p
}

func tableRows(t report.Table) iter.Seq2[int, row] {
	return func(yield func(int, row) bool) {
		if !yield(1, header(t.Header...)) {
			return
		}
		var cells []cell
		for _, r := range t.Rows {
			cells = cells[:0]
			for _, c := range r.Cells {
				cells = append(cells, copied(c))
			}
			if !yield(r.Number, row{cells: cells}) {
				return
			}
		}
	}
}

// copied is a cell of the record. What a spreadsheet cannot hold as a number
// or a day without changing it stays the text it was typed as.
func copied(c report.Cell) cell {
	switch c.Kind {
	case report.BlankCell:
		return cell{}
	case report.NumberCell:
		if x, places, ok := plainNumber(c.Text); ok {
			return cell{value: x, look: look{form: number, places: max(places, c.Places)}}
		}
	case report.DayCell, report.TimeCell:
		if holdsClock(c.Clock) {
			return cell{value: c.Clock, look: look{form: clockForm(c)}}
		}
	}
	return copiedText(c.Text)
}

// copiedText keeps an entry like 007 a text when somebody edits it. Long ones
// go without: some spreadsheets show a long cell of that format as ####.
func copiedText(s string) cell {
	const short = 255
	if len(s) > short {
		return cell{value: s}
	}
	return cell{value: s, look: look{form: literal}}
}

// holdsClock says whether every spreadsheet counts that day alike: they
// differ before March 1900.
func holdsClock(t time.Time) bool {
	return t.Year() < 10000 && !t.Before(time.Date(1900, time.March, 1, 0, 0, 0, 0, time.UTC))
}

func clockForm(c report.Cell) form {
	switch {
	case c.Kind == report.DayCell:
		return day
	case c.Clock.Second() != 0:
		return second
	}
	return minute
}

// tableWidths are as wide as the widest entry of each column, within reason.
func tableWidths(t report.Table) []float64 {
	const least, most, spare = 9, 42, 2.5
	widths := make([]float64, len(t.Header))
	for i, h := range t.Header {
		widths[i] = min(max(span(h)*1.1+spare, least), 20)
	}
	for _, r := range t.Rows {
		for i, c := range r.Cells[:min(len(r.Cells), len(widths))] {
			if w := span(c.Text) + spare; w > widths[i] {
				widths[i] = min(w, most)
			}
		}
	}
	return widths
}
