package seal

import (
	"encoding/xml"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// conditional reads the rules that change how cells look.
func (s *sheetReader) conditional(d *xml.Decoder, e xml.StartElement) error {
	var p struct {
		Rules []struct {
			Kind     string   `xml:"type,attr"`
			Operator string   `xml:"operator,attr"`
			Text     string   `xml:"text,attr"`
			Look     string   `xml:"dxfId,attr"`
			Formulas []string `xml:"formula"`
		} `xml:"cfRule"`
	}
	if err := d.DecodeElement(&p, &e); err != nil {
		return fmt.Errorf("the part %s is damaged", s.part)
	}
	for _, r := range p.Rules {
		says := ""
		if n, err := strconv.Atoi(r.Look); err == nil && n < len(s.looks) {
			says = s.looks[n]
		}
		mark := []string{"conditional format", ranges(attribute(e, "sqref")), r.Kind, r.Operator, r.Text, says}
		for _, f := range r.Formulas {
			mark = append(mark, normal(f))
		}
		s.Marks = append(s.Marks, strings.Join(mark, " "))
	}
	return nil
}

// ranges are the ranges of a list in one order.
func ranges(list string) string {
	all := strings.Fields(list)
	slices.Sort(all)
	return strings.Join(all, " ")
}

// inputCheck reads what a cell asks of who types into it.
func (s *sheetReader) inputCheck(d *xml.Decoder, e xml.StartElement) error {
	var p struct {
		First  string `xml:"formula1"`
		Second string `xml:"formula2"`
	}
	if err := d.DecodeElement(&p, &e); err != nil {
		return fmt.Errorf("the part %s is damaged", s.part)
	}
	s.Marks = append(s.Marks, strings.Join([]string{
		"input check", ranges(attribute(e, "sqref")), attribute(e, "type"), normal(p.First), normal(p.Second),
		seen(attribute(e, "promptTitle")), seen(attribute(e, "prompt")), seen(attribute(e, "error")),
	}, " "))
	return nil
}

// margin reads a header or a footer without its fonts.
func (s *sheetReader) margin(d *xml.Decoder, e xml.StartElement) error {
	var text string
	if err := d.DecodeElement(&text, &e); err != nil {
		return fmt.Errorf("the part %s is damaged", s.part)
	}
	text = regexp.MustCompile(`&"[^"]*"|&K[0-9A-F]{6}|&[0-9]+`).ReplaceAllString(text, "")
	if text = seen(text); text != "" {
		s.Margins = append(s.Margins, e.Name.Local+" "+text)
	}
	return nil
}

// comments reads the notes on cells.
func (s *sheetReader) comments() error {
	for _, part := range s.links {
		if !strings.Contains(strings.ToLower(part), "comments") || s.parts[part] == nil {
			continue
		}
		var p struct {
			Notes []struct {
				At   string   `xml:"ref,attr"`
				Text richText `xml:"text"`
				Said string   `xml:"-"`
			} `xml:"commentList>comment"`
			Threads []struct {
				At   string `xml:"ref,attr"`
				Text string `xml:"text"`
			} `xml:"threadedComment"`
		}
		if err := s.decode(part, &p); err != nil {
			return err
		}
		for _, n := range p.Notes {
			s.Marks = append(s.Marks, "comment on "+n.At+": "+seen(n.Text.String()))
		}
		for _, n := range p.Threads {
			s.Marks = append(s.Marks, "comment on "+n.At+": "+seen(n.Text))
		}
	}
	return nil
}
