package record

import (
	"errors"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"firstboard/report"
	"firstboard/report/evidence"
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
	sheets, err := openSheets(o.name, abs)
	if err != nil {
		return report.Sealed{}, err
	}
	s := report.Sealed{Name: o.name}
	if err := sheets.seal(&s); err != nil {
		return report.Sealed{}, err
	}
	if err := sheets.shown(&s); err != nil {
		return report.Sealed{}, err
	}
	var job report.Job
	s.Now.Tables, job, err = o.decode()
	s.Now.Job = func() (report.Job, error) { return job, err }
	return s, nil
}

// openSheets opens a workbook for the sheets that are no table of a record.
func openSheets(name, path string) (*sheets, error) {
	unsealed := fmt.Errorf("%s: %w; verify takes what check RECORD -o FILE.xlsx writes, and check judges a record", name, ErrNotSealed)
	data, err := load(name, path)
	if err != nil {
		return nil, unsealed
	}
	p, err := openPack(name, data)
	if err != nil {
		return nil, err
	}
	s := &sheets{workbook: workbook{pack: p}}
	if s.all, err = s.open(); err != nil {
		return nil, err
	}
	if s.find(sealedSheet) == nil {
		return nil, unsealed
	}
	return s, nil
}

// sealedSheet carries the seal and the sealed copy.
const sealedSheet = "Sealed"

// seal reads the sheet of the seal.
func (s *sheets) seal(to *report.Sealed) error {
	g, err := s.grid(sealedSheet)
	if err != nil {
		return err
	}
	copied := newOrigin(to.Name)
	head, text := true, copyText{origin: &copied}
	for _, r := range g {
		switch {
		case head && evidence.Same(r.texts[0], "Table"):
			head = false
		case head:
			sealedEntry(to, r.texts)
		default:
			if err := text.add(r.texts[0], r.texts[1]); err != nil {
				return s.unsound(r.number, err)
			}
		}
	}
	if err := text.end(); err != nil {
		return s.unsound(0, err)
	}
	to.Was.Tables = copied.known()
	to.Was.Job = sync.OnceValues(func() (report.Job, error) {
		_, job, err := copied.decode()
		return job, err
	})
	return nil
}

// unsound refuses a sealed copy that firstboard cannot have written; row is 0
// for no row of it.
func (s *sheets) unsound(row int, err error) error {
	at := Place{File: s.name, Sheet: sealedSheet, Number: row}.String()
	if row == 0 {
		at = strings.TrimSuffix(at, " row 0")
	}
	return fmt.Errorf("%s: %w; somebody has changed the sealed copy: compare the workbook with an earlier copy of it", at, err)
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
	origin *origin
	table  string
	lines  strings.Builder
}

func (c *copyText) add(table, text string) error {
	if table != "" {
		if err := c.end(); err != nil {
			return err
		}
		c.table = tableOfSheet(table)
		if c.table == "" {
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
	src := c.origin.tables[c.table]
	if src == nil {
		src = c.origin.source(c.table, c.origin.name, c.table)
		c.origin.tables[c.table] = src
	}
	for line := range strings.SplitSeq(c.lines.String(), "\n") {
		if err := src.restore(report.Fields(line)); err != nil {
			return err
		}
	}
	c.lines.Reset()
	return nil
}

// restore adds a line of the sealed copy to a table.
func (s *source) restore(fields []string) error {
	if fields[0] == report.HeaderMark {
		for i, f := range fields[1:] {
			if err := s.head(1, i, f); err != nil {
				return err
			}
		}
		return nil
	}
	number, err := strconv.Atoi(fields[0])
	if err != nil {
		return fmt.Errorf("%s begins no row", quote(fields[0]))
	}
	for i, f := range fields[1:] {
		if err := s.put(number, i, report.Cell{Kind: report.TextCell, Text: f}); err != nil {
			return err
		}
	}
	return nil
}
