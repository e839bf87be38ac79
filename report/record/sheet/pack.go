package sheet

import (
	"archive/zip"
	"bufio"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/untrusted"
)

// pack is the zip archive that a workbook is. Parts are read from it
// directly: every byte is then held against its checksum, which libraries
// have been seen to skip.
type pack struct {
	name  string // of the file
	parts map[string]*zip.File
}

func openPack(name string, data []byte) (pack, error) {
	p := pack{name: name, parts: map[string]*zip.File{}}
	switch {
	case bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")) && bytes.Contains(data, wide("EncryptedPackage")):
		return p, p.protected()
	case bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")):
		return p, fmt.Errorf("%s: is a workbook of the old kind (.xls); save it as .xlsx", name)
	case !bytes.HasPrefix(data, []byte("PK")):
		return p, fmt.Errorf("%s: is not a workbook; give an .xlsx file or a folder of CSV files", name)
	}
	z, err := untrusted.Archive(data, untrusted.MostBytes)
	switch {
	case errors.Is(err, untrusted.ErrLarge):
		return p, fmt.Errorf("%s: unpacks to over %d MB; take out pictures and other sheets, or split the record", name,
			untrusted.MostBytes>>20)
	case err != nil:
		return p, p.damaged("%w", err)
	}
	return p, p.index(z.File)
}

// index finds every part.
func (p pack) index(files []*zip.File) error {
	for _, f := range files {
		const encrypted = 1
		name := strings.ToLower(strings.ReplaceAll(f.Name, `\`, "/"))
		switch {
		case f.Flags&encrypted != 0:
			return p.protected()
		case p.parts[name] != nil:
			return p.damaged("its archive holds %s twice", f.Name)
		}
		p.parts[name] = f
	}
	return nil
}

func (p pack) protected() error {
	return fmt.Errorf("%s: is protected by a password; save a copy without one", p.name)
}

// damaged refuses a workbook: nothing of it is read.
func (p pack) damaged(format string, args ...any) error {
	return fmt.Errorf("%s: the workbook is damaged: %w; open it in a spreadsheet program and save it again, and compare its rows with an earlier copy", p.name, fmt.Errorf(format, args...))
}

// wide is s as UTF-16.
func wide(s string) []byte { return []byte(strings.Join(strings.Split(s, ""), "\x00") + "\x00") }

func (p pack) has(part string) bool { return p.parts[strings.ToLower(part)] != nil }

// walk reads the XML of a part to its very end and hands its root to read.
func (p pack) walk(part string, read func(d *xml.Decoder, root xml.StartElement) error) error {
	f := p.parts[strings.ToLower(part)]
	if f == nil {
		return fmt.Errorf("it lacks %s", part)
	}
	r, err := f.Open()
	if err != nil {
		return fmt.Errorf("%s cannot be unpacked: %w", part, err)
	}
	defer r.Close()
	d := xml.NewDecoder(unmarked(untrusted.Bounded(r)))
	d.CharsetReader = func(charset string, _ io.Reader) (io.Reader, error) {
		return nil, fmt.Errorf("its encoding is %s, not UTF-8", charset)
	}
	if err := document(d, read); err != nil {
		return fmt.Errorf("%s: %w", part, err)
	}
	return nil
}

// unmarked is a text without the byte order mark that many writers begin it
// with.
func unmarked(r io.Reader) io.Reader {
	b := bufio.NewReaderSize(r, 1<<16)
	if mark, _ := b.Peek(len(ByteOrderMark)); string(mark) == ByteOrderMark {
		_, _ = b.Discard(len(mark))
	}
	return b
}

// document reads one root and nothing but space around it.
func document(d *xml.Decoder, read func(d *xml.Decoder, root xml.StartElement) error) error {
	for found := false; ; {
		switch t, err := d.Token(); t := t.(type) {
		case nil:
			if errors.Is(err, io.EOF) && found {
				return nil
			}
			return cut(err)
		case xml.StartElement:
			if found {
				return errors.New("something follows its end")
			}
			found = true
			if err := read(d, t); err != nil {
				return err
			}
		case xml.CharData:
			if len(bytes.TrimSpace(t)) > 0 {
				return errors.New("something stands outside its root")
			}
		}
	}
}

// cut is the error of an input that ends too early.
func cut(err error) error {
	if errors.Is(err, io.EOF) {
		return io.ErrUnexpectedEOF
	}
	return err
}

// children hands every child of the element just begun to each, which reads
// it to its end.
func children(d *xml.Decoder, each func(child xml.StartElement) error) error {
	for {
		t, err := d.Token()
		if err != nil {
			return cut(err)
		}
		switch t := t.(type) {
		case xml.StartElement:
			if err := each(t); err != nil {
				return err
			}
		case xml.EndElement:
			return nil
		}
	}
}

// only hands every child of the element just begun to each where it has that
// name, and passes over what a writer may add at its end. Anything else is an
// error: what it holds would be read by one program and not by another.
func only(d *xml.Decoder, name string, each func(child xml.StartElement) error) error {
	return children(d, func(e xml.StartElement) error {
		switch e.Name.Local {
		case name:
			return each(e)
		case "extLst":
			return d.Skip()
		}
		return foreign(e, name)
	})
}

// foreign refuses an element where another is due.
func foreign(e xml.StartElement, due string) error {
	return fmt.Errorf("it has an element %s where only %s may stand", evidence.Quote(e.Name.Local), due)
}

// passed passes over the element just begun, in which none of these names of
// its own name space may stand: that is their place.
func passed(d *xml.Decoder, space, place string, none ...string) error {
	for depth := 1; depth > 0; {
		t, err := d.Token()
		if err != nil {
			return cut(err)
		}
		switch t := t.(type) {
		case xml.StartElement:
			if depth++; t.Name.Space == space && slices.Contains(none, t.Name.Local) {
				return fmt.Errorf("it has a %s outside its %s", t.Name.Local, place)
			}
		case xml.EndElement:
			depth--
		}
	}
	return nil
}

// attr is an attribute by its local name.
func attr(e xml.StartElement, name string) (string, bool) {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value, true
		}
	}
	return "", false
}
