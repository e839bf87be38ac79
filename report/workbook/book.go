package workbook

import (
	"io"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/writer"
)

// Book is all that one workbook shows.
type Book struct {
	report.Statement
	Tables []grid.Table // the record's tables, copied unchanged
	Known  []string     // the names of all tables that a record may have
}

// advice is what was said under an area's verdict, if anything.
func (b Book) advice(nth int) ahead.Advice {
	if nth >= len(b.Advice) {
		return ahead.Advice{}
	}
	return b.Advice[nth]
}

// Write writes the workbook. Nothing is written where an error is returned,
// unless w itself failed.
func Write(w io.Writer, b Book) error {
	return writer.File{
		Job: b.Job, Tool: b.Tool, Says: "record " + b.Record + ", SHA-256 " + b.SHA256,
		Foot: b.Job.Name, Pages: pages(b),
	}.Write(w)
}

// WritePrint writes only what is signed and filed, in one workbook: the
// decision, the areas, limits, cautions and lines to sign, as values. The
// record is not in it.
func WritePrint(w io.Writer, b Book) error {
	return writer.File{
		Job: b.Job, Tool: b.Tool, Foot: b.Job.Name, Pages: filed(b), Bare: true,
		Says: "to sign and file, record " + b.Record + ", SHA-256 " + b.SHA256,
	}.Write(w)
}

// pages are the sheets in their order.
func pages(b Book) []writer.Page {
	d := deskOf(b)
	all := append([]writer.Page{{}}, d.toSign()...)
	for _, g := range d.guard.tables {
		if names.Squash(g.name) != names.Squash(d.titles.SignOff) {
			p := writer.Narrowed(g.table).Page(g.table, g.name)
			p.Tints = append(p.Tints, g.marks())
			p.Unprinted = len(g.table.Rows) > writer.MostPrinted
			all = append(all, p)
		}
	}
	all = append(all, d.checksPage())
	if d.plots.Widest() > 0 {
		all = append(all, d.plottedPage())
	}
	copies := lists.Each(d.guard.tables, func(one guarded) writer.Page {
		p := writer.TablePage(one.table, one.copy)
		p.Hidden = true
		return p
	})
	d.guard.sheets = len(all) + len(copies) + 2
	all = append(append(all, d.figuresPage(), d.guard.page()), copies...)
	all[0] = d.decisionPage()
	return all
}

// toSign are the areas and what is signed and filed with them.
func (d *desk) toSign() []writer.Page {
	var all []writer.Page
	for i := range d.book.Decisions {
		all = append(all, d.areaPage(i))
	}
	return append(all, limitsPage(d.book, d.titles), cautionsPage(d.book, d.titles), signOffPage(d.book, d.titles))
}

// filed are the sheets that are signed and filed, without a formula.
func filed(b Book) []writer.Page {
	b.Tables = lists.Where(b.Tables,
		func(t grid.Table) bool { return names.Squash(t.Name) == names.Squash(names.SignOff) })
	d := deskOf(b)
	d.filed = true
	all := append([]writer.Page{d.decisionPage()}, d.toSign()...)
	if d.plots.Widest() > 0 {
		all = append(all, d.plottedPage())
	}
	return all
}
