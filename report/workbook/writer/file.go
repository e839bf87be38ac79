package writer

import (
	"archive/zip"
	"bytes"
	"cmp"
	"compress/flate"
	"errors"
	"fmt"
	"hash"
	"hash/crc32"
	"io"
	"io/fs"
	"slices"
	"sort"
	"strings"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
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

// Chart is a picture at its place on a sheet: it covers one row, from so
// far into the sheet and so wide, in units of width. It is never cut by the end
// of a page, because a row is not.
type Chart struct {
	Row         int
	From, Wide  float64
	Title, Part string
}

// rowDots is a row of the usual height in the library's dots.
const rowDots = 18

// place puts a picture on the sheet. The library knows the widths of a sheet
// that is being streamed, but takes every row to be of the usual height: one
// such row comes out as the whole row there is.
func (s *sheet) place(c Chart) error {
	const dots = 8 // of a unit of width
	column, into := 1, c.From
	for _, w := range s.page.Widths {
		if into < w {
			break
		}
		column, into = column+1, into-w
	}
	s.charts++
	err := s.file.AddChart(s.page.Name, formula.Name(column, c.Row), &excelize.Chart{
		Type: excelize.Scatter, Series: []excelize.ChartSeries{{}},
		Dimension: excelize.ChartDimension{Width: uint(c.Wide * dots), Height: rowDots - 1},
		Format: excelize.GraphicOptions{
			OffsetX: int(into * dots), OffsetY: 1,
			Name: fmt.Sprintf("Picture %d", s.charts), AltText: c.Title,
		},
	})
	if err != nil {
		return err
	}
	s.file.Pkg.Store(fmt.Sprintf("xl/charts/chart%d.xml", s.charts), []byte(c.Part))
	return nil
}

// parts are an archive whose parts stand in the order of their names and carry
// no time, in whatever order they came. Each is held compressed until the end.
// More than most bytes before they are compressed are an error.
type parts struct {
	to   io.Writer
	all  []*part
	most uint64 // bytes before they are compressed; 0 for any number
	pack *flate.Writer
}

type part struct {
	name   string
	packed bytes.Buffer
	pack   *flate.Writer // of all parts, which are written one after another
	sum    hash.Hash32
	size   uint64
}

// Create opens the part of that name; the part before is whole then.
func (p *parts) Create(name string) (io.Writer, error) {
	one := &part{name: name, sum: crc32.NewIEEE()}
	if err := p.packTo(&one.packed); err != nil {
		return nil, err
	}
	one.pack = p.pack
	p.all = append(p.all, one)
	return one, nil
}

// packTo ends the part in hand and packs into another from here on.
func (p *parts) packTo(next io.Writer) (err error) {
	if p.pack == nil {
		p.pack, err = flate.NewWriter(next, flate.BestSpeed)
		return err
	}
	if err := p.pack.Close(); err != nil {
		return err
	}
	p.pack.Reset(next)
	return nil
}

// AddFS is part of the interface and is never needed.
func (p *parts) AddFS(fs.FS) error { return errors.ErrUnsupported }

// Close writes all parts.
func (p *parts) Close() error {
	var total uint64
	for _, one := range p.all {
		total += one.size
	}
	if p.most > 0 && total > p.most {
		return fmt.Errorf("its sheets come to over %d MB, more than a record may; write a folder, or split the record",
			p.most>>20)
	}
	if p.pack != nil {
		if err := p.pack.Close(); err != nil {
			return err
		}
	}
	slices.SortFunc(p.all, func(a, b *part) int { return strings.Compare(a.name, b.name) })
	zw := zip.NewWriter(p.to)
	if err := lists.Try(p.all, func(one *part) error { return one.writeTo(zw) }); err != nil {
		return err
	}
	return zw.Close()
}

func (p *part) Write(b []byte) (int, error) {
	p.size += uint64(len(b))
	p.sum.Write(b)
	return p.pack.Write(b)
}

// firstDay is 1 January 1980, the first day a zip can name.
const firstDay = 1<<5 | 1

func (p *part) writeTo(zw *zip.Writer) error {
	w, err := zw.CreateRaw(&zip.FileHeader{
		Name: p.name,
		//lint:ignore SA1019 a raw header is written as it stands: Modified is not looked at
		ModifiedDate:       firstDay,
		Method:             zip.Deflate,
		CRC32:              p.sum.Sum32(),
		CompressedSize64:   uint64(p.packed.Len()),
		UncompressedSize64: p.size,
	})
	if err != nil {
		return err
	}
	_, err = p.packed.WriteTo(w)
	return err
}
