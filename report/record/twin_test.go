package record

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// placesAside compares jobs, places and what rows keep for themselves aside.
func placesAside() cmp.Options {
	own := func(p cmp.Path) bool {
		field, ok := p.Last().(cmp.StructField)
		return ok && unicode.IsLower([]rune(field.Name())[0]) && p.Index(-2).Type().PkgPath() != "math/big"
	}
	return cmp.Options{
		cmp.FilterPath(own, cmp.Ignore()),
		cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".Place" },
			cmp.Comparer(func(a, b evidence.Place) bool { return (a == nil) == (b == nil) })),
		cmp.Comparer(func(a, b decimal.Decimal) bool { return a.Equal(b) }),
		cmp.Comparer(func(a, b *time.Location) bool { return a.String() == b.String() }),
		cmp.Comparer(func(a, b time.Time) bool { return a.Equal(b) }),
	}
}

// twin writes a workbook with the same tables as a folder of CSV files: cells
// that the folder types as numbers, dates and times become such cells, and show
// as many decimals as were typed.
func twin(t testing.TB, folder string) string {
	t.Helper()
	rec, err := Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	f := excelize.NewFile()
	defer f.Close()
	for _, table := range rec.Tables {
		writeTwin(t, f, table)
	}
	if err := f.DeleteSheet("Sheet1"); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "twin.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

func writeTwin(t testing.TB, f *excelize.File, table grid.Table) {
	t.Helper()
	if _, err := f.NewSheet(table.Name); err != nil {
		t.Fatal(err)
	}
	looks := map[string]int{"": 0}
	w, err := f.NewStreamWriter(table.Name)
	if err != nil {
		t.Fatal(err)
	}
	set := func(row int, cells []any) {
		at, _ := excelize.CoordinatesToCellName(1, row)
		if err := w.SetRow(at, cells); err != nil {
			t.Fatal(err)
		}
	}
	var header []any
	for _, h := range table.Header {
		header = append(header, h)
	}
	set(1, header)
	for _, row := range table.Rows {
		var cells []any
		for _, c := range row.Cells {
			cells = append(cells, twinCell(t, f, looks, c))
		}
		set(row.Number, cells)
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
}

func twinCell(t testing.TB, f *excelize.File, looks map[string]int, c grid.Cell) any {
	var value any
	format := ""
	switch c.Kind {
	case grid.BlankCell:
		return nil
	case grid.NumberCell:
		value = decimal.RequireFromString(c.Text).InexactFloat64()
		if c.Places > 0 {
			format = "0." + strings.Repeat("0", int(c.Places))
		}
	case grid.DayCell:
		value, format = c.Clock(), "yyyy-mm-dd"
	case grid.TimeCell:
		value, format = c.Clock(), "yyyy-mm-dd hh:mm"
	default:
		value = c.Text
	}
	if _, ok := looks[format]; !ok {
		style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
		if err != nil {
			t.Fatal(err)
		}
		looks[format] = style
	}
	return excelize.Cell{StyleID: looks[format], Value: value}
}

func TestTwins(t *testing.T) {
	folders, err := filepath.Glob("../../testdata/jobs/*")
	if err != nil || len(folders) == 0 {
		t.Fatal("no records to read", err)
	}
	for _, folder := range folders {
		t.Run(filepath.Base(folder), func(t *testing.T) {
			want, err := Read(folder)
			if err != nil {
				t.Fatal(err)
			}
			got, err := Read(twin(t, folder))
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(want.Job, got.Job, placesAside()); diff != "" {
				t.Errorf("jobs differ (-folder +workbook):\n%s", diff)
			}
			if diff := cmp.Diff(want.Tables, got.Tables, placesAside()); diff != "" {
				t.Errorf("tables differ (-folder +workbook):\n%s", diff)
			}
		})
	}
}

// airRecord writes a folder with so many air rows.
func airRecord(t testing.TB, rows int) string {
	t.Helper()
	folder := t.TempDir()
	put := func(name string, lines ...[]string) {
		f, err := os.Create(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		if err := csv.NewWriter(f).WriteAll(lines); err != nil {
			t.Fatal(err)
		}
	}
	put("job.csv", []string{"Item", "Entry"}, []string{"Job", "Long logger"}, []string{"Time zone", "America/Chicago"})
	put("areas.csv", []string{"Area", "Size (ft2)", "Substrate", "Flooring", "Climate", "Install on"},
		[]string{"A1", "1240", "slab", "P1", "C1", "2026-03-12"})
	put("products.csv", []string{"Product", "Kind"}, []string{"P1", "resilient"})
	put("climates.csv", []string{"Climate", "Period", "Temp (F)", "RH (%)"}, []string{"C1", "winter", "70", "30"})
	put("instruments.csv", []string{"Instrument", "Kind"}, []string{"T1", "air"})
	lines := [][]string{{"Area", "Read at", "Temp (C)", "RH (%)", "Instrument"}}
	at := time.Date(2025, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range rows {
		if h := at.Hour(); at.Month() == 3 && h == 2 {
			at = at.Add(time.Hour)
		}
		lines = append(lines, []string{
			"A1", at.Format("2006-01-02 15:04"), decimal.New(int64(180+i%50), -1).String(),
			decimal.New(int64(350+i%100), -1).String(), "T1",
		})
		at = at.Add(time.Minute)
	}
	put("air.csv", lines...)
	return folder
}
