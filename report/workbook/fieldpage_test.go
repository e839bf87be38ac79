package workbook

import (
	"fmt"
	"slices"
	"testing"

	"firstboard/report"
	"firstboard/report/grid"
	"firstboard/report/workbook/style"
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
	var all []row
	var first []any
	for number, r := range p.rows {
		all = append(all, r)
		if len(r.cells) > 0 {
			first = append(first, r.cells[0].value)
		}
		if slices.Contains(p.breaks, number) && len(r.cells) > 0 && r.cells[0].look.Size != style.Large {
			t.Errorf("row %d begins a sheet of paper with %q", number, r.cells[0].value)
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
	for _, number := range append(slices.Clone(p.breaks), len(all)+1) {
		tall := 0.0
		for _, r := range all[from : number-1] {
			tall += r.tall(p.widths)
		}
		if from = number - 1; tall > paperTall {
			t.Errorf("the rows up to %d are %g points high", number-1, tall)
		}
	}
	if len(p.breaks) < 4 {
		t.Errorf("the sheets of paper begin at %v", p.breaks)
	}
}
