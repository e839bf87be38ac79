package main

import (
	"errors"
	"regexp"
	"strings"

	"github.com/xuri/excelize/v2"
)

// recordTamperings change the record within the workbook, its copy, or the
// signatures.
func recordTamperings() []tampering {
	both := func(at string, value any) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error {
			return errors.Join(f.SetCellValue("Slab RH", at, value), f.SetCellValue(copiedHoles, at, value))
		})
	}
	return []tampering{
		{name: "another reading", change: typedOver("Slab RH", "I3", 74)},
		{name: "another reading in table and copy", change: both("I3", 74)},
		{name: "another limit in table and copy", change: opened(func(f *excelize.File) error {
			return errors.Join(f.SetCellValue("Products", "E3", 95), f.SetCellValue("As judged Products", "E3", 95))
		})},
		{name: "another reading in the copy alone", change: typedOver(copiedHoles, "I3", 74)},
		{name: "a reading taken out", change: typedOver("Slab RH", "I3", "")},
		{name: "a reading that is a text", change: typedOver("Slab RH", "I3", "81.5")},
		{name: "a reading given by a formula", change: givenBy("Slab RH", "I3", "80+1.5")},
		{name: "a number formula in the copy", change: givenBy(copiedHoles, "I3", "80+1.5")},
		{name: "a row taken out", change: opened(func(f *excelize.File) error { return f.RemoveRow("Slab RH", 3) })},
		{name: "a row of a hole added", change: opened(func(f *excelize.File) error { return f.DuplicateRow("Slab RH", 2) })},
		{name: "a row far below", change: typedOver("Slab RH", "A400", "A1")},
		{name: "a column taken out", change: opened(func(f *excelize.File) error { return f.RemoveCol("Slab RH", "E") })},
		{name: "a column of another unit", change: typedOver("Slab RH", "F1", "Depth (cm)")},
		{name: "a column added", change: typedOver("Slab RH", "L1", "Discarded")},
		{name: "a day moved", change: typedOver("Areas", "2026-03-05", "2026-03-06")},
		{name: "a table taken out", change: opened(func(f *excelize.File) error { return f.DeleteSheet("Surface") })},
		{name: "table and copy taken out", change: opened(func(f *excelize.File) error {
			return errors.Join(f.DeleteSheet("Surface"), f.DeleteSheet("As judged Surface"))
		})},
		{name: "a table of another kind added", change: opened(func(f *excelize.File) error {
			_, err := f.NewSheet("Events")
			return errors.Join(err, f.SetSheetRow("Events", "A1", &[]string{"Area", "At", "What"}))
		})},
		{name: "another signer", change: typedOver("Sign-off", "C2", "Another")},
		{name: "a signature taken out", change: opened(func(f *excelize.File) error { return f.RemoveRow("Sign-off", 2) })},
		{name: "another remark of a signer", change: typedOver("Sign-off", "F2", "waived")},
		{name: "a hidden signature", change: opened(func(f *excelize.File) error { return f.SetRowVisible("Sign-off", 2, false) })},
		{name: "signatures shown in other words", change: formatted("Sign-off", "E2", `;;;"waive"`)},
		{name: "another header of the signatures", change: typedOver("Sign-off", "F1", "Waives")},
	}
}

// fileTamperings change the file: its sheets, names, stored results and parts.
func fileTamperings() []tampering {
	name := func(n excelize.DefinedName) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error { return f.SetDefinedName(&n) })
	}
	const book, decision = "xl/workbook.xml", "xl/worksheets/sheet1.xml"
	return []tampering{
		{name: "a sheet ALL AREAS GO", change: typedOverNew("ALL AREAS GO", "A1", "every area is ready")},
		{name: "an empty sheet of somebody", change: opened(func(f *excelize.File) error { _, err := f.NewSheet("GO"); return err })},
		{name: "a hidden sheet of somebody", change: opened(func(f *excelize.File) error {
			_, err := f.NewSheet("spare")
			return errors.Join(err, f.SetSheetVisible("spare", false))
		})},
		{name: "a sheet taken out", change: opened(func(f *excelize.File) error { return f.DeleteSheet("Limits") })},
		{name: "a renamed page", change: opened(func(f *excelize.File) error { return f.SetSheetName(areaSheet, "Area A1 (GO)") })},
		{name: "a renamed table", change: opened(func(f *excelize.File) error { return f.SetSheetName("Slab RH", "Slab RH 2") })},
		{name: "sheets in another order", change: opened(func(f *excelize.File) error { return f.MoveSheet("Checks", areaSheet) })},
		{name: "a chart on a sheet of its own", change: opened(func(f *excelize.File) error {
			return f.AddChartSheet("Overview", &excelize.Chart{
				Type: excelize.Col, Series: []excelize.ChartSeries{{Categories: "Plotted!$A$5:$A$7", Values: "Plotted!$B$5:$B$7"}},
			})
		})},
		{name: "a name of somebody", change: name(excelize.DefinedName{Name: "Approved", RefersTo: "Decision!$B$6"})},
		{name: "a name that looks like a filter", change: name(excelize.DefinedName{Name: "GO_FilterDatabase", RefersTo: "Decision!$B$6"})},
		{
			name:   "another area that is printed",
			change: name(excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: "Decision!$A$1:$J$5", Scope: "Decision"}),
		},
		{name: "a list made a table", change: opened(func(f *excelize.File) error {
			return f.AddTable("Limits", &excelize.Table{Range: "A1:H12", Name: "Approved"})
		})},
		{name: "rows that a filter hides", change: opened(func(f *excelize.File) error {
			return errors.Join(f.AutoFilter("Limits", "A1:H12", nil), f.SetRowVisible("Limits", 2, false))
		})},
		{name: "another stored verdict", lost: true, change: inPart(decision, "<v>"+noGo81+"</v>", "<v>GO</v>")},
		{name: "another stored figure", lost: true, change: inPart("xl/worksheets/sheet2.xml", "<v>81.5</v>", "<v>74</v>")},
		{name: "most stored results taken out and GO stored", lost: true, change: repacked(func(parts map[string]string) error {
			for part, text := range parts {
				if strings.HasPrefix(part, "xl/worksheets/sheet") && part != decision {
					parts[part] = regexp.MustCompile(`</f><v>[^<]*</v>`).ReplaceAllString(text, "</f>")
				}
			}
			parts[decision] = strings.Replace(parts[decision], "<v>"+noGo81+"</v>", "<v>GO</v>", 1)
			return nil
		})},
		{name: "days counted from 1904", change: inPart(book, "<workbookPr ", `<workbookPr date1904="1" `)},
		{
			name: "formulas that wait to be asked", lost: true,
			change: inPart(book, "</definedNames>", `</definedNames><calcPr calcMode="manual"/>`),
		},
		{
			name: "numbers only as exact as shown", lost: true,
			change: inPart(book, "</definedNames>", `</definedNames><calcPr fullPrecision="0"/>`),
		},
		{name: "another record named in the properties", change: inPart("docProps/core.xml", "SHA-256 ", "SHA-256 0")},
		{name: "another version named", change: typedOver("Decision", "A13", "Seal 0. firstboard 0.0.9, catalog of 37 checks.")},
		{name: "another version named with the seal kept", change: opened(func(f *excelize.File) error {
			found, err := f.SearchSheet("Decision", `^Seal [0-9a-f]{64}`, true)
			if err != nil || len(found) != 1 {
				return errors.Join(err, errors.New("no seal"))
			}
			text, err := f.GetCellValue("Decision", found[0])
			return errors.Join(err, f.SetCellValue("Decision", found[0], strings.Replace(text, "firstboard 0.1.0", "firstboard 0.0.9", 1)))
		})},
		{name: "a program in the file", lost: true, change: repacked(func(parts map[string]string) error {
			parts["xl/vbaProject.bin"] = "a program"
			parts["xl/_rels/workbook.xml.rels"] = strings.Replace(parts["xl/_rels/workbook.xml.rels"], "</Relationships>",
				`<Relationship Id="rId900" Type="http://schemas.microsoft.com/office/2006/relationships/vbaProject" Target="vbaProject.bin"/></Relationships>`, 1)
			return nil
		})},
		{name: "another workbook part behind the first", change: repacked(func(parts map[string]string) error {
			parts["xl/other.xml"] = strings.Replace(parts[book], `<sheet name="Limits"`, `<sheet name="Cautions 2"`, 1)
			parts["xl/_rels/other.xml.rels"] = parts["xl/_rels/workbook.xml.rels"]
			parts["_rels/.rels"] = strings.Replace(parts["_rels/.rels"], "xl/workbook.xml", "xl/other.xml", 1)
			parts["[Content_Types].xml"] = strings.Replace(parts["[Content_Types].xml"], "/xl/workbook.xml", "/xl/other.xml", 1)
			return nil
		})},
		{name: cellTwice, lost: true, change: inPart(decision, `<c r="B6"`,
			`<c r="B6" t="inlineStr"><is><t>GO</t></is></c><c r="B6"`)},
		{name: "a cell without a name", change: inPart("xl/worksheets/sheet3.xml", `<c r="C2"`, `<c`, `<v>80</v>`, `<v>95</v>`)},
	}
}

// typedOverNew adds a sheet with a text in a cell.
func typedOverNew(sheet, at, text string) func([]byte) ([]byte, error) {
	return opened(func(f *excelize.File) error {
		_, err := f.NewSheet(sheet)
		return errors.Join(err, f.SetCellValue(sheet, at, text))
	})
}
