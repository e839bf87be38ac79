package seal

import (
	"archive/zip"
	"cmp"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"firstboard/report/untrusted"
)

// Content is all of a workbook that a person or a program can see: its sheets
// in their order and its defined names. Fonts, borders and colors are left out.
type Content struct {
	Sheets []Sheet
	Names  map[string]string // defined names and what they refer to, in normal form
	Ways   []string          // how the whole file counts, and programs and outside data in it
	About  string            // what its properties say it is
}

// Sheet is one sheet of a workbook.
type Sheet struct {
	Name, State string   // State is visible, hidden or veryHidden
	Cells       []Cell   // those that hold something, row by row
	Rows        []string // numbers of rows that are hidden or have no height
	Columns     []string // the same of columns
	Merges      []string
	Marks       []string // conditional formats, input checks, links, comments, tables, views that hide something
	Margins     []string // headers and footers
	Drawn       []string // charts by title, references and stored values; texts, shapes and pictures; where they lie
}

// Cell is a cell as it is seen. Kind is n for a number, s for a text, b for a
// truth value, e for an error and empty where nothing is stored.
type Cell struct {
	At          Address
	Kind, Value string
	Formula     string // in normal form
	Format      string // how its number format shows it, and whether it can be seen
}

// mostCells is the most cells of a workbook: a record's tables and their copies.
const mostCells = 16_000_000

// Read is the content of a workbook. A file that is none is an error.
func Read(data []byte) (Content, error) {
	archive, err := untrusted.Archive(data, untrusted.MostBytes)
	if err != nil {
		return Content{}, err
	}
	b := book{parts: map[string]*zip.File{}}
	for _, f := range archive.File {
		name := strings.TrimPrefix(f.Name, "/")
		if b.parts[name] != nil {
			return Content{}, fmt.Errorf("holds the part %s twice", name)
		}
		b.parts[name] = f
	}
	return b.content()
}

type workbookPart struct {
	Counts struct {
		Since04 string `xml:"date1904,attr"`
		Drawn   string `xml:"showObjects,attr"`
	} `xml:"workbookPr"`
	Windows []struct {
		State string `xml:"visibility,attr"`
		Tabs  string `xml:"showSheetTabs,attr"`
	} `xml:"bookViews>workbookView"`
	Reckons struct {
		Mode string `xml:"calcMode,attr"`
		Full string `xml:"fullPrecision,attr"`
	} `xml:"calcPr"`
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
	root, err := b.links("")
	if err != nil {
		return Content{}, err
	}
	main := root.kind("officeDocument")
	var w workbookPart
	if err := b.decode(main, &w); err != nil {
		return Content{}, err
	}
	links, err := b.links(main)
	if err != nil {
		return Content{}, err
	}
	if err := errors.Join(b.readTexts(links.kind("sharedStrings")), b.readStyles(links.kind("styles"))); err != nil {
		return Content{}, err
	}
	c := Content{Names: w.names(), Ways: append(w.ways(), b.strange()...), About: b.about(root.kind("core-properties"))}
	c.Sheets, err = b.sheets(w, links)
	return c, err
}

func (b *book) sheets(w workbookPart, links links) ([]Sheet, error) {
	var all []Sheet
	known := map[string]bool{}
	for _, s := range w.Sheets {
		if known[s.Name] {
			return nil, fmt.Errorf("has two sheets with the name %s", s.Name)
		}
		known[s.Name] = true
		sheet, err := b.sheet(links.target(s.ID))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", s.Name, err)
		}
		sheet.Name, sheet.State = s.Name, cmp.Or(s.State, "visible")
		all = append(all, sheet)
	}
	return all, nil
}

// names are the defined names. What a spreadsheet program keeps for its own
// filters says nothing.
func (w workbookPart) names() map[string]string {
	all := map[string]string{}
	for _, n := range w.Names {
		if n.Name != "_xlnm._FilterDatabase" {
			all[strings.TrimSpace(n.Name+" "+n.Sheet)] = inOrder(n.Name, normal(n.Refers))
		}
	}
	return all
}

// inOrder puts the rows and the columns that are printed on every page in one order: programs
// write either first.
func inOrder(name, refers string) string {
	if name != "_xlnm.Print_Titles" {
		return refers
	}
	parts := strings.Split(refers, ",")
	slices.Sort(parts)
	return strings.Join(parts, ",")
}

// ways are settings of the file that change what its cells show.
func (w workbookPart) ways() []string {
	var all []string
	if yes(w.Counts.Since04) {
		all = append(all, "days are counted from 1904")
	}
	if w.Reckons.Mode == "manual" {
		all = append(all, "formulas are calculated only when somebody asks for it")
	}
	if no(w.Reckons.Full) {
		all = append(all, "numbers are calculated as they are shown")
	}
	if w.Counts.Drawn != "" && w.Counts.Drawn != "all" {
		all = append(all, "pictures are not shown")
	}
	for _, window := range w.Windows {
		if window.State != "" && window.State != "visible" {
			all = append(all, "its window is hidden")
		}
		if no(window.Tabs) {
			all = append(all, "the names of its sheets are not shown")
		}
	}
	return all
}

func yes(attribute string) bool { return attribute == "1" || attribute == "true" }

func no(attribute string) bool { return attribute == "0" || attribute == "false" }

// strange are parts of the file that bring in programs or data from outside.
func (b *book) strange() []string {
	kinds := []string{
		"vbaproject", "macrosheets", "externallinks", "pivottables", "querytables", "connections", "embeddings",
		"activex", "customui", "slicers",
	}
	var all []string
	for _, part := range slices.Sorted(maps.Keys(b.parts)) {
		if slices.ContainsFunc(kinds, func(kind string) bool { return strings.Contains(strings.ToLower(part), kind) }) {
			all = append(all, "the part "+part)
		}
	}
	return all
}

// about is the description in the file's properties.
func (b *book) about(part string) string {
	var core struct {
		Description string `xml:"description"`
	}
	if part == "" || b.decode(part, &core) != nil {
		return ""
	}
	return seen(core.Description)
}
