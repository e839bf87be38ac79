package fill

import (
	"io"
	"slices"
	"strconv"

	"firstboard/report"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/prompts"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// Blank is an empty record to be written as a workbook.
type Blank struct {
	Tool  string // name and version
	Steps []grid.StartStep
	Forms []grid.Form
}

// The sheets of an empty record that are no tables of it.
const (
	startName   = "Start here"
	columnsName = "What goes where"
)

// Write writes an empty record: a first sheet that says where to begin,
// a sheet for each table with drop-down lists and input checks, and a last one
// that says what goes into every column, with an example. Equal blanks give
// equal bytes. Nothing is written where an error is returned, unless w itself
// failed.
func (b Blank) Write(w io.Writer) error {
	pages := append([]writer.Page{startPage(b)}, lists.Each(b.Forms, formPage)...)
	pages = append(pages, columnsPage(b.Forms))
	return writer.File{
		Job: report.Job{Name: "A flooring record"}, Tool: b.Tool, Says: "an empty record", Pages: pages,
	}.Write(w)
}

// startPage says which tables a small job needs, in which order.
func startPage(b Blank) writer.Page {
	widths := []float64{5, 21, 88}
	across := len(widths)
	rows := []writer.Row{
		writer.Line("An empty record of one job", style.Look{Size: style.Large, Bold: true}, across),
		writer.Line("What one wood floor on a slab needs, in this order:", style.Look{}, across),
	}
	rows[0].Least, rows[1].Least = 26, formRow
	for i, s := range b.Steps {
		where := writer.Cell{Value: s.Table, Look: style.Look{Boxed: true, Bold: true}}
		if s.Table != "" {
			where = where.Leading(formula.Quoted(s.Table)+"!A1", widths[1])
		}
		number := writer.Cell{Value: strconv.Itoa(i + 1), Look: style.Look{Boxed: true, Stands: style.Indented}}
		rows = append(rows, writer.Row{Cells: []writer.Cell{number, where, writer.Text(s.Says)}, Least: formRow})
	}
	rows = append(rows, writer.Row{},
		writer.Row{Cells: []writer.Cell{
			{Value: "", Look: style.Look{Tone: style.Dark}},
			{Value: "A dark header: fill this column in. A light one may stay blank. Choose a header to read what goes there; all of it stands on the last sheet, " + columnsName + ".", Across: across - 1},
		}})
	return writer.Page{Name: startName, Widths: widths, Rows: writer.Numbered(rows), Last: len(rows), Single: true}
}

// columnsPage says what goes into every field, with an example of it: here,
// because a row of a table is evidence.
func columnsPage(forms []grid.Form) writer.Page {
	rows := []writer.Row{writer.Header("Table", "Column", "Must be filled in", "What goes there", "For example")}
	for _, f := range forms {
		for _, field := range lists.If(f.Rows != nil, f.Rows, f.Fields) {
			example := writer.Text(field.Example)
			example.Look.Form = style.Literal
			rows = append(rows, writer.Row{Cells: []writer.Cell{
				writer.Text(f.Name), writer.Text(field.Header), writer.Text(lists.If(field.Must, "yes", "")),
				writer.Text(prompts.Says(field)), example,
			}})
		}
	}
	return writer.Page{
		Name: columnsName, Widths: []float64{17, 24, 11, 76, 32}, Rows: writer.Numbered(rows),
		Last: len(rows), Head: 1, Frozen: true,
	}
}

// formRow is the height of an empty row, in points: a finger's.
const formRow = 20

// formPage is an empty table, ruled as far as one printed page goes. The rows
// below take entries as well.
func formPage(f grid.Form) writer.Page {
	p := writer.Page{
		Name: f.Name, Widths: formWidths(f), Head: 1, Frozen: true, Grid: true, Checks: prompts.Checks(f),
		Columns: lists.Each(f.Fields, fieldLook),
	}
	rows := formRows(f, lists.If(len(f.Rows) == 0, p.Ruled(formRow), 0))
	p.Rows, p.Last = writer.Numbered(rows), len(rows)
	return p
}

// formRows are a header and so many empty rows, or the items of Job with their
// entries empty.
func formRows(f grid.Form, empty int) []writer.Row {
	var head, blank writer.Row
	for _, field := range f.Fields {
		head.Cells = append(head.Cells, writer.Cell{Value: field.Header, Look: headLook(field)})
		blank.Cells = append(blank.Cells, writer.Cell{Look: boxedLook(field)})
	}
	blank.Least = formRow
	rows := []writer.Row{head}
	for _, item := range f.Rows {
		name := style.Look{Form: style.Literal, Boxed: true, Bold: item.Must, Stands: style.Indented}
		cells := []writer.Cell{{Value: item.Header, Look: name}, {Look: boxedLook(item)}}
		rows = append(rows, writer.Row{Cells: cells, Least: formRow})
	}
	return append(rows, slices.Repeat([]writer.Row{blank}, empty)...)
}

// headLook is a dark header where the column must be filled in.
func headLook(f grid.Field) style.Look {
	return style.Look{Tone: lists.If(f.Must, style.Dark, style.Heading), Stands: fieldLook(f).Stands}
}

// boxedLook is how a blank stands that shows where to write.
func boxedLook(f grid.Field) style.Look {
	l := fieldLook(f)
	l.Boxed = true
	return l
}

// fieldLook is how an entry stands: a text stays the text it is typed as, and
// a number shows every digit it is typed with.
func fieldLook(f grid.Field) style.Look {
	switch f.Takes.Kind {
	case grid.NumberField:
		return style.Look{Stands: style.AtRight}
	case grid.DayField:
		return style.Look{Form: style.Day, Stands: style.Indented}
	case grid.ClockField, grid.ClockOrDayField:
		return style.Look{Form: style.Minute, Stands: style.Indented}
	}
	return style.Look{Form: style.Literal, Stands: style.Indented}
}
