package record

import (
	"testing"

	"firstboard/report/evidence"
)

func TestPlain(t *testing.T) {
	for _, s := range []string{"0", "84.7", "-3", "007", "0.00369", "84.70"} {
		if !evidence.Plain(s) {
			t.Errorf("%q is refused", s)
		}
	}
	for s, write := range map[string]string{
		"":          "",
		"84,7":      "84.7",
		"1,240":     "1240 or 1.240",
		"1,240,000": "1240000",
		"1,240.5":   "1240.5",
		"1,2,3":     "",
		"84.7 %":    "84.7",
		"+5":        "5",
		".5":        "0.5",
		"5.":        "5",
		"1e3":       "1000",
		"1e999":     "",
		"1 240":     "1240",
		"−5":        "-5",
		"--5":       "",
		"70F":       "",
		"n/a":       "",
		"Infinity":  "",
		"NaN":       "",
		"٣":         "",
	} {
		if evidence.Plain(s) {
			t.Errorf("%q is read", s)
		}
		if got := plainer(s); got != write {
			t.Errorf("%q: write %s, not %s", s, got, write)
		}
	}
}

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
		complaint := outside(c.rule(c.unit), evidence.Typed(c.written, c.unit), c.written, false).Text
		if (complaint == "") != c.ok {
			t.Errorf("%s %s: %q", c.written, c.unit, complaint)
		}
	}
	if complaint := outside(humidity()(evidence.RH), evidence.Typed("0.5", evidence.RH), "0.5", true).Text; complaint != "" {
		t.Errorf("a percentage: %q", complaint)
	}
}
