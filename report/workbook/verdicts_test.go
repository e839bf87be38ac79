package workbook

import (
	"bytes"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report/grid"
)

// listing is a table of a row with a cell of every kind, and one of texts that
// a spreadsheet would take for formulas.
func listing() grid.Listing {
	text := func(s string) grid.Cell { return grid.Cell{Kind: grid.TextCell, Text: s} }
	rows := []grid.Row{
		{Number: 2, Cells: []grid.Cell{
			text("GO"),
			{Kind: grid.NumberCell, Text: "87.9", Places: 1},
			{Kind: grid.DayCell, Text: "2026-03-05"},
			{Kind: grid.TimeCell, Text: "2026-03-04 17:10"},
			{},
		}},
		{Number: 3, Cells: []grid.Cell{text("=1+1"), text("+1"), text("-1"), text("@a"), text(strings.Repeat("é", 40_000))}},
	}
	return grid.Listing{
		Table:  grid.Table{Name: "Verdicts", Header: []string{"Verdict", "Value", "On", "At", "Words"}, Rows: rows},
		Widths: []float64{10, 10, 12, 18, 40}, Printed: 3,
	}
}

func TestListings(t *testing.T) {
	var first, second bytes.Buffer
	for _, b := range []*bytes.Buffer{&first, &second} {
		if err := WriteListings(b, "tool", "title", "says", []grid.Listing{listing()}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two writes differ")
	}
	f, err := excelize.OpenReader(&first)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for at, want := range map[string]struct {
		kind  excelize.CellType
		value string
	}{
		"A2": {excelize.CellTypeInlineString, "GO"}, "B2": {excelize.CellTypeUnset, "87.9"},
		"C2": {excelize.CellTypeUnset, "2026-03-05"}, "D2": {excelize.CellTypeUnset, "2026-03-04 17:10"},
		"A3": {excelize.CellTypeInlineString, "=1+1"}, "B3": {excelize.CellTypeInlineString, "+1"},
		"C3": {excelize.CellTypeInlineString, "-1"}, "D3": {excelize.CellTypeInlineString, "@a"},
		"E3": {excelize.CellTypeInlineString, strings.Repeat("é", excelize.TotalCellChars-3) + "..."},
	} {
		kind, err := f.GetCellType("Verdicts", at)
		value, _ := f.GetCellValue("Verdicts", at)
		formula, _ := f.GetCellFormula("Verdicts", at)
		if err != nil || kind != want.kind || value != want.value || formula != "" {
			t.Errorf("%s is %q of kind %v, formula %q (%v)", at, value[:min(len(value), 20)], kind, formula, err)
		}
	}
	panes, err := f.GetPanes("Verdicts")
	if err != nil || !panes.Freeze || panes.YSplit != 1 {
		t.Errorf("the header is not frozen: %v (%v)", panes, err)
	}
	layout, err := f.GetPageLayout("Verdicts")
	if err != nil || *layout.Orientation != "landscape" || *layout.FitToWidth != 1 {
		t.Errorf("printed %v (%v)", layout, err)
	}
	names := map[string]string{}
	for _, n := range f.GetDefinedName() {
		names[n.Name] = n.RefersTo
	}
	if names["_xlnm.Print_Area"] != "'Verdicts'!$A$1:$C$3" || names["_xlnm.Print_Titles"] != "'Verdicts'!$1:$1" {
		t.Errorf("names are %v", names)
	}
	if filter := names["_xlnm._FilterDatabase"]; !strings.Contains(filter, "$A$1:$E$3") {
		t.Errorf("the filter is of %q", filter)
	}
}

// A sheet that would not hold the rows is refused before anything is written.
func TestListingOfTooManyRows(t *testing.T) {
	l := listing()
	l.Rows = make([]grid.Row, excelize.TotalRows)
	if err := WriteListings(io.Discard, "tool", "title", "says", []grid.Listing{l}); err == nil ||
		!strings.Contains(err.Error(), "more than a sheet holds") {
		t.Errorf("%v", err)
	}
}

// lister is a writer that looks into a folder each time it is written to.
type lister struct {
	*testing.T
	folder string
}

func (l lister) Write(p []byte) (int, error) {
	if files, err := os.ReadDir(l.folder); err != nil || len(files) > 0 {
		l.Fatalf("while a workbook is written, %d files lie in the folder for temporary ones (%v)", len(files), err)
	}
	return len(p), nil
}

// A run that is killed while it writes a large sheet leaves no file of the library.
func TestALargeSheetIsHeldInMemory(t *testing.T) {
	folder := t.TempDir()
	t.Setenv("TMPDIR", folder)
	l := listing()
	long := strings.Repeat("x", 32_000)
	for len(l.Rows)*len(long) < 2*excelize.StreamChunkSize {
		l.Rows = append(l.Rows, grid.Row{Number: len(l.Rows) + 2, Cells: []grid.Cell{{Kind: grid.TextCell, Text: long}}})
	}
	if err := WriteListings(lister{t, folder}, "tool", "title", "says", []grid.Listing{l}); err != nil {
		t.Fatal(err)
	}
}
