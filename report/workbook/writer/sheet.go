package writer

import (
	"cmp"
	"errors"
	"fmt"
	"strconv"
	"strings"
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

// Text is a boxed text.
func Text(s string) Cell { return Cell{Value: s, Look: style.Look{Boxed: true}} }

// Line is a row of one cell across so many columns.
func Line(value any, l style.Look, across int) Row {
	return Row{Cells: []Cell{{Value: value, Look: l, Across: across}}}
}

// Header is a row of headings.
func Header(names ...string) Row {
	return Row{Cells: lists.Each(names, func(n string) Cell { return Cell{Value: n, Look: style.Look{Tone: style.Heading}} })}
}

// Figure is a number as it was typed where the text is one and not too long
// for its column, else the text.
func Figure(s string) Cell {
	const longest = 9
	c := Text(s)
	if x, places, ok := PlainNumber(s); ok && len(s) <= longest {
		c.Value, c.Look.Form, c.Look.Places = x, style.Number, places
	}
	return c
}

// PlainNumber reads a plain decimal that a spreadsheet can hold without
// losing a digit, and counts its decimals.
func PlainNumber(s string) (x float64, places int, ok bool) {
	digits := strings.TrimLeft(s, "+-")
	if len(s)-len(digits) > 1 || digits == "" || strings.Trim(digits, "0123456789.") != "" {
		return 0, 0, false
	}
	whole, fraction, _ := strings.Cut(digits, ".")
	const exact, most = 15, 30
	if len(strings.TrimLeft(whole+fraction, "0")) > exact || len(fraction) > most {
		return 0, 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, len(fraction), err == nil
}

// Leading makes a cell lead somewhere. Some spreadsheets never break a linked
// text, so one that is longer than a line of its column leads nowhere.
func (c Cell) Leading(to string, width float64) Cell {
	s, _ := c.Value.(string)
	if to != "" && c.Look.Lines(s, width) == 1 {
		c.link, c.Look.Link = to, true
	}
	return c
}

// Decimals are the places a number needs, six at most.
func Decimals(x float64) int {
	const most = 6
	_, fraction, _ := strings.Cut(strings.TrimRight(strconv.FormatFloat(x, 'f', most, 64), "0"), ".")
	return len(fraction)
}

// The heights of rows of one line, in points.
const (
	tightLine = 11.5 // in print
	oneLine   = 15   // of a row whose height is left alone
)

// height is that of a row on its page, in points; 0 for the usual height.
func (p Page) height(r Row) float64 {
	if p.Tight {
		r.Least = max(r.Least, tightLine)
	}
	return r.height(p.Widths)
}

// Tall is how high a row stands, at its usual height or higher.
func (r Row) Tall(widths []float64) float64 { return max(r.height(widths), oneLine) }

// height is what a row needs in columns of these widths, in points; 0 where
// the usual height does.
func (r Row) height(widths []float64) float64 {
	tall, column := r.Least, 0
	for _, c := range r.Cells {
		next := column + max(c.Across, 1)
		text, _ := c.Value.(string)
		under := widths[min(column, len(widths)):min(next, len(widths))]
		tall, column = max(tall, c.Look.Height(text, Total(under))), next
	}
	return tall
}
