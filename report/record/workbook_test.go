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
	"firstboard/report/evidence"
	"firstboard/report/record/sheet"
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
				p[name] = strings.NewReplacer("http://schemas.openxmlformats.org/officeDocument/2006/",
					"http://purl.oclc.org/ooxml/officeDocument/",
					mainSpace, "http://purl.oclc.org/ooxml/spreadsheetml/main").Replace(p[name])
			}
			return p
		},
		"byte order marks": func(p parts) parts {
			for name := range p {
				p[name] = sheet.ByteOrderMark + `<?xml version="1.0" encoding="utf-8"?>` + p[name]
			}
			return p
		},
		"absolute targets": func(p parts) parts {
			return p.swap(t, "xl/_rels/workbook.xml.rels", `Target="worksheets/`, `Target="/xl/worksheets/`).swap(t, "_rels/.rels",
				`Target="xl`, `Target="/xl`)
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
			return p.swap(t, slabSheet, inline("84.70"), `<c><v>84.70</v></c>`).swap(t, slabSheet, inline("70"),
				`<c t="n"><v>7.0E1</v></c>`)
		},
	}
	for name, change := range write {
		t.Run(name, func(t *testing.T) {
			got := readBook(t, change(handWritten(t, with)))
			if diff := cmp.Diff(want.Job, got.Job, placesAside()); diff != "" {
				t.Errorf("jobs differ (-folder +workbook):\n%s", diff)
			}
			if diff := cmp.Diff(want.Tables, got.Tables, placesAside()); diff != "" {
				t.Errorf("tables differ (-folder +workbook):\n%s", diff)
			}
			if at := got.Job.Holes[0].RH.Place.String(); !evidence.Same(at, "Slab RH!G2") {
				t.Errorf("the reading's place is %s", at)
			}
		})
	}
}

func TestWorkbookIdentity(t *testing.T) {
	p := handWritten(t, nil)
	p.swap(t, "xl/workbook.xml", "</sheets>",
		`<sheet name="Contacts" sheetId="98" r:id="none"/><sheet name="Cautions" sheetId="99" r:id="gone"/></sheets>`)
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
	if diff := cmp.Diff([]string{"Contacts", "Cautions"}, rec.NotRead); diff != "" {
		t.Error(diff)
	}
}

// A workbook of excelize's own making: dates in its default format, percentages,
// merged cells beside the table, and a formula whose value it did not store.
func TestLibraryWorkbook(t *testing.T) {
	path := twin(t, folderOf(t, changed(map[string]string{"air.csv": airHead + "2026-03-04 08:30,70,40,T1,\n"})))
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	percent, _ := f.NewStyle(&excelize.Style{NumFmt: 9})
	for _, err := range []error{
		f.SetCellValue("Air", "C2", 0.58), f.SetCellStyle("Air", "C2", "C2", percent),
		f.SetCellValue("Air", "E2", "by hand"), f.MergeCell("Air", "F2", "F4"), f.SetCellValue("Air", "B2", nil),
		f.SetCellFormula("Air", "B2", "35*2"),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	if got := faulty(t, path); !strings.Contains(got, `Air!B2 "Temp (F)": is a formula without a stored result`) {
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
