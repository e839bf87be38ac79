package plan

import (
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
)

// asker asks for a thing that several readings lack, once.
type asker func(checks []string, do, what string)

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
	p.metersUsed(once)
	p.metersToCome(once)
	p.probesUsed(once)
	p.probesToCome()
}

func (once asker) calibrated(id string) {
	once([]string{"calibration"}, "write down ", "the day of calibration of "+id+" (Instruments), from its certificate")
}

// metersUsed asks for what the instruments behind readings lack.
func (p *planner) metersUsed(once asker) {
	for _, e := range p.byMeter() {
		meter, listed := p.Job.Instruments.Find(e.Instrument())
		switch {
		case !listed && e.OfAir():
			once([]string{"calibration"}, "write down ", "the instrument of the air's readings (Air, Instrument), from whoever kept the log")
		case listed && !meter.CalibratedOn.Shown():
			once.calibrated(meter.ID)
		}
		if listed && p.Job.Guarded && !p.Job.Instruments.U(meter.ID, evidence.None).Known {
			once(uncertain(), "write down ", "the uncertainty of "+meter.ID+" (Instruments), from its certificate: acceptance is guarded")
		}
	}
}

// metersToCome asks for the instruments of the readings to come: one of each
// kind, and none whose calibration will have lapsed.
func (p *planner) metersToCome(once asker) {
	for _, n := range p.needs() {
		meters := p.metersOf(n.tool)
		if len(meters) == 0 {
			once([]string{"calibration", "probe-check"}, "find and list ", n.tool.words+" with its calibration (Instruments)")
		}
		for _, m := range meters {
			if !m.CalibratedOn.Shown() {
				once.calibrated(m.ID)
			} else if due := report.DueOn(m); p.Area.InstallOn.Shown() && due < p.Area.InstallOn.Day+evidence.Day(n.day) {
				once([]string{"calibration"}, "get ", "a new calibration of "+m.ID+": it lapses on "+due.String()+", before the reading")
			}
		}
	}
}

// byMeter are the judged rows in the order of their instruments.
func (p *planner) byMeter() []report.JudgedRow {
	rows := p.JudgedRows()
	slices.SortStableFunc(rows, func(a, b report.JudgedRow) int {
		return evidence.Order(a.Instrument(), b.Instrument())
	})
	return rows
}

// uncertain are the checks that count an uncertainty where acceptance is
// guarded.
func uncertain() []string {
	return []string{
		"slab-rh", "mver-rate", "slab-ph", "slab-cm", "other-tests", "surface-max", "surface-dew",
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
func (p *planner) probesUsed(once asker) {
	var all []string
	for _, hole := range p.Slab.JudgedHoles() {
		if !slices.ContainsFunc(p.holes, func(x thing) bool { return x.name == hole.Name && !x.open }) {
			continue
		}
		for _, h := range hole.Rows {
			all = append(all, p.checksLacking(h)...)
		}
	}
	slices.Sort(all)
	for _, what := range all {
		once([]string{"probe-check"}, "bring in ", what)
	}
}

// checksLacking are the checks of a reading's probe that are not there, or not
// whole, in words.
func (p *planner) checksLacking(h slab.Hole) []string {
	meter, _ := p.Job.Instruments.Find(h.Instrument)
	if !meter.Has(evidence.Probe) {
		return nil
	}
	var all []string
	for _, it := range p.ProbeItems("hole "+h.Hole, h) {
		switch {
		case it.Lack == "":
		case it.Place == h.Place:
			all = append(all, "the check of "+meter.ID+" before its readings (Instrument checks), from whoever keeps it; where none was made, check it and read its holes again")
		default:
			all = append(all, it.Name+" in full (Instrument checks: "+it.Lack+"), from whoever made it")
		}
	}
	return all
}

// probesToCome adds a check of each probe whose last one will be too old when
// the holes are read.
func (p *planner) probesToCome() {
	if !p.left(p.holes, p.moreHoles) {
		return
	}
	life := report.ProbeLife().Most.Number
	for _, m := range p.metersOf(tool{kinds: []string{evidence.Probe}}) {
		last := p.lastCheck(m)
		says := "no check is recorded"
		if last.Shown() {
			until := last.First.Add(evidence.Duration(life.Exact()))
			says = "its last check is good for readings to " + clock(until)
			if !p.Area.InstallOn.Shown() || !until.Before((p.Area.InstallOn.Day + evidence.Day(p.days.slab) + 1).Begins(p.Job.Zone)) {
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
	return slices.ContainsFunc(p.Job.Checks, func(c report.InstrumentCheck) bool {
		return evidence.Same(c.Instrument, m.ID) && !c.CheckedAt.Shown()
	})
}

func (p *planner) lastCheck(m evidence.Instrument) evidence.Time {
	return evidence.Last(p.Job.Checks, func(c report.InstrumentCheck) evidence.Time {
		if !evidence.Same(c.Instrument, m.ID) {
			return evidence.Time{}
		}
		return c.CheckedAt
	})
}
