package record

import (
	"strings"

	"firstboard/report"
)

// source is a table on its way from a file to the decoder. Its cells hold
// what the file says; the decoder settles their kinds by the schema, so that
// an identifier such as 007 stays text.
type source struct {
	report.Table
	file   string        // base name of the file
	sheet  string        // of a workbook, as it is spelled there; empty for CSV
	top    int           // the number of the header's row
	comma  bool          // numbers may be typed with a decimal comma
	strays []stray       // the first value beyond the header in each row
	merged []block       // of a workbook
	broken []stray       // entries with a line break, of a CSV file
	above  []sample      // the first rows, the header's with them
	spare  []report.Cell // for the rows to come
	left   *room         // of the record that the table is of
}

// stray is a value that stands in no column of the table.
type stray struct {
	row, column int
	text        string
}

// What a cell of a workbook may hold besides the kinds of a table.
const (
	percentCell  = report.TimeCell + 1 + iota // a number; its Text is in percents
	truthCell                                 // TRUE or FALSE
	errorCell                                 // an error value
	noResultCell                              // a formula without a stored result
)

// What may be read at most: rows as a sheet has them, columns that no table
// comes near, and cells for a logger that fills a sheet. A few bytes of an
// archive can unpack to more than any machine holds.
const (
	mostRows  = 1_048_576
	widest    = 256
	mostCells = 8_000_000
)

// room is what is left of the rows and cells that a record may hold.
type room struct{ rows, cells int }

// take takes a row out of the room, or says that it does not fit.
func (r *room) take(cells int) error {
	r.rows, r.cells = r.rows-1, r.cells-cells
	if r.rows < 0 || r.cells < 0 {
		return tooBig("has more rows than fit into one record; split the record or thin its logger rows")
	}
	return nil
}

// tooBig says that a table would not fit in memory.
type tooBig string

func (e tooBig) Error() string { return string(e) }

// sample is one of the first rows as it stands.
type sample struct {
	number int
	texts  []string
}

// samples is how many of the first rows are searched for a header.
const samples = 30

// note keeps what stands in one of the first rows.
func (s *source) note(row, column int, text string) {
	n := len(s.above)
	switch {
	case column >= widest || n == samples && s.above[n-1].number != row:
		return
	case n == 0 || s.above[n-1].number != row:
		s.above = append(s.above, sample{number: row})
		n++
	}
	last := &s.above[n-1]
	for len(last.texts) <= column {
		last.texts = append(last.texts, "")
	}
	last.texts[column] = text
}

// put stores a cell of a data row; column counts from 0. Rows come in order.
func (s *source) put(row, column int, c report.Cell) error {
	if c.Kind == report.TextCell && strings.TrimSpace(c.Text) == "" {
		return nil
	}
	s.note(row, column, c.Text)
	if column >= len(s.Header) || s.Header[column] == "" {
		if n := len(s.strays); n == 0 || s.strays[n-1].row != row {
			s.strays = append(s.strays, stray{row, column, c.Text})
			return s.left.take(1)
		}
		return nil
	}
	if n := len(s.Rows); n == 0 || s.Rows[n-1].Number != row {
		if row > mostRows {
			return tooBig("has more rows than a spreadsheet can hold; split the record or thin its logger rows")
		}
		if err := s.left.take(len(s.Header)); err != nil {
			return err
		}
		s.Rows = append(s.Rows, report.TableRow{Number: row, Cells: s.cells()})
	}
	s.Rows[len(s.Rows)-1].Cells[column] = c
	return nil
}

// cells is room for a row's cells, cut from a larger piece.
func (s *source) cells() []report.Cell {
	n := len(s.Header)
	if len(s.spare) < n {
		s.spare = make([]report.Cell, n*min(max(len(s.Rows), 4), 512))
	}
	row := s.spare[:n:n]
	s.spare = s.spare[n:]
	return row
}

// head stores a header; column counts from 0.
func (s *source) head(row, column int, text string) error {
	if text = strings.TrimSpace(text); text == "" {
		return nil
	}
	if column >= widest {
		return tooBig("has a header beyond column 256; keep the table's own columns")
	}
	s.note(row, column, text)
	for len(s.Header) <= column {
		s.Header = append(s.Header, "")
	}
	s.top, s.Header[column] = row, text
	return nil
}

// blank says whether nothing stands under the header.
func (s *source) blank() bool { return s == nil || len(s.Rows) == 0 && len(s.strays) == 0 }
