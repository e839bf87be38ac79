package record

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"fmt"
	"html"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"firstboard/report/record/sheet"
)

// parts are the parts of a hand-written workbook by their names.
type parts map[string]string

const (
	mainSpace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
	linkSpace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	packSpace = "http://schemas.openxmlformats.org/package/2006/relationships"
)

// handWritten is the small record as a workbook of the plainest XML: texts in
// their cells, no styles, no references.
func handWritten(t testing.TB, with map[string]string) parts {
	t.Helper()
	p := parts{
		"[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
		"_rels/.rels": `<Relationships xmlns="` + packSpace + `"><Relationship Id="r1" Type="` + linkSpace +
			`/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
	}
	var sheets, links strings.Builder
	all := changed(with)
	for i, file := range slices.Sorted(maps.Keys(all)) {
		name := named(file)
		fmt.Fprintf(&sheets, `<sheet name="%s" sheetId="%d" r:id="s%d"/>`, name, i+1, i+1)
		fmt.Fprintf(&links, `<Relationship Id="s%d" Type="%s/worksheet" Target="worksheets/%s"/>`, i+1, linkSpace, file)
		p["xl/worksheets/"+file] = worksheet(plainRows(t, all[file]))
	}
	p["xl/workbook.xml"] = `<workbook xmlns="` + mainSpace + `" xmlns:r="` + linkSpace + `"><sheets>` + sheets.String() +
		`</sheets></workbook>`
	p["xl/_rels/workbook.xml.rels"] = `<Relationships xmlns="` + packSpace + `">` + links.String() + `</Relationships>`
	return p
}

func worksheet(rows string) string {
	return `<worksheet xmlns="` + mainSpace + `"><sheetData>` + rows + `</sheetData></worksheet>`
}

// plainRows are the rows of a CSV text with every entry a text in its cell.
func plainRows(t testing.TB, text string) string {
	t.Helper()
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord = -1
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, record := range records {
		b.WriteString("<row>")
		for _, entry := range record {
			b.WriteString(inline(entry))
		}
		b.WriteString("</row>")
	}
	return b.String()
}

func inline(s string) string {
	return `<c t="inlineStr"><is><t>` + html.EscapeString(s) + `</t></is></c>`
}

// inlines are cells of text.
func inlines(texts ...string) string {
	var b strings.Builder
	for _, s := range texts {
		b.WriteString(inline(s))
	}
	return b.String()
}

// share adds the texts and the styles that sheets name.
func (p parts) share(texts, styles string) parts {
	add := func(kind, xml string) {
		if xml == "" {
			return
		}
		p["xl/"+kind+".xml"] = xml
		link := `<Relationship Id="` + kind + `" Type="` + linkSpace + "/" + kind + `" Target="/xl/` + kind + `.xml"/></Relationships>`
		p["xl/_rels/workbook.xml.rels"] = strings.Replace(p["xl/_rels/workbook.xml.rels"], "</Relationships>", link, 1)
	}
	add("sharedStrings", texts)
	add("styles", styles)
	return p
}

// swap replaces text in a part that must hold it.
func (p parts) swap(t testing.TB, part, old, with string) parts {
	t.Helper()
	if !strings.Contains(p[part], old) {
		t.Fatalf("%s does not hold %s", part, old)
	}
	p[part] = strings.ReplaceAll(p[part], old, with)
	return p
}

func (p parts) bytes(t testing.TB) []byte {
	t.Helper()
	return p.with(t, func(*zip.Writer) error { return nil })
}

// with is the archive of the parts and of what more adds.
func (p parts) with(t testing.TB, more func(z *zip.Writer) error) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, name := range slices.Sorted(maps.Keys(p)) {
		w, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(p[name])); err != nil {
			t.Fatal(err)
		}
	}
	if err := more(z); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func (p parts) save(t testing.TB) string { t.Helper(); return saved(t, p.bytes(t)) }

func saved(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "mill.xlsx")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

const (
	slabSheet = "xl/worksheets/slab-rh.csv"
	airSheet  = "xl/worksheets/air.csv"
	airHead   = "Read at,Temp (F),RH (%),Instrument,Note\n"
)

// airBook is the small record as a workbook with hand-written air rows.
func airBook(t testing.TB, rows string) parts {
	t.Helper()
	p := handWritten(t, map[string]string{"air.csv": airHead})
	return p.swap(t, airSheet, "</sheetData>", rows+"</sheetData>")
}

// styled are cell styles: plain, percent, own percent, day, own day and time,
// hours beyond a day, and a number with letters in quotes.
const styled = `<styleSheet xmlns="` + mainSpace + `"><numFmts count="4">
<numFmt numFmtId="164" formatCode="0.0\ %"/><numFmt numFmtId="165" formatCode="[$-409]yyyy\-mm\-dd\ hh:mm"/>
<numFmt numFmtId="166" formatCode="[hh]:mm"/><numFmt numFmtId="167" formatCode="[Red]0.0&quot; hydr&quot;_d\y"/></numFmts>
<cellXfs><xf numFmtId="0"/><xf numFmtId="10"/><xf numFmtId="164"/><xf numFmtId="14"/><xf numFmtId="165"/><xf numFmtId="166"/><xf numFmtId="167"/></cellXfs></styleSheet>`

// named is the table that a file's name stands for.
func named(file string) string {
	at := slices.IndexFunc(TableNames(), func(table string) bool { return sheet.FileName(table) == file })
	return TableNames()[at]
}
