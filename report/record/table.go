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
	room   []report.Cell // for the rows to come
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

// What a table may hold at most: rows as a spreadsheet has them, and columns
// and cells that none comes near.
const (
	mostRows  = 1_048_576
	widest    = 256
	mostCells = 16_000_000
)

// tooBig says that a table would not fit in memory.
type tooBig string

func (e tooBig) Error() string { return string(e) }

// put stores a cell of a data row; column counts from 0. Rows come in order.
func (s *source) put(row, column int, c report.Cell) error {
	if c.Kind == report.TextCell && strings.TrimSpace(c.Text) == "" {
		return nil
	}
	if column >= len(s.Header) || s.Header[column] == "" {
		if n := len(s.strays); n == 0 || s.strays[n-1].row != row {
			s.strays = append(s.strays, stray{row, column, c.Text})
		}
		return nil
	}
	if n := len(s.Rows); n == 0 || s.Rows[n-1].Number != row {
		if row > mostRows || (n+1)*len(s.Header) > mostCells {
			return tooBig("has more rows than a spreadsheet can hold; split the record or thin its logger rows")
		}
		s.Rows = append(s.Rows, report.TableRow{Number: row, Cells: s.cells()})
	}
	s.Rows[len(s.Rows)-1].Cells[column] = c
	return nil
}

// cells is room for a row's cells, cut from a larger piece.
func (s *source) cells() []report.Cell {
	n := len(s.Header)
	if len(s.room) < n {
		s.room = make([]report.Cell, n*min(max(len(s.Rows), 4), 512))
	}
	row := s.room[:n:n]
	s.room = s.room[n:]
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
	for len(s.Header) <= column {
		s.Header = append(s.Header, "")
	}
	s.top, s.Header[column] = row, text
	return nil
}

// blank says whether nothing stands under the header.
func (s *source) blank() bool { return s == nil || len(s.Rows) == 0 && len(s.strays) == 0 }
