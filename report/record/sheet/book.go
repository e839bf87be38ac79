package sheet

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// Book is a workbook by its sheets, whatever they hold.
type Book struct {
	workbook
	sheets []listed
}

// OpenBook opens the workbook at path for any of its sheets.
func OpenBook(path string) (*Book, error) {
	name := filepath.Base(path)
	data, err := load(name, path)
	if err != nil {
		return nil, err
	}
	p, err := openPack(name, data)
	if err != nil {
		return nil, err
	}
	b := &Book{workbook: workbook{pack: p}}
	b.sheets, err = b.open()
	return b, err
}

// Names are the names of its sheets, in order.
func (b *Book) Names() []string {
	var names []string
	for _, s := range b.sheets {
		names = append(names, s.Name)
	}
	return names
}

// GridRow is what a row of a sheet shows, from its first cell on, by the
// values that are stored.
type GridRow struct {
	Number int
	Texts  []string
}

// gridWidth is how many cells of a row are read: more than any sheet of a
// report has.
const gridWidth = 30

// Grid is a sheet row by row, blank ones left out; without the sheet it is
// empty. Such a sheet has no header in row 1, so every column is given a blank
// one, and what row 1 holds stands there after the reading.
func (b *Book) Grid(name string) ([]GridRow, error) {
	at := slices.IndexFunc(b.sheets, func(s listed) bool { return evidence.Same(s.Name, name) })
	if at < 0 || b.partOf(b.sheets[at]) == "" {
		return nil, nil
	}
	src := &Table{File: b.name, Sheet: b.sheets[at].Name, left: NewRoom()}
	src.Header = slices.Repeat([]string{" "}, gridWidth)
	if err := b.read(src, b.partOf(b.sheets[at])); err != nil {
		return nil, err
	}
	var rows []GridRow
	if src.top == 1 {
		first := GridRow{Number: 1}
		for _, text := range src.Header[:gridWidth] {
			first.Texts = append(first.Texts, strings.TrimSpace(text))
		}
		rows = append(rows, first)
	}
	for _, r := range src.Rows {
		row := GridRow{r.Number, make([]string, gridWidth)}
		for i, c := range r.Cells[:gridWidth] {
			row.Texts[i] = shownText(c)
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// shownText is a stored value as its cell shows it.
func shownText(c report.Cell) string {
	switch c.Kind {
	case report.NumberCell:
		return Padded(c.Text, c.Places)
	case Percent:
		return c.Text + "%"
	case NoResult: // a formula that gives the empty text stores nothing
		return ""
	}
	return c.Text
}

// Damaged refuses the workbook for what somebody did to a sheet; row is 0 for
// no row of it.
func (b *Book) Damaged(sheet string, row int, err error) error {
	at := fmt.Sprintf("%s %q", b.name, sheet)
	if row > 0 {
		at += fmt.Sprintf(" row %d", row)
	}
	return fmt.Errorf("%s: %w; somebody has changed the sealed copy: compare the workbook with an earlier copy of it", at, err)
}
