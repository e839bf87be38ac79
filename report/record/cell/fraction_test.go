package cell

import "testing"

func TestFractions(t *testing.T) {
	for typed, want := range map[string]string{
		"5/8": "0.625", "2 1/4": "2.25", "2-1/4": "2.25", "0 5/8": "0.625", "-1 1/2": "-1.5", "1  3/64": "1.046875", "63/64": "0.984375",
		"1/3": "", "5/4": "", "1/128": "", "2 1/": "", "/8": "", "1 2": "", "1--1/2": "", "1/1": "", "12345 1/2": "", "2": "", "1/0": "",
	} {
		if got := Fraction(typed); got != want {
			t.Errorf("%s is %q, not %q", typed, got, want)
		}
	}
	for typed, want := range map[string]string{
		"2½": "2 1/2", "1 5/8 in": "1 5/8", `3"`: "3", "1,5": "1.5",
		"three": "digits with a point or a fraction, such as 2.25 or 2 1/4",
	} {
		if got := fractional(typed); got != want {
			t.Errorf("%s is %q, not %q", typed, got, want)
		}
	}
}
