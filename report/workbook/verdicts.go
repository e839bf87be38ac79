package workbook

import (
	"fmt"
	"io"
	"iter"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/style"
)

// Listing is a table that no record holds: how wide its columns stand, in
// digits, and how many of them are printed, 0 for all.
type Listing struct {
	grid.Table
	Widths  []float64
	Printed int
}

// WriteListings writes a workbook of tables alone, a sheet each, to be filtered
// and printed. Says is the description that the file gives of itself.
func WriteListings(w io.Writer, tool, title, says string, listings []Listing) error {
	var all []page
	for _, l := range listings {
		if len(l.Rows) >= excelize.TotalRows {
			return fmt.Errorf("%s has %d rows, more than a sheet holds; write lines of JSON alone, or gather fewer records",
				l.Name, len(l.Rows))
		}
		p := l.page()
		p.job = title
		all = append(all, p)
	}
	return file{job: report.Job{Name: title}, tool: tool, says: says, pages: all}.write(w)
}

func (l Listing) page() page {
	return page{
		name: l.Name, widths: l.Widths, rows: l.lines(), last: len(l.Rows) + 1, head: 1, frozen: true,
		filtered: true, printed: l.Printed,
	}
}

// lines are the rows as they are shown: boxed, a verdict in its color.
func (l Listing) lines() iter.Seq2[int, row] {
	return func(yield func(int, row) bool) {
		columns := columnsOf(l.Table)
		head := header(l.Header...)
		for i := range head.cells {
			head.cells[i].look.Stands = columns.stands(i)
		}
		if !yield(1, head) {
			return
		}
		var cells []cell
		for _, r := range l.Rows {
			cells = cells[:0]
			for i, entry := range r.Cells {
				cells = append(cells, columns.placed(listed(entry), i))
			}
			if !yield(r.Number, row{cells: cells}) {
				return
			}
		}
	}
}

// listed is a cell of a listing. What is longer than a cell holds is cut.
func listed(entry grid.Cell) cell {
	const most, more = excelize.TotalCellChars, "..."
	if tooLong(entry.Text) {
		entry.Text = names.Cut(entry.Text, most-len(more)) + more
	}
	c := copied(entry)
	c.look.Boxed, c.look.Top = true, true
	switch {
	case entry.Kind != grid.TextCell:
	case entry.Text == string(evidence.Go):
		c.look.Tone = style.Blue
	case entry.Text == string(evidence.NoGo):
		c.look.Tone = style.Orange
	}
	return c
}
