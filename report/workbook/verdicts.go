package workbook

import (
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// WriteListings writes a workbook of tables alone, a sheet each, to be filtered
// and printed. Says is the description that the file gives of itself.
func WriteListings(w io.Writer, tool, title, says string, listings []grid.Listing) error {
	for _, l := range listings {
		if len(l.Rows) >= excelize.TotalRows {
			return fmt.Errorf("%s has %d rows, more than a sheet holds; write lines of JSON alone, or gather fewer records",
				l.Name, len(l.Rows))
		}
	}
	return writer.File{
		Job: report.Job{Name: title}, Tool: tool, Says: says, Foot: title, Pages: lists.Each(listings, listingPage),
	}.Write(w)
}

func listingPage(l grid.Listing) writer.Page {
	return writer.Page{
		Name: l.Name, Widths: l.Widths, Rows: writer.ColumnsOf(l.Table).Lines(l.Table, 0, listed),
		Last: len(l.Rows) + 1, Head: 1, Frozen: true, Filtered: true, Printed: l.Printed,
	}
}

// listed is a cell of a listing: boxed, a verdict in its color. What is longer
// than a cell holds is cut.
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
