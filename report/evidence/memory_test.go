package evidence_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// What is done for every row of a log takes no memory: a record has hundreds of
// thousands of them, and they are held compactly.
func TestRowsTakeNoMemoryOfTheirOwn(t *testing.T) {
	for name, done := range map[string]func(){
		"an entry":              func() { evidence.Tidy("North wall, H1 (~2 ft)") },
		"of one letter":         func() { evidence.Tidy("a") },
		"of any plain letter":   func() { evidence.Tidy("a !09AZaz~\x7f") },
		"a blank":               func() { evidence.Tidy("") },
		"a third to 9 places":   func() { evidence.Ratio(1, 3).Round(9) },
		"the tenth of a third":  func() { evidence.Ratio(1, 30).Round(1) },
		"a mean of two numbers": func() { evidence.Ratio(14, 2).Add(evidence.Ratio(1, 2)).Abs() },
	} {
		if n := testing.AllocsPerRun(10, done); n > 0 {
			t.Errorf("%s takes memory %v times", name, n)
		}
	}
	for _, typed := range []string{"0", "87", "999999999", "87.9", "0.000000001", "-71.85"} {
		d := decimal.RequireFromString(typed)
		if n := testing.AllocsPerRun(10, func() { evidence.Of(d) }); n > 0 {
			t.Errorf("%s takes memory %v times", typed, n)
		}
	}
}

// Whatever counts as space is trimmed and folded, between plain letters and others.
func TestTidy(t *testing.T) {
	for entry, want := range map[string]string{
		"": "", " ": "", "H1": "H1", " H1": "H1", "H1 ": "H1", "North  wall": "North wall", "North\twall": "North wall",
		"\u00a0H1": "H1", "North\u2003wall": "North wall", "caf\u00e9  north": "caf\u00e9 north",
		"H1\n": "H1", "H1\x1f2": "H1\x1f2",
	} {
		if got := evidence.Tidy(entry); got != want {
			t.Errorf("Tidy(%q) = %q, want %q", entry, got, want)
		}
	}
}
