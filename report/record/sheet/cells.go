package sheet

import (
	"encoding/xml"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/untrusted"
)

// reader is one pass over the cells of a sheet. Rows and columns count from 1
// and 0 is before the first.
type reader struct {
	*workbook
	d           *xml.Decoder
	src         *Table
	space       string // of the sheet's names
	row, column int
	filled      bool // the cells were read
}

// read fills a table from the part that holds its sheet.
func (w *workbook) read(src *Table, part string) error {
	r := &reader{workbook: w, src: src}
	err := w.walk(part, func(d *xml.Decoder, root xml.StartElement) error {
		r.d, r.space = d, root.Name.Space
		if root.Name.Local != "worksheet" {
			return fmt.Errorf("it holds a %s, not a worksheet", root.Name.Local)
		}
		if err := children(d, r.data); err != nil {
			return err
		}
		if !r.filled {
			return errors.New("it lacks its sheetData")
		}
		return nil
	})
	if big := TooBig(""); errors.As(err, &big) {
		return fmt.Errorf("%s %q: %w", w.name, src.Sheet, big)
	}
	if err != nil {
		return w.damaged("the sheet %q does not read to its end: %w", src.Sheet, err)
	}
	return nil
}

// firstRow are the texts of a sheet's first row, as far as it can be read.
func (w *workbook) firstRow(part string) []string {
	if part == "" {
		return nil
	}
	src := &Table{left: &Room{1, widest, untrusted.MostBytes}}
	r := &reader{workbook: w, src: src}
	_ = w.walk(part, func(d *xml.Decoder, _ xml.StartElement) error {
		r.d = d
		return children(d, r.data)
	})
	if src.top != 1 {
		return nil
	}
	return src.Header
}

func (r *reader) data(e xml.StartElement) error {
	switch e.Name.Local {
	case "row":
		return errors.New("it has a row outside its sheetData")
	case "sheetData":
		if r.filled {
			return errors.New("it has sheetData twice")
		}
		r.filled = true
		return only(r.d, "row", r.line)
	case "mergeCells":
		return r.merged()
	}
	return passed(r.d, r.space, "sheetData", "row")
}

// line reads a row.
func (r *reader) line(e xml.StartElement) error {
	next := r.row + 1
	if s, ok := attr(e, "r"); ok {
		n, err := strconv.Atoi(s)
		if err != nil || n < next {
			return fmt.Errorf("row %q follows row %d", s, r.row)
		}
		next = n
	}
	if next > MostRows {
		return fmt.Errorf("row %d lies beyond the last row of a sheet", next)
	}
	r.row, r.column = next, 0
	return only(r.d, "c", r.cell)
}

// cell reads a cell.
func (r *reader) cell(e xml.StartElement) error {
	ref, placed := attr(e, "r")
	if err := r.move(ref, placed); err != nil {
		return err
	}
	f, err := r.format(e)
	if err != nil {
		return err
	}
	kind, _ := attr(e, "t")
	c, err := r.value(kind, f)
	if err != nil || c.Kind == grid.BlankCell {
		return err
	}
	if r.row > 1 {
		return r.src.put(r.row, r.column-1, c)
	}
	return r.src.head(r.row, r.column-1, c.Text)
}

// move goes to a cell that says where it is, or else to the next.
func (r *reader) move(ref string, placed bool) error {
	column := r.column + 1
	if placed {
		at, row := cellAt(ref)
		if at == 0 || row != r.row {
			return fmt.Errorf("the cell %q stands in row %d", ref, r.row)
		}
		if at < column {
			return fmt.Errorf("the cell %q is out of order in row %d", ref, r.row)
		}
		column = at
	}
	const last = 16384
	if column > last {
		return fmt.Errorf("row %d has cells beyond the last column of a sheet", r.row)
	}
	r.column = column
	return nil
}

func (r *reader) format(e xml.StartElement) (format, error) {
	s, ok := attr(e, "s")
	if !ok || s == "0" && len(r.formats) == 0 {
		return general, nil
	}
	n, err := strconv.Atoi(s)
	if err != nil || n < 0 || n >= len(r.formats) {
		return general, fmt.Errorf("row %d names a style %q that does not exist", r.row, s)
	}
	return r.formats[n], nil
}

// value reads what a cell holds.
func (r *reader) value(kind string, f format) (grid.Cell, error) {
	var stored string
	var valued, formula bool
	err := children(r.d, func(e xml.StartElement) (err error) {
		switch e.Name.Local {
		case "v":
			stored, err = content(r.d)
			valued = true
		case "is":
			stored, err = richText(r.d)
			valued = true
		case "f":
			formula = true
			err = r.d.Skip()
		case "extLst":
			err = r.d.Skip()
		default:
			err = foreign(e, "a value")
		}
		return err
	})
	if err != nil {
		return grid.Cell{}, err
	}
	if number := kind == "" || kind == "n"; !valued || number && strings.TrimSpace(stored) == "" {
		if formula {
			return grid.Cell{Kind: NoResult, Text: "="}, nil
		}
		return grid.Cell{}, nil
	}
	return r.typed(kind, stored, f)
}

// typed is a stored value by the type of its cell.
func (r *reader) typed(kind, stored string, f format) (grid.Cell, error) {
	switch kind {
	case "inlineStr":
		return grid.Cell{Kind: grid.TextCell, Text: stored}, nil
	case "str":
		return grid.Cell{Kind: grid.TextCell, Text: unescaped(stored)}, nil
	case "s":
		n, err := strconv.Atoi(strings.TrimSpace(stored))
		if err != nil || n < 0 || n >= len(r.texts) {
			return grid.Cell{}, fmt.Errorf("row %d names a text %q that does not exist", r.row, stored)
		}
		return grid.Cell{Kind: grid.TextCell, Text: r.texts[n]}, nil
	case "e":
		return grid.Cell{Kind: Failure, Text: stored}, nil
	case "d":
		return isoCell(stored, f), nil
	case "b":
		switch strings.TrimSpace(stored) {
		case "1", "true":
			return grid.Cell{Kind: Truth, Text: "TRUE"}, nil
		case "0", "false":
			return grid.Cell{Kind: Truth, Text: "FALSE"}, nil
		}
	case "", "n":
		if c, ok := r.numberCell(strings.TrimSpace(stored), f); ok {
			return c, nil
		}
	}
	return grid.Cell{}, fmt.Errorf("row %d holds %q, which is no value of the type %q", r.row, stored, kind)
}
