package plan

import (
	"slices"
	"sort"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
)

// heldOnSlab says whether the air must be held for the readings of the slab.
func (p *planner) heldOnSlab() bool { return p.Room.NoHeld == "" && !p.Slab.Loose }

// heldThings are the things for whose readings the air must be held.
func (p *planner) heldThings() [][]thing {
	switch {
	case p.Room.NoHeld != "":
		return nil
	case p.heldOnSlab():
		return append(p.slabThings(), p.boards()...)
	}
	return p.boards()
}

// slabThings are the things of the tests of the slab, boards those of the lots.
func (p *planner) slabThings() [][]thing {
	return [][]thing{p.holes.things, p.dishes.things, p.pH.things, p.cm.things}
}

func (p *planner) boards() [][]thing {
	return lists.Each(p.lots, func(lot lotWork) []thing { return lot.things })
}

// holdAir asks whether the readings on record and those to come lie in one
// stretch of air that is logged and in range. Where they do not, all of them
// are made anew, 48 h into a stretch that is.
func (p *planner) holdAir() {
	var kept []evidence.Time
	for _, t := range slices.Concat(p.heldThings()...) {
		if t.stays() && !t.from.IsZero() {
			kept = append(kept, moment(t.from), moment(t.to))
		}
	}
	toCome, times := p.readsHeld(), slices.Clone(kept)
	if toCome && !p.now.IsZero() {
		times = append(times, moment(p.now))
	}
	switch {
	case len(kept) == 0 && !toCome, len(kept) > 0 && p.held(p.airOnly(), times...):
		p.kept = p.now
		return
	case len(kept) > 0:
		anew := "the air was not shown in range for " + p.Job.Settings.HeldConditions.String() + " before it"
		for _, things := range p.heldThings() {
			for i, t := range things {
				if t.stays() {
					things[i].open, things[i].again = false, anew
				}
			}
		}
	}
	p.kept = p.countsFrom()
}

func moment(t time.Time) evidence.Time {
	return evidence.Time{Written: clock(t), First: t, Last: t}
}

// airOnly is the room with its air held against what is known: a bound that
// nobody knows, and the time of a row, are asked for elsewhere.
func (p *planner) airOnly() acclimate.Room {
	r := p.Room
	r.Temp.Lack, r.RH.Lack, r.HeldLack = "", "", ""
	if len(r.Air.Untimed()) > 0 {
		timed := lists.Each(r.Air.Timed(), func(a *acclimate.Air) acclimate.Air {
			sited := *a
			sited.Area = ""
			return sited
		})
		r.Air = acclimate.NewLog(timed).Of("", evidence.Date{})
	}
	return r
}

// held says whether the air of a room was logged and in range for some times.
func (p *planner) held(r acclimate.Room, times ...evidence.Time) bool {
	r.HeldFor = times
	return p.airDistrusted() == "" && p.judges(r, "air-held") == evidence.Met
}

func (p *planner) judges(r acclimate.Room, id string) evidence.Outcome {
	for _, c := range acclimate.Checks() {
		if c.ID == id {
			return c.Judge(r).Outcome
		}
	}
	return evidence.NotShown
}

// countsFrom is the first time at which a reading would have its stretch of air
// behind it: so long after the beginning of the last stretch on record, or,
// where none reaches until today, after the beginning of one that starts now.
func (p *planner) countsFrom() time.Time {
	if p.now.IsZero() {
		return p.now
	}
	wait := evidence.Duration(p.Job.Settings.HeldConditions.Exact())
	if p.stretch(p.now.Add(-wait)) {
		return p.now
	}
	rows := p.Room.Air.Timed()
	first := sort.Search(len(rows), func(i int) bool { return rows[i].ReadAt.First.After(p.now.Add(-wait)) })
	rows = rows[first:]
	began := sort.Search(len(rows), func(i int) bool { return p.stretch(rows[i].ReadAt.First) })
	if began < len(rows) {
		return rows[began].ReadAt.First.Add(wait)
	}
	return p.fresh().Add(wait)
}

// stretch says whether the air is logged and in range from a time until today.
func (p *planner) stretch(from time.Time) bool {
	r := p.airOnly()
	r.Held = evidence.Typed("0", evidence.Hour)
	return p.held(r, moment(from), moment(p.now))
}

// fresh is when a new stretch can begin: now, or the next full hour where the
// air was read this very minute and does not count.
func (p *planner) fresh() time.Time {
	last := p.Room.Latest()
	if !last.Shown() || last.First.Before(p.now) {
		return p.now
	}
	return last.First.Truncate(time.Hour).Add(time.Hour)
}

// airDistrusted says why the instruments of the air log cannot be believed,
// empty where they can.
func (p *planner) airDistrusted() string {
	why := ""
	for _, r := range p.airCounted() {
		why = firstOf(why, p.disbelievedAny(r, anAirMeter()))
	}
	return why
}

// airCounted are the rows of the air behind the findings, and those behind
// today that the air of readings to come rests on.
func (p *planner) airCounted() []instruments.Row {
	all := lists.Where(p.Rows, func(r instruments.Row) bool { return r.Kind == instruments.OfAir && !r.Untimed() })
	if !p.readsHeld() {
		return all
	}
	back := p.now.Add(-evidence.Duration(p.Job.Settings.HeldConditions.Exact()))
	for _, a := range slices.Backward(p.Room.Air.Since(back)) {
		all = append(all, instruments.AirRow(a))
	}
	return all
}
