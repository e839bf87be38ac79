package workbook

import (
	"fmt"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/limits"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/style"
)

// listPage is a plain list under one header.
func listPage(name string, widths []float64, head row, rows []row) page {
	rows = append([]row{head}, rows...)
	return page{name: name, widths: widths, rows: numbered(rows), last: len(rows), head: 1, frozen: true, tight: true}
}

// limitsPage lists every limit that was held against an area, in gray what
// is none, folded where nobody typed it.
func limitsPage(b Book, t names.Titles) page {
	var rows []row
	for _, d := range b.Decisions {
		var none, open []string
		for _, l := range b.Limits {
			switch {
			case !evidence.Same(l.Area, d.Area.ID):
			case l.Limit != "" || l.Place != nil:
				rows = append(rows, limitRow(l, t))
			case l.Whose == "":
				none = append(none, l.What)
			default:
				open = append(open, l.What+" ("+l.Whose+")")
			}
		}
		rows = append(rows, foldedLimits(d.Area.ID, "not looked up: ", open)...)
		rows = append(rows, foldedLimits(d.Area.ID, "no limit needed or stated: ", none)...)
	}
	var means []string
	for _, s := range standings() {
		means = append(means, string(s.standing)+": "+s.means)
	}
	rows = append(rows, row{cells: []cell{{
		value: "Standing of a source. " + strings.Join(means, "; ") + ".",
		look:  style.Look{Gray: true}, across: limitColumns,
	}}})
	return listPage(t.Limits, []float64{5, 27, 6, 6.5, 11, 57, 17, 21.5},
		header("Area", "What", "Limit", "Unit", "Whose", "Source (standing)", "Where it was typed", "Note"), rows)
}

// foldedLimits are limits that nobody typed, in one line.
func foldedLimits(area, says string, all []string) []row {
	if len(all) == 0 {
		return nil
	}
	l := style.Look{Boxed: true, Gray: true}
	return []row{{cells: []cell{
		{value: area, look: l},
		{value: says + evidence.List(all), look: l, across: limitColumns - 1},
	}}}
}

const limitColumns = 8

func limitRow(l limits.Line, t names.Titles) row {
	cells := []cell{
		text(l.Area), text(l.What), figure(l.Limit), text(string(l.Unit)), text(l.Whose),
		text(cited(l.Cite)), text(""), text(l.Note),
	}
	if l.Place != nil {
		const where = 6
		cells[where] = leadingTo(text(t.Place(l.Place)), l.Place, t, placeWidth)
	}
	for i := range cells {
		cells[i].look.Gray = l.Limit == ""
	}
	return row{cells: cells}
}

// checksPage is the catalog: what every area is asked, what the standings mean,
// and what the sheets hold. It is for reading, not for filing.
func (d *desk) checksPage() page {
	rows := []row{
		{cells: []cell{{value: d.contents(), across: len(checksWidths())}}},
		{},
		header("Standing", "What it means"),
	}
	for _, s := range standings() {
		name := text(string(s.standing))
		name.look.Bold = true
		rows = append(rows, row{cells: []cell{
			name,
			{value: s.means, look: style.Look{Boxed: true}, across: len(checksWidths()) - 1},
		}})
	}
	rows = append(rows, row{}, header("Check", "Asks", "Default", "Source", "Standing", "Weight"))
	for _, r := range d.book.Catalog {
		id := text(r.ID)
		id.look.Bold = true
		rows = append(rows, row{cells: []cell{
			id, text(r.Asks), text(r.Default), text(r.Cite.Source), text(string(r.Cite.Standing)),
			text(counts(r.Deciding)),
		}})
	}
	return page{name: d.titles.Checks, widths: checksWidths(), rows: numbered(rows), last: len(rows), unprinted: true}
}

func checksWidths() []float64 { return []float64{18, 64, 34, 40, 13, 11} }

// contents are the sheets that a reader sees, in their order.
func (d *desk) contents() string {
	t := d.titles
	return fmt.Sprintf("%s: the verdict on every area. %s: each area's pictures and findings. %s: whose limits hold. %s: what to heed. %s: who signs. "+
		"The tables of the record, unchanged: this workbook is a record too. A cell that was changed since turns orange, and no edit leaves a GO.",
		t.Decision, evidence.List(t.Areas), t.Limits, t.Cautions, t.SignOff)
}

type standingMeans struct {
	standing evidence.Standing
	means    string
}

func standings() []standingMeans {
	return []standingMeans{
		{evidence.Published, "read in the source named, or in a text that quotes it"},
		{evidence.Recalled, "a published rule, quoted from memory: look it up before you lean on it"},
		{evidence.Practice, "common practice of the trade, without a source"},
		{evidence.Derived, "computed here from what was recorded"},
		{evidence.Manufacturer, "the record's entry, with its data sheet named"},
		{evidence.ByHand, "the record's entry, no data sheet named"},
	}
}

func counts(deciding bool) string {
	if deciding {
		return "deciding"
	}
	return "advice"
}

// cautionsPage is what to heed on site, a heading and its sentences.
func cautionsPage(b Book, t names.Titles) page {
	var rows []row
	for _, c := range b.Cautions {
		for i, s := range c.Sentences {
			label := text("")
			if i == 0 {
				label = text(c.Heading)
				label.look.Bold = true
			}
			rows = append(rows, row{cells: []cell{label, text(s)}})
		}
	}
	return listPage(t.Cautions, []float64{28, 110}, header("Caution", "What to heed"), rows)
}

// signOffPage is the record's sign-offs and room below them to sign by hand.
func signOffPage(b Book, t names.Titles) page {
	table := grid.Table{Header: []string{"Area", "Role", "Name", "At", "Decision", "Waives", "Document", "Remarks"}}
	if t.Signed >= 0 {
		table = b.Tables[t.Signed]
	}
	p := tablePage(table, t.SignOff)
	for i, w := range p.widths {
		p.widths[i] = max(w, 16)
	}
	return withLines(p, table)
}

// withLines adds empty boxes to a table.
func withLines(p page, t grid.Table) page {
	const lines, tall = 8, 30
	blank := row{least: tall}
	for range t.Header {
		blank.cells = append(blank.cells, cell{look: style.Look{Boxed: true}})
	}
	printed, first := p.rows, p.last+1
	p.last += lines
	p.rows = func(yield func(int, row) bool) {
		for n, r := range printed {
			if !yield(n, r) {
				return
			}
		}
		for n := range lines {
			if !yield(first+n, blank) {
				return
			}
		}
	}
	return p
}
