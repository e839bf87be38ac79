package report

import (
	"slices"

	"firstboard/report/evidence"
)

// meters asks for what the instruments lack: those behind the readings made,
// and those for the readings to come.
func (p *planner) meters() {
	asked := map[string]bool{}
	once := func(checks []string, do, what string) {
		if !asked[what] {
			asked[what] = true
			p.ask(checks, do+what, what)
		}
	}
	calibrated := func(id string) {
		once([]string{"calibration"}, "write down ", "the day of calibration of "+id+" (Instruments), from its certificate")
	}
	for _, e := range p.rows {
		meter, listed := p.Job.Instruments.Find(e.instrument)
		switch {
		case !listed && e.kind == airRow:
			once([]string{"calibration"}, "write down ", "the instrument of the air's readings (Air, Instrument), from whoever kept the log")
		case listed && !meter.CalibratedOn.Shown():
			calibrated(meter.ID)
		}
		if listed && p.Job.Guarded && !p.Job.Instruments.U(meter.ID, evidence.None).Known {
			once(uncertain(), "write down ", "the uncertainty of "+meter.ID+" (Instruments), from its certificate: acceptance is guarded")
		}
	}
	for _, n := range p.needs() {
		meters := p.metersOf(n.tool)
		if len(meters) == 0 {
			once([]string{"calibration", "probe-check"}, "find and list ", n.tool.words+" with its calibration (Instruments)")
		}
		for _, m := range meters {
			if !m.CalibratedOn.Shown() {
				calibrated(m.ID)
			} else if due, _ := dueOn(m); p.Area.LayOn.Shown() && due < p.Area.LayOn.Day+evidence.Day(n.day) {
				once([]string{"calibration"}, "", "a new calibration of "+m.ID+": it lapses on "+due.String()+", before the reading")
			}
		}
	}
	p.probesUsed(once)
	p.probesToCome()
}

func uncertain() []string {
	return []string{
		"slab-rh", "emission-rate", "slab-ph", "slab-cm", "other-tests", "heated-surface", "surface-dew",
		"subfloor-mc", "flooring-mc", "air-range", "air-held",
	}
}

// need is an instrument that a planned reading needs, and the last day of it.
type need struct {
	tool tool
	day  int
}

func (p *planner) needs() []need {
	var all []need
	add := func(needed bool, t tool, day int) {
		if needed {
			all = append(all, need{t, day})
		}
	}
	add(p.left(p.holes, p.moreHoles), anRHProbe(), p.days.slab)
	add(p.left(p.dishes, p.moreDishes), aBalance(), p.days.slab)
	add(p.left(p.pH, p.morePH), aPHMeter(), p.days.slab)
	add(p.left(p.cm, p.moreCM), aCarbideKit(), p.days.slab)
	reads := p.left(p.subfloor, p.moreSubfloor) || p.left(p.joists, p.moreJoists) || p.readsFlooring()
	add(reads, aWoodMeter(), p.days.read)
	add(p.readsHeld() || p.airIsOld(), anAirMeter(), p.days.read)
	add(p.left(p.surfaces, p.moreSpots), aThermometer(), p.days.read)
	return all
}

// probesUsed asks for the checks that probes lack behind readings made.
func (p *planner) probesUsed(once func(checks []string, do, what string)) {
	for _, hole := range p.Slab.JudgedHoles() {
		if p.Slab.NoHoles != "" || !slices.ContainsFunc(p.holes, func(x thing) bool { return x.name == hole.Name && !x.open }) {
			continue
		}
		for _, h := range hole.Rows {
			for _, it := range p.probeItems(h) {
				what := "the check of " + h.Instrument + " before its readings (Instrument checks), from whoever keeps it; where none was made, check it and read its holes again"
				if it.Place != h.Place {
					what = it.Name + " in full (Instrument checks: " + it.Lack + "), from whoever made it"
				}
				if it.Lack != "" {
					once([]string{"probe-check"}, "bring in ", what)
				}
			}
		}
	}
}

// probesToCome adds a check of each probe whose last one will be too old when
// the holes are read.
func (p *planner) probesToCome() {
	if !p.left(p.holes, p.moreHoles) {
		return
	}
	life := probeLife().Most.Number
	for _, m := range p.metersOf(tool{kinds: []string{evidence.Probe}}) {
		last := p.lastCheck(m)
		says := "no check is recorded"
		if last.Shown() {
			until := last.First.Add(evidence.Duration(life.Exact()))
			says = "its last check is good for readings to " + clock(until)
			if !p.Area.LayOn.Shown() || !until.Before((p.Area.LayOn.Day + evidence.Day(p.days.slab) + 1).Begins(p.Job.Zone)) {
				continue
			}
		}
		what := "a check of probe " + m.ID + " against a standard (Instrument checks), at most " + life.String() + " before the holes are read: " + says
		var rows []PlannedRow
		if !p.checkBegun(m) {
			rows = []PlannedRow{{"Instrument checks", map[string]string{"Instrument": m.ID}}}
		}
		p.add(p.days.seal, []string{"probe-check"}, "make "+what, what, rows...)
	}
}

// checkBegun says whether a check of an instrument is on record without a time.
func (p *planner) checkBegun(m evidence.Instrument) bool {
	return slices.ContainsFunc(p.Job.Checks, func(c InstrumentCheck) bool {
		return evidence.Same(c.Instrument, m.ID) && !c.CheckedAt.Shown()
	})
}

func (p *planner) lastCheck(m evidence.Instrument) evidence.Time {
	return evidence.Last(p.Job.Checks, func(c InstrumentCheck) evidence.Time {
		if !evidence.Same(c.Instrument, m.ID) {
			return evidence.Time{}
		}
		return c.CheckedAt
	})
}
