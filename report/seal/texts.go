package seal

import (
	"encoding/xml"
	"errors"
	"fmt"
	"strings"

	"firstboard/report/untrusted"
)

// readTexts reads the shared texts, where there are any.
func (b *book) readTexts(part string) error {
	if part == "" {
		return nil
	}
	return b.walk(part, func(e element) error {
		if e.Name.Local != "si" {
			return nil
		}
		var t richText
		if err := e.decode(&t); err != nil {
			return err
		}
		if b.texts = append(b.texts, string(t)); len(b.texts) > mostCells {
			return fmt.Errorf("the part %s lists more texts than a workbook has cells", part)
		}
		return nil
	})
}

// richText is a text that may be in runs.
type richText string

// UnmarshalXML reads the text and its runs, but not how they are pronounced.
func (t *richText) UnmarshalXML(d *xml.Decoder, _ xml.StartElement) error {
	var all strings.Builder
	letters := false
	for depth := 1; depth > 0; {
		token, err := d.Token()
		if err != nil {
			return err
		}
		switch token := token.(type) {
		case xml.StartElement:
			if token.Name.Local == "rPh" {
				if err := d.Skip(); err != nil {
					return err
				}
				continue
			}
			depth++
			letters = token.Name.Local == "t"
		case xml.EndElement:
			depth--
			letters = false
		case xml.CharData:
			if letters {
				all.Write(token)
			}
		}
		if all.Len() > untrusted.LongestText {
			return errors.New(untrusted.TooLong)
		}
	}
	*t = richText(all.String())
	return nil
}

// seen is a text as every program keeps it: lines end alike, and there are no
// tabs and no spaces at its ends.
func seen(s string) string {
	if strings.ContainsAny(s, "\r\t_") {
		s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ", "_x000D_", "").Replace(s)
	}
	return strings.TrimSpace(s)
}

// outside says that the target is no part of the file.
func (l link) outside() bool { return l.Mode == "External" }
