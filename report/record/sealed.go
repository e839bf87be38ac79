package record

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/record/sheet"
)

// ErrNotSealed says that a file is no decision workbook with a seal.
var ErrNotSealed = errors.New("it is no sealed decision workbook")

// ReadSealed reads a decision workbook with what it was sealed by: the tables
// of its record, their sealed copy, and what its own sheets show. Tables that
// somebody left unreadable come with their fault; a file that cannot be used
// at all is one plain error.
func ReadSealed(path string) (report.Sealed, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return report.Sealed{}, fmt.Errorf("%s: %w", path, err)
	}
	o, err := open(path)
	if err != nil {
		return report.Sealed{}, err
	}
	sheets, err := openSheets(o.Name, abs)
	if err != nil {
		return report.Sealed{}, err
	}
	s := report.Sealed{Name: o.Name}
	if err := sheets.seal(&s); err != nil {
		return report.Sealed{}, err
	}
	if err := sheets.shown(&s); err != nil {
		return report.Sealed{}, err
	}
	var job report.Job
	s.Now.Tables, job, err = decode(o)
	s.Now.Job = func() (report.Job, error) { return job, err }
	return s, nil
}

// openSheets opens a workbook for the sheets that are no table of a record.
func openSheets(name, path string) (*sheets, error) {
	book, err := sheet.OpenBook(path)
	if err == nil && !slices.ContainsFunc(book.Names(), func(s string) bool { return evidence.Same(s, sealedSheet) }) {
		err = errors.New(name)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w; verify takes what check RECORD -o FILE.xlsx writes, and check judges a record", name, ErrNotSealed)
	}
	return &sheets{book}, nil
}

// sealedSheet carries the seal and the sealed copy.
const sealedSheet = "Sealed"

// seal reads the sheet of the seal.
func (s *sheets) seal(to *report.Sealed) error {
	g, err := s.Grid(sealedSheet)
	if err != nil {
		return err
	}
	copied := map[string]*sheet.Table{}
	head, text := true, copyText{file: to.Name, tables: copied}
	for _, r := range g {
		switch {
		case head && evidence.Same(r.Texts[0], "Table"):
			head = false
		case head:
			sealedEntry(to, r.Texts)
		default:
			if err := text.add(r.Texts[0], r.Texts[1]); err != nil {
				return s.Damaged(sealedSheet, r.Number, err)
			}
		}
	}
	if err := text.end(); err != nil {
		return s.Damaged(sealedSheet, 0, err)
	}
	to.Was.Tables = known(copied)
	to.Was.Job = sync.OnceValues(func() (report.Job, error) {
		_, job, err := decode(&sheet.Source{Name: to.Name, Tables: copied})
		return job, err
	})
	return nil
}

func sealedEntry(to *report.Sealed, texts []string) {
	switch entry := evidence.Tidy(texts[1]); evidence.Key(texts[0]) {
	case "seal":
		to.Written = entry
	case "made with":
		to.Parts.Tool = entry
	case "catalog":
		to.Parts.Catalog = entry
	case "tables":
		to.Parts.Tables = entry
	case "findings":
		to.Parts.Findings = entry
	case "area":
		to.Areas = append(to.Areas, report.ShownArea{ID: entry, Sheet: texts[2]})
	}
}

// copyText is the sealed copy on its way to tables: lines that may stand
// several in a cell, and one in several cells, where the first alone names
// the table.
type copyText struct {
	file   string
	tables map[string]*sheet.Table
	table  string
	lines  strings.Builder
}

func (c *copyText) add(table, text string) error {
	if table != "" {
		if err := c.end(); err != nil {
			return err
		}
		c.table = table
		if !slices.Contains(tableNames(), table) {
			return fmt.Errorf("%q is no table of a record", table)
		}
	}
	c.lines.WriteString(text)
	return nil
}

// end puts the lines gathered into their table.
func (c *copyText) end() error {
	if c.lines.Len() == 0 {
		return nil
	}
	src := c.tables[c.table]
	if src == nil {
		src = &sheet.Table{Table: report.Table{Name: c.table}, File: c.file, Sheet: c.table}
		c.tables[c.table] = src
	}
	for line := range strings.SplitSeq(c.lines.String(), "\n") {
		if err := restore(src, report.Fields(line)); err != nil {
			return err
		}
	}
	c.lines.Reset()
	return nil
}

// restore adds a line of the sealed copy to a table.
func restore(t *sheet.Table, fields []string) error {
	if fields[0] == report.HeaderMark {
		t.Header = fields[1:]
		return nil
	}
	number, err := strconv.Atoi(fields[0])
	if err != nil || len(fields) > len(t.Header)+1 {
		return fmt.Errorf("%s begins no row", evidence.Quote(fields[0]))
	}
	row := report.TableRow{Number: number, Cells: make([]report.Cell, len(t.Header))}
	for i, text := range fields[1:] {
		if text != "" {
			row.Cells[i] = report.Cell{Kind: report.TextCell, Text: text}
		}
	}
	t.Rows = append(t.Rows, row)
	return nil
}
