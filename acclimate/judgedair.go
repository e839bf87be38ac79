package acclimate

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// meterDay is an instrument, as typed, and a day it was read on.
type meterDay struct {
	instrument string
	day        evidence.Day
}

// JudgedAir are the air rows behind air-range, air-held and surface-dew: those
// in either window, the last at or before its start, those nearest in time to a
// surface where the dew point is asked for, and those without a time. Of each
// instrument and day the first and the last row stand for all: a rule on
// instruments that holds for these holds for the rows between.
func (r Room) JudgedAir() []*Air {
	judged := append(slices.Clone(r.Air.Untimed()), dayEnds(r.judgedStretches()...)...)
	slices.SortStableFunc(judged, inLogOrder)
	return judged
}

// Since are the rows from the last one at or before a time on, of each
// instrument and day the first and the last, which stand for all.
func (r AirRows) Since(t time.Time) []*Air {
	from := t
	if a := r.before(t); a != nil {
		from = a.ReadAt.First
	}
	last := r.Latest()
	if last == nil {
		return nil
	}
	return dayEnds(r.between(from, last.ReadAt.First))
}

// dayEnds are the first and the last row of each instrument and day, in order.
func dayEnds(stretches ...[]*Air) []*Air {
	ends := map[meterDay]*reach{}
	var key meterDay
	var e *reach // of the key: neighboring rows are mostly of one
	for _, rows := range stretches {
		for _, a := range rows {
			if by := (meterDay{a.Instrument, a.ReadAt.Day()}); e == nil || by != key {
				if ends[by] == nil {
					ends[by] = &reach{a, a}
				}
				key, e = by, ends[by]
			}
			if later(a, e.low) {
				e.low = a
			}
			if later(e.high, a) {
				e.high = a
			}
		}
	}
	var judged []*Air
	for _, e := range ends {
		judged = append(judged, e.low)
		if e.high != e.low {
			judged = append(judged, e.high)
		}
	}
	slices.SortFunc(judged, inLogOrder)
	return judged
}

// inLogOrder orders rows by time, and those of one time by their instruments.
func inLogOrder(a, b *Air) int {
	if c := earlier(a, b); c != 0 {
		return c
	}
	return evidence.Order(a.Instrument, b.Instrument)
}

// judgedStretches are the rows behind the checks, some of them more than once.
func (r Room) judgedStretches() [][]*Air {
	var all [][]*Air
	for _, w := range r.windows() {
		all = append(all, r.Air.between(w.from, w.to))
		if a := r.Air.before(w.from); a != nil {
			all = append(all, r.Air.between(a.ReadAt.First, a.ReadAt.First))
		}
	}
	if r.NoDew != "" {
		return all
	}
	for _, spot := range r.JudgedSurfaces() {
		for _, s := range spot.Rows {
			near, _ := r.AirNear(s)
			all = append(all, near)
		}
	}
	return all
}

// windows are those of air-range and air-held, as far as they are known.
func (r Room) windows() []window {
	var all []window
	if w, known := r.latestDay(); known {
		all = append(all, w)
	}
	if r.NoHeld == "" && len(r.HeldFor) > 0 {
		all = append(all, r.heldWindow())
	}
	return all
}

// TooLate is why rows of air and surfaces are not judged that were read when the floor was
// to be down.
const TooLate = "after the day of installing"

// Unused are the rows of air and surfaces that are not judged.
func (r Room) Unused() []evidence.Unused {
	judged := map[*Air]bool{}
	for _, rows := range r.judgedStretches() {
		for _, a := range rows {
			judged[a] = true
		}
	}
	leveled, history := r.unjudgedSurfaces()
	all := []evidence.Unused{
		{Table: "Air", Rows: r.Air.After(), Why: TooLate},
		{
			Table: "Air", Rows: r.Air.Len() - len(r.Air.Untimed()) - len(judged),
			Why: "outside the hours that are judged",
		},
		{Table: "Surface", Rows: r.LaterSurfaces, Why: TooLate},
		{Table: "Surface", Rows: leveled, Why: "before a leveler was placed"},
		{Table: "Surface", Rows: history, Why: "history of a spot"},
	}
	return slices.DeleteFunc(all, func(u evidence.Unused) bool { return u.Rows == 0 })
}

// unjudgedSurfaces counts the rows before the latest leveler and the earlier
// rows of a spot.
func (r Room) unjudgedSurfaces() (leveled, history int) {
	judged := 0
	for _, spot := range r.JudgedSurfaces() {
		judged += len(spot.Rows)
	}
	for _, s := range r.Surfaces {
		if s.ReadAt.Shown() && s.ReadAt.First.Before(r.Leveled) {
			leveled++
		}
	}
	return leveled, len(r.Surfaces) - leveled - judged
}
