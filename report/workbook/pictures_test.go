package workbook_test

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/grid"
	"firstboard/report/pictures"
	"firstboard/report/record"
	"firstboard/report/workbook"
)

// demonstration is the book of the demonstration record, with two of its areas.
func demonstration(t *testing.T) workbook.Book {
	t.Helper()
	rec, err := record.Read("../../testdata/jobs/millrace")
	if err != nil {
		t.Fatal(err)
	}
	return workbook.Book{Tables: rec.Tables, Statement: report.Statement{
		Job: rec.Job, Record: rec.Name, SHA256: rec.SHA256, Tool: "firstboard 0", Decisions: report.Judge(rec.Job)[:2],
	}}
}

// drawnFrom is a reference of a chart with the values it carries.
type drawnFrom struct {
	Cells  string `xml:"f"`
	Cache  cached `xml:"strCache"`
	Number cached `xml:"numCache"`
}

type cached struct {
	Count struct {
		Val int `xml:"val,attr"`
	} `xml:"ptCount"`
	Points []struct {
		Index int    `xml:"idx,attr"`
		Value string `xml:"v"`
	} `xml:"pt"`
}

// chartSeries is one series of a chart of any kind.
type chartSeries struct {
	Name   drawnFrom `xml:"tx>strRef"`
	Names  drawnFrom `xml:"cat>strRef"`
	Values drawnFrom `xml:"val>numRef"`
	X      drawnFrom `xml:"xVal>numRef"`
	Y      drawnFrom `xml:"yVal>numRef"`
}

func (s chartSeries) from() []drawnFrom {
	return slices.DeleteFunc([]drawnFrom{s.Name, s.Names, s.Values, s.X, s.Y}, func(d drawnFrom) bool { return d.Cells == "" })
}

// parts are the parts of a workbook by name.
func parts(t *testing.T, data []byte) map[string]string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		b, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		all[f.Name] = string(b)
	}
	return all
}

func seriesOf(t *testing.T, part string) []chartSeries {
	t.Helper()
	var chart struct {
		Bars    []chartSeries `xml:"chart>plotArea>barChart>ser"`
		Lines   []chartSeries `xml:"chart>plotArea>lineChart>ser"`
		Scatter []chartSeries `xml:"chart>plotArea>scatterChart>ser"`
	}
	if err := xml.Unmarshal([]byte(part), &chart); err != nil {
		t.Fatal(err)
	}
	return slices.Concat(chart.Bars, chart.Lines, chart.Scatter)
}

var relation = regexp.MustCompile(`Target="([^"]*)"`)

// chartsOf are the chart parts of a sheet, by its number from 1.
func chartsOf(all map[string]string, sheet int) []string {
	var charts []string
	for _, d := range relation.FindAllStringSubmatch(all[fmt.Sprintf("xl/worksheets/_rels/sheet%d.xml.rels", sheet)], -1) {
		if !strings.Contains(d[1], "drawing") {
			continue
		}
		for _, c := range relation.FindAllStringSubmatch(all["xl/drawings/_rels/"+path.Base(d[1])+".rels"], -1) {
			charts = append(charts, all["xl/charts/"+path.Base(c[1])])
		}
	}
	return charts
}

func TestEachAreaHasItsPictures(t *testing.T) {
	b := demonstration(t)
	all := parts(t, written(t, b))
	for i, d := range b.Decisions {
		charts, pictures := chartsOf(all, i+2), pictures.Of(d.Site)
		if len(charts) != len(pictures) || len(charts) < 4 {
			t.Fatalf("area %s has %d charts and %d pictures", d.Area.ID, len(charts), len(pictures))
		}
		for k, p := range pictures {
			if got := len(seriesOf(t, charts[k])); !strings.Contains(charts[k], p.Title) || got == 0 {
				t.Errorf("area %s, picture %q: %d series", d.Area.ID, p.Title, got)
			}
		}
	}
}

// cellsOf are the cells of a reference into the sheet Plotted.
func cellsOf(t *testing.T, ref string) []string {
	t.Helper()
	in, ok := strings.CutPrefix(strings.ReplaceAll(ref, "$", ""), "'Plotted'!")
	from, to, ranged := strings.Cut(in, ":")
	if !ranged {
		to = from
	}
	column, first, err := excelize.CellNameToCoordinates(from)
	column2, last, err2 := excelize.CellNameToCoordinates(to)
	if !ok || err != nil || err2 != nil || column != column2 || last < first {
		t.Fatalf("the reference %q is no column of the sheet Plotted", ref)
	}
	var all []string
	for row := first; row <= last; row++ {
		name, _ := excelize.CoordinatesToCellName(column, row)
		all = append(all, name)
	}
	return all
}

func sameFigure(a, b string) bool {
	x, err := strconv.ParseFloat(a, 64)
	y, err2 := strconv.ParseFloat(b, 64)
	if err != nil || err2 != nil {
		return a == b
	}
	return x-y < 1e-9 && y-x < 1e-9
}

func TestPicturesCarryWhatTheirCellsHold(t *testing.T) {
	data := written(t, demonstration(t))
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	raw := excelize.Options{RawCellValue: true}
	for name, part := range parts(t, data) {
		if !strings.HasPrefix(name, "xl/charts/") {
			continue
		}
		for _, s := range seriesOf(t, part) {
			for _, d := range s.from() {
				cells, cache := cellsOf(t, d.Cells), d.Number
				if d.Cache.Count.Val > 0 {
					cache = d.Cache
				}
				if cache.Count.Val != len(cells) {
					t.Errorf("%s: %s carries %d values", name, d.Cells, cache.Count.Val)
				}
				carried := map[int]string{}
				for _, x := range cache.Points {
					carried[x.Index] = x.Value
				}
				for i, at := range cells {
					if got, _ := f.GetCellValue("Plotted", at, raw); !sameFigure(got, carried[i]) {
						t.Errorf("%s: %s holds %q, the picture carries %q", name, at, got, carried[i])
					}
				}
			}
		}
	}
}

// What was typed is plotted by a formula that refers to its cell.
func TestPlottedReadingsReferToTheRecord(t *testing.T) {
	b := demonstration(t)
	f := opened(t, b)
	raw := excelize.Options{RawCellValue: true}
	rows, err := f.GetRows("Plotted", raw)
	if err != nil {
		t.Fatal(err)
	}
	refers := regexp.MustCompile(`^'([^']+)'!([A-Z]+[0-9]+)$`)
	plotted := map[string]bool{}
	for y, r := range rows {
		for x, value := range r {
			at, _ := excelize.CoordinatesToCellName(x+1, y+1)
			formula, _ := f.GetCellFormula("Plotted", at)
			m := refers.FindStringSubmatch(formula)
			if m == nil {
				continue
			}
			plotted[m[1]+" "+m[2]] = true
			if got, _ := f.GetCellValue(m[1], m[2], raw); !sameFigure(got, value) {
				t.Errorf("%s gives %q and refers to %s, which holds %q", at, value, formula, got)
			}
		}
	}
	for _, table := range b.Tables {
		if table.Name != "Slab RH" {
			continue
		}
		column := slices.Index(table.Header, "RH (%)")
		for _, r := range table.Rows {
			at, _ := excelize.CoordinatesToCellName(column+1, r.Number)
			here := r.Cells[0].Text == "A1" || r.Cells[0].Text == "A2"
			if here && r.Cells[column].Kind != grid.BlankCell && !plotted["Slab RH "+at] {
				t.Errorf("the reading in %s is not plotted", at)
			}
		}
	}
}

func TestTwoWritingsOfPicturesAreEqual(t *testing.T) {
	if !bytes.Equal(written(t, demonstration(t)), written(t, demonstration(t))) {
		t.Error("two writings of one record differ")
	}
}

func TestNothingIsPlottedWithoutReadings(t *testing.T) {
	data := written(t, sample())
	for name := range parts(t, data) {
		if strings.HasPrefix(name, "xl/charts/") || strings.HasPrefix(name, "xl/drawings/") {
			t.Errorf("a record without pictures has the part %s", name)
		}
	}
	if sheets := opened(t, sample()).GetSheetList(); slices.Contains(sheets, "Plotted") {
		t.Errorf("the sheets are %q: one plots nothing", sheets)
	}
}

// A reading that no cell of a spreadsheet holds as typed, or that was worked
// out, stands as a number; a limit in another unit too.
func TestWhatNoCellHoldsIsPlottedAsANumber(t *testing.T) {
	b := demonstration(t)
	b.Tables = nil
	f := opened(t, b)
	rows, err := f.GetRows("Plotted", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	for y := range rows {
		at := fmt.Sprintf("B%d", y+1)
		if formula, _ := f.GetCellFormula("Plotted", at); strings.Contains(formula, "!") {
			t.Errorf("%s refers to %s, which is not there", at, formula)
		}
	}
	if got, want := fmt.Sprint(rows), "71.8"; !strings.Contains(got, want) {
		t.Errorf("the reading %s is not plotted", want)
	}
}
