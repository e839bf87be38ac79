package record

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

const again = "; open it in a spreadsheet program and save it again, and compare its rows with an earlier copy"

// A workbook with damage anywhere in a table is refused: a missing row can be
// the one that fails.
func TestDamagedSheets(t *testing.T) {
	row := func(cells string) string { return "<row>" + cells + "</row>" }
	good := row(inlines("2026-03-04 08:30", "70", "40", "T1"))
	for _, c := range []struct{ name, rows, want string }{
		{"a text that does not exist", row(`<c t="s"><v>2</v></c>`), `row 2 names a text "2" that does not exist`},
		{"a text without a number", row(`<c t="s"><v></v></c>`), `row 2 names a text "" that does not exist`},
		{"a style that does not exist", row(`<c s="7"><v>2</v></c>`), `row 2 names a style "7" that does not exist`},
		{"a style below zero", row(`<c s="-1"><v>2</v></c>`), `row 2 names a style "-1" that does not exist`},
		{"no reference", row(`<c r="A"><v>2</v></c>`), `the cell "A" stands in row 2`},
		{"a small reference", row(`<c r="a2"><v>2</v></c>`), `the cell "a2" stands in row 2`},
		{"another row's cell", row(`<c r="A3"><v>2</v></c>`), `the cell "A3" stands in row 2`},
		{"cells out of order", row(`<c r="B2"><v>2</v></c><c r="A2"><v>2</v></c>`), `the cell "A2" is out of order in row 2`},
		{"a cell twice", row(`<c r="B2"><v>2</v></c><c r="B2"><v>3</v></c>`), `the cell "B2" is out of order in row 2`},
		{"a column too far", row(`<c r="XFE2"><v>2</v></c>`), `row 2 has cells beyond the last column of a sheet`},
		{"rows out of order", `<row r="3"/><row r="2"/>`, `row "2" follows row 3`},
		{"a row twice", `<row r="3"/><row r="3"/>`, `row "3" follows row 3`},
		{"no row number", `<row r="x"/>`, `row "x" follows row 1`},
		{"a row too far", `<row r="1048577"/>`, `row 1048577 lies beyond the last row of a sheet`},
		{"no number", row(`<c><v>NaN</v></c>`), `row 2 holds "NaN", which is no value of the type ""`},
		{"no number either", row(`<c><v>12 34</v></c>`), `row 2 holds "12 34", which is no value of the type ""`},
		{"a number beyond all", row(`<c t="n"><v>1e999</v></c>`), `row 2 holds "1e999", which is no value of the type "n"`},
		{"no truth value", row(`<c t="b"><v>2</v></c>`), `row 2 holds "2", which is no value of the type "b"`},
		{"no type", row(`<c t="z"><v>2</v></c>`), `row 2 holds "2", which is no value of the type "z"`},
		{
			"an unknown entity", row(`<c t="inlineStr"><is><t>&deg;</t></is></c>`),
			"XML syntax error on line 1: invalid character entity &deg;",
		},
		{"a wrong end", good + "</rows>", "XML syntax error on line 1: element <sheetData> closed by </rows>"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := airBook(t, c.rows).share("<sst><si><t>x</t></si><si/></sst>", styled)
			wants(t, faulty(t, p.save(t)), `mill.xlsx: the workbook is damaged: the sheet "Air" does not read to its end: `+airSheet+": "+c.want+again)
		})
	}
}

// A sheet cut short anywhere refuses the workbook.
func TestCutShort(t *testing.T) {
	p := airBook(t, "<row>"+inlines("2026-03-04 08:30", "70", "40", "T1")+"</row>")
	whole := p[airSheet]
	for n := range len(whole) {
		p[airSheet] = whole[:n]
		if n%7 != 0 && n < len(whole)-20 {
			continue
		}
		if got := faulty(t, p.save(t)); !strings.HasPrefix(got,
			`mill.xlsx: the workbook is damaged: the sheet "Air" does not read to its end: `) {
			t.Fatalf("cut to %d bytes: %s", n, got)
		}
	}
	for _, more := range []string{"<worksheet/>", "x", "<"} {
		p[airSheet] = whole + more
		if got := faulty(t, p.save(t)); !strings.Contains(got, "the workbook is damaged") {
			t.Errorf("with %q after it: %s", more, got)
		}
	}
	p[airSheet] = whole + "\n<!-- made by hand -->\n"
	readBook(t, p)
}

func TestDamagedWorkbooks(t *testing.T) {
	base := func() parts { return airBook(t, "").share("<sst><si><t>x</t></si></sst>", styled) }
	for _, c := range []struct {
		name string
		p    parts
		want string
	}{
		{
			"texts cut short", base().swap(t, "xl/sharedStrings.xml", "</sst>", ""),
			"xl/sharedStrings.xml: XML syntax error on line 1: unexpected EOF",
		},
		{
			"styles cut short", base().swap(t, "xl/styles.xml", "</styleSheet>", ""),
			"xl/styles.xml: XML syntax error on line 4: unexpected EOF",
		},
		{
			"workbook cut short", base().swap(t, "xl/workbook.xml", "</workbook>", ""),
			"xl/workbook.xml: XML syntax error on line 1: unexpected EOF",
		},
		{
			"links cut short", base().swap(t, "xl/_rels/workbook.xml.rels", "</Relationships>", ""),
			"xl/_rels/workbook.xml.rels: XML syntax error on line 1: unexpected EOF",
		},
		{
			"another encoding", base().swap(t, "xl/sharedStrings.xml", "<sst>", `<?xml version="1.0" encoding="latin1"?><sst>`),
			"xl/sharedStrings.xml: xml: opening charset \"latin1\": its encoding is latin1, not UTF-8",
		},
		{
			"a lost sheet", base().swap(t, "xl/_rels/workbook.xml.rels", "air.csv", "gone.xml"),
			`the sheet "Air" does not read to its end: it lacks xl/worksheets/gone.xml`,
		},
		{
			"a lost link", base().swap(t, "xl/workbook.xml", `r:id="s1"`, `r:id="s0"`),
			`the sheet "Air" does not read to its end: it lacks the part of the sheet Air`,
		},
		{
			"not a worksheet", base().swap(t, airSheet, "worksheet", "chartsheet"),
			`the sheet "Air" does not read to its end: ` + airSheet + `: it holds a chartsheet, not a worksheet`,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			wants(t, faulty(t, c.p.save(t)), "mill.xlsx: the workbook is damaged: "+c.want+again)
		})
	}
}

func TestUnusableFiles(t *testing.T) {
	sound := handWritten(t, nil)
	two := handWritten(t, nil).swap(t, "xl/workbook.xml", `name="Job"`, `name=" areas "`)
	bare := parts{"xl/workbook.xml": "<workbook/>"}
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"words", []byte("Area,Size\n"), "mill.xlsx: is not a workbook; give an .xlsx file or a folder of CSV files"},
		{"nothing", nil, "mill.xlsx: is not a workbook; give an .xlsx file or a folder of CSV files"},
		{
			"the old kind", []byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 W o r k b o o k"),
			"mill.xlsx: is a workbook of the old kind (.xls); save it as .xlsx",
		},
		{"no workbook inside", parts{"content.xml": "<x/>"}.bytes(t), "mill.xlsx: is not an .xlsx workbook; save it as one"},
		{"no table", bare.bytes(t), "mill.xlsx: no sheet is a table of a record; name its sheets as the tables are, such as Areas and Slab RH"},
		{"two sheets for a table", two.bytes(t), `mill.xlsx: the sheets "Areas" and " areas " are both the table Areas; keep one of them`},
		{
			"cut short", sound.bytes(t)[:900],
			"mill.xlsx: the workbook is damaged: its archive cannot be opened: zip: not a valid zip file" + again,
		},
		{"a part twice", twice(t), "mill.xlsx: the workbook is damaged: its archive holds XL/workbook.xml twice" + again},
		{"a password", locked(t), "mill.xlsx: is protected by a password; save a copy without one"},
		{"a bomb", bomb(t), "mill.xlsx: unpacks to over 256 MB; take out pictures and other sheets, or split the record"},
	} {
		t.Run(c.name, func(t *testing.T) { wants(t, faulty(t, saved(t, c.data)), c.want) })
	}
	p := handWritten(t, map[string]string{"areas.csv": areaHead + "\n"})
	if _, err := Read(p.save(t)); !errors.Is(err, ErrNoArea) {
		t.Errorf("got %v", err)
	}
}

// A flipped bit in a stored figure leaves good XML, so only the checksum tells.
func TestFlippedBit(t *testing.T) {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for name, text := range airBook(t, "<row>"+inlines("2026-03-04 08:30", "70", "48.6", "T1")+"</row>") {
		w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Store})
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprint(w, text)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	data := bytes.Replace(b.Bytes(), []byte("48.6"), []byte("40.6"), 1)
	wants(t, faulty(t, saved(t, data)),
		`mill.xlsx: the workbook is damaged: the sheet "Air" does not read to its end: `+airSheet+": zip: checksum error"+again)
}

func twice(t *testing.T) []byte {
	return handWritten(t, nil).with(t, func(z *zip.Writer) error {
		_, err := z.Create("XL/workbook.xml")
		return err
	})
}

func locked(t *testing.T) []byte {
	f := excelize.NewFile()
	defer f.Close()
	var b bytes.Buffer
	if err := f.Write(&b, excelize.Options{Password: "secret"}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
