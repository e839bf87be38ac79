package plan

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/slab"
)

// asker asks for a thing that several readings lack, once.
type asker func(who string, checks []string, short, how string, fills ...Fill)

// meters asks for what the instruments lack: those behind the readings made,
// and those for the readings to come.
func (p *planner) meters() {
	asked := map[string]bool{}
	once := func(who string, checks []string, short, how string, fills ...Fill) {
		if !asked[short] {
			asked[short] = true
			p.ask(who, checks, short, how, fills...)
		}
	}
	p.metersUsed(once)
	p.metersToCome(once)
	p.checksInFull(once)
	p.probesToCome()
}

// whose is who answers for an instrument.
func whose(m evidence.Instrument) string {
	kinds := []string{evidence.Probe, evidence.SingleUse, evidence.Balance, evidence.PHMeter, evidence.CMMeter}
	return lists.If(slices.ContainsFunc(kinds, m.Has), tester, installer)
}

func (once asker) calibrated(m evidence.Instrument) {
	once(whose(m), []string{"calibration"}, "get the day of calibration of "+m.ID+" from its certificate",
		"(Instruments, Calibrated on)",
		Fill{"Instruments", "", m.ID, []string{"Calibrated on"}})
}

// metersUsed asks for what the instruments behind readings lack.
func (p *planner) metersUsed(once asker) {
	as := map[string]bool{"": true} // any instrument may have taken such a row
	byMeter := slices.SortedStableFunc(slices.Values(p.Rows), func(a, b instruments.Row) int {
		return evidence.Order(a.Instrument, b.Instrument)
	})
	for _, r := range append(byMeter, p.airCounted()...) {
		meter, listed := p.Job.Instruments.Find(r.Instrument)
		if !listed && !as[r.As] {
			as[r.As] = true // an instrument of the kind may have taken the row, which does not say which did
			for _, m := range p.metersOf(tool{kinds: []string{r.As}}) {
				if !m.CalibratedOn.Shown() {
					once.calibrated(m)
				}
			}
		}
		switch {
		case !listed && r.Kind == instruments.OfAir:
			once(installer, []string{"calibration"}, "write down the instrument of the air's readings",
				"(Air, Instrument), from whoever kept the log",
				Fill{"Air", p.Area.ID, "", []string{"Instrument"}})
		case listed && !meter.CalibratedOn.Shown() && p.stops("calibration"):
			once.calibrated(meter)
		}
		if listed && p.Job.Guarded && !p.Job.Instruments.U(meter.ID, evidence.None).Known {
			once(whose(meter), uncertain(), "get the uncertainty of "+meter.ID+" from its certificate",
				"(Instruments, Uncertainty): acceptance is guarded",
				Fill{"Instruments", "", meter.ID, []string{"Uncertainty"}})
		}
	}
}

// metersToCome asks for the instruments of the readings to come: one of each
// kind, and none whose calibration will have lapsed.
func (p *planner) metersToCome(once asker) {
	for _, n := range p.needs() {
		meters := p.metersOf(n.tool)
		if len(meters) == 0 && n.tool.words != aFurtherTest().words {
			once(n.who, []string{"calibration", "probe-check"}, "find and list "+n.tool.words+" with its calibration",
				"(Instruments)",
				Fill{"Instruments", "", n.tool.kinds[0], []string{"Kind", "Calibrated on"}})
		}
		for _, m := range meters {
			renewed := p.isRenewed(m, n.day)
			switch {
			case !m.CalibratedOn.Shown() && !renewed:
				once.calibrated(m)
			case p.distrusted[evidence.Key(m.ID)]:
				once(whose(m), []string{"calibration"}, "have "+m.ID+" adjusted and checked against a standard again",
					"(Instrument checks): it does not agree", Fill{"Instrument checks", "", m.ID, nil})
			case renewed:
				once(whose(m), []string{"calibration"}, "get a new calibration of "+m.ID,
					"it lapses on "+instruments.DueOn(m).String()+
						", before the reading; list it under a new name with it (Instruments), so that what it read before keeps the old one",
					Fill{"Instruments", "", m.ID, []string{"Calibrated on", "Due on"}})
			}
		}
	}
}

// isRenewed says whether an instrument has to be calibrated anew for a day of the
// plan.
func (p *planner) isRenewed(m evidence.Instrument, day int) bool {
	return (m.CalibratedOn.Shown() || m.DueOn.Shown()) && p.lapses(instruments.DueOn(m), day)
}

// lapses says whether a calibration ends before a day of the plan.
func (p *planner) lapses(due evidence.Day, day int) bool {
	if !p.Area.InstallOn.Shown() {
		return !p.now.IsZero() && due < evidence.DayOf(p.now)
	}
	on := p.Area.InstallOn.Day + evidence.Day(day)
	if !p.now.IsZero() {
		on = max(on, evidence.DayOf(p.now))
	}
	return due < on
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
	who  string
	day  int
}

func (p *planner) needs() []need {
	var all []need
	add := func(needed bool, t tool, who string, day int) {
		if needed {
			all = append(all, need{t, who, day})
		}
	}
	for _, t := range []task{p.holes, p.dishes, p.pH, p.others, p.cm} {
		add(t.left(), t.tool, tester, p.days.slab)
	}
	add(p.subfloor.left() || p.joists.left() || p.readsFlooring(), aWoodMeter(), installer, p.days.read)
	add(p.readsHeld() || p.airIsOld() || p.rangeFails(), anAirMeter(), installer, p.days.read)
	add(p.surfaces.left(), aThermometer(), installer, p.days.read)
	return all
}

// checksInFull asks for what checks of instruments lack.
func (p *planner) checksInFull(once asker) {
	speaks := map[string]bool{}
	for _, id := range []string{"calibration", "probe-check"} {
		for _, place := range p.finding(id).Evidence {
			speaks[evidence.RowKey(place)] = p.stops(id)
		}
	}
	probes, told := p.metersOf(tool{kinds: []string{evidence.Probe}}), instruments.Told{}
	for _, h := range p.readings() {
		for _, m := range probes {
			for _, it := range p.ProbeChecks(slab.Hole{Instrument: m.ID, ReadAt: h}, told) {
				speaks[evidence.RowKey(it.Place)] = speaks[evidence.RowKey(it.Place)] || it.Lack != ""
			}
		}
	}
	for _, c := range p.Job.Checks {
		lacks := blanks(cell{"Checked at", c.CheckedAt.Shown()}, cell{"Expected", c.Expected.Shown()},
			cell{"Read", c.Read.Shown()})
		if len(lacks) == 0 || !speaks[evidence.RowKey(c.Place)] {
			continue
		}
		meter, _ := p.Job.Instruments.Find(c.Instrument)
		once(whose(meter), []string{"calibration", "probe-check"},
			"get the check of "+meter.ID+" in full from whoever made it",
			"(Instrument checks): "+evidence.List(lacks),
			Fill{"Instrument checks", evidence.RowKey(c.Place), meter.ID, lacks})
	}
}

// readings are the times at which any of the probes may be read: those of holes
// that do not say with which, and today where holes are still to be read.
func (p *planner) readings() []evidence.Time {
	var all []evidence.Time
	for _, hole := range p.Slab.JudgedHoles() {
		for _, h := range hole.Rows {
			if h.Instrument == "" && h.ReadAt.Shown() {
				all = append(all, h.ReadAt)
			}
		}
	}
	if p.holes.left() && !p.now.IsZero() {
		all = append(all, moment(p.now.Add(time.Minute)))
	}
	slices.SortFunc(all, func(a, b evidence.Time) int { return a.First.Compare(b.First) })
	return slices.CompactFunc(all, func(a, b evidence.Time) bool { return a.First.Equal(b.First) })
}

// probesToCome adds a check of each probe that would not be believed on the day
// the holes are read.
func (p *planner) probesToCome() {
	if !p.holes.left() {
		return
	}
	for _, m := range p.metersOf(tool{kinds: []string{evidence.Probe}}) {
		why, from := p.doubted(m)
		if why == "" {
			continue
		}
		a := Act{
			Short: "check probe " + m.ID + " against a salt",
			How: "or another standard (Instrument checks), at most " + instruments.ProbeLife().Most.Number.String() +
				" before the holes are read: " + why,
			Who: tester, Checks: []string{"probe-check"}, Things: 1, stage: probing,
			from: latest(from, latest(latest(p.youngSlab(), p.warm()), p.kept).Add(-evidence.Again)),
		}
		if p.Compared[evidence.Key(m.ID)].Begun() {
			a.Fills = []Fill{{"Instrument checks", "", m.ID, []string{"Checked at", "Expected", "Read"}}}
		} else {
			a.Rows = []PlannedRow{{"Instrument checks", map[string]string{"Instrument": m.ID}}}
		}
		p.add(a)
	}
}

// doubted says why a probe would not be believed in a hole on the day the holes
// are read, empty where it would, and when it can be checked anew.
func (p *planner) doubted(m evidence.Instrument) (why string, from time.Time) {
	last := p.Compared[evidence.Key(m.ID)].Last()
	if p.isRenewed(m, p.days.slab) {
		return "newly calibrated, it has none", from
	}
	if !last.Shown() {
		return "no check is recorded", from
	}
	reading := p.now
	if on := p.Area.InstallOn; on.Shown() {
		reading = latest(reading, (on.Day + evidence.Day(p.days.slab) + 1).Begins(p.Job.Zone))
	}
	if reading.IsZero() {
		return "", from
	}
	hole := slab.Hole{Instrument: m.ID, ReadAt: moment(reading.Add(time.Minute))}
	for _, it := range append(p.ProbeItems("a hole", hole), p.ProbeChecks(hole, instruments.Told{})...) {
		switch {
		case it.Breaks(evidence.Acceptance{}) && it.Place != nil:
			why, from = it.Says, last.Last.Add(evidence.Again+time.Minute)
		case it.Breaks(evidence.Acceptance{}), it.Lack != "" && it.Place == nil:
			until := last.First.Add(evidence.Duration(instruments.ProbeLife().Most.Number.Exact()))
			why = "its last check is good for readings to " + clock(until)
		}
	}
	return why, from
}
