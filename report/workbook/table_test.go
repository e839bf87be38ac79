package workbook_test

import (
	"io"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/workbook"
)

func TestRecordTablesAreCopiedUnchanged(t *testing.T) {
	f := opened(t, sample())
	for at, want := range map[string]string{
		"A1": "Area", "D1": "RH (%)", "B2": "007", "C2": "2026-03-04 08:30", "D2": "71.50", "A3": "", "B4": "H3", "C4": "", "D4": "78.40",
		"E4": "=1+1",
	} {
		if got, err := f.GetCellValue("Slab RH", at); err != nil || got != want {
			t.Errorf("%s shows %q (%v), want %q", at, got, err, want)
		}
	}
	raw, _ := f.GetCellValue("Slab RH", "D4", excelize.Options{RawCellValue: true})
	kind, _ := f.GetCellType("Slab RH", "D4")
	if raw != "78.4" || kind == excelize.CellTypeSharedString || kind == excelize.CellTypeInlineString {
		t.Errorf("D4 holds %q as %v, want the number 78.4", raw, kind)
	}
	if formula, _ := f.GetCellFormula("Slab RH", "E4"); formula != "" {
		t.Errorf("a typed text became the formula %q", formula)
	}
}

func TestCellsKeepTheirKindAndPlaces(t *testing.T) {
	for _, c := range []struct {
		cell          grid.Cell
		shows, format string
	}{
		{numberCell("70"), "70", "0"},
		{numberCell("0.050"), "0.050", "0.000"},
		{numberCell("-4.5"), "-4.5", "0.0"},
		{grid.Cell{Kind: grid.NumberCell, Text: "84.7", Places: 2}, "84.70", "0.00"},
		{numberCell("0.12345678901234567"), "0.12345678901234567", "@"},
		{grid.Cell{Kind: grid.DayCell, Text: "2026-03-01"}, "2026-03-01", "yyyy-mm-dd"},
		{grid.Cell{Kind: grid.TimeCell, Text: "2026-03-01 14:05:09"}, "2026-03-01 14:05:09", "yyyy-mm-dd hh:mm:ss"},
		{grid.Cell{Kind: grid.DayCell, Text: "1899-12-31"}, "1899-12-31", "@"},
		{textCell("007"), "007", "@"},
		{textCell("_x0041_"), "_x0041_", "@"},
		{textCell("@sum(A1)"), "@sum(A1)", "@"},
		{textCell("  two spaces "), "  two spaces ", "@"},
	} {
		b := sample()
		b.Tables = []grid.Table{{
			Name: "Air", Header: []string{"Entry"},
			Rows: []grid.Row{{Number: 2, Cells: []grid.Cell{c.cell}}},
		}}
		f := opened(t, b)
		if got, err := f.GetCellValue("Air", "A2"); err != nil || got != c.shows {
			t.Errorf("%+v shows %q (%v), want %q", c.cell, got, err, c.shows)
		}
		if got := format(t, f, "Air", "A2"); got != c.format {
			t.Errorf("%+v has the format %q, want %q", c.cell, got, c.format)
		}
	}
}

func format(t *testing.T, f *excelize.File, sheet, at string) string {
	t.Helper()
	id, err := f.GetCellStyle(sheet, at)
	if err != nil {
		t.Fatal(err)
	}
	style, err := f.GetStyle(id)
	if err != nil {
		t.Fatal(err)
	}
	const text = 49 // the number of the format @
	if style.CustomNumFmt == nil {
		if style.NumFmt == text {
			return "@"
		}
		return ""
	}
	return *style.CustomNumFmt
}

func TestTheHeaderStaysInSightAndIsPrintedOnEveryPage(t *testing.T) {
	f := opened(t, sample())
	panes, err := f.GetPanes("Slab RH")
	if err != nil || !panes.Freeze || panes.YSplit != 1 {
		t.Errorf("the panes are %+v (%v)", panes, err)
	}
	titles := map[string]string{}
	for _, n := range f.GetDefinedName() {
		titles[n.Scope] = n.RefersTo
	}
	for sheet, want := range map[string]string{"Slab RH": "'Slab RH'!$1:$1", "Sign-off": "'Sign-off'!$1:$1"} {
		if titles[sheet] != want {
			t.Errorf("%s repeats %q, want %q", sheet, titles[sheet], want)
		}
	}
}

func TestAWideTableIsPrintedOnSeveralPagesWithItsFirstColumn(t *testing.T) {
	b := sample()
	wide := grid.Table{Name: "Areas"}
	for range 40 {
		wide.Header = append(wide.Header, "Slab thickness (in)")
	}
	b.Tables = append(b.Tables, wide)
	f := opened(t, b)
	if layout, err := f.GetPageLayout("Areas"); err != nil || *layout.AdjustTo != 80 {
		t.Errorf("the layout is %+v (%v)", layout, err)
	}
	for _, n := range f.GetDefinedName() {
		if n.Scope == "Areas" && n.RefersTo != "'Areas'!$A:$A,'Areas'!$1:$1" {
			t.Errorf("it repeats %q", n.RefersTo)
		}
	}
}

func TestSignOffsStandUnchangedAboveEmptyLines(t *testing.T) {
	b := sample()
	b.Tables = append(b.Tables, grid.Table{
		Name: "Sign-off", Header: []string{"Area", "Role", "Name"},
		Rows: []grid.Row{{Number: 3, Cells: []grid.Cell{textCell("A/1"), textCell("owner"), textCell("Owner")}}},
	})
	f := opened(t, b)
	rows, err := f.GetRows("Sign-off")
	if err != nil || len(rows) < 3 || strings.Join(rows[0], " ") != "Area Role Name" || strings.Join(rows[2], " ") != "A/1 owner Owner" {
		t.Fatalf("the sheet holds %q (%v)", rows, err)
	}
	for _, r := range rows[3:] {
		if strings.Join(r, "") != "" {
			t.Errorf("a line to sign on holds %q", r)
		}
	}
	if style, _ := f.GetCellStyle("Sign-off", "A4"); style == 0 {
		t.Error("there is no box to sign in")
	}
}

func BenchmarkWriteAir(b *testing.B) {
	book := sample()
	air := grid.Table{Name: "Air", Header: []string{"Read at", "Temp (F)", "RH (%)", "Instrument"}}
	at := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range 100_000 {
		clock := at.Add(time.Duration(i) * time.Minute)
		air.Rows = append(air.Rows, grid.Row{Number: i + 2, Cells: []grid.Cell{
			{Kind: grid.TimeCell, Text: evidence.ClockText(clock)}, numberCell("70.1"), numberCell("41.5"), textCell("L1"),
		}})
	}
	book.Tables = append(book.Tables, air)
	for b.Loop() {
		if err := workbook.Write(io.Discard, book); err != nil {
			b.Fatal(err)
		}
	}
}

// Headers that are wider than their entries stand upright where that saves a page.
func TestAWideHeaderStandsUprightWhereThatSavesAPage(t *testing.T) {
	f := opened(t, demonstration(t))
	turned := func(sheet, cell string) bool {
		id, err := f.GetCellStyle(sheet, cell)
		if err != nil {
			t.Fatal(err)
		}
		style, err := f.GetStyle(id)
		if err != nil {
			t.Fatal(err)
		}
		return style.Alignment != nil && style.Alignment.TextRotation == 90
	}
	for cell, want := range map[string]bool{"Products!N1": true, "Products!B1": false, "Wood!I1": false} {
		if sheet, at, _ := strings.Cut(cell, "!"); turned(sheet, at) != want {
			t.Errorf("%s stands upright: %v, want %v", cell, !want, want)
		}
	}
}
