package live_test

import (
	"fmt"
	"testing"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/record"
	"firstboard/report/workbook/live"
)

func TestDemo(t *testing.T) {
	rec, err := record.Read("../../../testdata/jobs/millrace")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, tb := range rec.Tables {
		names = append(names, tb.Name)
	}
	for _, d := range report.Judge(rec.Job) {
		w := live.For(live.Tables(rec.Tables, names), rec.Job, d, "Working "+d.Area.ID)
		for _, f := range d.Findings {
			lf := w.Of(f.ID)
			if f.Outcome != evidence.NotNeeded {
				fmt.Println(d.Area.ID, f.ID, f.Outcome, f.Value, "|", lf.Live, lf.Value.Value(), lf.Outcome.Value(), lf.Limit.Value())
			}
		}
	}
}
