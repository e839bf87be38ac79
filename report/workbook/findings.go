package workbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// worked are the cells of a finding that follow the record: its outcome, value
// and limit.
type worked struct {
	outcome, value, limit writer.Cell
	follows               bool // they are formulas
}

// worked gives a finding its formulas, where its figures give its outcome and
// each has a form; else it keeps the values that were judged.
func (d *desk) worked(f evidence.Finding, sheet string, row int) worked {
	judged := worked{
		outcome: writer.Text(f.Outcome.String()), value: writer.Figure(f.Value), limit: writer.Figure(f.Limit),
	}
	w := judged
	p := &formula.Printer{Find: d.find, Figures: d.figures, Near: map[string]formula.Cell{}}
	if f.Outcome == evidence.NotNeeded || f.Worked.Outcome() != f.Outcome || !formula.Rests(f.Worked.Value) {
		return w
	}
	value, ok := printed(p, f.Worked.Value, &w.value, f.Value)
	if !ok {
		return w
	}
	p.Near[value] = formula.Cell{Sheet: sheet, Column: figureColumn, Row: row, Number: true}
	if end, single := d.end(p, f, &w.limit); single {
		p.Near[end] = formula.Cell{Sheet: sheet, Column: limitColumn, Row: row, Number: true}
	}
	room, ok := p.Print(f.Worked.Room)
	if !ok {
		return judged
	}
	good := lists.If(f.Worked.Unusable > 0, evidence.NotShown, evidence.Met)
	w.outcome.Formula = fmt.Sprintf("IF(ROUND(%s,9)<0,%q,%q)", strings.ReplaceAll(room, formula.Quoted(sheet)+"!", ""),
		evidence.NotMet, good)
	w.follows = true
	return w
}

// printed puts a working into a cell that shows a figure, and gives it as a
// formula. What the cell would show must be what was found.
func printed(p *formula.Printer, w evidence.Working, to *writer.Cell, shown string) (text string, ok bool) {
	if !w.Shown() {
		return "", false
	}
	x := w.Value.Round(places9).Float()
	want, places, plain := writer.PlainNumber(shown)
	if plain && math.Abs(x-want) > 0.5000001*math.Pow10(-places) {
		return "", false
	}
	if text, ok = p.Print(w); !ok {
		return "", false
	}
	if !plain {
		places = writer.Decimals(x)
	}
	*to = writer.Cell{
		Value: x, Formula: "ROUND(" + text + ",9)",
		Look: style.Look{Boxed: true, Form: style.Number, Places: places},
	}
	return text, true
}

// places9 is how exactly figures are compared.
const places9 = 9

// end puts the ends of a finding's limit into its cell; single says that there
// is one, and gives it as a formula.
func (d *desk) end(p *formula.Printer, f evidence.Finding, to *writer.Cell) (text string, single bool) {
	least, most := f.Worked.Least, f.Worked.Most
	words, atLeast := strings.CutPrefix(f.Limit, "at least ")
	switch {
	case least.Shown() && most.Shown():
		from, ok := p.Print(least)
		until, known := p.Print(most)
		if ok && known {
			to.Value = inWords(least) + " to " + inWords(most)
			to.Formula = "ROUND(" + from + `,9)&" to "&ROUND(` + until + ",9)"
			to.Look.Form = style.General
		}
		return "", false
	case most.Shown():
		return printed(p, most, to, words)
	}
	text, ok := printed(p, least, to, words)
	if ok && atLeast {
		to.Value, to.Formula = "at least "+inWords(least), `"at least "&`+to.Formula
		to.Look = style.Look{Boxed: true}
		return "", false
	}
	return text, ok
}

// inWords is a figure as a spreadsheet joins it to a text.
func inWords(w evidence.Working) string {
	return strconv.FormatFloat(w.Value.Round(places9).Float(), 'f', -1, 64)
}

// Columns of the findings on an area's sheet.
const (
	checkColumn = 1 + iota
	outcomeColumn
	countsColumn
	figureColumn
	limitColumn
	unitColumn
	reasonColumn
	evidenceColumn
	sourceColumn
	followsColumn
)

// findingRow is a finding in full, in a row of its area's sheet.
func (d *desk) findingRow(f evidence.Finding, sheet string, number int) writer.Row {
	w := d.worked(f, sheet, number)
	follows := lists.If(d.filed, "", lists.If(w.follows, "yes", "no"))
	w.outcome.Look.Bold = true
	if f.Blocks() {
		w.outcome.Look.Tone = style.Orange
	}
	return writer.Row{Cells: []writer.Cell{
		bold(f.ID), w.outcome, writer.Text(counts(f.Deciding)), w.value, w.limit, writer.Text(string(f.Unit)),
		writer.Text(f.Reason),
		sources(f.Evidence, d.titles, areaWidths()[evidenceColumn-1]), writer.Text(cited(f.Cite)),
		writer.Text(follows),
	}}
}

func cited(c evidence.Cite) string {
	return lists.If(c.Source == "", string(c.Standing), c.Source+" ("+string(c.Standing)+")")
}

// unneededRows are findings folded to what would make them needed, a line for
// all that wait for the same.
func unneededRows(all []evidence.Finding) []writer.Row {
	waiting := lists.Groups(all, func(f evidence.Finding) string { return f.Reason })
	return lists.Each(waiting, func(alike []evidence.Finding) writer.Row {
		ids := lists.Each(alike, func(f evidence.Finding) string { return f.ID })
		folded := style.Look{Boxed: true, Gray: true}
		return writer.Line(strings.Join(ids, ", ")+": "+alike[0].Reason, folded, followsColumn)
	})
}

// findingRows are all findings of an area below so many rows of its sheet, by
// what they mean to a reader, the order of the catalog within each group.
func (d *desk) findingRows(all []evidence.Finding, sheet string, above int) []writer.Row {
	note := "Findings" + lists.If(d.filed, "",
		". Outcome, value and limit follow the record's cells where fx says yes; elsewhere they are the values that were judged.")
	rows := []writer.Row{
		writer.Line(note, style.Look{}, followsColumn),
		writer.Header("Check", "Outcome", "Weight", "Value", "Limit", "Unit", "Reason", "Evidence",
			"Source (standing)", lists.If(d.filed, "", "fx")),
	}
	for _, group := range []struct {
		heading  string
		outcomes []evidence.Outcome
	}{
		{"Over a limit or not proven", []evidence.Outcome{evidence.NotMet, evidence.NotShown}},
		{"Met", []evidence.Outcome{evidence.Met}},
		{"Not needed", []evidence.Outcome{evidence.NotNeeded}},
	} {
		findings := lists.Where(all, func(f evidence.Finding) bool { return slices.Contains(group.outcomes, f.Outcome) })
		if len(findings) == 0 {
			continue
		}
		rows = append(rows, writer.Line(group.heading, style.Look{Bold: true}, followsColumn))
		if findings[0].Outcome == evidence.NotNeeded {
			rows = append(rows, unneededRows(findings)...)
			continue
		}
		for _, f := range findings {
			rows = append(rows, d.findingRow(f, sheet, above+len(rows)+1))
		}
	}
	return rows
}
