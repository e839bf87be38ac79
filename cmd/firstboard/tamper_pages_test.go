package main

import (
	"regexp"

	"github.com/xuri/excelize/v2"
)

// styled gives a cell of a workbook a style of its own.
func styled(sheet, text string, style excelize.Style) func([]byte) ([]byte, error) {
	return opened(func(f *excelize.File) error {
		at, err := cellOf(f, sheet, text)
		if err != nil {
			return err
		}
		id, err := f.NewStyle(&style)
		if err != nil {
			return err
		}
		return f.SetCellStyle(sheet, at, at, id)
	})
}

func formatted(sheet, text, format string) func([]byte) ([]byte, error) {
	return styled(sheet, text, excelize.Style{CustomNumFmt: &format})
}

// pageTamperings change how pages are shown: what is hidden, merged, formatted,
// marked or checked.
func pageTamperings() []tampering {
	hide := func(sheet string, very ...bool) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error { return f.SetSheetVisible(sheet, false, very...) })
	}
	width := func(w float64) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error { return f.SetColWidth(areaSheet, "B", "B", w) })
	}
	height := func(h float64) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error { return f.SetRowHeight("Decision", 6, h) })
	}
	mark := func(sheet, cells string, o excelize.ConditionalFormatOptions, s excelize.Style) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error {
			id, err := f.NewConditionalStyle(&s)
			if err != nil {
				return err
			}
			o.Format = &id
			return f.SetConditionalFormat(sheet, cells, []excelize.ConditionalFormatOptions{o})
		})
	}
	saysGo := `"GO"`
	blue := excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"1F4E8C"}}}
	check := func(v excelize.DataValidation) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error { return f.AddDataValidation("Slab RH", &v) })
	}
	return []tampering{
		{name: "a hidden sheet of an area", change: hide(areaSheet)},
		{name: "a sheet hidden from every menu", change: hide(areaSheet, true)},
		{name: "a hidden table", change: hide("Slab RH")},
		{name: "a copy in sight", change: opened(func(f *excelize.File) error { return f.SetSheetVisible(copiedHoles, true) })},
		{name: "a hidden row with what is over", change: figureOf("slab-rh", "A", func(f *excelize.File, at string) error {
			_, row, err := excelize.CellNameToCoordinates(at)
			if err != nil {
				return err
			}
			return f.SetRowVisible(areaSheet, row, false)
		})},
		{name: "a hidden row of a table", change: opened(func(f *excelize.File) error { return f.SetRowVisible("Slab RH", 3, false) })},
		{name: "a hidden column", change: opened(func(f *excelize.File) error { return f.SetColVisible(areaSheet, "G", false) })},
		{name: "a row folded away", change: opened(func(f *excelize.File) error {
			if err := f.SetRowOutlineLevel("Limits", 2, 1); err != nil {
				return err
			}
			return f.SetRowVisible("Limits", 2, false)
		})},
		{name: "a column of no width", lost: true, change: width(0)},
		{name: "a column nobody can see", change: width(0.4)},
		{
			name: "a row of no height", lost: true,
			change: inPart("xl/worksheets/sheet1.xml", `<row r="6"`, `<row r="6" zeroed="1"`, `zeroed="1" ht="`, `ht="0" was="`),
		},
		{name: "a row nobody can see", change: height(1.5)},
		{
			name:   "rows that are hidden unless they say otherwise",
			change: inPart("xl/worksheets/sheet1.xml", `<sheetFormatPr`, `<sheetFormatPr zeroHeight="1"`),
		},
		{
			name: "rows of no height unless they say otherwise", lost: true,
			change: inPart("xl/worksheets/sheet1.xml", `<sheetFormatPr defaultRowHeight="15"`,
				`<sheetFormatPr defaultRowHeight="0" customHeight="1"`),
		},
		{
			name: "columns of no width unless they say otherwise", lost: true,
			change: inPart("xl/worksheets/sheet1.xml", `<sheetFormatPr`, `<sheetFormatPr defaultColWidth="0"`),
		},
		{
			name: "a text shown above another", lost: true,
			change: inPart("xl/worksheets/sheet1.xml", `<row r="1" `, `<row r="1" ph="1" `,
				`<is><t>Is this floor ready to install?</t></is>`,
				`<is><t>Is this floor ready to install?</t><rPh sb="0" eb="4"><t>GO</t></rPh></is>`),
		},
		{name: "pictures that are not shown", lost: true, change: inPart("xl/workbook.xml", `<workbookPr `, `<workbookPr showObjects="none" `)},
		{
			name:   "names of sheets that are not shown",
			change: inPart("xl/workbook.xml", `<workbookView `, `<workbookView showSheetTabs="0" `),
		},
		{name: "a hidden window", lost: true, change: inPart("xl/workbook.xml", `<workbookView `, `<workbookView visibility="hidden" `)},
		{name: "a frozen row that hides those above it", lost: true, change: repacked(func(parts map[string]string) error {
			const part = "xl/worksheets/sheet1.xml"
			view := regexp.MustCompile(`(?s)<sheetViews>.*?</sheetViews>`)
			parts[part] = view.ReplaceAllString(parts[part], `<sheetViews><sheetView workbookViewId="0" topLeftCell="A7">`+
				`<pane ySplit="3" topLeftCell="A10" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>`)
			return nil
		})},
		{
			name: "zeros that are not shown", lost: true,
			change: inPart("xl/worksheets/sheet2.xml", `<sheetView `, `<sheetView showZeros="0" `),
		},
		{name: "a number format that says GO", change: formatted("Decision", noGo81, `"GO";"GO";"GO";"GO"`)},
		{name: "a number format that says another number", change: styled(areaSheet, "81.5", excelize.Style{CustomNumFmt: ptr(`"74.0"`)})},
		{name: "a number format that shows nothing", change: formatted("Decision", "1  "+placedWhen, `;;;`)},
		{name: "a number format of fewer places", change: formatted("Slab RH", "I3", `0`)},
		{name: "a number format of thousands", change: formatted("Slab RH", "I3", `0.0,`)},
		{name: "a number shown as a percentage", change: formatted("Slab RH", "I3", `0.0%`)},
		{name: "a number shown as a day", change: formatted("Slab RH", "I3", `yyyy-mm-dd`)},
		{name: "a time shown without its day", change: formatted("Slab RH", "H3", `hh:mm`)},
		{name: "a format that names other figures", change: formatted("Slab RH", "I3", `[>80]"79.5";0.0`)},
		{name: "a text in the color of its ground", change: styled(areaSheet, "not met", excelize.Style{
			Font: &excelize.Font{Color: "FFFFFF"}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"FFFFFF"}},
		})},
		{
			name:   "a text in letters of no size",
			change: styled(areaSheet, "not met", excelize.Style{Font: &excelize.Font{Size: 1, Color: "000000"}}),
		},
		{name: "no conditional formats", change: opened(func(f *excelize.File) error {
			return f.UnsetConditionalFormat("Decision",
				"B6")
		})},
		{name: "a conditional format that shows GO", change: mark("Decision", "B6",
			excelize.ConditionalFormatOptions{Type: "formula", Criteria: "TRUE"}, excelize.Style{CustomNumFmt: &saysGo})},
		{name: "a NO-GO in blue", change: mark("Decision", "B6",
			excelize.ConditionalFormatOptions{Type: "formula", Criteria: `$B6<>"GO"`}, blue)},
		{name: "a bar within a cell", change: opened(func(f *excelize.File) error {
			return f.SetConditionalFormat("Slab RH", "I2:I4", []excelize.ConditionalFormatOptions{
				{Type: "data_bar", Criteria: "=", MinType: "min", MaxType: "max", BarColor: "#638EC6"},
			})
		})},
		{name: "cells merged over a reading", change: opened(func(f *excelize.File) error { return f.MergeCell("Slab RH", "I2", "I3") })},
		{name: "cells merged over nothing", change: opened(func(f *excelize.File) error { return f.MergeCell("Decision", "B30", "C31") })},
		{name: "cells no longer merged", change: opened(func(f *excelize.File) error { return f.UnmergeCell("Decision", "A8", "J8") })},
		{name: "an input check that lies", change: check(excelize.DataValidation{
			Type: "none", Sqref: "I3", ShowInputMessage: true, PromptTitle: ptr("Approved"), Prompt: ptr("The limit was raised to 95 %."),
		})},
		{name: "an input check of a list", change: check(excelize.DataValidation{Type: "list", Sqref: "I3", Formula1: `"70,71"`})},
		{name: "a comment on Decision", change: opened(func(f *excelize.File) error {
			return f.AddComment("Decision", excelize.Comment{Cell: "B6", Author: "Owner", Text: "Approved for laying"})
		})},
		{name: "a comment on a table", change: opened(func(f *excelize.File) error {
			return f.AddComment("Slab RH", excelize.Comment{Cell: "I3", Author: "Owner", Text: "read 74"})
		})},
		{name: "a link to elsewhere", change: opened(func(f *excelize.File) error {
			return f.SetCellHyperLink("Decision", "B6", "https://example.com/approved", "External")
		})},
		{name: "evidence that leads to another cell", change: figureOf("slab-rh", "H", func(f *excelize.File, at string) error {
			return f.SetCellHyperLink(areaSheet, at, "'Slab RH'!I2", "Location")
		})},
	}
}

func ptr[T any](x T) *T { return &x }
