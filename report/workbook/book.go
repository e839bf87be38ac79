package workbook

import (
	"io"
	"slices"
	"sort"
	"strings"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/grid"
	"firstboard/report/limits"
	"firstboard/report/workbook/names"
)

// Book is all that one workbook shows.
type Book struct {
	Job       report.Job
	Record    string       // name of the record
	SHA256    string       // of the record
	Tool      string       // name and version
	Seal      string       // of the tables and the decisions
	Tables    []grid.Table // the record's tables, copied unchanged
	Known     []string     // the names of all tables that a record may have
	Decisions []report.Decision
	Advice    []ahead.Advice // of the same areas; none where nobody gave any
	Catalog   []report.Rule
	Limits    []limits.Line
	Cautions  []report.Caution
}

// Write writes the workbook. Nothing is written where an error is returned,
// unless w itself failed.
func Write(w io.Writer, b Book) error {
	return write(w, b, "record "+b.Record+", SHA-256 "+b.SHA256, pages(b), 0)
}

// WritePrint writes only what is signed and filed, in one workbook: the
// decision, the areas, limits, cautions and lines to sign, as values. The
// record is not in it.
func WritePrint(w io.Writer, b Book) error {
	return write(w, b, "to sign and file, record "+b.Record+", SHA-256 "+b.SHA256, filed(b), 0)
}

// noFolder can be the name of no folder. The library then holds a large sheet in
// memory, and a run that is killed leaves no file of it behind.
const noFolder = "\x00"

func write(w io.Writer, b Book, description string, all []page, most uint64) error {
	f := excelize.NewFile(excelize.Options{TmpDir: noFolder})
	defer f.Close()
	f.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return sortedZip(w, most) })
	if err := describe(f, b, description); err != nil {
		return err
	}
	if err := f.SetDefaultFont(fontName); err != nil {
		return err
	}
	bind := &binder{file: f, styles: map[look]int{}}
	for _, p := range all {
		if err := bind.add(p); err != nil {
			return err
		}
	}
	inOrder(f)
	return f.Write(w)
}

// inOrder sorts the kinds of parts, which the library lists at random once a
// chart is added.
func inOrder(f *excelize.File) {
	if f.ContentTypes == nil {
		return
	}
	kinds := f.ContentTypes.Defaults
	sort.Slice(kinds, func(i, j int) bool { return kinds[i].Extension < kinds[j].Extension })
}

// pages are the sheets in their order.
func pages(b Book) []page {
	d := deskOf(b)
	t := d.titles
	all := []page{{}}
	for i := range b.Decisions {
		all = append(all, d.areaPage(i))
	}
	all = append(all, limitsPage(b, t), cautionsPage(b, t), signOffPage(b, t))
	for _, g := range d.guard.tables {
		if names.Squash(g.name) != names.Squash(t.SignOff) {
			p := narrowed(g.table).page(g.table, g.name)
			p.tints = append(p.tints, g.marks())
			p.unprinted = len(g.table.Rows) > mostPrinted
			all = append(all, p)
		}
	}
	all = append(all, d.checksPage())
	if d.plots.Widest() > 0 {
		all = append(all, d.plottedPage())
	}
	copies := d.guard.copies()
	d.guard.sheets = len(all) + len(copies) + 2
	all = append(append(all, d.figuresPage(), d.guard.page()), copies...)
	all[0] = d.decisionPage()
	for i := range all {
		all[i].job = b.Job.Name
	}
	return all
}

// filed are the sheets that are signed and filed, without a formula.
func filed(b Book) []page {
	b.Tables = slices.DeleteFunc(slices.Clone(b.Tables),
		func(t grid.Table) bool { return names.Squash(t.Name) != names.Squash(names.SignOff) })
	d := deskOf(b)
	d.filed = true
	all := []page{d.decisionPage()}
	for i := range b.Decisions {
		all = append(all, d.areaPage(i))
	}
	all = append(all, limitsPage(b, d.titles), cautionsPage(b, d.titles), signOffPage(b, d.titles))
	if d.plots.Widest() > 0 {
		all = append(all, d.plottedPage())
	}
	for i := range all {
		all[i].job, all[i].values, all[i].tints = b.Job.Name, true, nil
	}
	return all
}

// mostPrinted is how many rows of a table are printed.
const mostPrinted = 500

// describe sets the document's properties from the job. The dates are fixed:
// when a workbook was made says nothing of the floor.
func describe(f *excelize.File, b Book, description string) error {
	const made = "2000-01-01T00:00:00Z"
	author := b.Job.PreparedBy
	if author == "" {
		author = b.Tool
	}
	err := f.SetDocProps(&excelize.DocProperties{
		Title: b.Job.Name, Subject: b.Job.Site, Creator: author, LastModifiedBy: author,
		Description: description,
		Created:     made, Modified: made,
	})
	if err != nil {
		return err
	}
	qualify(f)
	return f.SetAppProps(&excelize.AppProperties{Application: b.Tool, Company: b.Job.Company})
}

// qualify writes the core properties with the prefix that every program writes
// them with: some readers know them by that alone.
func qualify(f *excelize.File) {
	const part = "docProps/core.xml"
	if core, ok := f.Pkg.Load(part); ok {
		f.Pkg.Store(part, []byte(strings.NewReplacer(
			"<coreProperties xmlns=", "<cp:coreProperties xmlns:cp=", "</coreProperties>", "</cp:coreProperties>",
			"<lastModifiedBy>", "<cp:lastModifiedBy>", "</lastModifiedBy>", "</cp:lastModifiedBy>",
		).Replace(string(core.([]byte)))))
	}
}
