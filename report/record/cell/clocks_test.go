package cell

import (
	"testing"
	"time"

	"firstboard/report/evidence"
)

// Where clocks go back, a time comes twice; where they go forward, never.
func TestInstants(t *testing.T) {
	for _, c := range []struct{ zone, clock, first, last string }{
		{"America/Chicago", "2026-07-01 12:00", "2026-07-01T17:00:00Z", "2026-07-01T17:00:00Z"},
		{"America/Chicago", "2026-11-01 00:59", "2026-11-01T05:59:00Z", "2026-11-01T05:59:00Z"},
		{"America/Chicago", "2026-11-01 01:00", "2026-11-01T06:00:00Z", "2026-11-01T07:00:00Z"},
		{"America/Chicago", "2026-11-01 01:59:59", "2026-11-01T06:59:59Z", "2026-11-01T07:59:59Z"},
		{"America/Chicago", "2026-11-01 02:00", "2026-11-01T08:00:00Z", "2026-11-01T08:00:00Z"},
		{"America/Chicago", "2026-03-08 01:59", "2026-03-08T07:59:00Z", "2026-03-08T07:59:00Z"},
		{"America/Chicago", "2026-03-08 02:00", "", ""},
		{"America/Chicago", "2026-03-08 02:59:59", "", ""},
		{"America/Chicago", "2026-03-08 03:00", "2026-03-08T08:00:00Z", "2026-03-08T08:00:00Z"},
		{"Australia/Lord_Howe", "2026-04-05 01:45", "2026-04-04T14:45:00Z", "2026-04-04T15:15:00Z"},
		{"Europe/Berlin", "2026-10-25 02:30", "2026-10-25T00:30:00Z", "2026-10-25T01:30:00Z"},
		{"Pacific/Apia", "2011-12-30 12:00", "", ""},
		{"UTC", "2026-03-08 02:30", "2026-03-08T02:30:00Z", "2026-03-08T02:30:00Z"},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		clock, _ := evidence.ParseClock(c.clock)
		first, last, ok := new(Clocks).Instants(clock, zone)
		if ok != (c.first != "") {
			t.Errorf("%s in %s: read is %v", c.clock, c.zone, ok)
		}
		if !ok {
			continue
		}
		if got := first.UTC().Format(time.RFC3339); got != c.first {
			t.Errorf("%s in %s: first at %s, not %s", c.clock, c.zone, got, c.first)
		}
		if got := last.UTC().Format(time.RFC3339); got != c.last {
			t.Errorf("%s in %s: last at %s, not %s", c.clock, c.zone, got, c.last)
		}
	}
}

// A day written another way is told as a record writes it, both ways round
// where nobody can tell.
func TestMeantClock(t *testing.T) {
	for _, c := range []struct{ text, day, clock string }{
		{"March 12, 2026", "2026-03-12", ""},
		{"12 Mar 2026", "2026-03-12", ""},
		{"3/9/2026", "2026-03-09 or 2026-09-03", ""},
		{"3/19/26", "2026-03-19", ""},
		{"19.3.2026", "2026-03-19", ""},
		{"2026/03/12", "2026-03-12", ""},
		{"3/19/2026 2:30 pm", "", "2026-03-19 14:30"},
		{"2026-3-9T08:30:15", "", "2026-03-09 08:30"},
		{"soon", "", ""},
		{"2026-02-30", "", ""},
	} {
		if got := meantClock(c.text, false); got != c.day {
			t.Errorf("%q is the day %q, want %q", c.text, got, c.day)
		}
		if got := meantClock(c.text, true); got != c.clock {
			t.Errorf("%q is the time %q, want %q", c.text, got, c.clock)
		}
	}
}
