package writer

import (
	"iter"
	"strings"
	"time"

	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/style"
)

// TablePage is a table of the record: every row under the number it had, and
// every cell as it was typed.
func TablePage(t grid.Table, name string) Page { return ColumnsOf(t).Page(t, name) }

// Page is a table as a page of these columns.
func (c Columns) Page(t grid.Table, name string) Page {
	least := lists.If(len(t.Rows) > MostPrinted, 0, tightLine) // a long table is not printed, and keeps the usual height
	return Page{
		Name: name, Widths: c.widths, Rows: c.Lines(t, least, Copied), Last: t.Last(), Head: 1, Frozen: true, Grid: true,
	}
}

// Lines are the rows of a table of these columns below their header, none under
// a height, and each entry the cell that it is shown in.
func (c Columns) Lines(t grid.Table, least float64, cell func(grid.Cell) Cell) iter.Seq2[int, Row] {
	return func(yield func(int, Row) bool) {
		head := Header(t.Header...)
		for i := range head.Cells {
			head.Cells[i].Look.Stands = c.stands(i)
			head.Cells[i].Look.Turned = c.turned[i]
		}
		if !yield(1, head) {
			return
		}
		var cells []Cell
		for _, r := range t.Rows {
			cells = cells[:0]
			for i, entry := range r.Cells {
				cells = append(cells, c.placed(cell(entry), i))
			}
			if !yield(r.Number, Row{Cells: cells, Least: least}) {
				return
			}
		}
	}
}

// Copied is a cell of the record. What a spreadsheet cannot hold as a number
// or a day without changing it stays the text it was typed as.
func Copied(c grid.Cell) Cell {
	switch c.Kind {
	case grid.BlankCell:
		return Cell{}
	case grid.NumberCell:
		if x, places, ok := PlainNumber(c.Text); ok {
			return Cell{Value: x, Look: style.Look{Form: style.Number, Places: max(places, int(c.Places))}}
		}
	case grid.DayCell, grid.TimeCell:
		if holdsClock(c.Clock()) {
			form := lists.If(c.Kind == grid.DayCell, style.Day, lists.If(c.Clock().Second() != 0, style.Second, style.Minute))
			return Cell{Value: c.Clock(), Look: style.Look{Form: form}}
		}
	}
	return copiedText(c.Text)
}

// copiedText keeps an entry like 007 a text when somebody edits it. Long ones
// go without: some spreadsheets show a long cell of that format as ####.
func copiedText(s string) Cell {
	const short = 255
	return Cell{Value: s, Look: style.Look{Form: lists.If(len(s) > short, style.General, style.Literal)}}
}

// holdsClock says whether every spreadsheet counts that day alike: they
// differ before March 1900.
func holdsClock(t time.Time) bool {
	return t.Year() < 10000 && !t.Before(time.Date(1900, time.March, 1, 0, 0, 0, 0, time.UTC))
}

// Columns are how the columns of a table stand: as wide as their widest
// entry, within reason, and to the right where they begin with a number.
type Columns struct {
	widths []float64
	first  []grid.CellKind // of the entries, the first that is not blank
	turned []bool          // headers that stand upright
}

// stands is where the header of a column stands, and most of its entries.
func (c Columns) stands(i int) style.Stand {
	switch {
	case c.numbers(i):
		return style.AtRight
	case c.numbers(i - 1):
		return style.Indented
	}
	return style.AtLeft
}

// numbers says whether a column stands to the right.
func (c Columns) numbers(i int) bool {
	return i >= 0 && i < len(c.first) && c.first[i] == grid.NumberCell
}

// placed sets where an entry stands in its column: a number as the column
// does, anything else at its left, a little in from a number.
func (c Columns) placed(entry Cell, i int) Cell {
	if entry.Value == nil {
		return entry
	}
	entry.Look.Stands = c.stands(i)
	if entry.Look.Form != style.Number && entry.Look.Stands == style.AtRight {
		entry.Look.Stands = style.Indented
	}
	return entry
}

func ColumnsOf(t grid.Table) Columns {
	n := len(t.Header)
	c := Columns{widths: make([]float64, n), first: make([]grid.CellKind, n), turned: make([]bool, n)}
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
