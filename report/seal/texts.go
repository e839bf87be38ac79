package seal

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"firstboard/report/untrusted"
)

// readTexts reads the shared texts, where there are any.
func (b *book) readTexts(part string) error {
	if part == "" {
		return nil
	}
	r, err := b.open(part)
	if err != nil {
		return err
	}
	defer r.Close()
	d := xml.NewDecoder(r)
	for {
		token, err := d.Token()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("the part %s is damaged", part)
		}
		if start, ok := token.(xml.StartElement); ok && start.Name.Local == "si" {
			var t richText
			if err := d.DecodeElement(&t, &start); err != nil {
				return fmt.Errorf("the part %s is damaged", part)
			}
			if b.texts = append(b.texts, t.String()); len(b.texts) > mostCells {
				return fmt.Errorf("the part %s lists more texts than a workbook has cells", part)
			}
		}
	}
}

// richText is a text that may be in runs.
type richText struct{ whole string }

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
	t.whole = all.String()
	return nil
}

func (t richText) String() string { return t.whole }

// seen is a text as every program keeps it: lines end alike, and there are no
// tabs and no spaces at its ends.
func seen(s string) string {
	if strings.ContainsAny(s, "\r\t_") {
		s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ", "_x000D_", "").Replace(s)
	}
	return strings.TrimSpace(s)
}
