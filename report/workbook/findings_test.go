package workbook_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/workbook"
)

// cellPlace is a cell of the table Slab RH, as the record's places are.
type cellPlace struct{ row, column int }

func (p cellPlace) String() string                        { return fmt.Sprintf("slab-rh.csv row %d", p.row) }
func (p cellPlace) Cell() (table string, row, column int) { return "Slab RH", p.row, p.column }

func readAt(row int, number string) evidence.Reading {
	return evidence.Reading{Written: number, Value: decimal.RequireFromString(number), Unit: evidence.RH, Place: cellPlace{row, 4}}
}

// drierThan is a check that no catalog holds: it brings its working alone.
func drierThan(limit string) evidence.Check[[]evidence.Reading] {
	return evidence.Check[[]evidence.Reading]{
		ID: "new-check", Asks: "is the mean of all holes at or under a limit?", Deciding: true,
		Judge: func(all []evidence.Reading) evidence.Finding {
			var cells []evidence.Working
			for _, r := range all {
				cells = append(cells, evidence.Cell("hole", r))
			}
			l := evidence.AtMost(evidence.Bound{Number: evidence.Typed(limit, evidence.RH)})
			it := evidence.Item{Name: "the mean", Limit: l}.By(evidence.MeanOf(cells...))
			return evidence.Weigh([]evidence.Item{it}, evidence.Acceptance{}, "no hole")
		},
	}
}

// withNewCheck is the sample with a check added to its catalog and answered for
// its second area.
func withNewCheck(limit string) workbook.Book {
	b := sample()
	check := drierThan(limit)
	b.Rules = append(b.Rules, report.Rule{ID: check.ID, Asks: check.Asks, Deciding: true})
	f := check.Find([]evidence.Reading{readAt(2, "71.50"), readAt(4, "78.40")})
	d := &b.Decisions[1]
	d.Area.ID, d.Findings = "B", append(d.Findings, f)
	d.Verdict, d.Why = evidence.Fold(d.Findings)
	return b
}

// rowOf is the number of the row of a sheet whose first cell is that.
func rowOf(t *testing.T, f *excelize.File, sheet, first string) int {
	t.Helper()
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range rows {
		if len(r) > 0 && r[0] == first {
			return i + 1
		}
	}
	t.Fatalf("sheet %s has no row %q", sheet, first)
	return 0
}

func formulaAt(t *testing.T, f *excelize.File, sheet, column string, row int) (text, value string) {
	t.Helper()
	at := fmt.Sprint(column, row)
	text, err := f.GetCellFormula(sheet, at)
	if err != nil {
		t.Fatal(err)
	}
	value, err = f.GetCellValue(sheet, at)
	if err != nil {
		t.Fatal(err)
	}
	return text, value
}

func TestAnAddedCheckCostsTheWorkbookNothing(t *testing.T) {
	for limit, outcome := range map[string]string{"75": "met", "74.94": "not met"} {
		f := opened(t, withNewCheck(limit))
		row := rowOf(t, f, "Area B", "new-check")
		for _, c := range []struct{ column, formula, value string }{
			{"B", fmt.Sprintf(`IF(ROUND((E%d-D%d),9)<0,"not met","met")`, row, row), outcome},
			{"D", "ROUND(AVERAGE('Slab RH'!D2,'Slab RH'!D4),9)", "74.95"},
		} {
			if text, value := formulaAt(t, f, "Area B", c.column, row); text != c.formula || value != c.value {
				t.Errorf("limit %s, column %s: %s gives %q, want %s, %q", limit, c.column, text, value, c.formula, c.value)
			}
		}
		if _, follows := formulaAt(t, f, "Area B", "J", row); follows != "yes" {
			t.Errorf("it is said to follow the record: %q", follows)
		}
	}
}

// A finding whose figures do not give its outcome keeps the values that were
// judged, and says so.
func TestAFindingThatFiguresDoNotGiveIsAValue(t *testing.T) {
	b := withNewCheck("75")
	b.Decisions[1].Findings[1].Outcome = evidence.NotShown
	f := opened(t, b)
	row := rowOf(t, f, "Area B", "new-check")
	for column, want := range map[string]string{"B": "not shown", "D": "74.95", "J": "no"} {
		if text, value := formulaAt(t, f, "Area B", column, row); text != "" || value != want {
			t.Errorf("column %s: %s gives %q, want %q", column, text, value, want)
		}
	}
}

// What is not needed for one reason is folded to one line.
func TestFindingsStandInThreeGroups(t *testing.T) {
	b := withNewCheck("74")
	for _, id := range []string{"slab-cm", "slab-ph"} {
		b.Decisions[1].Findings = append(b.Decisions[1].Findings,
			evidence.Finding{ID: id, Deciding: true, Outcome: evidence.NotNeeded, Reason: "no product states a limit"})
	}
	f := opened(t, b)
	last := 0
	for _, first := range []string{
		"Over a limit or not proven", "new-check", "Met", "slab-rh", "Not needed",
		"slab-cm, slab-ph: no product states a limit",
	} {
		row := rowOf(t, f, "Area B", first)
		if row <= last {
			t.Errorf("%s stands in row %d, above what must stand before it", first, row)
		}
		last = row
	}
}

// The verdict is kept only while tables and outcomes stand as they were judged,
// and a NO-GO has no way to GO.
func TestTheVerdictIsGuarded(t *testing.T) {
	f := opened(t, withNewCheck("75"))
	text, value := formulaAt(t, f, "Area B", "A", 2)
	for _, part := range []string{"'As judged'!$C$2=0", `"deciding"`, `"met")=2`, `,"GO","CHANGED, judge again")`} {
		if !strings.Contains(text, part) {
			t.Errorf("the verdict %s lacks %s", text, part)
		}
	}
	if value != "GO" {
		t.Errorf("it gives %q", value)
	}
	if no, _ := formulaAt(t, f, "Area A-1", "A", 2); strings.Contains(no, `"GO"`) {
		t.Errorf("a NO-GO can turn to GO: %s", no)
	}
	guard, _ := formulaAt(t, f, "As judged", "C", rowOf(t, f, "As judged", "Slab RH"))
	if guard == "" {
		t.Error("the table is not guarded")
	}
	all := fmt.Sprint(f.GetRows("As judged"))
	for _, words := range []string{"every cell", "Sheets added or removed"} {
		if !strings.Contains(all, words) {
			t.Errorf("the guard lacks %q", words)
		}
	}
	if visible, err := f.GetSheetVisible("As judged Slab RH"); visible || err != nil {
		t.Errorf("the copy is in sight (%v)", err)
	}
	rows, _ := f.GetRows("Slab RH")
	copied, _ := f.GetRows("As judged Slab RH")
	if fmt.Sprint(rows) != fmt.Sprint(copied) || len(rows) < 4 {
		t.Errorf("the copy holds %q, the table %q", copied, rows)
	}
}
