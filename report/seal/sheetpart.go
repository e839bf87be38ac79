package seal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report/grid"
)

// sheetReader reads one sheet, element by element.
type sheetReader struct {
	*book
	Sheet
	part   string
	links  links
	shared map[string]sharedFormula
	row    int // the number of the one in hand
	column int // of the latest cell in it
	top    int // the row that the view begins at
}

type sharedFormula struct {
	at, formula string
}

func (b *book) sheet(part string) (Sheet, error) {
	links, err := b.links(part)
	if err != nil {
		return Sheet{}, err
	}
	s := sheetReader{book: b, part: part, links: links, shared: map[string]sharedFormula{}}
	s.Cells = map[string]Cell{}
	if err := b.walk(part, s.element); err != nil {
		return Sheet{}, err
	}
	if err := s.beside(); err != nil {
		return Sheet{}, err
	}
	slices.Sort(s.Marks)
	slices.Sort(s.Merges)
	slices.Sort(s.Drawn)
	return s.Sheet, nil
}

func (s *sheetReader) element(e element) error {
	if yes(e.attribute("ph")) {
		s.mark("how its letters are spoken is shown in", e.Name.Local, e.attribute("r")+e.attribute("min"))
	}
	switch e.Name.Local {
	case "row":
		return s.newRow(e)
	case "col":
		if gone(e, "width", leastWidth) {
			s.Columns = append(s.Columns, e.attribute("min")+" to "+e.attribute("max"))
		}
	case "c":
		return s.cell(e)
	case "mergeCell":
		s.Merges = append(s.Merges, e.attribute("ref"))
	case "conditionalFormatting":
		return s.conditional(e)
	case "dataValidation":
		return s.inputCheck(e)
	case "hyperlink":
		to := e.attribute("location") + s.links.target(e.attribute("id"))
		s.mark("link", e.attribute("ref"), "to", normal(strings.TrimPrefix(to, "#")))
	case "oddHeader", "oddFooter", "evenHeader", "evenFooter", "firstHeader", "firstFooter":
		return s.margin(e)
	case "drawing":
		return s.drawing(s.links.target(e.attribute("id")))
	case "sheetFormatPr", "sheetView", "pane":
		s.view(e)
	case "tablePart":
		return s.table(s.links.target(e.attribute("id")))
	case "picture":
		s.mark("a picture behind the cells")
	case "sparkline":
		return s.sparkline(e)
	}
	return nil
}

// mark keeps something that is on the sheet beside its cells.
func (s *sheetReader) mark(words ...string) { s.Marks = append(s.Marks, strings.Join(words, " ")) }

// A row of fewer points, and a column of fewer letters, is one that nobody sees.
const (
	leastHeight = 4
	leastWidth  = 1
)

// gone says whether a row or a column shows nothing.
func gone(e element, size string, least float64) bool {
	x, err := strconv.ParseFloat(e.attribute(size), 64)
	return yes(e.attribute("hidden")) || err == nil && x < least
}

// newRow begins a row. One without a number follows the one before it.
func (s *sheetReader) newRow(e element) error {
	s.row, s.column = s.row+1, 0
	if r := e.attribute("r"); r != "" {
		n, err := strconv.Atoi(r)
		if err != nil || n < s.row {
			return fmt.Errorf("the part %s has the row %q in the wrong place", s.part, r)
		}
		s.row = n
	}
	if gone(e, "ht", leastHeight) {
		s.Rows = append(s.Rows, strconv.Itoa(s.row))
	}
	return nil
}

// place is where a cell stands. One that does not say it follows the one before
// it; one out of order would be seen by one program and not by another.
func (s *sheetReader) place(e element) (string, error) {
	at := e.attribute("r")
	if at == "" {
		s.column++
		return grid.Letters(s.column) + strconv.Itoa(s.row), nil
	}
	row, column := position(at)
	if row != s.row || column <= s.column {
		return "", fmt.Errorf("the part %s has the cell %q in the wrong place", s.part, at)
	}
	s.column = column
	return at, nil
}

type cellPart struct {
	Formula struct {
		Shared string `xml:"si,attr"`
		Kind   string `xml:"t,attr"`
		Text   string `xml:",chardata"`
	} `xml:"f"`
	Value  *string  `xml:"v"`
	Inline richText `xml:"is"`
}

func (s *sheetReader) cell(e element) error {
	var p cellPart
	if err := e.decode(&p); err != nil {
		return err
	}
	at, err := s.place(e)
	if err != nil {
		return err
	}
	c := Cell{Formula: normal(s.formula(at, p))}
	if err := s.value(&c, e.attribute("t"), p); err != nil {
		return err
	}
	if c == (Cell{}) {
		return nil
	}
	style, _ := strconv.Atoi(e.attribute("s")) // the first where none is told
	if style >= 0 && style < len(s.formats) {
		c.Format = s.formats[style]
	}
	s.Cells[at] = c
	if s.book.cells++; s.book.cells > mostCells {
		return fmt.Errorf("the part %s has more cells than a record and its copy", s.part)
	}
	return nil
}

func (s *sheetReader) formula(at string, p cellPart) string {
	f := p.Formula
	if f.Kind != "shared" {
		return f.Text
	}
	if f.Text != "" {
		s.shared[f.Shared] = sharedFormula{at, f.Text}
		return f.Text
	}
	from := s.shared[f.Shared]
	if from.at == "" {
		return "shared formula " + f.Shared
	}
	row, column := position(at)
	row0, column0 := position(from.at)
	return shifted(from.formula, row-row0, column-column0)
}

// position is the row and the column of a cell, from 1.
func position(at string) (row, column int) {
	n := strings.IndexAny(at, "0123456789")
	if n < 0 {
		return 0, 0
	}
	row, _ = strconv.Atoi(at[n:])
	return row, columnNumber(at[:n])
}

func (s *sheetReader) value(c *Cell, kind string, p cellPart) error {
	switch {
	case kind == "inlineStr":
		c.Kind, c.Value = "s", string(p.Inline)
	case p.Value == nil:
	case kind == "s":
		n, err := strconv.Atoi(*p.Value)
		if err != nil || n < 0 || n >= len(s.texts) {
			return fmt.Errorf("the part %s refers to a text that is missing", s.part)
		}
		c.Kind, c.Value = "s", s.texts[n]
	case kind == "str":
		c.Kind, c.Value = "s", *p.Value
	case kind == "b", kind == "e":
		c.Kind, c.Value = kind, *p.Value
	default:
		c.Kind, c.Value = "n", *p.Value
	}
	if c.Kind == "s" {
		if c.Value = seen(c.Value); c.Value == "" {
			c.Kind = ""
		}
	}
	return nil
}
