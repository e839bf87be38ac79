package record

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"firstboard/acclimate"
	"firstboard/report"
)

func readBook(t testing.TB, p parts) Record {
	t.Helper()
	rec, err := Read(p.save(t))
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// However a workbook is written, it says the same.
func TestWorkbookWriters(t *testing.T) {
	with := map[string]string{"slab-rh.csv": holeHead + "A1,H1,,1.6,2026-03-01 08:00,2026-03-03 08:00,84.70,70,RP1\n"}
	want := sound(t, with)
	write := map[string]func(p parts) parts{
		"plain": func(p parts) parts { return p },
		"prefixes": func(p parts) parts {
			for name, xml := range p {
				if strings.Contains(name, "worksheets") {
					xml = strings.NewReplacer("<worksheet xmlns=", "<x:worksheet xmlns:x=", "</", "</x:", "<row", "<x:row",
						"<c ", "<x:c ", "<is>", "<x:is>", "<t>", "<x:t>", "<sheetData>", "<x:sheetData>").Replace(xml)
					p[name] = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>` + "\n" + xml
				}
			}
			return p
		},
		"strict": func(p parts) parts {
			for name := range p {
				p[name] = strings.NewReplacer("http://schemas.openxmlformats.org/officeDocument/2006/", "http://purl.oclc.org/ooxml/officeDocument/",
					mainSpace, "http://purl.oclc.org/ooxml/spreadsheetml/main").Replace(p[name])
			}
			return p
		},
		"absolute targets": func(p parts) parts {
			return p.swap(t, "xl/_rels/workbook.xml.rels", `Target="worksheets/`, `Target="/xl/worksheets/`).swap(t, "_rels/.rels", `Target="xl`, `Target="/xl`)
		},
		"backslashes and other capitals": func(p parts) parts {
			p[`XL\Worksheets\Slab-RH.csv`] = p[slabSheet]
			delete(p, slabSheet)
			return p
		},
		"hidden": func(p parts) parts {
			return p.swap(t, "xl/workbook.xml", `<sheet name="Slab RH"`, `<sheet state="veryHidden" name=" slab  rh"`)
		},
		"shared texts": func(p parts) parts {
			p = p.swap(t, slabSheet, inline("RH (%)"), `<c t="s"><v>1</v></c>`).swap(t, slabSheet, inline("RP1"), `<c t="s"><v>0</v></c>`)
			return p.share(`<sst xmlns="`+mainSpace+`"><si><r><t>R</t></r><r><rPr><b/></rPr><t>P1</t></r><rPh sb="0" eb="1"><t>probe</t></rPh></si><si><t>RH (%)</t></si></sst>`, "")
		},
		"formula texts": func(p parts) parts {
			return p.swap(t, slabSheet, inline("RP1"), `<c t="str"><f>"RP"&amp;1</f><v>RP1</v></c>`)
		},
		"references": func(p parts) parts {
			p = p.swap(t, slabSheet, "<row>"+inline("A1"), `<row r="2" spans="1:9"><c r="A2" t="inlineStr"><is><t>A1</t></is></c>`)
			return p.swap(t, slabSheet, inline("RP1"), `<c r="I2" t="inlineStr"><is><t>RP1</t></is></c><c r="XFD2" s="0"/>`)
		},
		"other elements": func(p parts) parts {
			p = p.swap(t, slabSheet, "<sheetData>", `<!-- c --><sheetViews><sheetView><pane/></sheetView></sheetViews><sheetData>`)
			return p.swap(t, slabSheet, "</sheetData>", `</sheetData><mergeCells><mergeCell ref="A5:B6"/></mergeCells>`)
		},
		"numbers": func(p parts) parts {
			return p.swap(t, slabSheet, inline("84.70"), `<c><v>84.70</v></c>`).swap(t, slabSheet, inline("70"), `<c t="n"><v>7.0E1</v></c>`)
		},
	}
	for name, change := range write {
		t.Run(name, func(t *testing.T) {
			got := readBook(t, change(handWritten(t, with)))
			if diff := cmp.Diff(want.Job, got.Job, alike()); diff != "" {
				t.Errorf("jobs differ (-folder +workbook):\n%s", diff)
			}
			if diff := cmp.Diff(want.Tables, got.Tables, alike()); diff != "" {
				t.Errorf("tables differ (-folder +workbook):\n%s", diff)
			}
			if at := got.Job.Holes[0].RH.Place.String(); !strings.HasPrefix(at, `mill.xlsx "`) || !strings.HasSuffix(at, `" row 2`) {
				t.Errorf("the reading's place is %s", at)
			}
		})
	}
}

func TestWorkbookIdentity(t *testing.T) {
	p := handWritten(t, nil)
	p.swap(t, "xl/workbook.xml", "</sheets>", `<sheet name="Zones" sheetId="98" r:id="s1"/><sheet name="Cautions" sheetId="99" r:id="gone"/></sheets>`)
	path := p.save(t)
	rec, err := Read(path)
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(data)
	if rec.Name != "mill.xlsx" || rec.SHA256 != hex.EncodeToString(sum[:]) {
		t.Errorf("got %s %s", rec.Name, rec.SHA256)
	}
	if diff := cmp.Diff([]string{"Zones", "Cautions"}, rec.NotRead); diff != "" {
		t.Error(diff)
	}
}

// Values come from the stored cell: percentages, dates and floats as they are
// meant.
func TestStoredValues(t *testing.T) {
	for _, c := range []struct{ name, cells, at, temp, rh string }{
		{"texts", inlines("2026-03-04 08:30", "70", "40.10"), "2026-03-04 08:30", "70", "40.10"},
		{"floats", `<c s="4"><v>46085.354166666664</v></c><c><v>70.299999999999997</v></c><c s="6"><v>40.100000000000001</v></c>`, "2026-03-04 08:30", "70.3", "40.1"},
		{"percent", `<c s="4"><v>46085.354166666664</v></c><c><v>70</v></c><c s="1"><v>0.84699999999999998</v></c>`, "2026-03-04 08:30", "70", "84.7"},
		{"own percent", `<c s="4"><v>46085.354166666664</v></c><c><v>-1.5E1</v></c><c s="2"><v>1.7000000000000001E-2</v></c>`, "2026-03-04 08:30", "-15", "1.7"},
		{"percent below one", `<c s="4"><v>46085.35417</v></c><c><v>70</v></c><c s="2"><v>5.0000000000000001E-3</v></c>`, "2026-03-04 08:30", "70", "0.5"},
		{"a day with hours", `<c s="3"><v>46085.354178240741</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 08:30:01", "70", "40"},
		{"typed noughts", `<c s="4"><v>46085.354166666664</v></c><c s="6"><v>70</v></c><c s="6"><v>40.25</v></c>`, "2026-03-04 08:30", "70.0", "40.25"},
		{"midnight", `<c s="4"><v>46085</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 00:00", "70", "40"},
		{"ISO", `<c t="d" s="4"><v>2026-03-04T08:30:00</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 08:30", "70", "40"},
		{"ISO, parts of a second", `<c t="d"><v>2026-03-04T08:29:59.999Z</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 08:30", "70", "40"},
		{"formulas", `<c s="4"><f t="shared" si="0"/><v>46085.354166666664</v></c><c><f>35*2</f><v>70</v></c><c><f t="shared" ref="C2:C9" si="1">C1</f><v>40</v></c>`, "2026-03-04 08:30", "70", "40"},
	} {
		t.Run(c.name, func(t *testing.T) {
			rec := readBook(t, airBook(t, "<row>"+c.cells+inline("T1")+"</row>").share("", styled))
			got := rec.Job.Air[0]
			if diff := cmp.Diff([]string{c.at, c.temp, c.rh}, []string{got.ReadAt.Written, got.Temp.Written, got.RH.Written}); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestDaysSince1904(t *testing.T) {
	p := airBook(t, `<row><c s="4"><v>44623.354166666664</v></c>`+inlines("70", "40", "T1")+"</row>").share("", styled)
	p.swap(t, "xl/workbook.xml", "<sheets>", `<workbookPr date1904="1"/><sheets>`)
	if got := readBook(t, p).Job.Air[0].ReadAt.Written; got != "2026-03-04 08:30" {
		t.Errorf("got %s", got)
	}
}

// What a spreadsheet calls a number stays the text that its column asks for,
// and what XML cannot hold comes back from its escape.
func TestTextColumns(t *testing.T) {
	p := airBook(t, "<row>"+inlines("2026-03-04 08:30", "70", "40", "T1")+inline("two_x000D_\nlines_x005F_x0041_ _xZZZZ_")+`</row>`+
		"<row>"+inlines("2026-03-04 08:40", "70", "40")+`<c><v>7</v></c><c s="2"><v>0.25</v></c></row>`)
	p.swap(t, "xl/worksheets/instruments.csv", inline("007"), `<c><v>7.0</v></c>`).swap(t, airSheet, "<c><v>7</v></c>", `<c><v>7.0</v></c>`)
	rec := readBook(t, p.share("", styled))
	if got, want := rec.Job.Air[0].Note, "two\r\nlines_x0041_ _xZZZZ_"; got != want {
		t.Errorf("got %q, not %q", got, want)
	}
	if got := rec.Job.Air[1].Note; got != "25%" {
		t.Errorf("got %q", got)
	}
	cell := rec.Tables[len(rec.Tables)-1].Rows[1].Cells[3]
	if diff := cmp.Diff(report.Cell{Kind: report.TextCell, Text: "7.0"}, cell); diff != "" {
		t.Error(diff)
	}
}

// Runs in runs without end are no text, and do not exhaust the stack.
func TestDeepRuns(t *testing.T) {
	deep := strings.Repeat("<r>", 1_000_000) + "<t>x</t>" + strings.Repeat("</r>", 1_000_000)
	p := airBook(t, "<row>"+inlines("2026-03-04 08:30", "70", "40", "T1")+`<c t="s"><v>0</v></c></row>`).share("<sst><si>"+deep+"</si></sst>", "")
	if got := readBook(t, p).Job.Air[0].Note; got != "" {
		t.Errorf("got %q", got)
	}
}

func TestWorkbookFaults(t *testing.T) {
	const at = `mill.xlsx "Air" row 2 `
	for _, c := range []struct{ name, cells, want string }{
		{"a decimal comma", inlines("2026-03-04 08:30", "70", "84,7"), at + `"RH (%)": "84,7" is not a plain number; write 84.7`},
		{"a truth value", inlines("2026-03-04 08:30", "70") + `<c t="b"><v>1</v></c>`, at + `"RH (%)": TRUE is a truth value; write yes, no, a number or words`},
		{"an error value", inlines("2026-03-04 08:30", "70") + `<c t="e"><f>1/0</f><v>#DIV/0!</v></c>`, at + `"RH (%)": "#DIV/0!" is an error value; write what was observed, or clear the cell`},
		{"no result", inlines("2026-03-04 08:30", "70") + `<c><f>SUM(A1:A2)</f></c>`, at + `"RH (%)": is a formula without a stored result; open the workbook in a spreadsheet program, let it calculate and save it, or write the value`},
		{"an empty result", inlines("2026-03-04 08:30", "70") + `<c><f>SUM(A1:A2)</f><v></v></c>`, at + `"RH (%)": is a formula without a stored result; open the workbook in a spreadsheet program, let it calculate and save it, or write the value`},
		{"a plain number for a time", `<c><v>46085.5</v></c>` + inlines("70", "40"), at + `"Read at": "46085.5" is a number, not a time; write the day and the time, such as 2026-03-04 08:30`},
		{"a day for a time", `<c s="3"><v>46085</v></c>` + inlines("70", "40"), at + `"Read at": "2026-03-04" is a date, and a time is asked for; write the day and the time, such as 2026-03-04 08:30`},
		{"a clock time alone", `<c s="4"><v>0.35416666666666669</v></c>` + inlines("70", "40"), at + `"Read at": "0.354166666666667" is a number, not a time; write the day and the time, such as 2026-03-04 08:30`},
		{"a date for a number", inline("2026-03-04 08:30") + `<c s="3"><v>46085</v></c>` + inline("40"), at + `"Temp (F)": "2026-03-04" is a date, not a number; write the number, and format the cell as one`},
		{"a percentage that is none", inlines("2026-03-04 08:30", "70") + `<c s="1"><v>84.7</v></c>`, at + `"RH (%)": "8470" is outside 0 to 100; write the number in the unit of its column, or leave the cell blank`},
		{"a fraction", inlines("2026-03-04 08:30", "70") + `<c><v>0.84699999999999998</v></c>`, at + `"RH (%)": "0.847" looks like a fraction of one; write 84.7`},
		{"a huge number", inlines("2026-03-04 08:30", "70") + `<c><v>1E+300</v></c>`, at + `"RH (%)": "100000000000000000000000000000000000000000000000000000000000..." has more digits than any reading; write the number as read`},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := airBook(t, "<row>"+c.cells+inline("T1")+"</row>").share("", styled)
			wants(t, faulty(t, p.save(t)), c.want)
		})
	}
	p := airBook(t, `<row r="3"><c r="G3"><v>5</v></c></row>`)
	wants(t, faulty(t, p.save(t)), `mill.xlsx "Air" row 3: "5" stands in column 7, which has no header; name the column or clear the cell`)
	p = airBook(t, `<row r="9">`+inlines("2026-03-04 08:30", "70", "x", "T1")+`</row>`)
	wants(t, faulty(t, p.save(t)), `mill.xlsx "Air" row 9 "RH (%)": "x" is not a plain number; write digits with a point, such as 84.7`)
}

// A whole day is a date even where its format shows a time.
func TestDayCells(t *testing.T) {
	p := handWritten(t, nil).share("", styled)
	p.swap(t, "xl/worksheets/areas.csv", inline("2026-03-12"), `<c s="4"><v>46093</v></c>`)
	if got := readBook(t, p).Job.Areas[0].LayOn.Written; got != "2026-03-12" {
		t.Errorf("got %s", got)
	}
	p.swap(t, "xl/worksheets/areas.csv", "46093", "46093.25")
	wants(t, faulty(t, p.save(t)), `mill.xlsx "Areas" row 2 "Lay on": "2026-03-12 06:00" has a time in it, and a date is asked for; write 2026-03-12`)
}

// A workbook of excelize's own making: dates in its default format, percentages,
// merged cells, and a formula whose value it did not store.
func TestLibraryWorkbook(t *testing.T) {
	path := twin(t, folderOf(t, changed(map[string]string{"air.csv": airHead + "2026-03-04 08:30,70,40,T1,\n"})))
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	percent, _ := f.NewStyle(&excelize.Style{NumFmt: 9})
	for _, err := range []error{
		f.SetCellValue("Air", "C2", 0.58), f.SetCellStyle("Air", "C2", "C2", percent),
		f.SetCellValue("Air", "E2", "by hand"), f.MergeCell("Air", "E2", "E4"), f.SetCellValue("Air", "B2", nil), f.SetCellFormula("Air", "B2", "35*2"),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	if got := faulty(t, path); !strings.Contains(got, `"Air" row 2 "Temp (F)": is a formula without a stored result`) {
		t.Errorf("got %s", got)
	}
	if err := f.SetCellValue("Air", "B2", 70.25); err != nil {
		t.Fatal(err)
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	rec, err := Read(path)
	if err != nil {
		t.Fatal(err)
	}
	strip := func(a acclimate.Air) []string { return []string{a.Temp.String(), a.RH.String(), a.Note} }
	if diff := cmp.Diff([]string{"70.25 F", "58 % RH", "by hand"}, strip(rec.Job.Air[0])); diff != "" || len(rec.Job.Air) != 1 {
		t.Error(diff)
	}
}
