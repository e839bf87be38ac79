package writer

import (
	"cmp"
	"io"
	"sort"
	"strings"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/lists"
	"firstboard/report/workbook/style"
)

// File is all that one file holds.
type File struct {
	Job   report.Job
	Tool  string // name and version
	Says  string // of itself
	Foot  string // of every page
	Pages []Page
	Bare  bool   // values alone: without formulas, and without colors that follow them
	Most  uint64 // bytes unpacked, over which it is not written; 0 for any
}

// Write writes the file. Equal files give equal bytes.
func (f File) Write(w io.Writer) error {
	x := excelize.NewFile(excelize.Options{TmpDir: noFolder})
	defer x.Close()
	x.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return &parts{to: w, most: f.Most} })
	bind := &binder{file: x, styles: map[style.Look]int{}, foot: f.Foot, bare: f.Bare}
	if err := cmp.Or(f.describe(x), x.SetDefaultFont(style.FontName), lists.Try(f.Pages, bind.add)); err != nil {
		return err
	}
	inOrder(x)
	return x.Write(w)
}

// noFolder can be the name of no folder. The library then holds a large sheet in
// memory, and a run that is killed leaves no file of it behind.
const noFolder = "\x00"

// inOrder sorts the kinds of parts, which the library lists at random once a
// chart is added.
func inOrder(f *excelize.File) {
	if f.ContentTypes == nil {
		return
	}
	kinds := f.ContentTypes.Defaults
	sort.Slice(kinds, func(i, j int) bool { return kinds[i].Extension < kinds[j].Extension })
}

// describe sets the document's properties from the job. The dates are fixed:
// when a workbook was made says nothing of the floor.
func (f File) describe(x *excelize.File) error {
	const made = "2000-01-01T00:00:00Z"
	author := cmp.Or(f.Job.PreparedBy, f.Tool)
	err := x.SetDocProps(&excelize.DocProperties{
		Title: f.Job.Name, Subject: f.Job.Site, Creator: author, LastModifiedBy: author,
		Description: f.Says,
		Created:     made, Modified: made,
	})
	if err != nil {
		return err
	}
	qualify(x)
	return x.SetAppProps(&excelize.AppProperties{Application: f.Tool, Company: f.Job.Company})
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
