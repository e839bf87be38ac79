package plan

import (
	"fmt"
	"time"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
)

func (p *planner) surveySurfaces() {
	r := p.Room
	if r.NoDew != "" && r.NoMax != "" {
		return
	}
	p.surfaces = survey(p.Site, r.JudgedSurfaces(), view[acclimate.Surface]{
		spoil: p.farFromAir, row: report.SurfaceRow,
		read:  func(s acclimate.Surface) bool { return s.Temp.Shown() },
		blank: func(s acclimate.Surface) []string { return blanks(cell{"Instrument", s.Instrument != ""}) },
	})
	if len(p.surfaces) == 0 {
		p.moreSpots = newNames("S", 1, nil)
	}
}

// farFromAir says why a surface has to be read again: no air was read near
// enough in time to tell its dew point.
func (p *planner) farFromAir(s acclimate.Surface) string {
	if p.Room.NoDew != "" || !s.ReadAt.Shown() {
		return ""
	}
	if near, _ := p.Room.AirNear(s); len(near) == 0 {
		return "no air was read within " + hours(acclimate.Nearest) + " of it"
	}
	return ""
}

// surfaceReadings adds the temperatures of surfaces, with the air beside them.
func (p *planner) surfaceReadings() {
	t := task{
		one: "surface spot", many: "surface spots", verb: "read", day: p.days.read, tool: aThermometer(),
		checks: []string{"surface-dew", "surface-max", "calibration", "reading-age"},
		table:  "Surface", column: "Spot", things: p.surfaces, more: p.moreSpots,
	}
	switch {
	case p.Room.NoDew == "" && p.Room.NoMax == "":
		t.until = "at the coldest and the hottest place, the air read within " + hours(acclimate.Nearest)
	case p.Room.NoDew == "":
		t.until = "at the coldest place at least, the air read within " + hours(acclimate.Nearest)
	default:
		t.until = "at the hottest place at least, the heating running"
	}
	p.do(t)
}

// heating adds the run of a heated floor.
func (p *planner) heating() {
	from := p.Area.HeatOnSince
	switch {
	case p.Area.RadiantHeat != "yes":
		return
	case from.Shown():
		p.notBefore(from.Last.Add(evidence.Duration(p.Job.Settings.HeatRun.Exact())), "since the heating began")
		return
	}
	run := p.Job.Settings.HeatRun.String()
	since := "since when the heating has run at its design setpoint (Areas, Heat on since), from whoever runs it: " + run + " or more before the first reading"
	if !p.readsHeld() && !p.left(p.subfloor, p.moreSubfloor) {
		p.ask([]string{"heat-run"}, "write down "+since, since)
		return
	}
	p.add(p.days.heat, []string{"heat-run"},
		"let the heating run at its design setpoint, "+run+" or more before the first reading of slab, subfloor or flooring, and write down since when (Areas, Heat on since)", since)
}

// air adds the log of the air.
func (p *planner) air() {
	r, with := p.Room, p.with(anAirMeter())
	checks := []string{"air-range", "air-held", "air-usual", "surface-dew", "calibration", "reading-age"}
	every := "a reading at least every " + p.Job.Settings.LargestAirGap.String()
	life := p.Job.Settings.AirReadingLife.String()
	end := "to the last reading and to within " + life + " of the day of installing"
	before := p.Job.Settings.HeldConditions.String() + " before the first reading of slab or flooring"
	first, last := r.Earliest(), r.Latest()
	switch held := r.NoHeld == "" && p.readsHeld(); {
	case held && !last.Shown():
		p.add(p.days.log, checks, "start the air log "+with+": "+sentence("temperature and humidity", every, "begun "+before, "and kept running "+end),
			"an air log from "+before+" "+end+", "+every+", "+with)
	case held:
		p.notBefore(first.First.Add(evidence.Duration(p.Job.Settings.HeldConditions.Exact())), "since the air log began")
		p.add(p.runsOn(last), checks, "have the air log run on "+with+", "+every+", "+end+"; it must have begun "+before+", and its last entry is "+last.Written,
			"the air log after "+last.Written+", "+end+", "+every+", "+with)
	case p.airIsOld():
		p.add(p.days.read, checks, "read the air "+with+": temperature and humidity, within "+life+" of the day of installing",
			"a reading of the air within "+life+" of the day of installing, "+with)
	}
	if r.NoHeld == "" && last.Shown() && p.outcome("air-held") == evidence.NotShown && len(r.HeldFor) > 0 {
		p.airBehind()
	}
}

// notBefore says that the day of installing cannot be kept where a reading planned
// for which air and heating must be held would come too early.
func (p *planner) notBefore(earliest time.Time, since string) {
	if p.Area.InstallOn.Shown() && p.readsHeld() && p.dayOf(earliest) > 0 {
		p.late = append(p.late, "no reading of slab or flooring counts before "+clock(earliest)+", long enough "+since)
	}
}

// runsOn is the day from which a log that has begun must go on.
func (p *planner) runsOn(last evidence.Time) int {
	if !p.Area.InstallOn.Shown() {
		return p.days.log
	}
	return min(max(p.days.log, p.dayOf(last.First)), p.days.read)
}

// airBehind asks for the part of the log that lies behind readings made.
func (p *planner) airBehind() {
	for _, f := range p.found {
		if f.ID == "air-held" && f.Reason != p.Room.HeldLack {
			what := "the air log behind the readings made, from whoever kept it; where none was kept, start one and read again after " + p.Job.Settings.HeldConditions.String() + " (" + f.Reason + ")"
			p.ask([]string{"air-held"}, "bring in "+what, what)
		}
	}
}

// airIsOld says whether there is no air reading, or none young enough on the
// day of installing.
func (p *planner) airIsOld() bool {
	last := p.LatestAir()
	return !last.ReadAt().Shown() || p.TooOld(last)
}

func hours(d interface{ Hours() float64 }) string { return fmt.Sprintf("%g h", d.Hours()) }
