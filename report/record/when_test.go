package record

import (
	"testing"
	"time"

	"firstboard/report/evidence"
)

func TestParseClock(t *testing.T) {
	for _, s := range []string{"2026-03-04", "2026-03-04 08:30", "2026-03-04 08:30:15", "2024-02-29"} {
		if _, ok := evidence.ParseClock(s); !ok {
			t.Errorf("%q is not read", s)
		}
	}
	for _, s := range []string{
		"", "2026-3-4", "04-03-2026", "2026-02-29", "2026-03-04 8:30", "2026-03-04T08:30", "2026-03-04 24:00",
		"2026-03-04 08:30:60", "2026-03-04 08:30:1.", "2026-03-04 08:30 AM", "2026-03-04  08:30", "+026-03-04",
	} {
		if _, ok := evidence.ParseClock(s); ok {
			t.Errorf("%q is read", s)
		}
	}
}

// Elapsed times are true times, and without a zone clock times.
func TestElapsed(t *testing.T) {
	rows := map[string]string{"slab-rh.csv": holeHead + "A1,H1,,1.6,2026-03-07 12:00,2026-03-08 12:00,80,70,RP1\n"}
	hole := sound(t, rows).Job.Holes[0]
	if got := hole.ReadAt.First.Sub(hole.SealedAt.First); got != 23*time.Hour {
		t.Errorf("with a zone %v passed", got)
	}
	rows["job.csv"] = "Item,Entry\nJob,Mill\n"
	hole = sound(t, rows).Job.Holes[0]
	if got := hole.ReadAt.First.Sub(hole.SealedAt.First); got != 24*time.Hour {
		t.Errorf("without a zone %v passed", got)
	}
}

// A day alone means its end for a heat run: the reading that is worse for it.
func TestHeatOnSinceADay(t *testing.T) {
	head := areaHead + ",Heat on since\nA1,1240,slab,4,P1,C1,2026-03-12,"
	for typed, want := range map[string]string{"2026-03-08": "2026-03-09T05:00:00Z", "2026-03-08 12:00": "2026-03-08T17:00:00Z"} {
		from := sound(t, map[string]string{"areas.csv": head + typed + "\n"}).Job.Areas[0].HeatOnSince
		if got := from.First.UTC().Format(time.RFC3339); got != want || from.Written != typed {
			t.Errorf("%s: from %s, not %s", typed, got, want)
		}
	}
}
