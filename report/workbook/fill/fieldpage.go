package fill

import (
	"fmt"
	"slices"

	"firstboard/report"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// fieldName is the sheet to print and to write on. It is no table of a record.
const fieldName = "Field sheets"

// The columns of field sheets, as wide as the paper: the name of a thing, what
// is measured, and a note that takes the rest.
const (
	fieldColumns = 9
	fieldFirst   = 14
	fieldWide    = 12
	fieldLast    = 18.5
)

// The heights of lines on paper, in points.
const (
	writingRow = 21
	signingRow = 30
	titleRow   = 26
)

// fieldPage holds a sheet of paper or more for each person on each day.
func fieldPage(job report.Job, sheets []grid.FieldSheet) writer.Page {
	var f fieldPaper
	f.widths = slices.Repeat([]float64{fieldWide}, fieldColumns)
	f.widths[0], f.widths[fieldColumns-1] = fieldFirst, fieldLast
	for _, s := range sheets {
		f.sheet(job, s)
	}
	return writer.Page{
		Name: fieldName, Widths: f.widths, Rows: writer.Numbered(f.rows), Last: len(f.rows),
		Breaks: append([]int{}, f.breaks...),
	}
}

// fieldPaper are rows laid onto sheets of paper, no list begun at the foot of
// one.
type fieldPaper struct {
	widths []float64
	rows   []writer.Row
	breaks []int   // rows that begin a sheet of paper
	used   float64 // points of the sheet in hand
}

// sheet begins a new sheet of paper and fills it.
func (f *fieldPaper) sheet(job report.Job, s grid.FieldSheet) {
	if len(f.rows) > 0 {
		f.turn()
	}
	f.lay(fieldLine(fmt.Sprintf("%s: %s", s.When, s.Who), style.Look{Size: style.Large, Bold: true}, titleRow))
	f.lay(fieldLine(job.Name+". Write here by hand, then copy it into the tables of this workbook.",
		style.Look{Gray: true}, 0))
	for _, part := range s.Parts {
		f.part(part)
	}
	f.together(writer.Row{}, fieldLine("Done by, with date and signature:", style.Look{}, signingRow))
}

// part is what is done in an area, and then its lists.
func (f *fieldPaper) part(part grid.FieldPart) {
	first := 2
	for i, order := range part.Orders {
		lines := []writer.Row{
			{},
			fieldLine(part.Area, style.Look{Bold: true, Tone: style.Heading}, 0),
			fieldLine("☐ "+order, style.Look{}, 0),
		}
		f.together(lines[min(i, 1)*first:]...)
	}
	for _, l := range part.Lists {
		f.list(l)
	}
}

// list is a list with its heads, told again on every sheet of paper.
func (f *fieldPaper) list(l grid.FieldList) {
	heads := func(more string) []writer.Row {
		return []writer.Row{
			{},
			fieldLine("Into "+l.Title+more+":", style.Look{Bold: true}, 0),
			fieldRow(l.Columns, style.Look{Tone: style.Heading, Stands: style.Indented}, 0),
		}
	}
	for i, entries := range l.Rows {
		line := fieldRow(entries, style.Look{Boxed: true, Stands: style.Indented}, writingRow)
		switch {
		case i == 0:
			f.together(append(heads(""), line)...)
		case !f.fits(line):
			f.together(append(heads(", continued"), line)...)
		default:
			f.lay(line)
		}
	}
}

// together lays rows on one sheet of paper, a new one where they do not fit.
func (f *fieldPaper) together(rows ...writer.Row) {
	if !f.fits(rows...) {
		f.turn()
	}
	for _, r := range rows {
		f.lay(r)
	}
}

func (f *fieldPaper) fits(rows ...writer.Row) bool {
	tall := f.used
	for _, r := range rows {
		tall += r.Tall(f.widths)
	}
	return tall <= writer.PaperTall
}

// turn begins a new sheet of paper.
func (f *fieldPaper) turn() { f.breaks, f.used = append(f.breaks, len(f.rows)+1), 0 }

func (f *fieldPaper) lay(r writer.Row) { f.rows, f.used = append(f.rows, r), f.used+r.Tall(f.widths) }

// fieldLine is a text across the sheet.
func fieldLine(s string, l style.Look, least float64) writer.Row {
	r := writer.Line(s, l, fieldColumns)
	r.Least = least
	return r
}

// fieldRow is a row of a list; its last entry takes the columns that are left.
func fieldRow(entries []string, l style.Look, least float64) writer.Row {
	cells := lists.Each(entries, func(entry string) writer.Cell { return writer.Cell{Value: entry, Look: l} })
	cells[len(cells)-1].Across = fieldColumns - len(entries) + 1
	return writer.Row{Cells: cells, Least: least}
}
