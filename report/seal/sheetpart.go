package seal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
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

func (b *book) sheet(part string) (Sheet, error) {
	links, err := b.links(part)
	if err != nil {
		return Sheet{}, err
	}
	s := sheetReader{book: b, part: part, links: links, shared: map[string]sharedFormula{}}
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
