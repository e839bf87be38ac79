package formula_test

import (
	"math"
	"testing"

	"firstboard/report/workbook/formula"
)

func cells(values ...any) []formula.Expr {
	var all []formula.Expr
	for _, v := range values {
		all = append(all, formula.Cell("$A$1", v))
	}
	return all
}

// Texts and what they give, as every usual spreadsheet has it.
func TestExpressions(t *testing.T) {
	n, blank, word := formula.Cell("$B$2", 12.5), formula.Cell("$B$3", nil), formula.Cell("$B$4", "H1")
	list := formula.Range("$A$1:$A$4", cells(3.0, "x", nil, 8.0))
	keys := formula.Range("$C$1:$C$2", cells(1.0, 2.0))
	two := formula.Range("$D$1:$D$2", cells("low", "high"))
	for _, c := range []struct {
		e    formula.Expr
		text string
		want any
	}{
		{n.Plus(formula.Number(1)).Times(formula.Number(2)), "($B$2+1)*2", 27.0},
		{n.Minus(blank), "$B$2-$B$3", 12.5},
		{n.Minus(word), "$B$2-$B$4", formula.Error{}},
		{n.Over(blank), "$B$2/$B$3", formula.Error{}},
		{blank.Says(""), `$B$3=""`, true},
		{blank.Shown(), `$B$3<>""`, false},
		{word.Says("h1"), `$B$4="h1"`, true},
		{word.Figure(), `IF(ISNUMBER($B$4),$B$4,"")`, ""},
		{n.Figure(), `IF(ISNUMBER($B$2),$B$2,"")`, 12.5},
		{blank.Figure(), `IF(ISNUMBER($B$3),$B$3,"")`, ""},
		{formula.If(blank.Shown(), word.Minus(n), formula.Text("none")), `IF($B$3<>"",$B$4-$B$2,"none")`, "none"},
		{formula.Number(2.345).Round(2), "ROUND(2.345,2)", 2.35},
		{formula.Number(-2.5).Round(0), "ROUND(-2.5,0)", -3.0},
		{formula.Number(2.1).Up(), "ROUNDUP(2.1,0)", 3.0},
		{formula.Number(46085.75).Down(), "INT(46085.75)", 46085.0},
		{list.Max(), "MAX($A$1:$A$4)", 8.0},
		{list.Min(), "MIN($A$1:$A$4)", 3.0},
		{list.Sum(), "SUM($A$1:$A$4)", 11.0},
		{list.Count(), "COUNT($A$1:$A$4)", 2.0},
		{list.Entries(), "COUNTA($A$1:$A$4)", 3.0},
		{list.Average(), "AVERAGE($A$1:$A$4)", 5.5},
		{list.Median(), "MEDIAN($A$1:$A$4)", 5.5},
		{list.Times("X"), `COUNTIF($A$1:$A$4,"X")`, 1.0},
		{formula.Range("$E$1:$E$1", cells("")).Max(), "MAX($E$1:$E$1)", 0.0},
		{two.At(formula.Number(2), keys), "INDEX($D$1:$D$2,MATCH(2,$C$1:$C$2,0))", "high"},
		{two.At(formula.Number(3), keys), "INDEX($D$1:$D$2,MATCH(3,$C$1:$C$2,0))", formula.Error{}},
		{keys.LastBefore(formula.Number(2)), "SUMPRODUCT(MAX(($C$1:$C$2<2)*$C$1:$C$2))", 1.0},
		{keys.LastBefore(formula.Number(1)), "SUMPRODUCT(MAX(($C$1:$C$2<1)*$C$1:$C$2))", 0.0},
		{keys.FirstFrom(formula.Number(2)), "SUMPRODUCT(MIN(($C$1:$C$2<2)*10000000+$C$1:$C$2))", 2.0},
		{formula.Text(`6" board`), `"6"" board"`, `6" board`},
		{formula.Joined(formula.Text("at least "), n), `"at least "&$B$2`, "at least 12.5"},
		{n.Plus(formula.Cell("'Slab RH'!H9", 1.0)).Abroad("'W'!"), "'W'!$B$2+'Slab RH'!H9", 13.5},
		{list.Max().Abroad("'W'!"), "MAX('W'!$A$1:$A$4)", 8.0},
	} {
		if c.e.String() != c.text || c.e.Value() != c.want {
			t.Errorf("%s gives %v; want %s giving %v", c.e, c.e.Value(), c.text, c.want)
		}
	}
}

// No value is ever a NaN or an infinity, which no cell can hold.
func TestOverNeverGivesNaN(t *testing.T) {
	for _, v := range []any{0.0, nil, "", "x", 1e308} {
		got := formula.Number(0).Over(formula.Cell("A1", v))
		if x, ok := got.Float(); ok && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Errorf("0 over %v gives %v", v, x)
		}
	}
}
