package plan

import (
	"slices"
	"strings"
	"time"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// heating adds the run of a heated floor.
func (p *planner) heating() {
	if p.Area.RadiantHeat != "yes" || p.Area.HeatOnSince.Shown() {
		return
	}
	run := p.Job.Settings.HeatRun
	fill := p.ofArea("Heat on since")
	toRead := p.readsSlab() || p.dishes.left() || p.readsFlooring() || p.subfloor.left()
	if p.hasHeated() || !toRead {
		p.ask(contractor, []string{"heat-run"}, "write down since when the heating has run at its design setpoint",
			"(Areas, Heat on since), "+run.String()+" or more before the first reading; where it was not on, run it and read again", fill)
		return
	}
	p.add(Act{
		Short: "run the heating at its design setpoint for " + run.String(),
		How:   "before the first reading of slab, subfloor or flooring, and write down since when (Areas, Heat on since)",
		Who:   contractor, Checks: []string{"heat-run"}, Things: 1, Fills: []Fill{fill},
		stage: ofHeat, takes: evidence.Duration(run.Exact()),
	})
}

// hasHeated says whether a reading on record stays for which the heating of the
// floor must have run.
func (p *planner) hasHeated() bool {
	heated := slices.Concat(p.slabThings(), [][]thing{p.subfloor.things}, p.boards())
	return slices.ContainsFunc(slices.Concat(heated...), func(t thing) bool { return !toRead(t) || t.open && t.stays() })
}

// warm is when a heating that is on has run for long enough.
func (p *planner) warm() time.Time {
	on := p.Area.HeatOnSince
	if p.Area.RadiantHeat != "yes" || !on.Shown() {
		return time.Time{}
	}
	return on.Last.Add(evidence.Duration(p.Job.Settings.HeatRun.Exact()))
}

// ofTheAir are the checks that the air log serves.
func ofTheAir() []string {
	return []string{"air-range", "air-held", "air-usual", "surface-dew", "calibration", "reading-age"}
}

// air asks for what rows of the air lack, and adds the log of it: one to be held for readings, the 24 h of
// air-range, or a last reading.
func (p *planner) air() {
	if len(p.Room.Air.Untimed()) > 0 {
		p.ask(installer, ofTheAir(), "write down when the air was read", "(Air, Read at), in each row without a time",
			Fill{"Air", p.Area.ID, "", []string{"Read at"}})
	}
	held := evidence.Duration(p.Job.Settings.HeldConditions.Exact())
	switch {
	case p.readsHeld() && (p.now.IsZero() || p.kept.After(p.now)):
		set := p.Job.Settings
		a := p.airAct("for "+set.HeldConditions.String(), "held "+p.airBand()+" from "+set.HeldConditions.String()+
			" before the first reading of slab or flooring to the last, read at least every "+
			set.LargestAirGap.String()+p.badAir())
		p.broughtIn(&a, "air-held", "air-range")
		a.stage, a.from, a.takes = ofAir, p.kept.Add(-held), held
		if p.now.IsZero() {
			a.from = time.Time{}
		}
		p.add(a)
		p.runOn()
	case p.rangeFails():
		lasts := "for " + evidence.Hours(acclimate.Today).Text() + " h"
		a := p.airAct(lasts, "until it has been "+p.airBand()+" "+lasts+p.badAir())
		p.broughtIn(&a, "air-range")
		a.from, a.takes = p.fresh(), acclimate.Today
		a.stage = ofAir
		p.add(a)
		p.runOn()
	case p.readsHeld():
		p.runOn()
	case p.airIsOld() || p.finding("air-range").Blocks():
		a := p.airAct("", "temperature and humidity, within "+p.Job.Settings.AirReadingLife.String()+" of the day of installing")
		a.from, a.stage = p.youngAir(), latestAir
		p.add(a)
	}
}

// broughtIn puts before the reading of the air what is done about it, where it is
// out of its range.
func (p *planner) broughtIn(a *Act, checks ...string) {
	if slices.ContainsFunc(checks, p.isBroken) {
		a.Short, a.mends = "bring the air to "+strings.TrimPrefix(p.airBand(), "at ")+", then "+a.Short, true
	}
}

func (p *planner) airAct(how, more string) Act {
	return Act{
		Short: strings.TrimSpace("read the air " + how), How: sentence(p.with(anAirMeter()), more),
		Who: installer, Checks: ofTheAir(), Things: 1,
	}
}

// badAir says why the log on record does not do.
func (p *planner) badAir() string {
	if why := p.airDistrusted(); why != "" {
		return ": " + why
	}
	for _, id := range []string{"air-held", "air-range"} {
		if f := p.finding(id); f.Blocks() && p.Room.Latest().Shown() && f.Reason != p.Room.HeldLack &&
			(id == "air-range" || len(p.Room.HeldFor) > 0) {
			return " (" + id + ": " + f.Reason + "; a log that was kept and is not in the record will do)"
		}
	}
	return ""
}

// airBand is the air that is asked for, in words.
func (p *planner) airBand() string {
	bounds := lists.Where([]string{p.Room.Temp.String(), p.Room.RH.String()}, func(b string) bool { return b != "" })
	return lists.If(bounds == nil, "in range", "at "+strings.Join(bounds, " and "))
}

// rangeFails says whether one more reading is not enough for air-range: one of
// the last 24 h is out of range or says nothing.
func (p *planner) rangeFails() bool {
	f := p.finding("air-range")
	if p.airDistrusted() != "" {
		return true
	}
	if !f.Blocks() || !p.Room.Latest().Shown() {
		return false
	}
	r := p.airOnly()
	r.Open.At = evidence.Time{}
	return p.judges(r, "air-range") != evidence.Met
}

// runOn has the log run on to the last reading.
func (p *planner) runOn() {
	life := p.Job.Settings.AirReadingLife.String()
	p.add(Act{
		Short: "keep the air log running", Who: installer, Checks: ofTheAir(), Things: 1, stage: latestAir,
		ongoing: true,
		How: sentence(p.with(anAirMeter()), "read at least every "+p.Job.Settings.LargestAirGap.String()+
			", to the last reading and to within "+life+" of the day of installing"),
		until: p.youngAir(),
	})
}

// airIsOld says whether there is no air reading, or none young enough on the
// day of installing.
func (p *planner) airIsOld() bool {
	last := p.LatestAir()
	return !last.At.Shown() || p.TooOld(last)
}

// rest asks for whatever else stops the area.
func (p *planner) rest() {
	d := report.Decision{Findings: p.found}
	for _, id := range d.Blocking() {
		undated := id == "slab-age" && !p.Area.InstallOn.Shown() // that day is asked for anyway
		served := slices.ContainsFunc(p.acts, func(a Act) bool { return slices.Contains(a.Checks, id) })
		if !undated && !served {
			f := p.finding(id)
			p.unsettled(f.Outcome == evidence.NotMet, installer, []string{id}, "see to "+id+": "+f.Reason, "")
		}
	}
}
