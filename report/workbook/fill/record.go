package fill

import (
	"io"
	"slices"

	"firstboard/report"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/prompts"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// Record is a record to be filled in further, as a workbook of its own.
type Record struct {
	Job    report.Job
	Tool   string            // name and version
	Sheets []grid.FieldSheet // to print and write on; none where nothing is planned
	Tables []grid.Table      // of the record
	Sum    string            // SHA-256 of the tables, by which it is known whether anybody typed since
	Forms  []grid.Form       // of each table, what its columns take
	Most   uint64            // bytes unpacked, over which no reader would take it; 0 for any
}

// Write writes a record alone: sheets to write on by hand, a sheet for
// each of its tables with the lists, input checks and notes of an empty record,
// and what goes where. Over the most bytes it is an error.
func (f Record) Write(w io.Writer) error {
	var all []writer.Page
	if len(f.Sheets) > 0 {
		all = append(all, fieldPage(f.Job, f.Sheets))
	}
	for i, t := range f.Tables {
		all = append(all, fillPage(t, f.Forms[i]))
	}
	all = append(all, columnsPage(f.Forms))
	return writer.File{
		Job: f.Job, Tool: f.Tool, Says: "a record, its tables SHA-256 " + f.Sum, Foot: f.Job.Name, Pages: all,
		Most: f.Most,
	}.Write(w)
}

// fillPage is a table of a record with what is asked of its entries. Blanks in
// a table short enough to be filled in by hand are boxed.
func fillPage(t grid.Table, f grid.Form) writer.Page {
	p := writer.TablePage(t, t.Name)
	p.Checks = prompts.Checks(f)
	looks := lists.Each(f.Fields, fieldLook)
	for i, field := range f.Fields {
		if looks[i].Stands == style.Indented {
			p.Widths[i] = max(p.Widths[i], style.HeadWidth(field.Header)+style.IndentWidth)
		}
	}
	p.Columns = looks
	boxed, rows := len(t.Rows) <= writer.MostPrinted, p.Rows
	p.Rows = func(yield func(int, writer.Row) bool) {
		for n, r := range rows {
			switch {
			case n == 1:
				for i, field := range f.Fields {
					r.Cells[i].Look = headLook(field)
				}
			case boxed:
				r = blanksBoxed(r, looks)
			}
			if !yield(n, r) {
				return
			}
		}
	}
	return p
}

// blanksBoxed is a row whose blanks show where to write.
func blanksBoxed(r writer.Row, looks []style.Look) writer.Row {
	r.Cells = slices.Clone(r.Cells)
	for i, l := range looks[:min(len(looks), len(r.Cells))] {
		if r.Cells[i].Value == nil {
			l.Boxed = true
			r.Cells[i].Look = l
		}
	}
	return r
}
