package workbook

import (
	"fmt"
	"strings"

	"firstboard/report"
)

// adviceRows are what stands below the checks of an area and never decides:
// what the meters say together, what is worth a second look, who signed, and
// what a moisture report should hold.
func adviceRows(d report.Decision) []row {
	rows := paragraphs("Meter readings as read and as corrected", corrected(d.Corrections))
	rows = append(rows, paragraphs("What the meters say together (advice)", d.Advice)...)
	rows = append(rows, paragraphs("Worth a second look (advice; there may be a good reason)", d.Looks)...)
	rows = append(rows, paragraphs("Signatures (they never change a verdict)", signed(d.Signatures))...)
	return append(rows, itemRows(d.Items)...)
}

// paragraphs are lines under a heading, nothing where there are none.
func paragraphs(heading string, lines []string) []row {
	if len(lines) == 0 {
		return nil
	}
	across := len(areaWidths())
	rows := []row{{}, {cells: []cell{{value: heading, look: look{bold: true}, across: across}}}}
	for _, line := range lines {
		rows = append(rows, row{cells: []cell{{value: line, across: across}}})
	}
	return rows
}

func corrected(all []report.Correction) []string {
	var lines []string
	for _, c := range all {
		lines = append(lines, fmt.Sprintf("%s: %s %% MC (%s; %s, %s), %s", c.Piece, c.Corrected, c.How, c.Cite.Source, c.Cite.Standing, c.Place))
	}
	return lines
}

func signed(all []report.Signature) []string {
	var lines []string
	for _, s := range all {
		line := fmt.Sprintf("%s, %s, %s: %s", s.At.Written, s.Name, s.Role, s.Decision)
		if len(s.Waives) > 0 {
			line += " " + strings.Join(s.Waives, ", ")
		}
		lines = append(lines, strings.Join(append([]string{line}, s.Doubts...), "; "))
	}
	return lines
}

// itemRows is the evidence list as a table.
func itemRows(items []report.Item) []row {
	rows := []row{
		{},
		{cells: []cell{{value: "What a moisture report should hold (advice)", look: look{bold: true}, across: len(areaWidths())}}},
		wide(heading, "Held", "What", "Who asks for it", "Standing", "What it lacks"),
	}
	for _, i := range items {
		held := "yes"
		if !i.Held {
			held = "lacking"
		}
		rows = append(rows, wide(plain, held, i.What, i.Asked, string(i.Standing), i.Lacks))
	}
	return rows
}

// wide lays five texts over the columns of the findings.
func wide(t tone, held, what, asked, standing, lacks string) row {
	l := look{boxed: true, tone: t}
	return row{cells: []cell{
		{value: held, look: l},
		{value: what, look: l, across: 3},
		{value: asked, look: l, across: 3},
		{value: lacks, look: l},
		{value: standing, look: l, across: 2},
	}}
}
