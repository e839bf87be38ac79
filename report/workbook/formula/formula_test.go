package formula_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// spot is a cell of the sheet Holes: column B is 2.
type spot struct{ column, row int }

func (s spot) String() string { return fmt.Sprint(s.column, s.row) }

func typed(column, row int, number string) evidence.Working {
	r := evidence.Reading{Written: number, Value: decimal.RequireFromString(number), Unit: evidence.RH, Place: spot{column, row}}
	return evidence.Cell("reading", r)
}

func stated(n int) evidence.Working {
	return evidence.Stated("a number", evidence.Whole(n), evidence.RH)
}

func printer() *formula.Printer {
	return &formula.Printer{
		Figures: formula.NewFigures("Figures", 3),
		Find: func(w evidence.Working) (formula.Cell, bool) {
			at, ok := w.Place.(spot)
			return formula.Cell{Sheet: "Holes", Column: at.column, Row: at.row, Number: true}, ok && at.row < 1000
		},
	}
}

func TestEachStepHasItsForm(t *testing.T) {
	a, b, c := typed(2, 4, "71.5"), typed(2, 5, "80"), typed(4, 9, "3")
	for want, w := range map[string]evidence.Working{
		"'Holes'!B4":                    a,
		"(75-'Holes'!B4)":               evidence.Less(stated(75), a),
		"MAX('Holes'!B4:B5,'Holes'!D9)": evidence.Highest(b, c, a),
		"MIN('Holes'!B4,2)":             evidence.Lowest(a, stated(2)),
		"AVERAGE('Holes'!B4:B5)":        evidence.MeanOf(a, b),
		"COUNT('Holes'!B4:B5)":          evidence.CountOf(evidence.Holes, a, b),
		"SUM('Holes'!B4:B5)":            evidence.Total(a, b),
		"ABS(('Holes'!B4-'Holes'!B5))":  evidence.Unsigned(evidence.Less(a, b)),
		"(-INT(-ROUND('Holes'!D9,9)))":  evidence.RoundedUp(c),
		"('Holes'!D9*0.4)":              evidence.Times(c, evidence.Stated("share", evidence.Ratio(2, 5), evidence.None), evidence.RH),
		"('Holes'!B4/'Holes'!D9)":       evidence.DividedBy(a, c, evidence.RH),
		"(SUMPRODUCT(ISNUMBER('Holes'!B4:B5)*(ROUND('Holes'!B4:B5,9)>=ROUND('Figures'!B3,9))*(ROUND('Holes'!B4:B5,9)<=ROUND('Figures'!B4,9)))+0)": evidence.Inside(evidence.Holes, stated(70), stated(75), a, b),
	} {
		if got, ok := printer().Print(w); !ok || got != want {
			t.Errorf("got %s (%v), want %s", got, ok, want)
		}
	}
}

// Of values against limits of their own the nearest is found by rows of the
// sheet of figures, and the room is taken from the same rows.
func TestTheNearestValueStandsInRows(t *testing.T) {
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)})
	other := evidence.AtMost(evidence.Bound{Number: evidence.Typed("85", evidence.RH)})
	items := []evidence.Item{measured(typed(2, 4, "71.5"), limit), measured(typed(2, 7, "84"), other)}
	f := evidence.Weigh(items, evidence.Acceptance{}, "")
	p := printer()
	value, ok := p.Print(f.Worked.Value)
	room, known := p.Print(f.Worked.Room)
	if want := "INDEX('Figures'!B3:B4,MATCH(MIN('Figures'!C3:C4),'Figures'!C3:C4,0))"; !ok || value != want {
		t.Errorf("the value is %s, want %s", value, want)
	}
	if want := "MIN('Figures'!C3:C4)"; !known || room != want {
		t.Errorf("the room is %s, want %s", room, want)
	}
	if rows := p.Figures.Rows; len(rows) != 2 || rows[1].Figures[0] != (formula.Figure{Formula: "'Holes'!B7", Value: 84}) ||
		rows[1].Figures[1].Value != 1 {
		t.Errorf("the figures are %+v", p.Figures.Rows)
	}
}

func measured(w evidence.Working, l evidence.Limit) evidence.Item {
	return evidence.Item{Name: "hole", Limit: l}.By(w)
}

// However many cells a step takes, no formula grows over what a cell holds.
func TestLongStepsGetCellsOfTheirOwn(t *testing.T) {
	var scattered, differences []evidence.Working
	for i := range 400 {
		scattered = append(scattered, typed(2, 2+2*i, "70"))
		differences = append(differences, evidence.Unsigned(evidence.Less(typed(2, 2+2*i, "70"), typed(3, 2+2*i, "71"))))
	}
	for _, w := range []evidence.Working{
		evidence.Highest(scattered...), evidence.MeanOf(differences...),
		evidence.Inside(evidence.Holes, stated(1), stated(2), differences...),
	} {
		p := printer()
		text, ok := p.Print(w)
		if !ok || len(text) > 1000 || len(p.Figures.Rows) < 400 {
			t.Errorf("%s: %d letters, %d figures (%v): %.200s", w.Op, len(text), len(p.Figures.Rows), ok, text)
		}
		for _, r := range p.Figures.Rows {
			for _, f := range r.Figures {
				if len(f.Formula) > 8192 || f.Formula == "" {
					t.Errorf("%s: %d letters", r.What, len(f.Formula))
				}
			}
		}
	}
}

// What lies on no sheet of the workbook has no form, and leaves no figure.
func TestWhatLiesNowhereHasNoForm(t *testing.T) {
	p := printer()
	w := evidence.Rounded(evidence.Less(typed(2, 4, "71"), evidence.Rounded(evidence.Less(typed(2, 5, "1"), typed(2, 2000, "3")), 1)), 1)
	if text, ok := p.Print(w); ok || len(p.Figures.Rows) > 0 {
		t.Errorf("it is printed as %s with %d figures", text, len(p.Figures.Rows))
	}
	if formula.Rests(stated(3)) || !formula.Rests(w) {
		t.Error("a number of a rule rests on a cell, or a reading on none")
	}
}

func TestPhysicsHasCellsOfItsOwn(t *testing.T) {
	temp := evidence.Working{Op: evidence.OpTyped, Value: evidence.Whole(70), Unit: evidence.Fahrenheit, Place: spot{2, 4}}
	rh := typed(3, 4, "45")
	for op, want := range map[evidence.Op]string{evidence.OpEMC: "ROUND(MAX(0,", evidence.OpDewPoint: "("} {
		p := printer()
		text, ok := p.Print(evidence.Physics(op, evidence.Ratio(85, 10), evidence.Fahrenheit, temp, rh))
		last := p.Figures.Rows[len(p.Figures.Rows)-1].Figures[0]
		if !ok || !strings.HasPrefix(text, "'Figures'!B") || !strings.HasPrefix(last.Formula, want) || last.Value != 8.5 {
			t.Errorf("%s: %s, %+v", op, text, last)
		}
	}
}
