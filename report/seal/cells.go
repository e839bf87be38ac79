package seal

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report/grid"
)

// Address is where a cell stands on its sheet: row and column from 1.
type Address struct{ Row, Column int32 }

// String is the address as spreadsheets write it, such as B3.
func (a Address) String() string { return grid.Letters(int(a.Column)) + strconv.Itoa(int(a.Row)) }

func byPlace(a, b Address) int {
	return cmp.Or(cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
}

// addressed is the address that a text gives, of no row where it gives none.
func addressed(text string) Address {
	n := strings.IndexFunc(text, func(r rune) bool { return r >= '0' && r <= '9' })
	if n < 0 {
		return Address{}
	}
	row, _ := strconv.ParseInt(text[n:], 10, 32)
	return Address{int32(row), int32(columnNumber(text[:n]))}
}

// place is where a cell stands. One that does not say it follows the one before
// it; one out of order would be seen by one program and not by another.
func (s *sheetReader) place(e element) (Address, error) {
	next := Address{int32(s.row), int32(s.column + 1)}
	if told := e.attribute("r"); told != "" {
		at := addressed(told)
		if at.Row != next.Row || at.Column < next.Column {
			return at, fmt.Errorf("the part %s has the cell %q in the wrong place", s.part, told)
		}
		next = at
	}
	s.column = int(next.Column)
	return next, nil
}

// cellPart is what stands in a cell: a formula, what is stored, and a text of its own.
type cellPart struct {
	formula, kind, shared string
	value                 string
	stored                bool
	inline                richText
}

// content reads a cell to its end.
func (s *sheetReader) content(e element) (p cellPart, err error) {
	for {
		token, err := e.rest.Token()
		if err != nil {
			return p, damaged(s.part)
		}
		inner, begins := token.(xml.StartElement)
		if _, ends := token.(xml.EndElement); ends {
			return p, nil
		} else if !begins {
			continue
		}
		one := element{inner, e.rest, s.part}
		switch name := inner.Name.Local; name {
		case "f":
			p.kind, p.shared = one.attribute("t"), one.attribute("si")
			p.formula, err = one.text()
		case "v":
			p.stored = true
			p.value, err = one.text()
		case "is":
			err = p.inline.UnmarshalXML(e.rest, inner)
		default:
			err = e.rest.Skip()
		}
		if err != nil {
			return p, damaged(s.part)
		}
	}
}

func (s *sheetReader) cell(e element) error {
	p, err := s.content(e)
	if err != nil {
		return err
	}
	at, err := s.place(e)
	if err != nil {
		return err
	}
	c := Cell{At: at, Formula: normal(s.formula(at, p))}
	if err := s.value(&c, e.attribute("t"), p); err != nil {
		return err
	}
	if c == (Cell{At: at}) {
		return nil
	}
	style, _ := strconv.Atoi(e.attribute("s")) // the first where none is told
	if style >= 0 && style < len(s.formats) {
		c.Format = s.formats[style]
	}
	s.Cells = append(s.Cells, c)
	if s.book.cells++; s.book.cells > mostCells {
		return fmt.Errorf("the part %s has more cells than a record and its copy", s.part)
	}
	return nil
}

func (s *sheetReader) formula(at Address, p cellPart) string {
	if p.kind != "shared" {
		return p.formula
	}
	if p.formula != "" {
		s.shared[p.shared] = sharedFormula{at, p.formula}
		return p.formula
	}
	from, known := s.shared[p.shared]
	if !known {
		return "shared formula " + p.shared
	}
	return shifted(from.formula, int(at.Row-from.at.Row), int(at.Column-from.at.Column))
}

func (s *sheetReader) value(c *Cell, kind string, p cellPart) error {
	switch {
	case kind == "inlineStr":
		c.Kind, c.Value = "s", string(p.inline)
	case !p.stored:
	case kind == "s":
		n, err := strconv.Atoi(p.value)
		if err != nil || n < 0 || n >= len(s.texts) {
			return fmt.Errorf("the part %s refers to a text that is missing", s.part)
		}
		c.Kind, c.Value = "s", s.texts[n]
	case kind == "str":
		c.Kind, c.Value = "s", p.value
	case kind == "b", kind == "e":
		c.Kind, c.Value = kind, p.value
	case p.value != "": // an empty result is none: some programs write one behind each formula
		c.Kind, c.Value = "n", p.value
	}
	if c.Kind == "s" {
		if c.Value = seen(c.Value); c.Value == "" {
			c.Kind = ""
		}
	}
	return nil
}

type sharedFormula struct {
	at      Address
	formula string
}

// cell is what stands at an address.
func (s Sheet) cell(at Address) Cell {
	i, found := slices.BinarySearchFunc(s.Cells, at, func(c Cell, at Address) int { return byPlace(c.At, at) })
	if !found {
		return Cell{}
	}
	return s.Cells[i]
}
