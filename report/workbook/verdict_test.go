package workbook_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
)

// rowPlace is a place that knows its row, as the record's places do.
type rowPlace int

func (p rowPlace) String() string                        { return fmt.Sprintf("job \"Slab RH\" row %d", int(p)) }
func (p rowPlace) Cell() (table string, row, column int) { return "Slab RH", int(p), 0 }

func TestVerdictsStandInWords(t *testing.T) {
	f := opened(t, sample())
	page := fmt.Sprint(f.GetRows("Decision"))
	for _, words := range []string{
		"Is this floor ready to install?", "NO-GO, over a limit", "GO", "Over: slab-rh", "78.40 % RH", "75 % RH", "provided it stays dry",
		"places and times tested", "Signature:",
	} {
		if !strings.Contains(page, words) {
			t.Errorf("the decision page lacks %q", words)
		}
	}
	area := fmt.Sprint(f.GetRows(f.GetSheetList()[1]))
	for _, words := range []string{"slab-rh", "not met", "78.40", "slab-rh.csv row 4", "a data sheet, 2025 (manufacturer)", "TILE"} {
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

// The decision is printed as it is, at 8 points: what one page does not hold
// goes on the next, under the same header.
func TestTheDecisionIsPrintedAtItsOwnSize(t *testing.T) {
	b := sample()
	b.Decisions = slices.Repeat(b.Decisions[:1], 30)
	f := opened(t, b)
	layout, err := f.GetPageLayout("Decision")
	if err != nil || *layout.Orientation != "landscape" || *layout.AdjustTo != 100 {
		t.Errorf("the layout is %+v (%v)", layout, err)
	}
	wide := 0.0
	for c := 'A'; c <= 'J'; c++ {
		w, _ := f.GetColWidth("Decision", string(c))
		wide += w
	}
	const unit, paper = 6.14, 756 // points, as a spreadsheet program prints them; letter lying within its margins
	if wide*unit > paper {
		t.Errorf("the page is %.0f points wide, the paper %d: its letters shrink", wide*unit, paper)
	}
	at, _ := found(t, f, "Decision", "Area")
	_, head, _ := excelize.CellNameToCoordinates(at)
	want := fmt.Sprintf("'Decision'!$%d:$%d", head, head)
	if !slices.ContainsFunc(f.GetDefinedName(), func(n excelize.DefinedName) bool { return n.Scope == "Decision" && n.RefersTo == want }) {
		t.Errorf("no page repeats %s", want)
	}
}

// Twelve areas fit one page, by the heights of their rows.
func TestADozenAreasFitOnePage(t *testing.T) {
	b := sample()
	b.Decisions = slices.Repeat(b.Decisions[:1], 12)
	for i := range b.Decisions {
		b.Decisions[i].Area = report.Area{ID: fmt.Sprintf("A%d", i+1), Name: "Upper corridor"}
		b.Advice = append(b.Advice, ahead.Advice{Missing: []ahead.Missing{{What: "read the air for 48 h"}}})
	}
	f := opened(t, b)
	rows, err := f.GetRows("Decision")
	if err != nil {
		t.Fatal(err)
	}
	tall := 0.0
	for i := range rows {
		h, _ := f.GetRowHeight("Decision", i+1)
		tall += h
	}
	const paper = 515
	if tall > paper {
		t.Errorf("the page is %.0f points high, the paper %d", tall, paper)
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
	at, text := found(t, f, "Area A-1", `Slab RH row`)
	if text != "Slab RH row 4, 2, 6" {
		t.Errorf("the evidence reads %q", text)
	}
	if linked, to, err := f.GetCellHyperLink("Area A-1", at); err != nil || !linked || to != "'Slab RH'!A4" {
		t.Errorf("it leads to %q (%v)", to, err)
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
	f := opened(t, b)
	page := fmt.Sprint(f.GetRows("Decision"))
	area := fmt.Sprint(f.GetRows("Area A-1"))
	for i := range 12 {
		if !strings.Contains(page, d.Conditions[i]) {
			t.Errorf("the decision page lacks %q", d.Conditions[i])
		}
		if check := fmt.Sprintf("check-%d", i); !strings.Contains(area, check) {
			t.Errorf("the area's sheet lacks %q", check)
		}
	}
	if !strings.Contains(page, "6 more on sheet Area A-1") {
		t.Error("the decision page does not tell that there are more")
	}
}
