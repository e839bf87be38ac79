//go:build unix

package main

import (
	"archive/zip"
	"compress/flate"
	"encoding/xml"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// piece is a text that stands in a part so many times.
type piece struct {
	text  string
	times int
}

// handBook are the parts of a workbook by their names, each in pieces, so that
// parts of hundreds of megabytes are never held.
type handBook map[string][]piece

const (
	sheetSpace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
	relSpace   = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	packSpace  = "http://schemas.openxmlformats.org/package/2006/relationships"
	airPart    = "xl/worksheets/air.csv"
	textsPart  = "xl/sharedStrings.xml"
	bookPart   = "xl/workbook.xml"
	stylesPart = "xl/styles.xml"
)

// baseBook is a base record as a workbook of plain XML, whose texts stand in
// their cells, with a shared text and two styles: plain, and a day with its time.
func baseBook(t *testing.T) handBook {
	t.Helper()
	all, err := readTables(filepath.Join(bases, "slab-resilient"))
	if err != nil {
		t.Fatal(err)
	}
	b := handBook{}
	var sheets, links strings.Builder
	for i, file := range slices.Sorted(maps.Keys(all)) {
		name := strings.ReplaceAll(strings.TrimSuffix(file, ".csv"), "-", " ")
		fmt.Fprintf(&sheets, `<sheet name="%s" sheetId="%d" r:id="s%d"/>`, name, i+1, i+1)
		fmt.Fprintf(&links, `<Relationship Id="s%d" Type="%s/worksheet" Target="worksheets/%s"/>`, i+1, relSpace, file)
		b.set("xl/worksheets/"+file, `<worksheet xmlns="`+sheetSpace+`"><sheetData>`+rowsOf(all[file])+`</sheetData></worksheet>`)
	}
	for _, kind := range []string{"sharedStrings", "styles"} {
		fmt.Fprintf(&links, `<Relationship Id="%s" Type="%s/%s" Target="%s.xml"/>`, kind, relSpace, kind, kind)
	}
	b.set("_rels/.rels", `<Relationships xmlns="`+packSpace+`"><Relationship Id="r1" Type="`+relSpace+`/officeDocument" Target="xl/workbook.xml"/></Relationships>`)
	b.set(bookPart, `<workbook xmlns="`+sheetSpace+`" xmlns:r="`+relSpace+`"><workbookPr/><sheets>`+sheets.String()+`</sheets></workbook>`)
	b.set("xl/_rels/workbook.xml.rels", `<Relationships xmlns="`+packSpace+`">`+links.String()+`</Relationships>`)
	b.set(textsPart, `<sst xmlns="`+sheetSpace+`"><si><t>a note</t></si></sst>`)
	b.set(stylesPart, `<styleSheet xmlns="`+sheetSpace+`"><cellXfs><xf numFmtId="0"/><xf numFmtId="22"/></cellXfs></styleSheet>`)
	return b
}

func rowsOf(rows [][]string) string {
	var b strings.Builder
	for _, row := range rows {
		b.WriteString("<row>")
		for _, entry := range row {
			b.WriteString(textCell(entry))
		}
		b.WriteString("</row>")
	}
	return b.String()
}

func textCell(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a builder takes all
	return `<c t="inlineStr"><is><t>` + b.String() + `</t></is></c>`
}

func (b handBook) set(part, text string) handBook {
	b[part] = []piece{{text, 1}}
	return b
}

// swap puts pieces in the place of the first of a text in a part.
func (b handBook) swap(t *testing.T, part, old string, with ...piece) handBook {
	t.Helper()
	for i, p := range b[part] {
		if before, after, ok := strings.Cut(p.text, old); ok && p.times == 1 {
			b[part] = slices.Replace(b[part], i, i+1, slices.Concat([]piece{{before, 1}}, with, []piece{{after, 1}})...)
			return b
		}
	}
	t.Fatalf("%s does not hold %s", part, old)
	return nil
}

// air puts pieces behind the last row of Air.
func (b handBook) air(t *testing.T, rows ...piece) handBook {
	t.Helper()
	return b.swap(t, airPart, "</sheetData>", append(rows, piece{"</sheetData>", 1})...)
}

// writeTo writes the archive, its parts packed by a method, and what more adds.
func (b handBook) writeTo(w io.Writer, method uint16, more func(*zip.Writer) error) error {
	z := zip.NewWriter(w)
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) { return flate.NewWriter(w, flate.BestSpeed) })
	for _, name := range slices.Sorted(maps.Keys(b)) {
		part, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: method})
		if err != nil {
			return err
		}
		for _, p := range b[name] {
			if err := repeat(part, p); err != nil {
				return err
			}
		}
	}
	if err := more(z); err != nil {
		return err
	}
	return z.Close()
}

// repeat writes a piece, many at a time.
func repeat(w io.Writer, p piece) error {
	batch := max(1, min(p.times, 1<<20/max(1, len(p.text))))
	block := strings.Repeat(p.text, batch)
	for left := p.times; left > 0; left -= batch {
		if _, err := io.WriteString(w, block[:min(left, batch)*len(p.text)]); err != nil {
			return err
		}
	}
	return nil
}

// save writes the workbook mill.xlsx into a folder.
func (b handBook) save(t *testing.T, dir string) {
	t.Helper()
	b.saveWith(t, dir, zip.Deflate, nothingMore)
}

func nothingMore(*zip.Writer) error { return nil }

func (b handBook) saveWith(t *testing.T, dir string, method uint16, more func(*zip.Writer) error) {
	t.Helper()
	f, err := os.Create(filepath.Join(dir, "mill.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := b.writeTo(f, method, more); err != nil {
		t.Fatal(err)
	}
}

// ofBook is a case of a workbook.
func ofBook(name string, change func(t *testing.T, b handBook), want ...string) hostileCase {
	return packedBook(name, zip.Deflate, change, want...)
}

// storedBook is ofBook as large in the archive as unpacked, so that it is no bomb.
func storedBook(name string, change func(t *testing.T, b handBook), want ...string) hostileCase {
	return packedBook(name, zip.Store, change, want...)
}

func packedBook(name string, method uint16, change func(t *testing.T, b handBook), want ...string) hostileCase {
	return hostileCase{name, func(t *testing.T, dir string) []string {
		b := baseBook(t)
		change(t, b)
		b.saveWith(t, dir, method, nothingMore)
		return checkArgs("mill.xlsx")
	}, want}
}

// The workbook that the cases change is a GO.
func TestHandBookIsSound(t *testing.T) {
	dir := t.TempDir()
	baseBook(t).save(t, dir)
	if r := runAlone(t, dir, "check", "mill.xlsx"); r.code != exitGo {
		t.Errorf("exit code %d\n%s%s", r.code, r.out, r.faults)
	}
}
