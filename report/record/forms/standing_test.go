package forms_test

import (
	"testing"

	"firstboard/report/grid"
	"firstboard/report/record/forms"
)

// A table is asked in its own columns and units, whatever their order.
func TestFormOfATableHasItsOwnColumns(t *testing.T) {
	f := forms.For(grid.Table{Name: "Slab RH", Header: []string{"depth (cm)", "Hole", "Depth (mm)", "Shade"}})
	for i, want := range []struct {
		header string
		kind   grid.FieldKind
		span   bool
	}{
		{"depth (cm)", grid.NumberField, false},
		{"Hole", grid.TextField, false},
		{"Depth (mm)", grid.NumberField, true},
		{"", grid.TextField, false},
	} {
		got := f.Fields[i]
		if got.Header != want.header || got.Takes.Kind != want.kind || got.Takes.Span.Least.Valid != want.span {
			t.Errorf("column %d: %q takes %+v", i+1, got.Header, got.Takes)
		}
	}
	cell := func(s string) grid.Cell { return grid.Cell{Kind: grid.TextCell, Text: s} }
	job := forms.For(grid.Table{Name: "Job", Header: []string{"Item", "Entry"}, Rows: []grid.Row{
		{Number: 2, Cells: []grid.Cell{cell("Job"), cell("Mill")}},
		{Number: 4, Cells: []grid.Cell{cell("Elevation (m)"), cell("10")}},
	}})
	if len(job.Rows) != 3 || job.Rows[0].Header != "Job" || job.Rows[1].Header != "" || job.Rows[2].Header != "Elevation (m)" {
		t.Errorf("the items of Job are %+v", job.Rows)
	}
}
