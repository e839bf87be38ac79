package workbook_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/evidence"
)

// rowPlace is a place that knows its row, as the record's places do.
type rowPlace int

func (p rowPlace) String() string     { return fmt.Sprintf("job \"Slab RH\" row %d", int(p)) }
func (p rowPlace) Row() (string, int) { return "Slab RH", int(p) }

func TestVerdictsStandInWords(t *testing.T) {
	f := opened(t, sample())
	page := fmt.Sprint(f.GetRows("Decision"))
	for _, words := range []string{"NO-GO, over a limit", "GO", "hole H3 read 78.40 % RH", "provided it stays dry", "places and times tested", "TILE"} {
		if !strings.Contains(page, words) {
			t.Errorf("the decision page lacks %q", words)
		}
	}
	area := fmt.Sprint(f.GetRows(f.GetSheetList()[1]))
	for _, words := range []string{"slab-rh", "not met", "78.40", "slab-rh.csv row 4", "a data sheet, 2025", "manufacturer"} {
		if !strings.Contains(area, words) {
			t.Errorf("the area's sheet lacks %q", words)
		}
	}
}

func TestAVerdictUnderWaiverSaysSo(t *testing.T) {
	b := sample()
	b.Decisions[0].Waivers = []report.Waiver{{Check: "slab-rh", Role: "owner", Name: "Owner", Doubts: []string{"the limit is not theirs"}}}
	page := fmt.Sprint(opened(t, b).GetRows("Decision"))
	for _, words := range []string{"NO-GO, installed under waiver", "slab-rh is waived by Owner (owner)", "the limit is not theirs"} {
		if !strings.Contains(page, words) {
			t.Errorf("the decision page lacks %q", words)
		}
	}
}

func TestTheDecisionIsOnePrintedPage(t *testing.T) {
	f := opened(t, sample())
	for _, sheet := range f.GetSheetList() {
		layout, err := f.GetPageLayout(sheet)
		if err != nil {
			t.Fatal(err)
		}
		tall := 0
		if sheet == "Decision" {
			tall = 1
		}
		if *layout.Orientation != "landscape" || *layout.FitToWidth != 1 || *layout.FitToHeight != tall {
			t.Errorf("%s: %s, %d wide, %d tall", sheet, *layout.Orientation, *layout.FitToWidth, *layout.FitToHeight)
		}
		if foot, _ := f.GetHeaderFooter(sheet); foot == nil || !strings.Contains(foot.OddFooter, "&P") || !strings.Contains(foot.OddFooter, "&A") {
			t.Errorf("%s: the foot is %+v", sheet, foot)
		}
	}
}

func TestTooManyAreasForOnePageRunOnUnderTheirHeader(t *testing.T) {
	for _, c := range []struct{ areas, tall int }{{8, 1}, {60, 0}} {
		b := sample()
		b.Decisions = slices.Repeat(b.Decisions[:1], c.areas)
		f := opened(t, b)
		if layout, err := f.GetPageLayout("Decision"); err != nil || *layout.FitToHeight != c.tall || *layout.FitToWidth != 1 {
			t.Errorf("%d areas: the layout is %+v (%v), want %d tall", c.areas, layout, err, c.tall)
		}
		at, _ := found(t, f, "Decision", "Area")
		_, head, _ := excelize.CellNameToCoordinates(at)
		want := fmt.Sprintf("'Decision'!$%d:$%d", head, head)
		if !slices.ContainsFunc(f.GetDefinedName(), func(n excelize.DefinedName) bool { return n.Scope == "Decision" && n.RefersTo == want }) {
			t.Errorf("%d areas: no page repeats %s", c.areas, want)
		}
	}
}

// found is the address and the text of the first cell that begins so.
func found(t *testing.T, f *excelize.File, sheet, begins string) (at, text string) {
	t.Helper()
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for y, row := range rows {
		if x := slices.IndexFunc(row, func(s string) bool { return strings.HasPrefix(s, begins) }); x >= 0 {
			at, err := excelize.CoordinatesToCellName(x+1, y+1)
			if err != nil {
				t.Fatal(err)
			}
			return at, row[x]
		}
	}
	t.Fatalf("nothing on %q begins with %q", sheet, begins)
	return "", ""
}

func TestEvidenceIsGatheredAndLeadsToTheWorstReading(t *testing.T) {
	b := sample()
	b.Decisions[0].Findings[0].Evidence = []evidence.Place{rowPlace(4), rowPlace(2), rowPlace(6)}
	f := opened(t, b)
	at, text := found(t, f, "Area A-1", `"Slab RH" row`)
	if text != `"Slab RH" rows 4, 2, 6` {
		t.Errorf("the evidence reads %q", text)
	}
	if linked, to, err := f.GetCellHyperLink("Area A-1", at); err != nil || !linked || to != "'Slab RH'!A4" {
		t.Errorf("it leads to %q (%v)", to, err)
	}
	if _, text := found(t, f, "Decision", "slab-rh"); !strings.Contains(text, `hole H3 read 78.40 % RH ("Slab RH" row 4)`) {
		t.Errorf("the governing limit reads %q", text)
	}
}

func TestConditionsAndChecksThatStopAreNeverLeftOut(t *testing.T) {
	b := sample()
	long := strings.Repeat("the air at 2026-03-01 14:00 (AL1) read 81.3 F; the limit is 60 to 80 F; ", 6)
	d := &b.Decisions[0]
	for i := range 12 {
		d.Conditions = append(d.Conditions, fmt.Sprintf("provided that the condition with the number %d is kept", i))
		d.Findings = append(d.Findings, evidence.Finding{ID: fmt.Sprintf("check-%d", i), Deciding: true, Reason: long})
	}
	page := fmt.Sprint(opened(t, b).GetRows("Decision"))
	for i := range 12 {
		for _, words := range []string{d.Conditions[i], fmt.Sprintf("check-%d", i)} {
			if !strings.Contains(page, words) {
				t.Errorf("the decision page lacks %q", words)
			}
		}
	}
}

func TestRowsAreAsHighAsTheirTexts(t *testing.T) {
	b := sample()
	b.Decisions[0].Findings[0].Reason = strings.Repeat("wide words abound ", 30)
	f := opened(t, b)
	at, text := found(t, f, "Area A-1", "wide words")
	column, row, _ := excelize.CellNameToCoordinates(at)
	name, _ := excelize.ColumnNumberToName(column)
	width, _ := f.GetColWidth("Area A-1", name)
	height, _ := f.GetRowHeight("Area A-1", row)
	const lettersAUnit, line = 1.3, 12.75 // at the very most, and at the least
	if least := float64(len(text)) / (width * lettersAUnit) * line; height < least {
		t.Errorf("%d letters in a column of %v stand in %v points, which is under %v", len(text), width, height, least)
	}
}
