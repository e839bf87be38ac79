package seal

import (
	"archive/zip"
	"encoding/xml"
	"fmt"
	"io"

	"firstboard/report/lists"
	"firstboard/report/untrusted"
)

// book is a workbook's parts and what its cells refer to.
type book struct {
	parts   map[string]*zip.File
	cells   int      // of all sheets so far
	texts   []string // shared ones
	formats []string // of the cell styles
	looks   []string // of conditional formats
}

// open hands a part to read, within bounds that no text and no nesting can break.
func (b *book) open(part string, read func(*xml.Decoder) error) error {
	f := b.parts[part]
	if f == nil {
		return fmt.Errorf("the part %s is missing", part)
	}
	r, err := f.Open()
	if err != nil {
		return damaged(part)
	}
	defer r.Close()
	return read(xml.NewDecoder(untrusted.Bounded(r)))
}

func damaged(part string) error { return fmt.Errorf("the part %s is damaged", part) }

// decode reads the root of a part.
func (b *book) decode(part string, into any) error {
	return b.open(part, func(d *xml.Decoder) error {
		if d.Decode(into) != nil {
			return damaged(part)
		}
		return nil
	})
}

// walk hands each element of a part to each as it begins. What each does not
// read to its end is walked through too.
func (b *book) walk(part string, each func(element) error) error {
	return b.open(part, func(d *xml.Decoder) error {
		for {
			token, err := d.Token()
			if err == io.EOF {
				return nil
			}
			if err != nil {
				return damaged(part)
			}
			if begins, ok := token.(xml.StartElement); ok {
				if err := each(element{begins, d, part}); err != nil {
					return err
				}
			}
		}
	})
}

// element is an element of a part that has just begun.
type element struct {
	xml.StartElement
	rest *xml.Decoder
	part string
}

// decode reads the element to its end.
func (e element) decode(into any) error {
	if e.rest.DecodeElement(into, &e.StartElement) != nil {
		return damaged(e.part)
	}
	return nil
}

// text reads the element to its end: its own text, without that of elements in it.
func (e element) text() (string, error) {
	var all []byte
	for {
		token, err := e.rest.Token()
		switch token := token.(type) {
		case nil:
			return "", err
		case xml.CharData:
			all = append(all, token...)
		case xml.StartElement:
			if err := e.rest.Skip(); err != nil {
				return "", err
			}
		case xml.EndElement:
			return string(all), nil
		}
	}
}

func (e element) attribute(name string) string {
	a, _ := lists.First(e.Attr, func(a xml.Attr) bool { return a.Name.Local == name })
	return a.Value
}
