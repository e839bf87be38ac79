package workbook

import "firstboard/report"

// listPage is a plain list under one header.
func listPage(name string, widths []float64, head row, rows []row) page {
	rows = append([]row{head}, rows...)
	return page{name: name, widths: widths, rows: numbered(rows), last: len(rows), head: 1, frozen: true}
}

// limitsPage lists every limit that was held against an area, in gray what
// is none.
func limitsPage(b Book, t titles) page {
	var rows []row
	for _, l := range b.Limits {
		rows = append(rows, limitRow(l, t))
	}
	return listPage(t.limits, []float64{10, 28, 10, 12, 16, 32, 11, placeWidth, 36},
		header("Area", "What", "Limit", "Unit", "Whose", "Source", "Standing", "Where it was typed", "Note"), rows)
}

func limitRow(l report.LimitLine, t titles) row {
	cells := []cell{
		text(l.Area), text(l.What), figure(l.Limit), text(string(l.Unit)), text(l.Whose),
		text(l.Cite.Source), text(string(l.Cite.Standing)), text(""), text(l.Note),
	}
	if l.Place != nil {
		cells[7] = t.lead(text(t.place(l.Place)), l.Place, placeWidth)
	}
	for i := range cells {
		cells[i].look.gray = l.Limit == ""
	}
	return row{cells: cells}
}

// checksPage is the catalog: what every area is asked.
func checksPage(b Book, t titles) page {
	var rows []row
	for _, r := range b.Catalog {
		id := text(r.ID)
		id.look.bold = true
		rows = append(rows, row{cells: []cell{
			id, text(r.Asks), text(r.Default), text(r.Cite.Source), text(string(r.Cite.Standing)), text(counts(r.Deciding)),
		}})
	}
	return listPage(t.checks, []float64{18, 64, 34, 40, 12, 11},
		header("Check", "Asks", "Default", "Source", "Standing", "Counts as"), rows)
}

func counts(deciding bool) string {
	if deciding {
		return "deciding"
	}
	return "advice"
}

// cautionsPage is what to heed on site, a heading and its sentences.
func cautionsPage(b Book, t titles) page {
	var rows []row
	for _, c := range b.Cautions {
		for i, s := range c.Sentences {
			label := text("")
			if i == 0 {
				label = text(c.Heading)
				label.look.bold = true
			}
			rows = append(rows, row{cells: []cell{label, text(s)}})
		}
	}
	return listPage(t.cautions, []float64{28, 110}, header("Caution", "What to heed"), rows)
}

// signOffPage is the record's sign-offs and room below them to sign by hand.
func signOffPage(b Book, t titles) page {
	table := signOffHeader()
	if t.signed >= 0 {
		table = b.Tables[t.signed]
	}
	p := tablePage(table, t.signOff)
	for i, w := range p.widths {
		p.widths[i] = max(w, 16)
	}
	return withLines(p, table)
}

// withLines adds empty boxes to a table.
func withLines(p page, t report.Table) page {
	const lines, tall = 8, 30
	blank := row{least: tall}
	for range t.Header {
		blank.cells = append(blank.cells, cell{look: look{boxed: true}})
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
