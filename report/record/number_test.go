package record

import (
	"strings"
	"testing"

	"firstboard/report/evidence"
)

func TestPlain(t *testing.T) {
	for _, s := range []string{"0", "84.7", "-3", "007", "0.00369", "84.70"} {
		if !plain(s) {
			t.Errorf("%q is refused", s)
		}
	}
	for s, write := range map[string]string{
		"":          "digits with a point, such as 84.7",
		"84,7":      "84.7",
		"1,240":     "1240 or 1.240",
		"1,240,000": "1240000",
		"1,240.5":   "1240.5",
		"1,2,3":     "digits with a point, such as 84.7",
		"84.7 %":    "84.7",
		"+5":        "5",
		".5":        "0.5",
		"5.":        "5",
		"1e3":       "1000",
		"1e999":     "digits with a point, such as 84.7",
		"1 240":     "1240",
		"−5":        "-5",
		"--5":       "digits with a point, such as 84.7",
		"70F":       "digits with a point, such as 84.7",
		"n/a":       "digits with a point, such as 84.7",
		"Infinity":  "digits with a point, such as 84.7",
		"NaN":       "digits with a point, such as 84.7",
		"٣":         "digits with a point, such as 84.7",
	} {
		if plain(s) {
			t.Errorf("%q is read", s)
		}
		if got := plainer(s); got != write {
			t.Errorf("%q: write %s, not %s", s, got, write)
		}
	}
}

// A spreadsheet keeps 15 digits and may store 17.
func TestMeant(t *testing.T) {
	for stored, want := range map[string]string{
		"84.7":                  "84.7",
		"84.70":                 "84.70",
		"84.700000000000003":    "84.7",
		"0.30000000000000004":   "0.3",
		"2.9999999999999996":    "3",
		"4.0999999999999996":    "4.1",
		"1.7000000000000001E-2": "0.017",
		"7E1":                   "70",
		"-0.001":                "-0.001",
		"007":                   "7",
		"123456789012345678":    "123456789012346000",
		"0":                     "0",
	} {
		if got, ok := meant(stored); !ok || got != want {
			t.Errorf("%s means %s, not %s", stored, got, want)
		}
	}
	for _, stored := range []string{"", "NaN", "inf", "0x1p-2", "1_0", "1e999", "e", ".", "1.2.3", "--1"} {
		if got, ok := meant(stored); ok {
			t.Errorf("%q means %s", stored, got)
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
		complaint := outside(c.rule(c.unit), evidence.Typed(c.written, c.unit), c.written, false).text
		if (complaint == "") != c.ok {
			t.Errorf("%s %s: %q", c.written, c.unit, complaint)
		}
	}
	if complaint := outside(humidity()(evidence.RH), evidence.Typed("0.5", evidence.RH), "0.5", true).text; complaint != "" {
		t.Errorf("a percentage: %q", complaint)
	}
}

func TestFormats(t *testing.T) {
	for code, want := range map[string]format{
		"General": general, "@": general, "0.00E+00": general, `0.0;-0.0`: general, "0 x": general,
		"0": decimals, "": decimals, `"`: decimals, "[": decimals, `\`: decimals, `0"%"`: decimals, `0\d`: decimals, "[$-409]0": decimals,
		"0.00": decimals + 2, `0.0" hours"`: decimals + 1, "#,##0.0_y": decimals + 1, "[Red]0.0": decimals + 1,
		"0." + strings.Repeat("0", 99): decimals + mostDecimals,
		"0%":                           percentage, "0.0 %": percentage,
		"yyyy-mm-dd": dayFormat, "d/m/yy": dayFormat, "[$-409]mmmm d": dayFormat,
		"yyyy-mm-dd hh:mm": clockFormat, "[h]:mm": clockFormat, "[ss]": clockFormat, "m/d/yy h:mm AM/PM": clockFormat,
	} {
		if got := formatOf(code); got != want {
			t.Errorf("%q is %d, not %d", code, got, want)
		}
	}
	for id, want := range map[int]format{0: general, 2: decimals + 2, 4: decimals + 2, 9: percentage, 10: percentage, 11: general, 14: dayFormat, 22: clockFormat, 46: clockFormat, 49: general} {
		if got := builtIn(id); got != want {
			t.Errorf("%d is %d, not %d", id, got, want)
		}
	}
}
