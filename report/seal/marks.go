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
		s.mark(mark...)
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
	s.mark("input check", ranges(attribute(e, "sqref")), attribute(e, "type"), normal(p.First), normal(p.Second),
		seen(attribute(e, "promptTitle")), seen(attribute(e, "prompt")), seen(attribute(e, "error")))
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

// view reads what of a sheet's view hides something: rows that are hidden unless
// they say otherwise, zeros, and rows above a frozen one that nobody can reach.
func (s *sheetReader) view(e xml.StartElement) {
	no := func(name string) bool { v := attribute(e, name); return v == "0" || v == "false" }
	switch e.Name.Local {
	case "sheetFormatPr":
		if yes(attribute(e, "zeroHeight")) {
			s.mark("rows are hidden unless they say otherwise")
		}
	case "sheetView":
		s.top, _ = position(attribute(e, "topLeftCell"))
		if no("showZeros") {
			s.mark("zeros are not shown")
		}
		if yes(attribute(e, "showFormulas")) {
			s.mark("formulas are shown in place of what they give")
		}
	case "pane":
		if strings.HasPrefix(attribute(e, "state"), "frozen") && s.top > 1 {
			s.mark("nothing above row", strconv.Itoa(s.top), "can be reached")
		}
	}
}

// sparkline reads a picture within a cell.
func (s *sheetReader) sparkline(d *xml.Decoder, e xml.StartElement) error {
	var p struct {
		Of string `xml:"f"`
		At string `xml:"sqref"`
	}
	if err := d.DecodeElement(&p, &e); err != nil {
		return fmt.Errorf("the part %s is damaged", s.part)
	}
	s.mark("small chart in", p.At, "of", normal(p.Of))
	return nil
}

// table reads a range that was made a table of the spreadsheet program's own.
func (s *sheetReader) table(part string) error {
	var p struct {
		Name string `xml:"displayName,attr"`
		Ref  string `xml:"ref,attr"`
	}
	if err := s.decode(part, &p); err != nil {
		return err
	}
	s.mark("table", p.Name, "over", p.Ref)
	return nil
}
