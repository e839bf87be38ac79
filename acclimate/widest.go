package acclimate

import (
	"time"

	"firstboard/report/evidence"
)

// HeldWindow is the stretch over which the air had to be held: from the wait
// before the first judged row to the last. Known is false where none is asked
// for, or no row has a time.
func (r Room) HeldWindow() (from, to time.Time, known bool) {
	if r.NoHeld != "" || len(r.HeldFor) == 0 {
		return from, to, false
	}
	w := r.heldWindow()
	return w.from, w.to, true
}

// WidestHeld is a window around the one that was asked for in which the air was
// held as well: as long as readings stay within it, air-held stays met. It
// reaches up to three days further on either side: a few tries, for a log may
// hold hundreds of thousands of rows.
func (r Room) WidestHeld() (from, to time.Time) {
	w := r.heldWindow()
	for _, further := range []time.Duration{3 * span, span} {
		x := w
		x.from = w.from.Add(-further)
		if r.judge(x).Outcome == evidence.Met {
			w.from = x.from
			break
		}
	}
	for _, further := range []time.Duration{3 * span, span} {
		x := w
		x.to = w.to.Add(further)
		if r.judge(x).Outcome == evidence.Met {
			w.to = x.to
			break
		}
	}
	return w.from, w.to
}
