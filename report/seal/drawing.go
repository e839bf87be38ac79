package seal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/lists"
)

// drawing reads what lies on a sheet: charts, pictures, shapes and texts, and
// between which cells.
func (s *sheetReader) drawing(part string) error {
	links, err := s.book.links(part)
	if err != nil {
		return err
	}
	var at anchor
	found, err := s.book.drawn(part, func(e element) (string, error) {
		switch e.Name.Local {
		case "oneCellAnchor", "absoluteAnchor", "twoCellAnchor":
			at = anchor{}
		case "from":
			return "", e.decode(&at.from)
		case "to":
			return "", e.decode(&at.to)
		case "chart":
			return at.String() + "\n" + links.target(e.attribute("id")), nil
		case "pic":
			s.Drawn = append(s.Drawn, "picture "+at.String())
		case "sp", "cxnSp":
			s.Drawn = append(s.Drawn, "shape "+at.String())
		}
		return "", nil
	})
	if err != nil {
		return err
	}
	for _, t := range found.said {
		s.Drawn = append(s.Drawn, "text "+t)
	}
	for _, marked := range found.marked {
		where, chart, _ := strings.Cut(marked, "\n")
		drawn, err := s.book.chart(chart)
		if err != nil {
			return err
		}
		s.Drawn = append(s.Drawn, "chart "+where+" "+drawn)
	}
	return nil
}

// anchor is between which cells something lies.
type anchor struct{ from, to corner }

type corner struct {
	Column int   `xml:"col"`
	Beside int64 `xml:"colOff"`
	Row    int   `xml:"row"`
	Below  int64 `xml:"rowOff"`
}

// String is the cells themselves. What ends where a cell begins ends in the one
// before it: programs tell it either way.
func (a anchor) String() string {
	last := a.to
	if last.Beside == 0 && last.Column > a.from.Column {
		last.Column--
	}
	if last.Below == 0 && last.Row > a.from.Row {
		last.Row--
	}
	return fmt.Sprintf("at %s to %s", a.from, last)
}

func (c corner) String() string { return grid.Letters(c.Column+1) + strconv.Itoa(c.Row+1) }

// chart is a chart by its texts, its references, its stored values, the ends of
// its axes, and what is laid over it.
func (b *book) chart(part string) (string, error) {
	found, err := b.drawn(part, func(e element) (string, error) {
		switch e.Name.Local {
		case "max", "min":
			return e.Name.Local + " " + shortNumber(e.attribute("val")), nil
		case "numFmt":
			return wordsOf(e.attribute("formatCode")), nil
		}
		return "", nil
	})
	if err != nil {
		return "", err
	}
	laid, err := b.laidOver(part)
	if err != nil {
		return "", err
	}
	slices.Sort(found.refers)
	slices.Sort(found.marked)
	return strings.Join([]string{
		strings.Join(append(found.said, laid...), " "), "of", strings.Join(slices.Compact(found.refers), " "),
		"showing", strings.Join(append(found.values, found.marked...), " "),
	}, " "), nil
}

// laidOver are the shapes and texts that lie on a chart.
func (b *book) laidOver(chart string) ([]string, error) {
	links, err := b.links(chart)
	if err != nil {
		return nil, err
	}
	var all []string
	for _, part := range links.kinds("chartUserShapes") {
		found, err := b.drawn(part, func(e element) (string, error) {
			if name := e.Name.Local; name == "sp" || name == "pic" || name == "cxnSp" {
				return "shape", nil
			}
			return "", nil
		})
		if err != nil {
			return nil, err
		}
		all = append(append(all, found.marked...), found.said...)
	}
	return all, nil
}

// drawnParts are the texts, references and values of a drawing or a chart, and
// what was marked in it.
type drawnParts struct{ said, refers, values, marked []string }

// drawn goes through a part: texts (t), references (f) and values (v) are kept,
// and what mark gives for an element.
func (b *book) drawn(part string, mark func(element) (string, error)) (found drawnParts, err error) {
	err = b.walk(part, func(e element) error {
		switch e.Name.Local {
		case "t", "f", "v":
			return found.keepText(e)
		}
		marked, err := mark(e)
		if marked != "" {
			found.marked = append(found.marked, marked)
		}
		return err
	})
	return found, err
}

func (p *drawnParts) keepText(e element) error {
	var text string
	if err := e.decode(&text); err != nil {
		return err
	}
	if text = seen(text); text == "" {
		return nil
	}
	switch e.Name.Local {
	case "t":
		p.said = append(p.said, strings.Join(strings.Fields(text), " "))
	case "f":
		p.refers = append(p.refers, normal(text))
	case "v":
		p.values = append(p.values, shortNumber(text))
	}
	return nil
}

// shortNumber is a number at 9 figures, which every program keeps.
func shortNumber(text string) string {
	x, err := strconv.ParseFloat(text, 64)
	return lists.If(err == nil, strconv.FormatFloat(x, 'g', 9, 64), text)
}
