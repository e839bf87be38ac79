package fill_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"firstboard/report/grid"
	"firstboard/report/workbook/fill"
)

func bound(n int64) decimal.NullDecimal { return decimal.NewNullDecimal(decimal.NewFromInt(n)) }

// sampleBlank is a form with a field of each kind.
func sampleBlank() fill.Blank {
	field := func(header string, t grid.Takes) grid.Field {
		return grid.Field{Header: header, Says: "what it is", Example: "1", Takes: t}
	}
	number := func(s grid.Span) grid.Takes { return grid.Takes{Kind: grid.NumberField, Span: s} }
	area := field("Area", grid.Takes{Of: "Areas"})
	area.Must = true
	limit := number(grid.Span{Least: bound(0), Most: bound(100), Percent: true})
	limit.None = true
	return fill.Blank{
		Tool:  "firstboard 0",
		Steps: []grid.StartStep{{Table: "Job", Says: "Name the job."}, {Says: "Judge it."}},
		Forms: []grid.Form{
			{
				Name: "Job", Fields: []grid.Field{field("Item", grid.Takes{}), field("Entry", grid.Takes{})},
				Rows: []grid.Field{field("Job", grid.Takes{}), field("Acceptance", grid.Takes{Words: []string{"simple", "guarded"}})},
			},
			{Name: "Slab RH", Fields: []grid.Field{
				area,
				field("Hole", grid.Takes{}),
				field("Depth (in)", number(grid.Span{Least: bound(0), Above: true})),
				field("RH (%)", number(grid.Span{Least: bound(0), Most: bound(100), Percent: true})),
				field("Limit (%)", limit),
				field("Faces", number(grid.Span{Least: bound(1), Most: bound(2), Whole: true})),
				field("Placed on", grid.Takes{Kind: grid.DayField, Since: 1990, Until: 2199}),
				field("Read at", grid.Takes{Kind: grid.ClockField, Until: 2199}),
				field("Heat on since", grid.Takes{Kind: grid.ClockOrDayField, Until: 2199}),
				field("Substrate", grid.Takes{Words: []string{"slab", "wood"}}),
			}},
		},
	}
}

func writtenBlank(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := sampleBlank().Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func openedBlank(t *testing.T) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(writtenBlank(t)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func TestBlankGivesEqualBytes(t *testing.T) {
	if !bytes.Equal(writtenBlank(t), writtenBlank(t)) {
		t.Error("two writings of one empty record differ")
	}
}

func TestBlankHasASheetForEachTableBetweenTwoThatAreNone(t *testing.T) {
	f := openedBlank(t)
	if got, want := f.GetSheetList(), []string{"Start here", "Job", "Slab RH", "What goes where"}; !slices.Equal(got, want) {
		t.Errorf("sheets are %q, want %q", got, want)
	}
	for _, sheet := range []string{"Job", "Slab RH"} {
		if panes, err := f.GetPanes(sheet); err != nil || !panes.Freeze || panes.YSplit != 1 {
			t.Errorf("%s: the header is not frozen: %+v %v", sheet, panes, err)
		}
	}
}

// No table holds an example: each would be read as evidence.
func TestBlankTablesHoldNothingButHeadersAndItems(t *testing.T) {
	f := openedBlank(t)
	for sheet, want := range map[string][][]string{
		"Job":     {{"Item", "Entry"}, {"Job"}, {"Acceptance"}},
		"Slab RH": {{"Area", "Hole", "Depth (in)", "RH (%)", "Limit (%)", "Faces", "Placed on", "Read at", "Heat on since", "Substrate"}},
	} {
		rows, err := f.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		filled := slices.DeleteFunc(rows, func(r []string) bool { return strings.Join(r, "") == "" })
		for i := range filled {
			filled[i] = slices.DeleteFunc(filled[i], func(s string) bool { return s == "" })
		}
		if !slices.EqualFunc(filled, want, slices.Equal) {
			t.Errorf("%s holds %q, want %q", sheet, filled, want)
		}
	}
}

// checksOf are a sheet's validations by the cells they hold for.
func checksOf(t *testing.T, sheet string) map[string]*excelize.DataValidation {
	t.Helper()
	all, err := openedBlank(t).GetDataValidations(sheet)
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]*excelize.DataValidation{}
	for _, v := range all {
		by[v.Sqref] = v
	}
	return by
}

func TestEveryEntryOfABlankIsChecked(t *testing.T) {
	checks := checksOf(t, "Slab RH")
	for _, c := range []struct{ column, kind, style, formula string }{
		{"A", "list", "warning", "Areas!$A$2:$A$500"},
		{"C", "custom", "stop", "AND(ISNUMBER(C2),C2>0)"},
		{"D", "custom", "stop", "AND(ISNUMBER(D2),D2>=0,D2<=100,OR(D2<=0,D2>1))"},
		{"E", "custom", "stop", `OR(E2="none",AND(ISNUMBER(E2),E2>=0,E2<=100,OR(E2<=0,E2>1)))`},
		{"F", "custom", "stop", "AND(ISNUMBER(F2),F2>=1,F2<=2,F2=INT(F2))"},
		{"G", "custom", "stop", "AND(ISNUMBER(G2),G2>=32874,G2<109575,G2=INT(G2))"},
		{"H", "custom", "warning", "AND(ISNUMBER(H2),H2>=367,H2<109575,H2<>INT(H2))"},
		{"I", "custom", "stop", "AND(ISNUMBER(I2),I2>=367,I2<109575)"},
		{"J", "list", "stop", `"slab,wood"`},
	} {
		at := c.column + "2:" + c.column + "1048576"
		v := checks[at]
		if v == nil {
			t.Errorf("%s: nothing is asked of the entries", at)
			continue
		}
		if v.Type != c.kind || *v.ErrorStyle != c.style || v.Formula1 != c.formula {
			t.Errorf("%s: %s, %s: %s; want %s, %s: %s", at, v.Type, *v.ErrorStyle, v.Formula1, c.kind, c.style, c.formula)
		}
		if !v.AllowBlank || v.Error == nil || *v.Error == "" {
			t.Errorf("%s: a blank is refused, or a refusal says nothing", at)
		}
	}
	if checks["B2:B1048576"] != nil {
		t.Error("a free text is checked")
	}
	if v := checksOf(t, "Job")["B3"]; v == nil || v.Formula1 != `"simple,guarded"` || v.Prompt == nil {
		t.Errorf("the entry beside Acceptance is asked for as %+v", v)
	}
}

func TestEveryHeaderOfABlankSaysWhatGoesThere(t *testing.T) {
	checks := checksOf(t, "Slab RH")
	for i, field := range sampleBlank().Forms[1].Fields {
		at := string(rune('A'+i)) + "1"
		v := checks[at]
		if v == nil || !v.ShowInputMessage || !strings.Contains(*v.Prompt, "What it is.") {
			t.Errorf("%s says nothing: %+v", field.Header, v)
			continue
		}
		if strings.Contains(*v.Prompt, "Must be filled in") != field.Must {
			t.Errorf("%s: %q", field.Header, *v.Prompt)
		}
	}
}

// A spreadsheet calls a workbook damaged whose prompts are too long.
func TestBlankRefusesAPromptThatNoSpreadsheetTakes(t *testing.T) {
	b := sampleBlank()
	for letters, ok := range map[int]bool{254: true, 255: false} { // a stop follows
		b.Forms[1].Fields[1].Says = strings.Repeat("x", letters)
		var out bytes.Buffer
		if err := b.Write(&out); (err == nil) != ok || (out.Len() > 0) != ok {
			t.Errorf("%d letters: %v, %d bytes", letters, err, out.Len())
		}
	}
}

// A column that takes names is text to its end, so that 007 stays 007.
func TestBlankColumnsHaveTheirFormats(t *testing.T) {
	f := openedBlank(t)
	for column, want := range map[string]string{"A": "@", "B": "@", "G": "yyyy-mm-dd", "H": "yyyy-mm-dd hh:mm", "J": "@"} {
		id, err := f.GetColStyle("Slab RH", column)
		if err != nil {
			t.Fatal(err)
		}
		if got := formatOf(t, f, id); got != want {
			t.Errorf("column %s is %q, want %q", column, got, want)
		}
		cell, err := f.GetCellStyle("Slab RH", column+"5")
		if err != nil {
			t.Fatal(err)
		}
		if got := formatOf(t, f, cell); got != want {
			t.Errorf("cell %s5 is %q, want %q", column, got, want)
		}
	}
}

func formatOf(t *testing.T, f *excelize.File, id int) string {
	t.Helper()
	style, err := f.GetStyle(id)
	if err != nil {
		t.Fatal(err)
	}
	const textFormat = 49
	switch {
	case style.CustomNumFmt != nil:
		return *style.CustomNumFmt
	case style.NumFmt == textFormat:
		return "@"
	}
	return ""
}
