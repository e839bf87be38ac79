package seal_test

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report/seal"
)

// FuzzRead changes one part of a workbook that holds a little of all that is
// read: it is read or refused in one line, never more, and reads alike twice.
func FuzzRead(f *testing.F) {
	parts := partsOf(f, smallBook(f))
	for name, text := range parts {
		f.Add(name, text)
	}
	f.Fuzz(func(t *testing.T, name, text string) {
		if _, known := parts[name]; !known {
			name = "xl/worksheets/sheet1.xml"
		}
		book := zipped(t, parts, name, text)
		c, err := seal.Read(book)
		if err != nil {
			if says := err.Error(); says == "" || strings.Contains(says, "\n") {
				t.Errorf("it is refused with %q", says)
			}
			return
		}
		again, err := seal.Read(book)
		if err != nil {
			t.Fatal(err)
		}
		if changes, strange := seal.Differences(c, again, true); len(changes)+len(strange) > 0 {
			t.Errorf("it differs from itself: %v %v", changes, strange)
		}
	})
}

// A file that is no workbook, or a damaged one, is refused in one line.
func TestHostileFiles(t *testing.T) {
	parts := partsOf(t, smallBook(t))
	for name, book := range map[string][]byte{
		"nothing":       nil,
		"a letter":      []byte("a letter"),
		"an empty file": zipped(t, nil, "readme", "x"),
		"no workbook":   zipped(t, parts, "_rels/.rels", "<Relationships/>"),
		"no sheet":      zipped(t, parts, "xl/_rels/workbook.xml.rels", "<Relationships/>"),
		"a cut sheet":   zipped(t, parts, "xl/worksheets/sheet1.xml", "<worksheet><sheetData><row><c>"),
		"a lost text": zipped(t, parts, "xl/worksheets/sheet1.xml",
			`<worksheet><sheetData><row r="1"><c r="A1" t="s"><v>99</v></c></row></sheetData></worksheet>`),
		"a cell twice": zipped(t, parts, "xl/worksheets/sheet1.xml",
			`<worksheet><sheetData><row r="1"><c r="A1"/><c r="A1"/></row></sheetData></worksheet>`),
		"rows in no order": zipped(t, parts, "xl/worksheets/sheet1.xml",
			`<worksheet><sheetData><row r="2"/><row r="1"/></sheetData></worksheet>`),
		"a part twice": twice(t, "xl/workbook.xml"),
	} {
		if _, err := seal.Read(book); err == nil || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func smallBook(t testing.TB) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	steps := []error{
		f.SetCellValue("Sheet1", "A1", "a text"), f.SetCellValue("Sheet1", "B2", 84.7), f.SetCellFormula("Sheet1", "C3", "B2*2"),
		f.MergeCell("Sheet1", "A5", "B6"), f.SetColVisible("Sheet1", "D", false), f.SetRowVisible("Sheet1", 9, false),
		f.AddComment("Sheet1", excelize.Comment{Cell: "A1", Text: "a note"}),
		f.SetHeaderFooter("Sheet1", &excelize.HeaderFooterOptions{OddFooter: "&Cpage &P"}),
		f.AddShape("Sheet1", &excelize.Shape{Cell: "F2", Type: "rect", Paragraph: []excelize.RichTextRun{{Text: "a box"}}}),
		f.AddChart("Sheet1", "F8", &excelize.Chart{Type: excelize.Col, Series: []excelize.ChartSeries{{Values: "Sheet1!$B$2:$B$3"}}}),
		f.AddSparkline("Sheet1", &excelize.SparklineOptions{Location: []string{"E2"}, Range: []string{"Sheet1!B2:B3"}}),
		f.SetDefinedName(&excelize.DefinedName{Name: "named", RefersTo: "Sheet1!$A$1"}),
		f.AddDataValidation("Sheet1", &excelize.DataValidation{Type: "list", Sqref: "A8", Formula1: `"a,b"`}),
		f.SetConditionalFormat("Sheet1", "B2",
			[]excelize.ConditionalFormatOptions{{Type: "data_bar", Criteria: "=", MinType: "min", MaxType: "max"}}),
	}
	for _, err := range steps {
		if err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func partsOf(t testing.TB, book []byte) map[string]string {
	t.Helper()
	zr, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	parts := map[string]string{}
	for _, file := range zr.File {
		r, err := file.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		r.Close()
		if err != nil {
			t.Fatal(err)
		}
		parts[file.Name] = string(text)
	}
	return parts
}

// zipped is a file of parts, one of them with another text.
func zipped(t testing.TB, parts map[string]string, name, text string) []byte {
	t.Helper()
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	put := func(name, text string) {
		w, err := zw.Create(name)
		if err == nil {
			_, err = io.WriteString(w, text)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for other, was := range parts {
		if other != name {
			put(other, was)
		}
	}
	put(name, text)
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// twice is a workbook with one of its parts told twice.
func twice(t testing.TB, name string) []byte {
	book := smallBook(t)
	parts := partsOf(t, book)
	double := strings.Repeat("x", len(name))
	data := zipped(t, parts, double, parts[name])
	return bytes.ReplaceAll(slices.Clone(data), []byte(double), []byte(name))
}
