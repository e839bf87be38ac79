package cell

import (
	"strings"
	"testing"

	"firstboard/report/evidence"
)

// FuzzMeant: what is offered for a number, a fraction or a time that cannot be
// read can be read.
func FuzzMeant(f *testing.F) {
	for _, s := range []string{
		"84,7", "1,240", "1,240,000.5", "84.7 %", "\u22125", "1e999", "2 1/4", "2-1/4", "-0 5/8", "1/3", "2\u00bc\"",
		"3/4/2026", "13/4/26 8:30 pm", "March 4, 2026", "4.3.2026", "2026/3/4 08:30:15", "", "\u0663",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		each := func(offer string, readable func(string) bool) {
			for _, one := range strings.Split(offer, " or ") {
				if offer != "" && !readable(one) {
					t.Errorf("%q: %q is offered and cannot be read", s, one)
				}
			}
		}
		each(plainer(s), evidence.Plain)
		each(Fraction(s), evidence.Plain)
		for _, withTime := range []bool{false, true} {
			each(meantClock(s, withTime), func(one string) bool {
				_, ok := evidence.ParseClock(one)
				return ok
			})
		}
	})
}
