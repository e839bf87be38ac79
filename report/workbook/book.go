package workbook

import (
	"io"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
)

// Book is all that one workbook shows.
type Book struct {
	Job       report.Job
	Record    string         // name of the record
	SHA256    string         // of the record
	Tool      string         // name and version
	Seal      report.Seal    // of the tables and the decisions
	Tables    []report.Table // the record's tables, copied unchanged
	Decisions []report.Decision
	Catalogue []report.Rule
	Limits    []report.LimitLine
	Cautions  []report.Caution
}

// Write writes the workbook. Nothing is written where an error is returned,
// unless w itself failed.
func Write(w io.Writer, b Book) error {
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
	for _, p := range pages(b) {
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
	for i, d := range b.Decisions {
		all = append(all, areaPage(b, d, t, t.areas[i]))
	}
	for i, table := range b.Tables {
		if i != t.signed {
			all = append(all, tablePage(table, t.tables[i]))
		}
	}
	all = append(all, limitsPage(b, t), checksPage(b, t), cautionsPage(b, t), signOffPage(b, t), sealedPage(b, t))
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
	err := f.SetDocProps(&excelize.DocProperties{
		Title: b.Job.Name, Subject: b.Job.Site, Creator: author, LastModifiedBy: author,
		Description: "record " + b.Record + ", SHA-256 " + b.SHA256,
		Created:     made, Modified: made,
	})
	if err != nil {
		return err
	}
	return f.SetAppProps(&excelize.AppProperties{Application: b.Tool, Company: b.Job.Company})
}
