package sheet

import (
	"encoding/xml"
	"errors"
	"strconv"
	"strings"

	"firstboard/report/untrusted"
)

// readTexts reads the texts that cells name by their number.
func (w *workbook) readTexts(d *xml.Decoder, _ xml.StartElement) error {
	return only(d, "si", func(e xml.StartElement) error {
		const most = 2 * MostRows
		if len(w.texts) == most {
			return errors.New("it lists more texts than a record has rows to name them")
		}
		s, err := richText(d)
		w.texts = append(w.texts, s)
		return err
	})
}

// richText is the text of an element whose runs may be formatted apart. How
// it is pronounced is left out.
func richText(d *xml.Decoder) (string, error) {
	var all strings.Builder
	text := func(e xml.StartElement) error {
		switch e.Name.Local {
		case "t":
			s, err := content(d)
			if all.WriteString(unescaped(s)); all.Len() > untrusted.LongestText {
				return errors.New(untrusted.TooLong)
			}
			return err
		case "rPr", "rPh", "phoneticPr":
			return d.Skip()
		}
		return foreign(e, "a text")
	}
	err := children(d, func(e xml.StartElement) error {
		if e.Name.Local == "r" {
			return children(d, text)
		}
		return text(e)
	})
	return all.String(), err
}

// content is the text of an element without children.
func content(d *xml.Decoder) (string, error) {
	var all strings.Builder
	for {
		t, err := d.Token()
		if err != nil {
			return "", cut(err)
		}
		switch t := t.(type) {
		case xml.CharData:
			all.Write(t)
		case xml.StartElement:
			return "", foreign(t, "letters")
		case xml.EndElement:
			return all.String(), nil
		}
	}
}

// unescaped turns _x000D_ into the letter of that number, which is how a
// workbook stores what XML cannot.
func unescaped(s string) string {
	var b strings.Builder
	for {
		at := strings.Index(s, "_x")
		if at < 0 {
			return b.String() + s
		}
		b.WriteString(s[:at])
		s = s[at:]
		const length = len("_x000D_")
		if len(s) >= length && s[length-1] == '_' {
			if n, err := strconv.ParseUint(s[2:length-1], 16, 16); err == nil {
				b.WriteRune(rune(n))
				s = s[length:]
				continue
			}
		}
		b.WriteString(s[:2])
		s = s[2:]
	}
}
