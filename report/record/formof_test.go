package record_test

import (
	"testing"

	"firstboard/report"
	"firstboard/report/record"
)

// A table is asked in its own columns and units, whatever their order.
func TestFormOfATableHasItsOwnColumns(t *testing.T) {
	f := record.FormOf(report.Table{Name: "Slab RH", Header: []string{"depth (cm)", "Hole", "Depth (mm)", "Shade"}})
	for i, want := range []struct {
		header string
		kind   report.FieldKind
		span   bool
	}{
		{"depth (cm)", report.NumberField, false},
		{"Hole", report.TextField, false},
		{"Depth (mm)", report.NumberField, true},
		{"", report.TextField, false},
	} {
		got := f.Fields[i]
		if got.Header != want.header || got.Takes.Kind != want.kind || got.Takes.Span.Least.Valid != want.span {
			t.Errorf("column %d: %q takes %+v", i+1, got.Header, got.Takes)
		}
	}
	cell := func(s string) report.Cell { return report.Cell{Kind: report.TextCell, Text: s} }
	job := record.FormOf(report.Table{Name: "Job", Header: []string{"Item", "Entry"}, Rows: []report.TableRow{
		{Number: 2, Cells: []report.Cell{cell("Job"), cell("Mill")}},
		{Number: 4, Cells: []report.Cell{cell("Elevation (m)"), cell("10")}},
	}})
	if len(job.Rows) != 3 || job.Rows[0].Header != "Job" || job.Rows[1].Header != "" || job.Rows[2].Header != "Elevation (m)" {
		t.Errorf("the items of Job are %+v", job.Rows)
	}
}
