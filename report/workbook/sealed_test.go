package workbook_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
)

func TestTheSealStandsOnTheDecisionAndOnItsOwnSheet(t *testing.T) {
	b := sample()
	b.Seal = report.SealOf("firstboard 0", b.Catalog, b.Tables, report.Answer{})
	f := opened(t, b)
	for sheet, begins := range map[string]string{"Decision": "Seal " + b.Seal.String(), "Sealed": b.Seal.String()} {
		found(t, f, sheet, begins)
	}
	at, _ := found(t, f, "Sealed", "Slab RH")
	text, err := f.GetCellValue("Sealed", strings.Replace(at, "A", "B", 1))
	want := "row|Area|Hole|Read at|RH (%)|Note\n2|A/1|007|2026-03-04 08:30|71.5\n4|A/1|H3||78.4|=1+1"
	if err != nil || text != want {
		t.Errorf("the copy reads %q (%v), want %q", text, err, want)
	}
}

// The copy is for verify; paper has the tables themselves.
func TestTheCopyIsNotPrinted(t *testing.T) {
	f := opened(t, sample())
	at, _ := found(t, f, "Sealed", "As judged")
	_, head, err := excelize.CellNameToCoordinates(at)
	if err != nil {
		t.Fatal(err)
	}
	area := slices.IndexFunc(f.GetDefinedName(), func(n excelize.DefinedName) bool {
		return n.Scope == "Sealed" && n.Name == "_xlnm.Print_Area"
	})
	if area < 0 || f.GetDefinedName()[area].RefersTo != fmt.Sprintf("'Sealed'!$A$1:$C$%d", head-1) {
		t.Errorf("down to row %d: %+v", head, f.GetDefinedName())
	}
}
