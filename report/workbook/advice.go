package workbook

import (
	"fmt"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// adviceRows are what stands below the checks of an area and never decides:
// what the meters say together, what is worth a second look, who signed, and
// what a moisture report should hold.
func adviceRows(d report.Decision, advice report.Advice) []row {
	rows := missingRows(advice.Missing)
	rows = append(rows, itemRows(d.Items)...)
	rows = append(rows, paragraphs("Rows that were read and not judged", unused(d.Unused))...)
	rows = append(rows, paragraphs("Meter readings as read and as corrected", corrected(d.Corrections))...)
	rows = append(rows, paragraphs("What the meters say together (advice)", d.Advice)...)
	rows = append(rows, paragraphs("Worth a second look (advice; there may be a good reason)", d.Looks)...)
	rows = append(rows, paragraphs("Signatures (they never change a verdict)", signed(d.Signatures))...)
	rows = append(rows, paragraphs("When, and what it turns on (advice)", expected(advice))...)
	return append(rows, paragraphs("What the air must do, and what would happen if it were installed now (advice)", advice.Outlook.IfInstalled())...)
}

// unused are the rows that no check judged, by table and reason.
func unused(all []evidence.Unused) []string {
	var lines []string
	for _, u := range all {
		lines = append(lines, fmt.Sprintf("%s: %s, %s", u.Table, evidence.Count(u.Rows, "row", "rows"), u.Why))
	}
	return lines
}

// expected is when slab and boards will be ready, what next, and whether the
// verdict holds.
func expected(a report.Advice) []string {
	all := a.Outlook.When()
	for _, act := range a.Next.Acts {
		all = append(all, "next: "+act.Says())
	}
	if len(a.Next.Acts) > 0 {
		all = append(all, a.Next.SaysWhen())
	}
	return append(all, "does it hold? "+a.Outlook.Holds.Says())
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

// itemRows is the evidence list: what is held in a line, then what is lacking.
func itemRows(items []report.Item) []row {
	if len(items) == 0 {
		return nil
	}
	across := len(areaWidths())
	var held []string
	var lacking []row
	for _, i := range items {
		asked := i.Asked + " (" + string(i.Standing) + ")"
		if i.Held {
			held = append(held, i.What+", "+asked)
		} else {
			lacking = append(lacking, itemRow(plain, "lacking", i.What, asked, i.Lacks))
		}
	}
	rows := []row{{}, {cells: []cell{{value: "What a moisture report should hold (advice)", look: look{bold: true}, across: across}}}}
	if len(held) > 0 {
		rows = append(rows, row{cells: []cell{{value: "held: " + strings.Join(held, "; "), across: across}}})
	}
	if len(lacking) > 0 {
		rows = append(append(rows, itemRow(heading, "", "What", "Who asks for it", "What it lacks")), lacking...)
	}
	return rows
}

// itemRow lays four texts over the columns of the findings.
func itemRow(t tone, held, what, asked, lacks string) row {
	l := look{boxed: true, tone: t}
	return row{cells: []cell{
		{value: held, look: l},
		{value: what, look: l, across: 5},
		{value: asked, look: l},
		{value: lacks, look: l, across: 3},
	}}
}

// missingRows are what an area still waits for, and the checks that do.
func missingRows(all []report.Missing) []row {
	var lines []string
	for _, m := range all {
		lines = append(lines, m.What+" ("+strings.Join(m.Checks, ", ")+")")
	}
	return paragraphs("What is missing", lines)
}
