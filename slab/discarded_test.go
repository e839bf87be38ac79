package slab_test

import (
	"testing"
	"time"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// A wet hole that was discarded needs a replacement, and does not lose that
// need because nobody knows its reading, or under guarded acceptance its probe.
func TestDiscardedHoleNeedsAReplacement(t *testing.T) {
	at := time.Date(2026, 3, 3, 8, 0, 0, 0, time.UTC)
	read := evidence.Time{Written: "2026-03-03 08:00", First: at, Last: at}
	for _, c := range []struct {
		rh, probe string
		guarded   bool
		want      evidence.Outcome
	}{
		{"70", "RP1", false, evidence.Met},
		{"99", "RP1", false, evidence.NotShown},
		{"", "RP1", false, evidence.NotShown},
		{"99", "", false, evidence.NotShown},
		{"70", "RP1", true, evidence.Met},
		{"99", "RP1", true, evidence.NotShown},
		{"99", "", true, evidence.NotShown},
		{"70", "", true, evidence.NotShown},
	} {
		out := slab.Hole{Hole: "H9", ReadAt: read, Instrument: c.probe, Discarded: "aggregate"}
		if c.rh != "" {
			out.RH = evidence.Typed(c.rh, evidence.RH)
		}
		good := slab.Hole{Hole: "H1", ReadAt: read, Instrument: "RP1", RH: evidence.Typed("60", evidence.RH)}
		f := slab.Floor{
			RH: evidence.AtMost(slab.DefaultRH()), Holes: []slab.Hole{good, out},
			Acceptance:  evidence.Acceptance{Guarded: c.guarded},
			Instruments: evidence.Instruments{"rp1": {ID: "RP1", Kinds: []string{evidence.Probe}}},
		}
		for _, check := range slab.Checks() {
			if check.ID != "slab-rh" {
				continue
			}
			if got := check.Find(f); got.Outcome != c.want {
				t.Errorf("%+v: slab-rh is %s (%s)", c, got.Outcome, got.Reason)
			}
		}
	}
}
