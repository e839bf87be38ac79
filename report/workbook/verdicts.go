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
	"firstboard/report/workbook/writer"
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
	var all []writer.Page
	for _, l := range listings {
		if len(l.Rows) >= excelize.TotalRows {
			return fmt.Errorf("%s has %d rows, more than a sheet holds; write lines of JSON alone, or gather fewer records",
				l.Name, len(l.Rows))
		}
		p := l.page()
		p.Job = title
		all = append(all, p)
	}
	return writer.File{Job: report.Job{Name: title}, Tool: tool, Says: says, Pages: all}.Write(w)
}

func (l Listing) page() writer.Page {
	return writer.Page{
		Name: l.Name, Widths: l.Widths, Rows: l.lines(), Last: len(l.Rows) + 1, Head: 1, Frozen: true,
		Filtered: true, Printed: l.Printed,
	}
}

// lines are the rows as they are shown: boxed, a verdict in its color.
func (l Listing) lines() iter.Seq2[int, writer.Row] {
	return func(yield func(int, writer.Row) bool) {
		columns := writer.ColumnsOf(l.Table)
		head := writer.Header(l.Header...)
		for i := range head.Cells {
			head.Cells[i].Look.Stands = columns.Stands(i)
		}
		if !yield(1, head) {
			return
		}
		var cells []writer.Cell
		for _, r := range l.Rows {
			cells = cells[:0]
			for i, entry := range r.Cells {
				cells = append(cells, columns.Placed(listed(entry), i))
			}
			if !yield(r.Number, writer.Row{Cells: cells}) {
				return
			}
		}
	}
}

// listed is a cell of a listing. What is longer than a cell holds is cut.
func listed(entry grid.Cell) writer.Cell {
	const most, more = excelize.TotalCellChars, "..."
	if writer.TooLong(entry.Text) {
		entry.Text = names.Cut(entry.Text, most-len(more)) + more
	}
	c := writer.Copied(entry)
	c.Look.Boxed, c.Look.Top = true, true
	switch {
	case entry.Kind != grid.TextCell:
	case entry.Text == string(evidence.Go):
		c.Look.Tone = style.Blue
	case entry.Text == string(evidence.NoGo):
		c.Look.Tone = style.Orange
	}
	return c
}
