package workbook

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/limits"
	"firstboard/report/lists"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// listPage is a plain list under one header.
func listPage(name string, widths []float64, head writer.Row, rows []writer.Row) writer.Page {
	rows = append([]writer.Row{head}, rows...)
	return writer.Page{
		Name: name, Widths: widths, Rows: writer.Numbered(rows), Last: len(rows), Head: 1, Frozen: true, Tight: true,
	}
}

// limitsPage lists every limit that was held against an area, in gray what
// is none, folded where nobody typed it.
func limitsPage(b Book, t names.Titles) writer.Page {
	var rows []writer.Row
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
	means := lists.Each(standings(), func(s standingMeans) string { return string(s.standing) + ": " + s.means })
	rows = append(rows, writer.Row{Cells: []writer.Cell{{
		Value: "Standing of a source. " + strings.Join(means, "; ") + ".",
		Look:  style.Look{Gray: true}, Across: limitColumns,
	}}})
	return listPage(t.Limits, []float64{5, 27, 6, 6.5, 11, 57, 17, 21.5},
		writer.Header("Area", "What", "Limit", "Unit", "Whose", "Source (standing)", "Where it was typed", "Note"),
		rows)
}

// foldedLimits are limits that nobody typed, in one line.
func foldedLimits(area, says string, all []string) []writer.Row {
	if len(all) == 0 {
		return nil
	}
	l := style.Look{Boxed: true, Gray: true}
	return []writer.Row{{Cells: []writer.Cell{
		{Value: area, Look: l},
		{Value: says + evidence.List(all), Look: l, Across: limitColumns - 1},
	}}}
}

const limitColumns = 8

func limitRow(l limits.Line, t names.Titles) writer.Row {
	where := writer.Text("")
	if l.Place != nil {
		where = leadingTo(writer.Text(t.Place(l.Place)), l.Place, t, placeWidth)
	}
	cells := []writer.Cell{
		writer.Text(l.Area), writer.Text(l.What), writer.Figure(l.Limit), writer.Text(string(l.Unit)),
		writer.Text(l.Whose), writer.Text(cited(l.Cite)), where, writer.Text(l.Note),
	}
	for i := range cells {
		cells[i].Look.Gray = l.Limit == ""
	}
	return writer.Row{Cells: cells}
}

// bold is a boxed text in bold.
func bold(s string) writer.Cell {
	return writer.Cell{Value: s, Look: style.Look{Boxed: true, Bold: true}}
}

// checksPage is the catalog: what every area is asked, what the standings mean,
// and what the sheets hold. It is for reading, not for filing.
func (d *desk) checksPage() writer.Page {
	rows := []writer.Row{
		writer.Line(d.contents(), style.Look{}, len(checksWidths())),
		{},
		writer.Header("Standing", "What it means"),
	}
	for _, s := range standings() {
		rows = append(rows, writer.Row{Cells: []writer.Cell{
			bold(string(s.standing)),
			{Value: s.means, Look: style.Look{Boxed: true}, Across: len(checksWidths()) - 1},
		}})
	}
	rows = append(rows, writer.Row{}, writer.Header("Check", "Asks", "Default", "Source", "Standing", "Weight"))
	for _, r := range d.book.Rules {
		rows = append(rows, writer.Row{Cells: []writer.Cell{
			bold(r.ID), writer.Text(r.Asks), writer.Text(r.Default), writer.Text(r.Cite.Source),
			writer.Text(string(r.Cite.Standing)),
			writer.Text(counts(r.Deciding)),
		}})
	}
	return writer.Page{
		Name: d.titles.Checks, Widths: checksWidths(), Rows: writer.Numbered(rows), Last: len(rows), Unprinted: true,
	}
}

func checksWidths() []float64 { return []float64{18, 64, 34, 40, 13, 11} }

// contents are the sheets that a reader sees, in their order.
func (d *desk) contents() string {
	t := d.titles
	return fmt.Sprintf("%s: the verdict on every area. %s: each area's pictures and findings. %s: whose limits hold. %s: what to watch for. %s: who signs. "+
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
	return lists.If(deciding, "deciding", "advice")
}

// cautionsPage is what to watch for on site, a heading and its sentences.
func cautionsPage(b Book, t names.Titles) writer.Page {
	var rows []writer.Row
	for _, c := range b.Cautions {
		for i, s := range c.Sentences {
			label := lists.If(i == 0, bold(c.Heading), writer.Text(""))
			rows = append(rows, writer.Row{Cells: []writer.Cell{label, writer.Text(s)}})
		}
	}
	return listPage(t.Cautions, []float64{28, 110}, writer.Header("Caution", "What to watch for"), rows)
}

// signOffPage is the record's sign-offs and room below them to sign by hand.
func signOffPage(b Book, t names.Titles) writer.Page {
	table := grid.Table{Header: []string{"Area", "Role", "Name", "At", "Decision", "Waives", "Document", "Remarks"}}
	if t.Signed >= 0 {
		table = b.Tables[t.Signed]
	}
	p := writer.TablePage(table, t.SignOff)
	for i, w := range p.Widths {
		p.Widths[i] = max(w, 16)
	}
	return withLines(p, table)
}

// withLines adds empty boxes to a table.
func withLines(p writer.Page, t grid.Table) writer.Page {
	const lines, tall = 8, 30
	box := []writer.Cell{{Look: style.Look{Boxed: true}}}
	blank := writer.Row{Cells: slices.Repeat(box, len(t.Header)), Least: tall}
	printed, first := p.Rows, p.Last+1
	p.Last += lines
	p.Rows = func(yield func(int, writer.Row) bool) {
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
