package seal

import (
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// drawing reads what lies on a sheet: charts, pictures and texts.
func (s *sheetReader) drawing(part string) error {
	links, err := s.book.links(part)
	if err != nil {
		return err
	}
	texts, err := s.book.walk(part, func(e xml.StartElement) string {
		switch e.Name.Local {
		case "chart":
			return links[attribute(e, "id")]
		case "blip":
			s.Drawn = append(s.Drawn, "picture")
		}
		return ""
	})
	if err != nil {
		return err
	}
	for _, t := range texts.said {
		s.Drawn = append(s.Drawn, "text "+t)
	}
	for _, chart := range texts.marked {
		drawn, err := s.book.chart(chart)
		if err != nil {
			return err
		}
		s.Drawn = append(s.Drawn, drawn)
	}
	return nil
}

// chart is a chart by its texts, its references and its stored values.
func (b *book) chart(part string) (string, error) {
	found, err := b.walk(part, func(xml.StartElement) string { return "" })
	if err != nil {
		return "", err
	}
	slices.Sort(found.refers)
	return strings.Join([]string{
		"chart", strings.Join(found.said, " "), "of", strings.Join(slices.Compact(found.refers), " "),
		"showing", strings.Join(found.values, " "),
	}, " "), nil
}

// drawnParts are the texts, references and values of a drawing or a chart, and
// what was marked in it.
type drawnParts struct{ said, refers, values, marked []string }

// walk goes through a part: texts (t), references (f) and values (v) are kept,
// and what mark gives for an element.
func (b *book) walk(part string, mark func(xml.StartElement) string) (drawnParts, error) {
	var found drawnParts
	r, err := b.open(part)
	if err != nil {
		return found, err
	}
	defer r.Close()
	d := xml.NewDecoder(r)
	for {
		token, err := d.Token()
		if err == io.EOF {
			return found, nil
		}
		if err != nil {
			return found, fmt.Errorf("the part %s is damaged", part)
		}
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if m := mark(e); m != "" {
			found.marked = append(found.marked, m)
		}
		if err := found.keep(d, e); err != nil {
			return found, fmt.Errorf("the part %s is damaged", part)
		}
	}
}

func (p *drawnParts) keep(d *xml.Decoder, e xml.StartElement) error {
	switch e.Name.Local {
	case "t", "f", "v":
	default:
		return nil
	}
	var text string
	if err := d.DecodeElement(&text, &e); err != nil {
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
	if err != nil {
		return text
	}
	return strconv.FormatFloat(x, 'g', 9, 64)
}
