package workbook

import (
	"fmt"
	"io"
	"strings"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
)

// mostEntries is how many rows of an empty record are checked while they are
// typed.
const mostEntries = 2000

// WriteBlank writes an empty record: what to fill in first, an example that is
// no table of a record, and every table with its columns, lists and checks of
// what is typed.
func WriteBlank(w io.Writer, tool string, layouts []report.Layout) error {
	all := []page{startPage(), examplePage()}
	for _, l := range layouts {
		all = append(all, blankPage(l))
	}
	return write(w, Book{Tool: tool}, "an empty record", all, 0)
}

func startPage() page {
	rows := []row{
		{cells: []cell{{value: "An empty record for firstboard", look: look{size: large, bold: true}, across: 2}}},
		{cells: []cell{{value: "A small job needs these tables, in this order. Every header says what goes below it; columns in black are needed, those in grey may stay empty.", across: 2}}},
	}
	for i, s := range report.StartHere() {
		rows = append(rows, row{cells: []cell{{value: float64(i + 1), look: look{form: number}}, {value: s}}})
	}
	return page{name: "Start here", widths: []float64{5, 115}, rows: numbered(rows), last: len(rows)}
}

// examplePage shows a few rows as they may look.
func examplePage() page {
	rows := []row{{cells: []cell{{value: "How rows may look. This sheet is no table of the record and is not read.", look: look{bold: true}, across: 8}}}}
	for _, t := range [][][]string{
		{{"Areas", "Area", "Size (ft2)", "Base", "Covering", "Climate", "Lay on", ""}, {"", "A1", "480", "slab", "OAK-5", "home", "2026-03-12", ""}},
		{{"Slab RH", "Area", "Hole", "Depth (in)", "Sealed at", "Read at", "RH (%)", "Instrument"}, {"", "A1", "H1", "2", "2026-03-03 08:00", "2026-03-06 09:10", "72.5", "RP1"}},
		{{"Wood", "Area", "Of", "Piece", "Read at", "Method", "Reading (%)", "Instrument"}, {"", "A1", "flooring", "B1", "2026-03-10 10:05", "pin", "7.4", "PM1"}},
	} {
		rows = append(rows, row{}, header(t[0]...))
		var line row
		for _, s := range t[1] {
			line.cells = append(line.cells, text(s))
		}
		rows = append(rows, line)
	}
	return page{name: "Example", widths: []float64{12, 10, 14, 14, 20, 20, 14, 14}, rows: numbered(rows), last: len(rows)}
}

func blankPage(l report.Layout) page {
	head := header(l.Empty().Header...)
	p := page{name: l.Table, last: mostEntries, head: 1, frozen: true, grid: true}
	for i, c := range l.Columns {
		head.cells[i].look.grey = !c.Required
		p.widths = append(p.widths, max(headWidth(c.Header), blankWidth(c)))
		p.columns = append(p.columns, columnLook(c))
		p.entries = append(p.entries, entriesOf(i, c)...)
	}
	p.rows = numbered([]row{head})
	return p
}

// blankWidth is wide enough for what is typed into a column on a tablet.
func blankWidth(c report.LayoutColumn) float64 {
	switch c.Kind {
	case report.MinuteColumn:
		return 19
	case report.WordsColumn:
		return 24
	case report.DayColumn, report.ChoiceColumn:
		return 15
	}
	return 12
}

// columnLook is how an empty column takes what is typed: names stay texts, days
// and times stay days and times.
func columnLook(c report.LayoutColumn) look {
	switch c.Kind {
	case report.WordsColumn, report.IdentifierColumn, report.ChoiceColumn:
		return look{form: literal}
	case report.DayColumn:
		return look{form: day}
	case report.MinuteColumn:
		return look{form: minute}
	}
	return look{}
}

// entriesOf are the note on a column's header and the check of what is typed
// below it.
func entriesOf(i int, c report.LayoutColumn) []*excelize.DataValidation {
	name, err := excelize.ColumnNumberToName(i + 1)
	if err != nil {
		return nil
	}
	note := excelize.NewDataValidation(true)
	note.SetSqref(name + "1")
	note.SetInput(c.Header, orElse(c.Note, "What this column says."))
	below := excelize.NewDataValidation(true)
	below.SetSqref(fmt.Sprintf("%s2:%s%d", name, name, mostEntries))
	if !checkTyped(below, c) {
		return []*excelize.DataValidation{note}
	}
	return []*excelize.DataValidation{note, below}
}

// checkTyped sets what may be typed; false where anything may.
func checkTyped(v *excelize.DataValidation, c report.LayoutColumn) bool {
	stop := func(style excelize.DataValidationErrorStyle, message string) {
		v.SetError(style, c.Header, message)
	}
	switch c.Kind {
	case report.ChoiceColumn:
		return offered(v, c, stop)
	case report.NumberColumn:
		least, most := orElse(c.Least, "-1000000000"), orElse(c.Most, "1000000000")
		stop(excelize.DataValidationErrorStyleStop, "Write a number"+bounds(c)+", or leave the cell blank.")
		return v.SetRange(least, most, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween) == nil
	case report.DayColumn, report.MinuteColumn:
		what := "Write a day, such as 2026-03-04."
		if c.Kind == report.MinuteColumn {
			what = "Write day and time, such as 2026-03-04 08:30."
		}
		stop(excelize.DataValidationErrorStyleStop, what)
		const from, to = 32874, 109575 // 1990 to 2199
		return v.SetRange(from, to, excelize.DataValidationTypeDate, excelize.DataValidationOperatorBetween) == nil
	}
	return false
}

func bounds(c report.LayoutColumn) string {
	switch {
	case c.Least == "0.001" && c.Most == "":
		return " above 0"
	case c.Least != "" && c.Most != "":
		return " from " + c.Least + " to " + c.Most
	case c.Least != "":
		return " from " + c.Least + " up"
	}
	return ""
}

// offered lists fixed words, or what the first column of another table lists.
func offered(v *excelize.DataValidation, c report.LayoutColumn, stop func(excelize.DataValidationErrorStyle, string)) bool {
	if c.Table != "" {
		v.SetSqrefDropList(fmt.Sprintf("%s!$A$2:$A$%d", quoted(c.Table), mostEntries))
		stop(excelize.DataValidationErrorStyleWarning, "It is not listed on sheet "+c.Table+" yet. List it there too.")
		return true
	}
	stop(excelize.DataValidationErrorStyleStop, "Write "+strings.Join(c.Among, ", ")+", or leave the cell blank.")
	return v.SetDropList(c.Among) == nil
}
