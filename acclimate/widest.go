package acclimate

import (
	"slices"
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
// begins and ends at air readings, or where the window itself does.
func (r Room) WidestHeld() (from, to time.Time) {
	w := r.heldWindow()
	var earlier, later []time.Time
	for _, a := range r.Air {
		switch at := a.ReadAt; {
		case !at.Shown():
		case at.First.Before(w.from):
			earlier = append(earlier, at.First)
		case at.First.After(w.to):
			later = append(later, at.First)
		}
	}
	slices.SortFunc(earlier, func(a, b time.Time) int { return b.Compare(a) })
	slices.SortFunc(later, time.Time.Compare)
	w.from = widest(w.from, earlier, func(t time.Time) bool {
		x := w
		x.from = t
		return r.judge(x).Outcome == evidence.Met
	})
	w.to = widest(w.to, later, func(t time.Time) bool {
		x := w
		x.to = t
		return r.judge(x).Outcome == evidence.Met
	})
	return w.from, w.to
}

// widest is the last of some times, nearest first, up to which a thing holds.
func widest(start time.Time, times []time.Time, holds func(time.Time) bool) time.Time {
	low, high := 0, len(times) // it holds for the first low of them
	for low < high {
		mid := (low + high + 1) / 2
		if holds(times[mid-1]) {
			low = mid
		} else {
			high = mid - 1
		}
	}
	if low == 0 {
		return start
	}
	return times[low-1]
}
