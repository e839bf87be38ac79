package sheet

import (
	"fmt"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/untrusted"
)

// Table is a table on its way from a file to the decoder. Its cells hold
// what the file says; the decoder settles their kinds by the schema, so that
// an identifier such as 007 stays text.
type Table struct {
	grid.Table
	File   string   // base name of the file
	Sheet  string   // of a workbook, as it is spelled there; empty for CSV
	Comma  bool     // numbers may be typed with a decimal comma
	Strays []Stray  // the first value beyond the header in each row
	Merged []Block  // of a workbook
	Broken []Stray  // entries with a line break, of a CSV file
	Above  []Sample // the first rows, the header's with them

	top   int         // the number of the header's row
	spare []grid.Cell // for the rows to come
	left  *Room       // of the record that the table is of
}

// Stray is an entry that has no place in the table. Its column counts from 0.
type Stray struct {
	Row, Column int
	Text        string
}

// Sample is one of the first rows as it stands.
type Sample struct {
	Number int
	Texts  []string
}

// What a cell of a workbook may hold besides the kinds of a table.
const (
	Percent  = grid.TimeCell + 1 + iota // a number; its Text is in percents
	Truth                               // TRUE or FALSE
	Failure                             // an error value
	NoResult                            // a formula without a stored result
)

// What may be read at most: rows as a sheet has them, columns that no table
// comes near, and cells for a logger that fills a sheet. A few bytes of an
// archive can unpack to more than any machine holds.
const (
	MostRows  = 1_048_576
	widest    = 256
	MostCells = 8_000_000
)

// Room is what is left of the rows, cells and bytes that a record may hold.
type Room struct{ rows, cells, bytes int }

// NewRoom is the room of an empty record.
func NewRoom() *Room { return &Room{MostRows, MostCells, untrusted.MostBytes} }

// hold takes a text out of the room: a workbook may name one text in many cells.
func (r *Room) hold(text string) error {
	if r.bytes -= len(text); r.bytes < 0 {
		return TooBig(fmt.Sprintf("holds over %d MB of text; clear what is no reading, or split the record",
			untrusted.MostBytes>>20))
	}
	return nil
}

// Take takes a row out of the room, or says that it does not fit.
func (r *Room) Take(cells int) error {
	r.rows, r.cells = r.rows-1, r.cells-cells
	if r.rows < 0 || r.cells < 0 {
		return TooBig("has more rows than fit into one record; split the record or thin its logger rows")
	}
	return nil
}

// TooBig says that a table would not fit in memory.
type TooBig string

func (e TooBig) Error() string { return string(e) }

// samples is how many of the first rows are searched for a header.
const samples = 30

// note keeps what stands in one of the first rows.
func (s *Table) note(row, column int, text string) {
	n := len(s.Above)
	switch {
	case column >= widest || n == samples && s.Above[n-1].Number != row:
		return
	case n == 0 || s.Above[n-1].Number != row:
		s.Above = append(s.Above, Sample{Number: row})
		n++
	}
	last := &s.Above[n-1]
	for len(last.Texts) <= column {
		last.Texts = append(last.Texts, "")
	}
	last.Texts[column] = text
}

// put stores a cell of a data row; column counts from 0. Rows come in order.
func (s *Table) put(row, column int, c grid.Cell) error {
	if c.Kind == grid.TextCell && strings.TrimSpace(c.Text) == "" {
		return nil
	}
	if err := s.left.hold(c.Text); err != nil {
		return err
	}
	s.note(row, column, c.Text)
	if column >= len(s.Header) || s.Header[column] == "" {
		if n := len(s.Strays); n == 0 || s.Strays[n-1].Row != row {
			s.Strays = append(s.Strays, Stray{row, column, c.Text})
			return s.left.Take(1)
		}
		return nil
	}
	if n := len(s.Rows); n == 0 || s.Rows[n-1].Number != row {
		if row > MostRows {
			return TooBig("has more rows than a spreadsheet can hold; split the record or thin its logger rows")
		}
		if err := s.left.Take(len(s.Header)); err != nil {
			return err
		}
		s.Rows = append(s.Rows, grid.Row{Number: row, Cells: s.cells()})
	}
	s.Rows[len(s.Rows)-1].Cells[column] = c
	return nil
}

// cells is room for a row's cells, cut from a larger piece.
func (s *Table) cells() []grid.Cell {
	n := len(s.Header)
	if len(s.spare) < n {
		s.spare = make([]grid.Cell, n*min(max(len(s.Rows), 4), 512))
	}
	row := s.spare[:n:n]
	s.spare = s.spare[n:]
	return row
}

// head stores a header; column counts from 0.
func (s *Table) head(row, column int, text string) error {
	if text = strings.TrimSpace(text); text == "" {
		return nil
	}
	if column >= widest {
		return TooBig("has a header beyond column 256; keep the table's own columns")
	}
	s.note(row, column, text)
	for len(s.Header) <= column {
		s.Header = append(s.Header, "")
	}
	s.top, s.Header[column] = row, text
	return nil
}

// Blank says whether nothing stands under the header.
func (s *Table) Blank() bool { return s == nil || len(s.Rows) == 0 && len(s.Strays) == 0 }

// Take takes a row that is added to the table out of the record's room.
func (s *Table) Take(cells int) error { return s.left.Take(cells) }
