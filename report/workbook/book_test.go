package workbook_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/limits"
	"firstboard/report/workbook"
)

type place string

func (p place) String() string { return string(p) }

func textCell(s string) grid.Cell { return grid.Cell{Kind: grid.TextCell, Text: s} }

func numberCell(s string) grid.Cell {
	_, fraction, _ := strings.Cut(s, ".")
	return grid.Cell{Kind: grid.NumberCell, Text: s, Places: uint8(len(fraction))}
}

// sample is a small book with what is awkward: an id that a sheet cannot be
// named by, a blank line in a table, text that looks like a formula.
func sample() workbook.Book {
	finding := evidence.Finding{
		ID: "slab-rh", Asks: "does every hole meet the limit?", Deciding: true, Outcome: evidence.NotMet,
		Value: "78.40", Limit: "75", Unit: evidence.RH, Reason: "hole H3 read 78.40 % RH; the limit is 75 % RH",
		Cite:     evidence.Cite{Source: "a data sheet, 2025", Standing: evidence.Manufacturer},
		Evidence: []evidence.Place{place("slab-rh.csv row 4")},
	}
	wet := report.Decision{
		Area:    report.Area{ID: "A/1", Name: "Hall", Flooring: "TILE"},
		Verdict: evidence.NoGo, Why: evidence.OverLimit, Findings: []evidence.Finding{finding},
		Conditions: []string{"provided it stays dry"},
	}
	dry := report.Decision{
		Area: report.Area{ID: strings.Repeat("long id ", 8)}, Verdict: evidence.Go,
		Findings: []evidence.Finding{{ID: "slab-rh", Deciding: true, Outcome: evidence.Met, Value: "70", Limit: "75"}},
	}
	return workbook.Book{
		Tables: []grid.Table{{
			Name: "Slab RH", Header: []string{"Area", "Hole", "Read at", "RH (%)", "Note"},
			Rows: []grid.Row{
				{Number: 2, Cells: []grid.Cell{
					textCell("A/1"), textCell("007"),
					{Kind: grid.TimeCell, Text: "2026-03-04 08:30"},
					numberCell("71.50"),
				}},
				{Number: 4, Cells: []grid.Cell{textCell("A/1"), textCell("H3"), {}, numberCell("78.40"), textCell("=1+1")}},
			},
		}},
		Statement: report.Statement{
			Job:    report.Job{Name: "Mill & Yard", Settings: report.DefaultSettings()},
			Record: "job", SHA256: "00", Tool: "firstboard 0",
			Decisions: []report.Decision{wet, dry}, Rules: []report.Rule{{ID: "slab-rh", Deciding: true}},
			Limits:   []limits.Line{{Area: "A/1", What: "slab relative humidity", Limit: "75"}},
			Cautions: []report.Caution{{Heading: "Drilling", Sentences: []string{"Find the tendons first."}}},
		},
	}
}

func written(t *testing.T, b workbook.Book) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := workbook.Write(&out, b); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func opened(t *testing.T, b workbook.Book) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(written(t, b)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func TestSheetsStandInTheirOrder(t *testing.T) {
	f := opened(t, sample())
	sheets := f.GetSheetList()
	want := []string{"Limits", "Cautions", "Sign-off", "Slab RH", "Checks", "Figures", "As judged", "As judged Slab RH"}
	if sheets[0] != "Decision" || !slices.Equal(sheets[3:], want) {
		t.Errorf("the sheets are %q", sheets)
	}
	for _, s := range sheets {
		if len([]rune(s)) > 31 || strings.ContainsAny(s, `/\:*?[]`) {
			t.Errorf("no sheet can be named %q", s)
		}
	}
}

func TestAreasWhoseNamesCollideGetSheetsOfTheirOwn(t *testing.T) {
	b := sample()
	b.Decisions = append(b.Decisions, b.Decisions[0], b.Decisions[1])
	b.Decisions[2].Area.ID = `A\1`
	seen := map[string]bool{}
	for _, s := range opened(t, b).GetSheetList() {
		if key := strings.ToLower(s); seen[key] {
			t.Errorf("two sheets are named %q", s)
		} else {
			seen[key] = true
		}
	}
}

func TestARecordsTableKeepsItsNameBeforeAnyOtherSheet(t *testing.T) {
	b := sample()
	b.Tables = append(b.Tables, grid.Table{Name: "Limits", Header: []string{"Area"}},
		grid.Table{Name: "Area A-1", Header: []string{"Area"}})
	sheets := opened(t, b).GetSheetList()
	for _, want := range []string{"Limits", "Limits (2)", "Area A-1", "Area A-1 (2)"} {
		if !slices.Contains(sheets, want) {
			t.Errorf("no sheet is named %q: %q", want, sheets)
		}
	}
}

func TestPropertiesComeFromTheJob(t *testing.T) {
	b := sample()
	b.Job.PreparedBy, b.Job.Company = "Tester", "Floors"
	f := opened(t, b)
	props, err := f.GetDocProps()
	if err != nil {
		t.Fatal(err)
	}
	if props.Title != b.Job.Name || props.Creator != "Tester" || !strings.HasPrefix(props.Created, "2000-01-01") {
		t.Errorf("the properties are %+v", props)
	}
	if app, _ := f.GetAppProps(); app.Company != "Floors" || app.Application != b.Tool {
		t.Errorf("the manufacturer's properties are %+v", app)
	}
}

func TestEqualBooksGiveEqualBytes(t *testing.T) {
	if !bytes.Equal(written(t, sample()), written(t, sample())) {
		t.Error("two writings of one book differ")
	}
}
