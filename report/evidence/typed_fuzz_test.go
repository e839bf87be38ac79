package evidence

import (
	"regexp"
	"testing"
	"time"

	"github.com/shopspring/decimal"
)

// FuzzPlain: a plain decimal is what the pattern of one says, and a number.
func FuzzPlain(f *testing.F) {
	for _, s := range []string{"0", "-0", "84.70", "007", ".5", "5.", "1e3", "+5", "--5", "1,240", "\u0663", "", "-", "-.5"} {
		f.Add(s)
	}
	pattern := regexp.MustCompile(`\A-?[0-9]+(\.[0-9]+)?\z`)
	f.Fuzz(func(t *testing.T, s string) {
		plain := Plain(s)
		if plain != pattern.MatchString(s) {
			t.Errorf("%q: plain is %v", s, plain)
		}
		if _, err := decimal.NewFromString(s); plain && err != nil {
			t.Errorf("%q: %v", s, err)
		}
	})
}

// FuzzParseClock: a clock time is what the standard library reads in one of the
// three layouts, and nothing else.
func FuzzParseClock(f *testing.F) {
	for _, s := range []string{
		"2026-03-04", "2026-03-04 08:30", "2026-03-04 08:30:15", "2026-02-29", "2024-02-29", "2026-03-04 24:00",
		"2026-03-04 08:60", "2026-3-4", "0000-01-01", "2026-03-04T08:30", "2026-03-04 08:30:15.5", "\u0662026-03-04",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got, ok := ParseClock(s)
		var want time.Time
		read := false
		for _, layout := range []string{time.DateOnly, "2006-01-02 15:04", time.DateTime} {
			// The library reads parts of a second, and hours of one digit, where the layout has none.
			if at, err := time.Parse(layout, s); err == nil && at.Format(layout) == s {
				want, read = at, true
			}
		}
		if ok != read || ok && !got.Equal(want) {
			t.Errorf("%q: %v, %v; want %v, %v", s, got, ok, want, read)
		}
	})
}
