package workbook

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

func areaWidths() []float64 {
	return []float64{16, 25, 10, 9, 10, 10, 9, 42, placeWidth, 21, 10}
}

// placeWidth is that of a column of places.
const placeWidth = 23

// areaPage is one area: what was decided, and every check behind it.
func areaPage(b Book, d report.Decision, t titles, name string, pictures pictured) page {
	rows := areaHead(b, d)
	rows = append(rows, header("Check", "Asks", "Outcome", "Counts as", "Value", "Limit", "Unit",
		"Reason", "Evidence", "Source", "Standing"))
	head := len(rows)
	for _, f := range d.Findings {
		rows = append(rows, findingRow(f, t))
	}
	v := verdict{d, head + 1, len(rows)}
	rows[verdictRow-1].cells[0].formula = v.formula()
	rows[standingRow-1].cells[0].formula, rows[standingRow-1].cells[0].value = v.standing()
	drawn, charts := pictures(len(rows), areaWidths())
	rows = append(append(rows, drawn...), adviceRows(d)...)
	return page{name: name, widths: areaWidths(), rows: numbered(rows), last: len(rows), head: head, tints: v.tints(), charts: charts}
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

func findingRow(f evidence.Finding, t titles) row {
	id, outcome := text(f.ID), text(f.Outcome.String())
	id.look.bold, outcome.look.bold = true, true
	cells := []cell{
		id, text(f.Asks), outcome, text(counts(f.Deciding)), figure(f.Value), figure(f.Limit), text(string(f.Unit)),
		text(f.Reason), sources(f.Evidence, t, placeWidth), text(f.Cite.Source), text(string(f.Cite.Standing)),
	}
	if f.Blocks() {
		cells[2].look.tone = orange
	}
	if f.Outcome == evidence.NotNeeded {
		for i := range cells {
			cells[i].look.gray, cells[i].look.bold = true, false
		}
	}
	return row{cells: cells}
}
