package writer

import (
	"cmp"
	"errors"
	"fmt"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"

	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/style"
)

// sheet is a page while it is written.
type sheet struct {
	*binder
	page   Page
	sw     *excelize.StreamWriter
	values []any // of the row in hand
	cells  []excelize.Cell
}

// write adds one row, as high as its longest text asks.
func (s *sheet) write(number int, r Row) error {
	s.values, s.cells = s.values[:0], s.cells[:0]
	if err := lists.Try(r.Cells, func(c Cell) error { return s.put(number, c) }); err != nil {
		return err
	}
	return s.sw.SetRow(formula.Name(1, number), s.values, excelize.RowOpts{Height: s.page.height(r)})
}

// put lays one cell down.
func (s *sheet) put(number int, c Cell) error {
	column := len(s.values) + 1
	if c.Value == nil && c.Look == (style.Look{}) {
		s.values = append(s.values, make([]any, max(c.Across, 1))...)
		return nil
	}
	if text, _ := c.Value.(string); TooLong(text) {
		return errors.New("a text is longer than a cell of a workbook holds")
	}
	if s.bare {
		c.Formula = ""
	}
	id, err := s.style(c.Look)
	if err != nil {
		return err
	}
	s.lay(excelize.Cell{StyleID: id, Formula: c.Formula, Value: c.Value})
	for i := 1; i < c.Across; i++ {
		s.lay(excelize.Cell{StyleID: id})
	}
	return s.join(number, column, c)
}

// lay adds a cell to the row in hand. The cells are kept from row to row.
func (s *sheet) lay(c excelize.Cell) {
	s.cells = append(s.cells, c)
	s.values = append(s.values, &s.cells[len(s.cells)-1])
}

// join merges a cell across its columns and makes it lead where it does.
func (s *sheet) join(number, column int, c Cell) error {
	from := formula.Name(column, number)
	if c.link != "" {
		if err := s.file.SetCellHyperLink(s.page.Name, from, c.link, "Location"); err != nil {
			return err
		}
	}
	if c.Across < 2 {
		return nil
	}
	return s.sw.MergeCell(from, formula.Name(column+c.Across-1, number))
}

// close sets all that stands after the rows.
func (s *sheet) close() error {
	err := cmp.Or(lists.Try(s.page.Tints, s.tint), lists.Try(s.page.Checks, s.check), lists.Try(s.page.Charts, s.place),
		s.filter(), s.print(s.page), lists.Try(s.page.Breaks, func(number int) error {
			return s.sw.InsertPageBreak(fmt.Sprintf("A%d", number))
		}))
	if err != nil {
		return err
	}
	return s.sw.Flush()
}

func (s *sheet) check(v *excelize.DataValidation) error {
	if !fits(v) {
		return fmt.Errorf("the input check of %s has more words than a spreadsheet takes", v.Sqref)
	}
	return s.file.AddDataValidation(s.page.Name, v)
}

// filter lets a reader pick rows by what stands in their cells.
func (s *sheet) filter() error {
	if !s.page.Filtered {
		return nil
	}
	return s.file.AutoFilter(s.page.Name, "A1:"+formula.Name(len(s.page.Widths), s.page.Last), nil)
}

// tint colors cells by a condition, which is a formula.
func (s *sheet) tint(t Tint) error {
	if s.bare {
		return nil
	}
	look := style.Look{Tone: t.Tone}
	id, err := s.file.NewConditionalStyle(&excelize.Style{
		Font: &excelize.Font{Color: look.Ink()}, Fill: look.Style().Fill,
	})
	if err != nil {
		return err
	}
	return s.file.SetConditionalFormat(s.page.Name, t.Cells, []excelize.ConditionalFormatOptions{
		{Type: "formula", Criteria: t.Condition, Format: &id},
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
