package seal

import (
	"encoding/xml"
	"errors"
	"fmt"
	"path"
	"strings"

	"firstboard/report/lists"
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

// links are what a part refers to, in the order in which it tells them.
type links []link

type link struct {
	ID     string `xml:"Id,attr"`
	Kind   string `xml:"Type,attr"`
	Target string `xml:"Target,attr"`
	Mode   string `xml:"TargetMode,attr"`
}

// outside says that the target is no part of the file.
func (l link) outside() bool { return l.Mode == "External" }

// target is what a name within the part stands for.
func (l links) target(id string) string {
	one, _ := lists.First(l, func(one link) bool { return one.ID == id })
	return one.Target
}

// kind is the first part of a kind, empty where there is none.
func (l links) kind(kind string) string {
	if all := l.kinds(kind); len(all) > 0 {
		return all[0]
	}
	return ""
}

// kinds are all parts of a kind: the last word of what the file calls it.
func (l links) kinds(kind string) []string {
	inside := lists.Where(l, func(one link) bool { return one.Kind == kind && !one.outside() })
	return lists.Each(inside, func(one link) string { return one.Target })
}

// links reads what a part refers to; the empty name is the file itself.
func (b *book) links(part string) (links, error) {
	file := path.Join(path.Dir(part), "_rels", path.Base(part)+".rels")
	if part == "" {
		file = "_rels/.rels"
	}
	if b.parts[file] == nil {
		return nil, nil
	}
	var all struct {
		Links links `xml:"Relationship"`
	}
	if err := b.decode(file, &all); err != nil {
		return nil, err
	}
	for i := range all.Links {
		one := &all.Links[i]
		one.Kind = path.Base(one.Kind)
		if inside, absolute := strings.CutPrefix(one.Target, "/"); !one.outside() {
			one.Target = lists.If(absolute, inside, path.Join(path.Dir(part), one.Target))
		}
	}
	return all.Links, nil
}
