package workbook

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// areaWidths are the columns of the findings, which print at 8 points.
func areaWidths() []float64 { return []float64{16, 10, 9, 9, 10, 9, 38, 23, 19, 8} }

// placeWidth is that of a column of places.
const placeWidth = 23

// areaPage is one area: what was decided, and every check behind it.
func (d *desk) areaPage(decision report.Decision, name string, pictures pictured) page {
	rows := areaHead(d.book, decision)
	drawn, charts := pictures(len(rows), areaWidths())
	rows = append(rows, drawn...)
	first := len(rows) + 3
	rows = append(rows, d.findingRows(decision.Findings, name, len(rows))...)
	last := len(rows)
	rows[verdictRow-1].cells[0].formula = d.verdict(decision, first, last)
	told := &rows[standingRow-1].cells[0]
	told.formula, told.value = formula.Quoted(d.titles.decision)+"!"+formula.Fixed(1, toldRow), unchanged
	rows = append(rows, adviceRows(decision)...)
	return page{
		name: name, widths: areaWidths(), rows: numbered(rows), last: len(rows), head: first - 1,
		tints: areaTints(first, last), charts: charts,
	}
}

// Rows of an area's sheet that others refer to.
const (
	verdictRow  = 2
	standingRow = 3
)

func areaHead(b Book, d report.Decision) []row {
	across := len(areaWidths())
	rows := []row{
		{cells: []cell{{
			value: strings.TrimSpace("Area " + d.Area.ID + "  " + d.Area.Name),
			look:  look{size: large, bold: true}, across: across,
		}}},
		{cells: []cell{{value: d.Says(), look: look{tone: verdictTone(d), size: large}, across: 4}}},
		{cells: []cell{{look: look{gray: true}, across: across}}},
		{},
	}
	for _, e := range areaEntries(b, d) {
		rows = append(rows, entryRows(e.label, e.lines, across)...)
	}
	return append(rows, row{})
}

type entry struct {
	label string
	lines []string
}

func areaEntries(b Book, d report.Decision) []entry {
	return []entry{
		{"In the way", []string{orElse(strings.Join(d.Blocking(), ", "), "nothing")}},
		{"Size", []string{orElse(d.Area.Size.String(), "not recorded")}},
		{"Stack", described(b.Job, d.Area)},
		{"Install on", []string{orElse(d.Area.InstallOn.Written, "not recorded")}},
		{"Good until", []string{goodUntil(d)}},
		{"Target EMC", []string{target(d.Target)}},
		{"Tested", []string{strings.ReplaceAll(tested(d), "\n", "; ")}},
		{"Discarded", listed(d.Discarded)},
		{"Conditions", listed(d.Conditions)},
		{"Settings changed", listed(changes(b.Job.Settings))},
		{"Waivers", listed(waivers(d))},
	}
}

// entryRows is a label and its lines, each a row of its own.
func entryRows(label string, lines []string, across int) []row {
	var rows []row
	for i, s := range lines {
		if i > 0 {
			label = ""
		}
		rows = append(rows, row{cells: []cell{
			{value: label, look: look{gray: true}}, {value: s, across: across - 1},
		}})
	}
	return rows
}

// described is the stack with what the record says of each product.
func described(j report.Job, a report.Area) []string {
	lines := stack(a)
	for i, id := range []string{a.Flooring, a.Adhesive, a.Membrane} {
		at := slices.IndexFunc(j.Products, func(p report.Product) bool { return id != "" && evidence.Same(p.ID, id) })
		if at < 0 {
			continue
		}
		p := j.Products[at]
		for _, s := range []string{p.Description, p.DataSheet} {
			if s != "" {
				lines[i] += "; " + s
			}
		}
	}
	return lines
}

func target(t *report.Target) string {
	if t == nil {
		return "none: the flooring is not wood, or its climate does not say enough"
	}
	return fmt.Sprintf("target %s %% MC, midway between lowest %s and highest %s %% MC", t.Mid, t.Low, t.High)
}
