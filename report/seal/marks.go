package seal

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// conditional reads the rules that change how cells look.
func (s *sheetReader) conditional(e element) error {
	var p struct {
		Rules []struct {
			Kind     string   `xml:"type,attr"`
			Operator string   `xml:"operator,attr"`
			Text     string   `xml:"text,attr"`
			Look     string   `xml:"dxfId,attr"`
			Formulas []string `xml:"formula"`
		} `xml:"cfRule"`
	}
	if err := e.decode(&p); err != nil {
		return err
	}
	for _, r := range p.Rules {
		says := ""
		if n, err := strconv.Atoi(r.Look); err == nil && n < len(s.looks) {
			says = s.looks[n]
		}
		mark := []string{"conditional format", ranges(e.attribute("sqref")), r.Kind, r.Operator, r.Text, says}
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
func (s *sheetReader) inputCheck(e element) error {
	var p struct {
		First  string `xml:"formula1"`
		Second string `xml:"formula2"`
	}
	if err := e.decode(&p); err != nil {
		return err
	}
	s.mark("input check", ranges(e.attribute("sqref")), e.attribute("type"), normal(p.First), normal(p.Second),
		seen(e.attribute("promptTitle")), seen(e.attribute("prompt")), seen(e.attribute("error")))
	return nil
}

// margin reads a header or a footer without its fonts.
func (s *sheetReader) margin(e element) error {
	var text string
	if err := e.decode(&text); err != nil {
		return err
	}
	text = regexp.MustCompile(`&"[^"]*"|&K[0-9A-F]{6}|&[0-9]+`).ReplaceAllString(text, "")
	text = regexp.MustCompile(`\s*(&[LCR])\s*`).ReplaceAllString(text, "$1") // some programs part them by a space
	if text = seen(text); text != "" {
		s.Margins = append(s.Margins, e.Name.Local+" "+text)
	}
	return nil
}

// view reads what of a sheet's view hides something: rows that are hidden unless
// they say otherwise, zeros, and rows above a frozen one that nobody can reach.
func (s *sheetReader) view(e element) {
	switch e.Name.Local {
	case "sheetFormatPr":
		if yes(e.attribute("zeroHeight")) || gone(e, "defaultRowHeight", leastHeight) {
			s.mark("rows are hidden unless they say otherwise")
		}
		if gone(e, "defaultColWidth", leastWidth) {
			s.mark("columns are hidden unless they say otherwise")
		}
	case "sheetView":
		s.top = int(addressed(e.attribute("topLeftCell")).Row)
		if no(e.attribute("showZeros")) {
			s.mark("zeros are not shown")
		}
		if yes(e.attribute("showFormulas")) {
			s.mark("formulas are shown in place of what they give")
		}
	case "pane":
		if strings.HasPrefix(e.attribute("state"), "frozen") && s.top > 1 {
			s.mark("nothing above row", strconv.Itoa(s.top), "can be reached")
		}
	}
}

// sparkline reads a picture within a cell.
func (s *sheetReader) sparkline(e element) error {
	var p struct {
		Of string `xml:"f"`
		At string `xml:"sqref"`
	}
	if err := e.decode(&p); err != nil {
		return err
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
