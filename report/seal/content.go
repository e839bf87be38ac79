package seal

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
)

// Content is all of a workbook that a person or a program can see: its sheets
// in their order and its defined names. Fonts, borders and colors are left out.
type Content struct {
	Sheets []Sheet
	Names  map[string]string // defined names and what they refer to, in normal form
	Tool   string            // the program that wrote the file
	About  string            // what its properties say it is
}

// Sheet is one sheet of a workbook.
type Sheet struct {
	Name, State string // State is visible, hidden or veryHidden
	Cells       map[string]Cell
	Rows        []string // numbers of rows that are hidden or have no height
	Columns     []string // the same of columns
	Merges      []string
	Marks       []string // conditional formats, input checks, links, comments, protection
	Margins     []string // headers and footers
	Drawn       []string // charts by title, references and stored values; texts and pictures
}

// Cell is a cell as it is seen. Kind is n for a number, s for a text, b for a
// truth value, e for an error and empty where nothing is stored.
type Cell struct {
	Kind, Value string
	Formula     string // in normal form
	Format      string // the words of its number format
}

// mostUnpacked is how large the parts of a workbook may be together.
const mostUnpacked = 1 << 30

// Read is the content of a workbook. A file that is none is an error.
func Read(data []byte) (Content, error) {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return Content{}, errors.New("is not a workbook")
	}
	b := book{parts: map[string]*zip.File{}}
	var total uint64
	for _, f := range archive.File {
		b.parts[strings.TrimPrefix(f.Name, "/")] = f
		total += f.UncompressedSize64
	}
	if total > mostUnpacked {
		return Content{}, fmt.Errorf("is larger unpacked than %d MB", mostUnpacked>>20)
	}
	return b.content()
}

// book is a workbook's parts and what its cells refer to.
type book struct {
	parts   map[string]*zip.File
	texts   []string // shared ones
	formats []string // of the cell styles
	looks   []string // differential styles that change what a cell says
}

type workbookPart struct {
	Sheets []struct {
		Name  string `xml:"name,attr"`
		State string `xml:"state,attr"`
		ID    string `xml:"http://schemas.openxmlformats.org/officeDocument/2006/relationships id,attr"`
	} `xml:"sheets>sheet"`
	Names []struct {
		Name   string `xml:"name,attr"`
		Sheet  string `xml:"localSheetId,attr"`
		Hidden string `xml:"hidden,attr"`
		Refers string `xml:",chardata"`
	} `xml:"definedNames>definedName"`
}

func (b *book) content() (Content, error) {
	const main = "xl/workbook.xml"
	var w workbookPart
	if err := b.decode(main, &w); err != nil {
		return Content{}, err
	}
	if err := errors.Join(b.readTexts(), b.readStyles()); err != nil {
		return Content{}, err
	}
	links, err := b.links(main)
	if err != nil {
		return Content{}, err
	}
	c := Content{Names: map[string]string{}, Tool: b.tool(), About: b.about()}
	for _, s := range w.Sheets {
		sheet, err := b.sheet(links[s.ID])
		if err != nil {
			return Content{}, fmt.Errorf("%s: %w", s.Name, err)
		}
		sheet.Name, sheet.State = s.Name, s.State
		if sheet.State == "" {
			sheet.State = "visible"
		}
		c.Sheets = append(c.Sheets, sheet)
	}
	for _, n := range w.Names {
		// What a spreadsheet program keeps for its own filters says nothing.
		if !strings.HasSuffix(n.Name, "_FilterDatabase") {
			c.Names[strings.TrimSpace(n.Name+" "+n.Sheet)] = normal(n.Refers)
		}
	}
	return c, nil
}

// tool is the name that the file's properties give to the program.
func (b *book) tool() string {
	var app struct {
		Application string `xml:"Application"`
	}
	if b.parts["docProps/app.xml"] == nil || b.decode("docProps/app.xml", &app) != nil {
		return ""
	}
	return app.Application
}

// about is the description in the file's properties.
func (b *book) about() string {
	var core struct {
		Description string `xml:"description"`
	}
	if b.parts["docProps/core.xml"] == nil || b.decode("docProps/core.xml", &core) != nil {
		return ""
	}
	return core.Description
}

func (b *book) open(part string) (io.ReadCloser, error) {
	f := b.parts[part]
	if f == nil {
		return nil, fmt.Errorf("the part %s is missing", part)
	}
	return f.Open()
}

func (b *book) decode(part string, into any) error {
	r, err := b.open(part)
	if err != nil {
		return err
	}
	defer r.Close()
	if err := xml.NewDecoder(r).Decode(into); err != nil {
		return fmt.Errorf("the part %s is damaged", part)
	}
	return nil
}

// links are the parts that a part refers to, by the names it gives them.
func (b *book) links(part string) (map[string]string, error) {
	links := map[string]string{}
	file := path.Join(path.Dir(part), "_rels", path.Base(part)+".rels")
	if b.parts[file] == nil {
		return links, nil
	}
	var all struct {
		Links []struct {
			ID     string `xml:"Id,attr"`
			Target string `xml:"Target,attr"`
			Mode   string `xml:"TargetMode,attr"`
		} `xml:"Relationship"`
	}
	if err := b.decode(file, &all); err != nil {
		return nil, err
	}
	for _, l := range all.Links {
		switch {
		case l.Mode == "External":
			links[l.ID] = l.Target
		case strings.HasPrefix(l.Target, "/"):
			links[l.ID] = strings.TrimPrefix(l.Target, "/")
		default:
			links[l.ID] = path.Join(path.Dir(part), l.Target)
		}
	}
	return links, nil
}

// readTexts reads the shared texts.
func (b *book) readTexts() error {
	const part = "xl/sharedStrings.xml"
	if b.parts[part] == nil {
		return nil
	}
	r, err := b.open(part)
	if err != nil {
		return err
	}
	defer r.Close()
	d := xml.NewDecoder(r)
	for {
		token, err := d.Token()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("the part %s is damaged", part)
		}
		if start, ok := token.(xml.StartElement); ok && start.Name.Local == "si" {
			var t richText
			if err := d.DecodeElement(&t, &start); err != nil {
				return fmt.Errorf("the part %s is damaged", part)
			}
			b.texts = append(b.texts, t.String())
		}
	}
}

// richText is a text that may be in runs.
type richText struct {
	Text string `xml:"t"`
	Runs []struct {
		Text string `xml:"t"`
	} `xml:"r"`
}

func (t richText) String() string {
	s := t.Text
	for _, r := range t.Runs {
		s += r.Text
	}
	return s
}
