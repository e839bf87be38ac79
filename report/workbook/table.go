package workbook

import (
	"iter"
	"strings"
	"time"

	"firstboard/report/grid"
	"firstboard/report/workbook/style"
)

// tablePage is a table of the record: every row under the number it had, and
// every cell as it was typed.
func tablePage(t grid.Table, name string) page { return columnsOf(t).page(t, name) }

func (c columns) page(t grid.Table, name string) page {
	p := page{name: name, widths: c.widths, rows: tableRows(t, c), last: 1, head: 1, frozen: true, grid: true}
	if n := len(t.Rows); n > 0 {
		p.last = t.Rows[n-1].Number
	}
	return p
}

func tableRows(t grid.Table, c columns) iter.Seq2[int, row] {
	return func(yield func(int, row) bool) {
		head := header(t.Header...)
		for i := range head.cells {
			head.cells[i].look.Stands = c.stands(i)
			head.cells[i].look.Turned = c.turned[i]
		}
		if !yield(1, head) {
			return
		}
		var cells []cell
		least := 0.0 // a long table, which is not printed, keeps the usual height
		if len(t.Rows) <= mostPrinted {
			least = tightLine
		}
		for _, r := range t.Rows {
			cells = cells[:0]
			for i, entry := range r.Cells {
				cells = append(cells, c.placed(copied(entry), i))
			}
			if !yield(r.Number, row{cells: cells, least: least}) {
				return
			}
		}
	}
}

// copied is a cell of the record. What a spreadsheet cannot hold as a number
// or a day without changing it stays the text it was typed as.
func copied(c grid.Cell) cell {
	switch c.Kind {
	case grid.BlankCell:
		return cell{}
	case grid.NumberCell:
		if x, places, ok := plainNumber(c.Text); ok {
			return cell{value: x, look: style.Look{Form: style.Number, Places: max(places, int(c.Places))}}
		}
	case grid.DayCell, grid.TimeCell:
		if holdsClock(c.Clock()) {
			return cell{value: c.Clock(), look: style.Look{Form: clockForm(c)}}
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
	return cell{value: s, look: style.Look{Form: style.Literal}}
}

// holdsClock says whether every spreadsheet counts that day alike: they
// differ before March 1900.
func holdsClock(t time.Time) bool {
	return t.Year() < 10000 && !t.Before(time.Date(1900, time.March, 1, 0, 0, 0, 0, time.UTC))
}

func clockForm(c grid.Cell) style.Form {
	switch {
	case c.Kind == grid.DayCell:
		return style.Day
	case c.Clock().Second() != 0:
		return style.Second
	}
	return style.Minute
}

// columns are how the columns of a table stand: as wide as their widest
// entry, within reason, and to the right where they begin with a number.
type columns struct {
	widths []float64
	first  []grid.CellKind // of the entries, the first that is not blank
	turned []bool          // headers that stand upright
}

func (c columns) stands(i int) style.Stand {
	switch {
	case c.numbers(i):
		return style.AtRight
	case c.numbers(i - 1):
		return style.Indented
	}
	return style.AtLeft
}

// numbers says whether a column stands to the right.
func (c columns) numbers(i int) bool {
	return i >= 0 && i < len(c.first) && c.first[i] == grid.NumberCell
}

// placed sets where an entry stands in its column: a number as the column
// does, anything else at its left, a little in from a number.
func (c columns) placed(entry cell, i int) cell {
	if entry.value == nil {
		return entry
	}
	entry.look.Stands = c.stands(i)
	if entry.look.Form != style.Number && entry.look.Stands == style.AtRight {
		entry.look.Stands = style.Indented
	}
	return entry
}

func columnsOf(t grid.Table) columns {
	n := len(t.Header)
	c := columns{widths: make([]float64, n), first: make([]grid.CellKind, n), turned: make([]bool, n)}
	for i, h := range t.Header {
		c.widths[i] = style.HeadWidth(h)
	}
	for _, r := range t.Rows {
		for i, entry := range r.Cells[:min(len(r.Cells), n)] {
			if c.first[i] == grid.BlankCell {
				c.first[i] = entry.Kind
			}
			if couldBeWider(entry, c.widths[i]) {
				c.widths[i] = max(c.widths[i], entryWidth(entry))
			}
		}
	}
	for i := range c.widths {
		if c.stands(i) == style.Indented {
			c.widths[i] += style.IndentWidth
		}
	}
	return c
}

// entryWidth is the width an entry asks for: its own, until it is long enough
// to be broken into lines, and more again where those would be too many.
func entryWidth(c grid.Cell) float64 {
	const spare, most, linesWanted, widest = 0.5, 26, 20, 150
	w := style.Width(shown(c)) + spare
	if w <= most {
		return w
	}
	return min(max(most, w/linesWanted), widest)
}

// couldBeWider says whether an entry may ask for more than a width: most are
// plainly short enough.
func couldBeWider(c grid.Cell, width float64) bool {
	const longestClock = 16
	n := len(c.Text)
	if c.Kind == grid.DayCell || c.Kind == grid.TimeCell {
		n = longestClock
	}
	return style.Widest(n+int(c.Places))+1 > width
}

// shown is about what a cell shows: its text, or a clock time as wide.
func shown(c grid.Cell) string {
	switch c.Kind {
	case grid.DayCell:
		return time.DateOnly
	case grid.TimeCell:
		return "2006-01-02 15:04"
	case grid.NumberCell:
		return c.Text + strings.Repeat("0", int(c.Places))
	}
	return c.Text
}
