package record

import (
	"testing"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/cell"
	"firstboard/report/record/sheet"
)

// Bounds are met at equality, in either unit.
func TestRules(t *testing.T) {
	for _, c := range []struct {
		rule    rule
		written string
		unit    evidence.Unit
		ok      bool
	}{
		{temperature(), "160", evidence.Fahrenheit, true},
		{temperature(), "160.01", evidence.Fahrenheit, false},
		{temperature(), "-40", evidence.Fahrenheit, true},
		{temperature(), "-40.1", evidence.Fahrenheit, false},
		{temperature(), "71.11", evidence.Celsius, true},
		{temperature(), "71.12", evidence.Celsius, false},
		{temperature(), "-40", evidence.Celsius, true},
		{temperature(), "-40.1", evidence.Celsius, false},
		{humidity(), "100", evidence.RH, true},
		{humidity(), "100.1", evidence.RH, false},
		{humidity(), "0", evidence.RH, true},
		{humidity(), "-0.1", evidence.RH, false},
		{humidity(), "1", evidence.RH, false},
		{humidity(), "1.01", evidence.RH, true},
		{moisture(), "200", evidence.MC, true},
		{moisture(), "200.1", evidence.MC, false},
		{moisture(), "0.5", evidence.MC, false},
		{acidity(), "14", evidence.PH, true},
		{acidity(), "14.1", evidence.PH, false},
		{acidity(), "0.5", evidence.PH, true},
		{aboveZero, "0", evidence.Inch, false},
		{aboveZero, "0.1", evidence.Inch, true},
		{notNegative, "0", evidence.Inch, true},
		{notNegative, "-0.1", evidence.Inch, false},
		{unbounded, "0.75", evidence.None, false},
		{unbounded, "75", evidence.None, true},
	} {
		_, wrong := cell.Number(&grid.Cell{Kind: grid.NumberCell, Text: c.written}, c.unit, false, c.rule(c.unit))
		if (wrong.Text == "") != c.ok {
			t.Errorf("%s %s: %q", c.written, c.unit, wrong.Text)
		}
	}
	percent := grid.Cell{Kind: sheet.Percent, Text: "0.5"}
	if _, wrong := cell.Number(&percent, evidence.RH, false, humidity()(evidence.RH)); wrong.Text != "" {
		t.Errorf("a percentage: %q", wrong.Text)
	}
}
