package workbook

import (
	"cmp"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/said"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// areaWidths are the columns of the findings: as wide as a page is at tableScale.
func areaWidths() []float64 { return []float64{14.3, 10, 7.2, 7.5, 10.5, 6.8, 43.7, 16.5, 31.5, 4.5} }

// placeWidth is that of a column of places.
const placeWidth = 20

// areaPage is one area: what was decided, and every check behind it.
func (d *desk) areaPage(nth int) writer.Page {
	decision, name := d.book.Decisions[nth], d.titles.Areas[nth]
	rows := areaHead(d.book, decision)
	drawn, charts := d.pictures(nth, len(rows), areaWidths())
	rows = append(rows, drawn...)
	first := len(rows) + 3
	rows = append(rows, d.findingRows(decision.Findings, name, len(rows))...)
	last := len(rows)
	rows[verdictRow-1].Cells[0].Formula = d.verdict(decision, first, last)
	told := &rows[standingRow-1].Cells[0]
	told.Formula = formula.Quoted(d.titles.Decision) + "!" + formula.Fixed(1, toldRow)
	_, told.Value = d.told()
	for _, e := range said.Advised(decision, d.book.advice(nth)) { // named at its left, so that no page ends with a heading
		rows = append(rows, entryRows(e, 2)...)
	}
	return writer.Page{
		Name: name, Widths: areaWidths(), Rows: writer.Numbered(rows), Last: len(rows), Head: first - 1,
		Tints: areaTints(first, last), Charts: charts, Tight: true, Printed: len(areaWidths()),
	}
}

// Rows of an area's sheet that others refer to.
const (
	verdictRow  = 2
	standingRow = 3
)

func areaHead(b Book, d report.Decision) []writer.Row {
	across := len(areaWidths())
	rows := []writer.Row{
		{Cells: []writer.Cell{{
			Value: strings.TrimSpace("Area " + d.Area.ID + "  " + d.Area.Name),
			Look:  style.Look{Size: style.Large, Bold: true}, Across: across,
		}}},
		writer.Line(d.Says(), style.Look{Tone: verdictTone(d), Size: style.Large}, verdictAcross),
		{Cells: []writer.Cell{{Look: style.Look{Gray: true}, Across: across}}},
	}
	short := []entry{
		{"Size", cmp.Or(d.Area.Size.String(), "not recorded")},
		{"Install on", cmp.Or(d.Area.InstallOn.Written, "not recorded")},
		{"Good until", goodUntil(d)},
		{"Substrate", cmp.Or(d.Area.Substrate, "not recorded")},
	}
	for i, long := range append(described(b.Job, d.Area), entry{"Target EMC", said.Target(d.Target)}) {
		rows = append(rows, sideBySide(short[i], long))
	}
	rows = append(rows, entryRows(said.Labelled{
		Label: "Tested", Lines: []string{strings.ReplaceAll(said.Tested(d), ";\n", "; ")},
	}, 1)...)
	for _, e := range []said.Labelled{
		{Label: "Discarded", Lines: d.Discarded},
		{Label: "Conditions", Lines: d.Conditions},
		{Label: "Settings changed", Lines: said.Changes(b.Job.Settings)},
		{Label: "Waivers", Lines: said.Waivers(d)},
	} {
		rows = append(rows, entryRows(e, 1)...)
	}
	return rows
}

// verdictAcross is how many columns the verdict takes.
const verdictAcross = 5

type entry struct{ label, says string }

// sideBySide is a short entry and a long one in a row.
func sideBySide(short, long entry) writer.Row {
	const left = 5
	return writer.Row{Cells: []writer.Cell{
		{Value: short.label, Look: style.Look{Gray: true}},
		{Value: short.says, Across: left},
		{Value: long.label + ": " + long.says, Across: len(areaWidths()) - left - 1},
	}}
}

// entryRows is a label over so many columns and its lines, each a row of its own.
func entryRows(e said.Labelled, over int) []writer.Row {
	var rows []writer.Row
	for i, s := range e.Lines {
		if i > 0 {
			e.Label = ""
		}
		rows = append(rows, writer.Row{Cells: []writer.Cell{
			{Value: e.Label, Look: style.Look{Gray: true}, Across: over}, {Value: s, Across: len(areaWidths()) - over},
		}})
	}
	return rows
}

// described is the flooring system with what the record says of each product.
func described(j report.Job, a report.Area) []entry {
	var all []entry
	for _, e := range []entry{{"Flooring", a.Flooring}, {"Adhesive", a.Adhesive}, {"Membrane", a.Membrane}} {
		at := slices.IndexFunc(j.Products, func(p limits.Product) bool { return evidence.Same(p.ID, e.says) })
		if e.says != "" && at >= 0 {
			for _, s := range []string{j.Products[at].Description, j.Products[at].DataSheet} {
				if s != "" {
					e.says += "; " + s
				}
			}
		}
		e.says = cmp.Or(e.says, "none named")
		all = append(all, e)
	}
	return all
}

// goodUntil is the day up to which a verdict holds, and what to do then.
func goodUntil(d report.Decision) string {
	until := said.GoodUntil(d)
	if len(d.ReRead) > 0 {
		until += "; then read again: " + strings.Join(d.ReRead, ", ")
	}
	return cmp.Or(strings.TrimPrefix(until, "; "), "not yet GO")
}
