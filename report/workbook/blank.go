package workbook

import (
	"io"
	"iter"
	"strconv"

	"firstboard/report"
	"firstboard/report/grid"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/prompts"
	"firstboard/report/workbook/style"
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

// WriteBlank writes an empty record: a first sheet that says where to begin,
// a sheet for each table with drop-down lists and input checks, and a last one
// that says what goes into every column, with an example. Equal blanks give
// equal bytes. Nothing is written where an error is returned, unless w itself
// failed.
func WriteBlank(w io.Writer, b Blank) error {
	pages := []page{startPage(b)}
	for _, f := range b.Forms {
		pages = append(pages, formPage(f))
	}
	pages = append(pages, columnsPage(b))
	return file{job: report.Job{Name: "A flooring record"}, tool: b.Tool, says: "an empty record", pages: pages}.write(w)
}

// startPage says which tables a small job needs, in which order.
func startPage(b Blank) page {
	widths := []float64{5, 21, 88}
	across := len(widths)
	rows := []row{
		{
			cells: []cell{{value: "An empty record of one job", look: style.Look{Size: style.Large, Bold: true}, across: across}},
			least: 26,
		},
		{cells: []cell{{value: "What one wood floor on a slab needs, in this order:", across: across}}, least: formRow},
	}
	for i, s := range b.Steps {
		where := cell{value: s.Table, look: style.Look{Boxed: true, Bold: true}}
		if s.Table != "" {
			where = where.leading(formula.Quoted(s.Table)+"!A1", widths[1])
		}
		number := cell{value: strconv.Itoa(i + 1), look: style.Look{Boxed: true, Stands: style.Indented}}
		rows = append(rows, row{cells: []cell{number, where, text(s.Says)}, least: formRow})
	}
	rows = append(rows, row{},
		row{cells: []cell{
			{value: "", look: style.Look{Tone: style.Dark}},
			{value: "A dark header: fill this column in. A light one may stay blank. Choose a header to read what goes there; all of it stands on the last sheet, " + columnsName + ".", across: across - 1},
		}})
	return page{name: startName, widths: widths, rows: numbered(rows), last: len(rows), single: true}
}

// columnsPage says what goes into every field, with an example of it: here,
// because a row of a table is evidence.
func columnsPage(b Blank) page {
	rows := []row{header("Table", "Column", "Must be filled in", "What goes there", "For example")}
	for _, f := range b.Forms {
		fields := f.Fields
		if f.Rows != nil {
			fields = f.Rows
		}
		for _, field := range fields {
			asked := ""
			if field.Must {
				asked = "yes"
			}
			example := text(field.Example)
			example.look.Form = style.Literal
			rows = append(rows, row{cells: []cell{
				text(f.Name), text(field.Header), text(asked), text(prompts.Says(field)),
				example,
			}})
		}
	}
	return page{
		name: columnsName, widths: []float64{17, 24, 11, 76, 32}, rows: numbered(rows),
		last: len(rows), head: 1, frozen: true,
	}
}

// formRow is the height of an empty row, in points: a finger's.
const formRow = 20

// formPage is an empty table, ruled as far as one printed page goes. The rows
// below take entries as well.
func formPage(f grid.Form) page {
	p := page{
		name: f.Name, widths: formWidths(f), head: 1, frozen: true, grid: true, checks: prompts.Checks(f),
	}
	n := len(f.Rows)
	if n == 0 {
		n = p.ruled(formRow)
	}
	p.rows, p.last = formLines(f, n), n+1
	for _, field := range f.Fields {
		p.columns = append(p.columns, fieldLook(field.Takes))
	}
	return p
}

func formLines(f grid.Form, n int) iter.Seq2[int, row] {
	return func(yield func(int, row) bool) {
		var head row
		for _, field := range f.Fields {
			head.cells = append(head.cells, cell{value: field.Header, look: headLook(field)})
		}
		if !yield(1, head) {
			return
		}
		for i := range n {
			if !yield(i+2, formLine(f, i)) {
				return
			}
		}
	}
}

// formLine is an empty row, or an item of Job with its entry empty.
func formLine(f grid.Form, nth int) row {
	r := row{least: formRow}
	for _, field := range f.Fields {
		l := fieldLook(field.Takes)
		l.Boxed = true
		r.cells = append(r.cells, cell{look: l})
	}
	if nth < len(f.Rows) {
		item := f.Rows[nth]
		entry := fieldLook(item.Takes)
		entry.Boxed = true
		r.cells = []cell{{
			value: item.Header,
			look:  style.Look{Form: style.Literal, Boxed: true, Bold: item.Must, Stands: style.Indented},
		}, {look: entry}}
	}
	return r
}

// headLook is a dark header where the column must be filled in.
func headLook(f grid.Field) style.Look {
	l := style.Look{Tone: style.Heading, Stands: fieldLook(f.Takes).Stands}
	if f.Must {
		l.Tone = style.Dark
	}
	return l
}

// fieldLook is how an entry stands: a text stays the text it is typed as, and
// a number shows every digit it is typed with.
func fieldLook(t grid.Takes) style.Look {
	switch t.Kind {
	case grid.NumberField:
		return style.Look{Stands: style.AtRight}
	case grid.DayField:
		return style.Look{Form: style.Day, Stands: style.Indented}
	case grid.ClockField, grid.ClockOrDayField:
		return style.Look{Form: style.Minute, Stands: style.Indented}
	}
	return style.Look{Form: style.Literal, Stands: style.Indented}
}
