package cell

import "time"

// Clocks keeps the stretch of time in which the clocks of a zone were last
// found not to change.
type Clocks struct {
	from, to time.Time // on the clock
	ahead    time.Duration
}

// near is how far from a change of the clocks a time may come twice or never.
const near = 26 * time.Hour

// Instants are the first and the last time a clock showed that time; it never
// did where clocks went forward over it.
func (k *Clocks) Instants(clock time.Time, zone *time.Location) (first, last time.Time, ok bool) {
	if zone == time.UTC {
		return clock, clock, true
	}
	if !clock.Before(k.from) && clock.Before(k.to) {
		at := clock.Add(-k.ahead).In(zone)
		return at, at, true
	}
	y, m, n := clock.Date()
	guess := time.Date(y, m, n, clock.Hour(), clock.Minute(), clock.Second(), 0, zone)
	k.around(guess)
	for _, at := range neighbors(guess) {
		_, offset := at.Zone()
		t := clock.Add(-time.Duration(offset) * time.Second).In(zone)
		if _, o := t.Zone(); o != offset {
			continue
		}
		if !ok || t.Before(first) {
			first = t
		}
		if !ok || t.After(last) {
			last = t
		}
		ok = true
	}
	return first, last, ok
}

// around keeps the stretch without a change of the clocks that a time lies in.
func (k *Clocks) around(t time.Time) {
	start, end := t.ZoneBounds()
	if start.IsZero() || end.IsZero() {
		return
	}
	_, offset := t.Zone()
	k.ahead = time.Duration(offset) * time.Second
	k.from, k.to = start.Add(near+k.ahead).UTC(), end.Add(k.ahead-near).UTC()
}

// neighbors are a time and, where clocks change near it, times of before and
// after the change.
func neighbors(t time.Time) []time.Time {
	all := []time.Time{t}
	start, end := t.ZoneBounds()
	if !start.IsZero() && t.Sub(start) < near {
		all = append(all, start.Add(-time.Second))
	}
	if !end.IsZero() && end.Sub(t) < near {
		all = append(all, end)
	}
	return all
}
