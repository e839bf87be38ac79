package plan

import (
	"cmp"
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
)

// days are the days of the work, counted back from the day of installing.
type days struct {
	read int // wood, surfaces and the last of the air
	slab int // the tests of the slab
	seal int
	set  int // the dishes
	log  int // the air log
	heat int
}

// spare is how many days before installing the last readings are planned for,
// and one more: what fails on its day can be done again on the next.
const spare = 2

// daysBack counts back from the day of installing, and for the slab from the
// day it is covered, with a day to fail before either.
func (p *planner) daysBack() days {
	set := p.Job.Settings
	d := days{read: -spare, slab: -spare}
	if on := p.Area.InstallOn; on.Shown() && p.Slab.Covered.Shown() {
		d.slab = min(d.slab, int(p.Slab.Covered.Day-on.Day)-1)
	}
	d.seal = d.slab - wholeDays(set.ProbeWait.Exact())
	d.set = d.slab - wholeDays(slab.Exposure().Most.Number.Exact())
	held := p.firstHeld(d)
	d.log = held - wholeDays(set.HeldConditions.Exact())
	if p.subfloor.left() {
		held = min(held, d.read)
	}
	d.heat = held - wholeDays(set.HeatRun.Exact())
	return d
}

// firstHeld is the day of the first planned reading for which the air must be
// held: of the slab, from the day a dish is set, and of the flooring.
func (p *planner) firstHeld(d days) int {
	first := d.read
	if p.readsSlab() {
		first = min(first, d.slab)
	}
	if p.dishes.left() {
		first = min(first, d.set)
	}
	return first
}

// forStage is the day of a stage.
func (d days) forStage(s stage) int {
	switch s {
	case ofHeat:
		return d.heat
	case ofAir:
		return d.log
	case sealing, probing:
		return d.seal
	case setting:
		return d.set
	case lifting, ofSlab:
		return d.slab
	}
	return d.read
}

// wholeDays is a number of hours in days, rounded up,
// and at most a hundred years, longer than any record.
func wholeDays(hours evidence.Exact) int {
	const century = 36600
	return min(hours.Over(evidence.Whole(24)).Ceil(), century)
}

func clock(t time.Time) string { return t.Format("2006-01-02 15:04") }

// scheduled gives each act its earliest times, counted on from today with waits
// side by side, and its day: the one that the day of installing asks for, or
// the first one that it can be done on.
func (p *planner) scheduled() {
	p.forward()
	first := 0
	for i := range p.acts {
		a := &p.acts[i]
		if a.stage == onPaper || a.stage == ofMeters {
			continue
		}
		a.Day = p.days.forStage(a.stage)
		if p.Area.InstallOn.Shown() && !a.Begins.IsZero() {
			a.Day = min(max(a.Day, int(evidence.DayOf(a.Begins)-p.Area.InstallOn.Day)), 0)
		}
		first = min(first, a.Day)
	}
	for i, a := range p.acts {
		if a.stage == onPaper || a.stage == ofMeters {
			p.acts[i].Day = cmp.Or(first, p.days.read)
		}
	}
	slices.SortStableFunc(p.acts, func(a, b Act) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), a.Begins.Compare(b.Begins), cmp.Compare(a.stage, b.stage))
	})
}

// forward gives each act the earliest times at which it can begin and end.
func (p *planner) forward() {
	if p.now.IsZero() {
		return
	}
	var ends [lastStage]time.Time
	var open [lastStage]bool
	var last time.Time
	endless := false
	for s := onPaper; s < lastStage; s++ {
		ready, never := p.now, false
		for _, before := range s.after() {
			ready, never = latest(ready, ends[before]), never || open[before]
		}
		for i := range p.acts {
			a := &p.acts[i]
			if a.stage != s {
				continue
			}
			a.open = a.open || never
			a.Begins = latest(ready, a.from)
			a.Ends = a.Begins.Add(a.takes)
			ends[s], open[s] = latest(ends[s], a.Ends), open[s] || a.open
			last, endless = latest(last, a.Ends), endless || a.open
		}
	}
	for i := range p.acts {
		a := &p.acts[i]
		if a.ongoing {
			a.Ends, a.open = latest(latest(last, a.Begins), a.until), endless
		}
		if a.open {
			a.Ends = time.Time{}
		}
	}
}

// earliest is the first day on which the area could be GO: the day on which the
// last act ends, and, for a slab that is too young, the day it is old enough.
func (p *planner) earliest() evidence.Date {
	if p.now.IsZero() {
		return evidence.Date{}
	}
	day := evidence.DayOf(p.now)
	for _, a := range p.acts {
		if a.Ends.IsZero() {
			return evidence.Date{}
		}
		day = max(day, evidence.DayOf(a.Ends))
	}
	if p.isBroken("slab-age") {
		day = max(day, p.Area.PlacedOn.Day+evidence.Day(slab.LeastAge().Exact().Ceil()))
	}
	return evidence.Date{Written: day.String(), Day: day}
}

// shut says whether a reading of the slab is asked for after the day on which
// the slab was covered.
func (p *planner) shut() bool {
	covered := p.Slab.Covered
	return covered.Shown() && slices.ContainsFunc(p.acts, func(a Act) bool {
		slabs := a.stage == setting || a.stage == lifting || a.stage == ofSlab &&
			!slices.Contains(a.Checks, "other-tests")
		return slabs && (a.open || !a.Ends.IsZero() && evidence.DayOf(a.Ends) > covered.Day)
	})
}

func (p *planner) readsSlab() bool { return p.holes.left() || p.pH.left() || p.cm.left() }

func (p *planner) readsFlooring() bool {
	return slices.ContainsFunc(p.lots, func(lot lotWork) bool { return lot.isAnew() || lot.left() })
}

// readsHeld says whether a reading is planned for which the air must be held.
func (p *planner) readsHeld() bool {
	return p.Room.NoHeld == "" &&
		(p.heldOnSlab() && (p.readsSlab() || p.dishes.left()) || p.readsFlooring())
}

// young is the first time at which a reading of so many days' life is not too
// old on the day that it is counted to; zero where that day is not known.
func (p *planner) young(life evidence.Reading, to evidence.Date) time.Time {
	if !to.Shown() {
		return time.Time{}
	}
	return (to.Day - evidence.Day(min(life.Exact().Float(), 36600))).Begins(p.Job.Zone)
}

func (p *planner) youngSlab() time.Time {
	return p.young(p.Job.Settings.SlabReadingLife, lists.If(p.Slab.Covered.Shown(), p.Slab.Covered, p.Area.InstallOn))
}

func (p *planner) youngWood() time.Time {
	return p.young(p.Job.Settings.WoodReadingLife, p.Area.InstallOn)
}

// youngAir is the first time at which a reading of air or surfaces is not too
// old when the day of installing begins.
func (p *planner) youngAir() time.Time {
	if !p.Area.InstallOn.Shown() {
		return time.Time{}
	}
	return p.Area.InstallOn.Day.Begins(p.Job.Zone).Add(-evidence.Duration(p.Job.Settings.AirReadingLife.Exact()))
}
