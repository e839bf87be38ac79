package workbook

import (
	"errors"
	"fmt"

	"github.com/xuri/excelize/v2"
)

// sheet is a page while it is written.
type sheet struct {
	*binder
	page   page
	sw     *excelize.StreamWriter
	values []any // of the row in hand
	links  []link
}

type link struct{ from, to string }

// write adds one row, as high as its longest text asks.
func (s *sheet) write(number int, r row) error {
	s.values = s.values[:0]
	tall := r.least
	for _, c := range r.cells {
		h, err := s.put(number, c)
		if err != nil {
			return err
		}
		tall = max(tall, h)
	}
	at, err := excelize.CoordinatesToCellName(1, number)
	if err != nil {
		return err
	}
	return s.sw.SetRow(at, s.values, excelize.RowOpts{Height: tall})
}

// put lays one cell down and tells the height it needs, 0 where a line does.
func (s *sheet) put(number int, c cell) (float64, error) {
	column := len(s.values)
	if c.value == nil && c.look == (look{}) {
		s.values = append(s.values, make([]any, max(c.across, 1))...)
		return 0, nil
	}
	text, _ := c.value.(string)
	if tooLong(text) {
		return 0, errors.New("a text is longer than a cell of a workbook holds")
	}
	id, err := s.style(c.look)
	if err != nil {
		return 0, err
	}
	s.values = append(s.values, excelize.Cell{StyleID: id, Value: c.value})
	for i := 1; i < c.across; i++ {
		s.values = append(s.values, excelize.Cell{StyleID: id})
	}
	return s.need(c, text, column), s.join(number, column, c)
}

// need is the height of a text in its columns, 0 where one plain line does.
func (s *sheet) need(c cell, text string, column int) float64 {
	if text == "" {
		return 0
	}
	room := 0.0
	for i := column; i < min(column+max(c.across, 1), len(s.page.widths)); i++ {
		room += s.page.widths[i]
	}
	points := c.look.points()
	room *= 10 / points
	if c.look.bold || c.look.tone != plain {
		room *= 0.9
	}
	n := lines(text, room)
	if n == 1 && c.look.size == normal {
		return 0
	}
	return height(n, points)
}

// join merges a cell across its columns and notes where it leads.
func (s *sheet) join(number, column int, c cell) error {
	if c.across < 2 && c.link == "" {
		return nil
	}
	from, err := excelize.CoordinatesToCellName(column+1, number)
	if err != nil {
		return err
	}
	if c.link != "" {
		s.links = append(s.links, link{from, c.link})
	}
	if c.across < 2 {
		return nil
	}
	to, err := excelize.CoordinatesToCellName(column+c.across, number)
	if err != nil {
		return err
	}
	return s.sw.MergeCell(from, to)
}

// close sets all that stands after the rows.
func (s *sheet) close() error {
	for _, l := range s.links {
		if err := s.file.SetCellHyperLink(s.page.name, l.from, l.to, "Location"); err != nil {
			return err
		}
	}
	if err := s.print(s.page); err != nil {
		return err
	}
	if s.page.head > 0 {
		err := s.file.SetDefinedName(&excelize.DefinedName{
			Name: "_xlnm.Print_Titles", Scope: s.page.name,
			RefersTo: fmt.Sprintf("%s!$%d:$%d", quoted(s.page.name), s.page.head, s.page.head),
		})
		if err != nil {
			return err
		}
	}
	return s.sw.Flush()
}
