package seal

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"
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
			b.texts = append(b.texts, t.String())
		}
	}
}

// richText is a text that may be in runs.
type richText struct {
	Text string `xml:"t"`
	Runs []struct {
		Text string `xml:"t"`
	} `xml:"r"`
}

func (t richText) String() string {
	s := t.Text
	for _, r := range t.Runs {
		s += r.Text
	}
	return s
}

// seen is a text as every program keeps it: lines end alike, and there are no
// tabs and no spaces at its ends.
func seen(s string) string {
	if strings.ContainsAny(s, "\r\t_") {
		s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ", "_x000D_", "").Replace(s)
	}
	return strings.TrimSpace(s)
}
