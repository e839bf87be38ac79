package fill

import (
	"fmt"
	"slices"
	"testing"

	"firstboard/report"
	"firstboard/report/grid"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// A list that a sheet of paper cannot hold goes on under its heads on the next.
func TestAFieldListGoesOnUnderItsHeads(t *testing.T) {
	l := grid.FieldList{Title: "Wood, flooring", Columns: []string{"Piece", "Reading (%)", "Note"}}
	for i := range 60 {
		l.Rows = append(l.Rows, []string{fmt.Sprint("B", i+1), "", ""})
	}
	part := grid.FieldPart{Area: "A1", Orders: []string{"read boards B1 to B60"}, Lists: []grid.FieldList{l}}
	sheet := grid.FieldSheet{When: "2026-03-03", Who: "installer", Parts: []grid.FieldPart{part}}
	p := fieldPage(report.Job{Name: "Mill"}, []grid.FieldSheet{sheet, sheet})
	var all []writer.Row
	var first []any
	for number, r := range p.Rows {
		all = append(all, r)
		if len(r.Cells) > 0 {
			first = append(first, r.Cells[0].Value)
		}
		if slices.Contains(p.Breaks, number) && len(r.Cells) > 0 && r.Cells[0].Look.Size != style.Large {
			t.Errorf("row %d begins a sheet of paper with %q", number, r.Cells[0].Value)
		}
	}
	for _, want := range []any{
		"2026-03-03: installer", "A1", "☐ read boards B1 to B60", "Into Wood, flooring:",
		"Into Wood, flooring, continued:", "B60",
	} {
		if !slices.Contains(first, want) {
			t.Errorf("no row begins with %q", want)
		}
	}
	from := 0
	for _, number := range append(slices.Clone(p.Breaks), len(all)+1) {
		tall := 0.0
		for _, r := range all[from : number-1] {
			tall += r.Tall(p.Widths)
		}
		if from = number - 1; tall > writer.PaperTall {
			t.Errorf("the rows up to %d are %g points high", number-1, tall)
		}
	}
	if len(p.Breaks) < 4 {
		t.Errorf("the sheets of paper begin at %v", p.Breaks)
	}
}
