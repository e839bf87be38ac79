//go:build unix

package main

import (
	"archive/zip"
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const oneMB = 1 << 20

// hostileArchives are archives that are bombs, cut, or lie about themselves.
func hostileArchives() []hostileCase {
	raw := func(name string, change func(t *testing.T, data []byte) []byte, want ...string) hostileCase {
		return hostileCase{name, func(t *testing.T, dir string) []string {
			var b bytes.Buffer
			if err := baseBook(t).writeTo(&b, zip.Deflate, nothingMore); err != nil {
				t.Fatal(err)
			}
			put(t, dir, "mill.xlsx", string(change(t, b.Bytes())))
			return checkArgs("mill.xlsx")
		}, append([]string{"mill.xlsx: "}, want...)}
	}
	return []hostileCase{
		ofBook("bomb of one large part", func(_ *testing.T, b handBook) {
			b["xl/media/picture.png"] = []piece{{strings.Repeat("x", oneMB), 260}}
		},
			": unpacks to over 256 MB; take out pictures and other sheets, or split the record"),
		ofBook("bomb of a part that would just pass",
			func(t *testing.T, b handBook) { b.air(t, piece{strings.Repeat("<row/>", 1000), 40 * oneMB / 1000}) },
			"mill.xlsx: the workbook is damaged: its part xl/worksheets/air.csv unpacks to over 200 times its size, so it is no table that anyone typed"),
		{"bomb of many parts", func(t *testing.T, dir string) []string {
			baseBook(t).saveWith(t, dir, zip.Deflate, func(z *zip.Writer) error {
				for i := range 50_000 {
					if _, err := z.CreateHeader(&zip.FileHeader{Name: fmt.Sprint("x", i)}); err != nil {
						return err
					}
				}
				return nil
			})
			return checkArgs("mill.xlsx")
		}, []string{"mill.xlsx: the workbook is damaged", "parts"}},
		{"verify a bomb", func(t *testing.T, dir string) []string {
			b := baseBook(t)
			b["xl/worksheets/more.xml"] = []piece{{strings.Repeat("x", oneMB), 260}}
			b.save(t, dir)
			return []string{"verify", "mill.xlsx"}
		}, []string{"mill.xlsx: unpacks to over 256 MB"}},
		raw("cut in half", func(_ *testing.T, data []byte) []byte { return data[:len(data)/2] },
			"the workbook is damaged: its archive cannot be opened"),
		raw("garbled bytes", func(_ *testing.T, data []byte) []byte {
			for i := 200; i < len(data)-2000; i += 97 {
				data[i] ^= 0x55
			}
			return data
		}, "the workbook is damaged"),
		raw("a size that is a lie", func(t *testing.T, data []byte) []byte {
			at := bytes.LastIndex(data, []byte(airPart)) - 46 // the part's entry in the directory
			size := data[at+24 : at+28]
			if !bytes.HasPrefix(data[at:], []byte("PK\x01\x02")) {
				t.Fatal("no entry there")
			}
			copy(size, []byte{9, 0, 0, 0})
			return data
		}, "the workbook is damaged"),
		raw("a picture", func(*testing.T, []byte) []byte { return []byte("\x89PNG\r\n\x1a\n" + strings.Repeat("x", 900)) },
			"is not a workbook; give an .xlsx file or a folder of CSV files"),
		raw("a page of text named .xlsx", func(*testing.T, []byte) []byte { return []byte("Area,Size (ft2)\nA1,500\n") },
			"is not a workbook; give an .xlsx file or a folder of CSV files"),
		raw("nothing", func(*testing.T, []byte) []byte { return nil }, "is not a workbook"),
		{"a workbook named .csv", func(t *testing.T, dir string) []string {
			baseBook(t).save(t, dir)
			folder := folderOfBase(t, dir)
			if err := os.Rename(filepath.Join(dir, "mill.xlsx"), filepath.Join(folder, "air.csv")); err != nil {
				t.Fatal(err)
			}
			return checkArgs("job")
		}, []string{"air.csv: is not UTF-8 text; save it as CSV UTF-8"}},
	}
}

// nested is so many elements, each inside the one before.
func nested(times int) []piece { return []piece{{"<a>", times}, {"</a>", times}} }

// hostileParts are workbooks whose XML is not what a spreadsheet program writes.
func hostileParts() []hostileCase {
	long := piece{"xy", 10 * oneMB} // of 256 MB that a workbook may unpack to
	row := func(t *testing.T, b handBook, cells string) { b.air(t, piece{"<row>" + cells + "</row>", 1}) }
	alternate := func(inside string) string {
		return `<mc:AlternateContent xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"><mc:Choice Requires="x14">` +
			inside + `</mc:Choice><mc:Fallback/></mc:AlternateContent>`
	}
	reading := "<row>" + textCell("2026-03-04 08:30") + textCell("90") + "</row>"
	return []hostileCase{
		ofBook("a million sparse rows in the last column", func(t *testing.T, b handBook) {
			for i := range 40_000 {
				b[airPart] = append(b[airPart], piece{fmt.Sprintf(`<row r="%d"><c r="XFD%d"><v>%d</v></c></row>`, 1_000_000+i, 1_000_000+i,
					i), 1})
			}
			end := b[airPart][0].text
			b[airPart][0].text = strings.TrimSuffix(end, "</sheetData></worksheet>")
			b[airPart] = append(b[airPart], piece{"</sheetData></worksheet>", 1})
		}, "stands in column 16384, which has no header"),
		ofBook("a header in the last column", func(t *testing.T, b handBook) {
			b.swap(t, airPart, "</row>", piece{`<c r="XFD1"><v>1</v></c></row>`, 1})
		}, "has a header beyond column 256"),
		ofBook("a sheet that is cut", func(t *testing.T, b handBook) { b.swap(t, airPart, "</sheetData></worksheet>") },
			`the sheet "air" does not read to its end`),
		ofBook("a tag that is garbled", func(t *testing.T, b handBook) { b.swap(t, airPart, "</row>", piece{"</r\x00w>", 1}) },
			`the sheet "air" does not read to its end`),
		ofBook("rows as alternatives", func(t *testing.T, b handBook) { b.air(t, piece{alternate(reading), 1}) },
			`the sheet "air" does not read to its end`, `an element "AlternateContent" where only`),
		ofBook("cells as alternatives", func(t *testing.T, b handBook) {
			row(t, b, alternate(textCell("90")))
		}, `an element "AlternateContent" where only`),
		ofBook("a value as alternatives", func(t *testing.T, b handBook) {
			row(t, b, "<c>"+alternate("<v>90</v>")+"</c>")
		}, `an element "AlternateContent" where only`),
		ofBook("a text as alternatives", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "<si>", piece{alternate("<si><t>x</t></si>") + "<si>", 1})
		}, `an element "AlternateContent" where only`),
		ofBook("half a text as alternatives", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "<t>", piece{alternate("<t>not </t>") + "<t>", 1})
		}, `an element "AlternateContent" where only`),
		ofBook("a style as alternatives", func(t *testing.T, b handBook) {
			b.swap(t, stylesPart, "<xf ", piece{alternate(`<xf numFmtId="9"/>`) + "<xf ", 1})
		}, `an element "AlternateContent" where only`),
		ofBook("sheets as alternatives", func(t *testing.T, b handBook) {
			b.swap(t, bookPart, "<sheets>", piece{"<sheets>" + alternate(`<sheet name="Wood" sheetId="99" r:id="s1"/>`), 1})
		}, `an element "AlternateContent" where only`),
		ofBook("days from 1904 as alternatives", func(t *testing.T, b handBook) {
			b.swap(t, bookPart, "<workbookPr/>", piece{alternate(`<workbookPr date1904="1"/>`), 1})
		}, "it has a workbookPr outside its workbook"),
		ofBook("days from a year that is unclear", func(t *testing.T, b handBook) {
			b.swap(t, bookPart, "<workbookPr/>", piece{`<workbookPr date1904="on"/>`, 1})
		}, `date1904`),
		ofBook("something else among the rows", func(t *testing.T, b handBook) {
			b.air(t, piece{"<x>" + reading + "</x>", 1})
		}, `the sheet "air" does not read to its end`),
		ofBook("no sheetData", func(_ *testing.T, b handBook) {
			b.set(airPart, `<worksheet xmlns="`+sheetSpace+`"/>`)
		}, "it lacks its sheetData"),
		ofBook("a text that does not exist", func(t *testing.T, b handBook) {
			row(t, b, `<c t="s"><v>7</v></c>`)
		}, `names a text "7" that does not exist`),
		ofBook("a text below zero", func(t *testing.T, b handBook) {
			row(t, b, `<c t="s"><v>-1</v></c>`)
		}, `names a text "-1" that does not exist`),
		ofBook("a sheet nested by millions", func(t *testing.T, b handBook) {
			b.air(t, nested(2*oneMB)...)
		}, "mill.xlsx: the workbook is damaged: ", "its elements are nested over 1000 deep"),
		ofBook("beside the rows, nested by millions", func(t *testing.T, b handBook) {
			b.swap(t, airPart, "<sheetData>", append(nested(2*oneMB), piece{"<sheetData>", 1})...)
		}, "mill.xlsx: the workbook is damaged: ", "its elements are nested over 1000 deep"),
		ofBook("texts nested by millions", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "</sst>", append(nested(2*oneMB), piece{"</sst>", 1})...)
		}, "mill.xlsx: the workbook is damaged: ", "its elements are nested over 1000 deep"),
		ofBook("styles nested by millions", func(t *testing.T, b handBook) {
			b.swap(t, stylesPart, "<cellXfs>", append(nested(2*oneMB), piece{"<cellXfs>", 1})...)
		}, "mill.xlsx: the workbook is damaged: ", "its elements are nested over 1000 deep"),
		ofBook("sheets nested by millions", func(t *testing.T, b handBook) {
			b.swap(t, bookPart, "<sheets>", append(nested(2*oneMB), piece{"<sheets>", 1})...)
		}, "mill.xlsx: the workbook is damaged: ", "its elements are nested over 1000 deep"),
		ofBook("links nested by millions", func(t *testing.T, b handBook) {
			b.swap(t, "_rels/.rels", "</Rel", append(nested(2*oneMB), piece{"</Rel", 1})...)
		}, "mill.xlsx: the workbook is damaged: ", "its elements are nested over 1000 deep"),
		storedBook("a text of 100 MB in a cell", func(t *testing.T, b handBook) {
			b.air(t, piece{`<row><c t="inlineStr"><is><t>`, 1}, piece{"xy", 50 * oneMB}, piece{"</t></is></c></row>", 1})
		}, "the workbook is damaged", "longer than 1 MB"),
		storedBook("a shared text of 20 MB", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "a note", long)
		}, "the workbook is damaged", "longer than 1 MB"),
		ofBook("a text in many runs", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "<t>a note</t>", piece{"<r><t>some words</t></r>", oneMB / 2})
		}, "the workbook is damaged", "longer than 1 MB"),
		storedBook("an attribute of 20 MB", func(t *testing.T, b handBook) {
			b.air(t, piece{`<row spans="`, 1}, long, piece{`"/>`, 1})
		}, "the workbook is damaged", "longer than 1 MB"),
		ofBook("a million attributes", func(t *testing.T, b handBook) {
			b.air(t, piece{`<row`, 1}, piece{` a=""`, 10 * oneMB}, piece{`/>`, 1})
		}, "the workbook is damaged", "longer than 1 MB"),
		storedBook("a comment of 20 MB", func(t *testing.T, b handBook) {
			b.air(t, piece{"<!--", 1}, piece{"<a>", 7 * oneMB}, piece{"-->", 1})
		}, "the workbook is damaged", "longer than 1 MB"),
		storedBook("letters as they are, 20 MB", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "a note", piece{"<![CDATA[", 1}, piece{"<a>", 7 * oneMB}, piece{"]]>", 1})
		}, "the workbook is damaged", "longer than 1 MB"),
		ofBook("entities that grow", func(_ *testing.T, b handBook) {
			b.set(textsPart, `<!DOCTYPE sst [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;">]><sst xmlns="`+sheetSpace+`"><si><t>&b;</t></si></sst>`)
		}, "the workbook is damaged"),
		ofBook("millions of shared texts", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "<si>", piece{"<si/>", 3 * oneMB}, piece{"<si>", 1})
		}, "the workbook is damaged"),
		ofBook("one long text in every cell", func(t *testing.T, b handBook) {
			b.swap(t, textsPart, "a note", piece{"z", 32_000})
			var rows strings.Builder
			for i := range 60_000 {
				fmt.Fprintf(&rows, `<row r="%d">%s<c t="s"><v>0</v></c></row>`, i+5000, textCell("2026-03-04 08:30"))
			}
			b.air(t, piece{rows.String(), 1})
		}, `mill.xlsx "air": holds over 256 MB of text; clear what is no reading`),
	}
}
