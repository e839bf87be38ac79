package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/style"
)

// worked are the cells of a finding that follow the record: its outcome, value
// and limit.
type worked struct {
	outcome, value, limit cell
	follows               bool // they are formulas
}

// worked gives a finding its formulas, where its figures give its outcome and
// each has a form; else it keeps the values that were judged.
func (d *desk) worked(f evidence.Finding, sheet string, row int) worked {
	w := worked{outcome: text(f.Outcome.String()), value: figure(f.Value), limit: figure(f.Limit)}
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
		return worked{outcome: text(f.Outcome.String()), value: figure(f.Value), limit: figure(f.Limit)}
	}
	good := evidence.Met
	if f.Worked.Unusable > 0 {
		good = evidence.NotShown
	}
	w.outcome.formula = fmt.Sprintf("IF(ROUND(%s,9)<0,%q,%q)", strings.ReplaceAll(room, formula.Quoted(sheet)+"!", ""),
		evidence.NotMet, good)
	w.follows = true
	return w
}

// printed puts a working into a cell that shows a figure, and gives it as a
// formula. What the cell would show must be what was found.
func printed(p *formula.Printer, w evidence.Working, to *cell, shown string) (text string, ok bool) {
	if !w.Shown() {
		return "", false
	}
	x := w.Value.Round(places9).Float()
	want, places, plain := plainNumber(shown)
	if plain && math.Abs(x-want) > 0.5000001*math.Pow10(-places) {
		return "", false
	}
	if text, ok = p.Print(w); !ok {
		return "", false
	}
	if !plain {
		places = decimals(x)
	}
	*to = cell{value: x, formula: "ROUND(" + text + ",9)", look: style.Look{Boxed: true, Form: style.Number, Places: places}}
	return text, true
}

// places9 is how exactly figures are compared.
const places9 = 9

// end puts the ends of a finding's limit into its cell; single says that there
// is one, and gives it as a formula.
func (d *desk) end(p *formula.Printer, f evidence.Finding, to *cell) (text string, single bool) {
	least, most := f.Worked.Least, f.Worked.Most
	words, atLeast := strings.CutPrefix(f.Limit, "at least ")
	switch {
	case least.Shown() && most.Shown():
		from, ok := p.Print(least)
		until, known := p.Print(most)
		if ok && known {
			to.value = inWords(least) + " to " + inWords(most)
			to.formula = "ROUND(" + from + `,9)&" to "&ROUND(` + until + ",9)"
			to.look.Form = style.General
		}
		return "", false
	case most.Shown():
		return printed(p, most, to, words)
	}
	text, ok := printed(p, least, to, words)
	if ok && atLeast {
		to.value, to.formula = "at least "+inWords(least), `"at least "&`+to.formula
		to.look = style.Look{Boxed: true}
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

func (d *desk) findingHeader() row {
	follows := "fx"
	if d.filed {
		follows = ""
	}
	return header("Check", "Outcome", "Weight", "Value", "Limit", "Unit", "Reason", "Evidence", "Source (standing)",
		follows)
}

func (d *desk) findingsNote() string {
	if d.filed {
		return "Findings"
	}
	return "Findings. Outcome, value and limit follow the record's cells where fx says yes; elsewhere they are the values that were judged."
}

// findingRow is a finding in full, in a row of its area's sheet.
func (d *desk) findingRow(f evidence.Finding, sheet string, number int) row {
	w := d.worked(f, sheet, number)
	id, follows := text(f.ID), "no"
	switch {
	case d.filed:
		follows = ""
	case w.follows:
		follows = "yes"
	}
	id.look.Bold, w.outcome.look.Bold = true, true
	if f.Blocks() {
		w.outcome.look.Tone = style.Orange
	}
	return row{cells: []cell{
		id, w.outcome, text(counts(f.Deciding)), w.value, w.limit, text(string(f.Unit)), text(f.Reason),
		sources(f.Evidence, d.titles, areaWidths()[evidenceColumn-1]), text(cited(f.Cite)), text(follows),
	}}
}

func cited(c evidence.Cite) string {
	if c.Source == "" {
		return string(c.Standing)
	}
	return c.Source + " (" + string(c.Standing) + ")"
}

// unneededRows are findings folded to what would make them needed, a line for
// all that wait for the same.
func unneededRows(all []evidence.Finding) []row {
	var reasons []string
	named := map[string][]string{}
	for _, f := range all {
		if named[f.Reason] == nil {
			reasons = append(reasons, f.Reason)
		}
		named[f.Reason] = append(named[f.Reason], f.ID)
	}
	folded := style.Look{Boxed: true, Gray: true}
	var rows []row
	for _, reason := range reasons {
		rows = append(rows, row{cells: []cell{{
			value: strings.Join(named[reason], ", ") + ": " + reason, look: folded, across: followsColumn,
		}}})
	}
	return rows
}

// group are findings under one heading.
type group struct {
	heading  string
	findings []evidence.Finding
}

// findingGroups are findings by what they mean to a reader, the order of the catalog
// within each.
func findingGroups(all []evidence.Finding) []group {
	g := []group{{heading: "Over a limit or not proven"}, {heading: "Met"}, {heading: "Not needed"}}
	for _, f := range all {
		n := 0
		switch f.Outcome {
		case evidence.Met:
			n = 1
		case evidence.NotNeeded:
			n = 2
		}
		g[n].findings = append(g[n].findings, f)
	}
	return g
}

// findingRows are all findings of an area below so many rows of its sheet.
func (d *desk) findingRows(all []evidence.Finding, sheet string, above int) []row {
	rows := []row{{cells: []cell{{value: d.findingsNote(), across: followsColumn}}}, d.findingHeader()}
	for _, g := range findingGroups(all) {
		if len(g.findings) == 0 {
			continue
		}
		rows = append(rows, row{cells: []cell{{value: g.heading, look: style.Look{Bold: true}, across: followsColumn}}})
		if g.findings[0].Outcome == evidence.NotNeeded {
			rows = append(rows, unneededRows(g.findings)...)
			continue
		}
		for _, f := range g.findings {
			rows = append(rows, d.findingRow(f, sheet, above+len(rows)+1))
		}
	}
	return rows
}
