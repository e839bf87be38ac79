package workbook

import (
	"errors"
	"firstboard/report/workbook/style"
	"fmt"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"
)

// sheet is a page while it is written.
type sheet struct {
	*binder
	page   page
	sw     *excelize.StreamWriter
	values []any // of the row in hand
	cells  []excelize.Cell
	links  []link
}

type link struct{ from, to string }

// write adds one row, as high as its longest text asks.
func (s *sheet) write(number int, r row) error {
	s.values, s.cells = s.values[:0], s.cells[:0]
	for _, c := range r.cells {
		if err := s.put(number, c); err != nil {
			return err
		}
	}
	at, err := excelize.CoordinatesToCellName(1, number)
	if err != nil {
		return err
	}
	return s.sw.SetRow(at, s.values, excelize.RowOpts{Height: s.page.height(r)})
}

// put lays one cell down.
func (s *sheet) put(number int, c cell) error {
	column := len(s.values)
	if c.value == nil && c.look == (style.Look{}) {
		s.values = append(s.values, make([]any, max(c.across, 1))...)
		return nil
	}
	if text, _ := c.value.(string); tooLong(text) {
		return errors.New("a text is longer than a cell of a workbook holds")
	}
	if s.page.values {
		c.formula = ""
	}
	id, err := s.style(c.look)
	if err != nil {
		return err
	}
	s.lay(excelize.Cell{StyleID: id, Formula: c.formula, Value: c.value})
	for i := 1; i < c.across; i++ {
		s.lay(excelize.Cell{StyleID: id})
	}
	return s.join(number, column, c)
}

// lay adds a cell to the row in hand. The cells are kept from row to row.
func (s *sheet) lay(c excelize.Cell) {
	s.cells = append(s.cells, c)
	s.values = append(s.values, &s.cells[len(s.cells)-1])
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
	for _, t := range s.page.tints {
		if err := s.tint(t); err != nil {
			return err
		}
	}
	for _, v := range s.page.checks {
		if !fits(v) {
			return fmt.Errorf("the input check of %s has more words than a spreadsheet takes", v.Sqref)
		}
		if err := s.file.AddDataValidation(s.page.name, v); err != nil {
			return err
		}
	}
	for _, c := range s.page.charts {
		if err := s.place(c); err != nil {
			return err
		}
	}
	if err := s.filter(); err != nil {
		return err
	}
	if err := s.print(s.page); err != nil {
		return err
	}
	for _, number := range s.page.breaks {
		if err := s.sw.InsertPageBreak(fmt.Sprintf("A%d", number)); err != nil {
			return err
		}
	}
	return s.sw.Flush()
}

// filter lets a reader pick rows by what stands in their cells.
func (s *sheet) filter() error {
	if !s.page.filtered {
		return nil
	}
	corner, err := excelize.CoordinatesToCellName(len(s.page.widths), s.page.last)
	if err != nil {
		return err
	}
	return s.file.AutoFilter(s.page.name, "A1:"+corner, nil)
}

func (s *sheet) tint(t tint) error {
	style := t.look.Style()
	id, err := s.file.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Color: t.look.Ink()}, Fill: style.Fill})
	if err != nil {
		return err
	}
	return s.file.SetConditionalFormat(s.page.name, t.cells, []excelize.ConditionalFormatOptions{
		{Type: "formula", Criteria: t.condition, Format: &id},
	})
}

// fits says whether a spreadsheet takes a check's words: it calls a workbook
// damaged that has more of them.
func fits(check *excelize.DataValidation) bool {
	const most = 255
	for _, s := range []*string{check.Prompt, check.Error, &check.Formula1} {
		if s != nil && len(utf16.Encode([]rune(*s))) > most {
			return false
		}
	}
	return true
}
