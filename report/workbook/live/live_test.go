package live_test

import (
	"path/filepath"
	"slices"
	"testing"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/record"
	"firstboard/report/workbook/live"
)

// judgedOnly are the checks over windows of the air log, and advice that looks
// for what lies nearest: no formula tells them.
var judgedOnly = []string{"air-range", "air-held", "air-usual", "surface-dew", "scan-probed", "flooring-steady"}

// Whatever the judge says of a record, the formulas say too: outcome, and value
// to the places that were written.
func TestFormulasTellWhatTheJudgeSaid(t *testing.T) {
	for _, path := range records(t) {
		t.Run(filepath.Base(path), func(t *testing.T) {
			rec, err := record.Read(path)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range report.Judge(rec.Job) {
				w := live.For(tables(rec), rec.Job, d, "Working "+d.Area.ID)
				for _, f := range d.Findings {
					check(t, d.Area.ID, f, w.Of(f.ID))
				}
			}
		})
	}
}

func check(t *testing.T, area string, f evidence.Finding, got live.Finding) {
	t.Helper()
	if !got.Outcome.Is(f.Outcome.String()) {
		t.Errorf("area %s %s: the formula gives %v, the judge said %s", area, f.ID, got.Outcome.Value(), f.Outcome)
	}
	recalculated := f.Outcome != evidence.NotNeeded && !slices.Contains(judgedOnly, f.ID)
	if got.Live != recalculated {
		t.Errorf("area %s %s (%s, %q): worked out by formulas is %v", area, f.ID, f.Outcome, f.Value, got.Live)
	}
}

func records(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, pattern := range []string{"jobs/*", "script/base/*"} {
		found, err := filepath.Glob(filepath.Join("../../../testdata", pattern))
		if err != nil || len(found) == 0 {
			t.Fatalf("no records at %s: %v", pattern, err)
		}
		all = append(all, found...)
	}
	return all
}

func tables(rec record.Record) *live.Record {
	var names []string
	for _, t := range rec.Tables {
		names = append(names, t.Name)
	}
	return live.Tables(rec.Tables, names)
}

// No formula is longer than spreadsheets take.
func TestFormulasFit(t *testing.T) {
	const longest = 8192
	for _, path := range records(t) {
		rec, err := record.Read(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range report.Judge(rec.Job) {
			for i, r := range live.For(tables(rec), rec.Job, d, "W").Sheet.Rows {
				for _, c := range r.Cells {
					if n := len(c.Formula.String()); n > longest {
						t.Errorf("%s area %s row %d: a formula of %d letters", path, d.Area.ID, i+1, n)
					}
				}
			}
		}
	}
}
