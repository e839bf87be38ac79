package main

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// typedOver sets a cell of a workbook: the first of a sheet that shows a text,
// or one by its address.
func typedOver(sheet, text string, value any) func([]byte) ([]byte, error) {
	return opened(func(f *excelize.File) error {
		at, err := cellOf(f, sheet, text)
		if err != nil {
			return err
		}
		return f.SetCellValue(sheet, at, value)
	})
}

// givenBy sets a formula, and takes away what was stored with the one before.
func givenBy(sheet, text, formula string) func([]byte) ([]byte, error) {
	return opened(func(f *excelize.File) error {
		at, err := cellOf(f, sheet, text)
		if err != nil {
			return err
		}
		return f.SetCellFormula(sheet, at, formula)
	})
}

// cellOf is the first cell of a sheet that shows a text, or the cell of that
// address.
func cellOf(f *excelize.File, sheet, text string) (string, error) {
	found, err := f.SearchSheet(sheet, text)
	if err != nil {
		return "", err
	}
	if len(found) > 0 {
		return found[0], nil
	}
	if _, _, err := excelize.CellNameToCoordinates(text); err != nil {
		return "", fmt.Errorf("sheet %s does not show %q", sheet, text)
	}
	return text, nil
}

// beside is the cell of a row that begins with a text, in another column.
func beside(f *excelize.File, sheet, first, column string) (string, error) {
	at, err := cellOf(f, sheet, first)
	if err != nil {
		return "", err
	}
	_, row, err := excelize.CellNameToCoordinates(at)
	return fmt.Sprint(column, row), err
}

// figureOf changes a cell of a check's row on the sheet of the area.
func figureOf(check, column string, change func(f *excelize.File, at string) error) func([]byte) ([]byte, error) {
	return opened(func(f *excelize.File) error {
		at, err := beside(f, areaSheet, check, column)
		if err != nil {
			return err
		}
		return change(f, at)
	})
}

const (
	areaSheet   = "Area A1"
	noGo81      = "NO-GO, over a limit"
	placedWhen  = "when the slab was placed was not recorded"
	copiedHoles = "As judged Slab RH"
)

func to(value any) func(f *excelize.File, at string) error {
	return func(f *excelize.File, at string) error { return f.SetCellValue(areaSheet, at, value) }
}

func toFormula(text string) func(f *excelize.File, at string) error {
	return func(f *excelize.File, at string) error { return f.SetCellFormula(areaSheet, at, text) }
}

// cellTamperings change what cells of the pages hold.
func cellTamperings() []tampering {
	return []tampering{
		{name: "an approval typed on Decision", change: typedOver("Decision", "B40", "Approved for laying")},
		{name: "an approval typed on the area's sheet", change: typedOver(areaSheet, "C4", "Approved for laying")},
		{name: "an approval typed into an empty cell of a finding", change: figureOf("limits-known", "D", to("approved"))},
		{name: "a condition taken back", change: typedOver("Decision", "1  "+placedWhen, "1  the slab was placed in 2024")},
		{name: "a condition taken back on the area's sheet", change: typedOver(areaSheet, placedWhen, "none")},
		{name: "a limit of 95 % on Limits", change: typedOver("Limits", "C2", 95)},
		{name: "a limit of 95 % on Decision", change: typedOver("Decision", "80 % RH\nGLUE", "95 % RH\nGLUE")},
		{name: "a limit of 95 % beside a finding", change: figureOf("slab-rh", "E", to(95))},
		{name: "a limit of 95 % by a formula", change: figureOf("slab-rh", "E", toFormula("ROUND(95,9)"))},
		{name: "another reason", change: figureOf("slab-rh", "G", to("highest of 3 holes: H2, 74.0 % RH (limit 80 %, GLUE)"))},
		{name: "another worst cell", change: typedOver("Decision", "slab-rh 81.5 % RH\nSlab RH!I3", "slab-rh 74.0 % RH\nSlab RH!I3")},
		{name: "a later day of good until", change: typedOver("Decision", "H6", "2027-03-06")},
		{name: "a verdict typed over on Decision", change: typedOver("Decision", noGo81, "GO")},
		{name: "a verdict that is always GO", change: givenBy("Decision", noGo81, `IF(1=1,"GO","")`)},
		{name: "a verdict typed over on the area's sheet", change: typedOver(areaSheet, "A2", "GO")},
		{name: "a verdict kept as it is without its formula", change: typedOver(areaSheet, "A2", noGo81)},
		{name: "an outcome typed over", change: figureOf("slab-rh", "B", to("met"))},
		{name: "an outcome that is always met", change: figureOf("slab-rh", "B", toFormula(`IF(ROUND((E24-D24),9)<9,"not met","met")`))},
		{name: "a figure kept as it is without its formula", change: figureOf("slab-rh", "D", to(81.5))},
		{name: "a figure of other cells", change: figureOf("slab-rh", "D", toFormula("ROUND(MAX('Slab RH'!I2),9)"))},
		{name: "a deciding check called advice", change: figureOf("slab-rh", "C", to("advice"))},
		{name: "a finding that says it is no formula", change: figureOf("slab-rh", "J", to("no"))},
		{name: "a check of another name", change: figureOf("slab-rh", "A", to("slab-humidity"))},
		{name: "the count of areas that are GO", change: typedOver("Decision", "0 of 1 area GO", "1 of 1 area GO")},
		{
			name:   "the line of the guard typed over",
			change: typedOver("Decision", "A2", "Every table of the record stands as it was judged."),
		},
		{name: "a guard that counts nothing", change: givenBy("As judged", "C2", "0")},
		{name: "a guard of one table that counts nothing", change: typedOver("As judged", "C11", 0)},
		{name: "a step on the sheet of figures", change: givenBy("Figures", "B18", "1.6")},
		{name: "a plotted number", change: typedOver("Plotted", "B6", 74)},
		{name: "a rule of the catalog", change: typedOver("Checks", "75 % RH", "85 % RH")},
		{name: "a caution taken out", change: typedOver("Cautions", "B3", "")},
		{name: "another day of installing", change: typedOver(areaSheet, "2026-03-05", "2026-03-25")},
		{name: "the seal typed over", change: typedOver("Decision", "A13", "Seal 0. firstboard 0.1.0, catalog of 37 checks.")},
		{name: "another record named on Decision", change: typedOver("Decision", "A4",
			"Record: another. SHA-256: 0. Acceptance: simple (readings as they were read), agreed by the owner.")},
	}
}
