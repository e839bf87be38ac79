package cell

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
