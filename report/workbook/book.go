package workbook

import (
	"io"
	"strings"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/workbook/live"
)

// Book is all that one workbook shows.
type Book struct {
	Job       report.Job
	Record    string         // name of the record
	SHA256    string         // of the record
	Tool      string         // name and version
	Tables    []report.Table // the record's tables, copied unchanged
	Decisions []report.Decision
	Catalogue []report.Rule
	Limits    []report.LimitLine
	Cautions  []report.Caution
}

// Write writes the workbook. Nothing is written where an error is returned,
// unless w itself failed.
func Write(w io.Writer, b Book) error { return write(w, b, pages(b)) }

// WriteRecord writes the tables of a record, and nothing else, as a workbook
// that reads as that record. Nothing is written where an error is returned,
// unless w itself failed.
func WriteRecord(w io.Writer, tables []report.Table) error {
	var all []page
	for _, t := range tables {
		all = append(all, tablePage(t, t.Name))
	}
	return write(w, Book{Tool: "firstboard"}, all)
}

func write(w io.Writer, b Book, all []page) error {
	f := excelize.NewFile()
	defer f.Close()
	f.SetZipWriter(sortedZip)
	if err := describe(f, b); err != nil {
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
	return f.Write(w)
}

// pages are the sheets in their order.
func pages(b Book) []page {
	t := title(b)
	all := []page{decisionPage(b, t)}
	tables, workings := live.Tables(b.Tables, t.tables), []page{}
	for i, d := range b.Decisions {
		w := live.For(tables, b.Job, d, t.workings[i])
		all = append(all, areaPage(b, d, t, t.areas[i], w))
		workings = append(workings, workingPage(w))
	}
	for i, table := range b.Tables {
		if i != t.signed {
			all = append(all, tablePage(table, t.tables[i]))
		}
	}
	all = append(all, limitsPage(b, t), checksPage(b, t), cautionsPage(b, t), signOffPage(b, t))
	all = append(all, workings...)
	for i := range all {
		all[i].job = b.Job.Name
	}
	return all
}

// describe sets the document's properties from the job. The dates are fixed:
// when a workbook was made says nothing of the floor.
func describe(f *excelize.File, b Book) error {
	const made = "2000-01-01T00:00:00Z"
	author := b.Job.PreparedBy
	if author == "" {
		author = b.Tool
	}
	of := ""
	if b.Record != "" {
		of = "record " + b.Record + ", SHA-256 " + b.SHA256
	}
	err := f.SetDocProps(&excelize.DocProperties{
		Title: b.Job.Name, Subject: b.Job.Site, Creator: author, LastModifiedBy: author,
		Description: of, Created: made, Modified: made,
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
