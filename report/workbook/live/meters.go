package live

import (
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// kind sorts judged rows for the rules of age and calibration.
type kind int

const (
	slabKind kind = iota
	otherKind
	woodKind
	surfaceKind
)

// use is a judged row for the checks that look at all of them.
type use struct {
	kind     kind
	what     string
	row      judged
	fromDay  formula.Expr
	fromTime formula.Expr
}

// use keeps judged rows for the checks of instruments and of age.
func (w *work) use(k kind, what string, t things) {
	for _, j := range t.rows {
		u := use{kind: k, what: what + " " + j.thing, row: j, fromTime: j.read, fromDay: j.day}
		if j.from != "" {
			set := w.figure(j.place, j.from)
			u.fromTime, u.fromDay = w.first(set), known(set.Down(), set)
		}
		w.uses = append(w.uses, u)
	}
}

// fixMeters takes the names and kinds of instruments for granted.
func (w *work) fixMeters() {
	for _, m := range sortedMeters(w.job.Instruments) {
		w.fix(placeOf(m.Place), "Instrument", "Kind")
	}
}

// meterDays lists what the instruments' rows say of their days and uncertainty.
func (w *work) meterDays() {
	var all []place
	for _, m := range sortedMeters(w.job.Instruments) {
		all = append(all, placeOf(m.Place))
	}
	w.list("Instruments", all, "Calibrated on", "Due on", "Uncertainty")
}

// calibrations are the days of calibration left on the day of each judged row.
func (w *work) calibrations() {
	var items []item
	for _, u := range w.uses {
		if u.kind == otherKind && u.row.instrument == "" {
			continue
		}
		left := known(w.daysLeft(u.row.instrument, u.fromDay, u.row.day), u.fromDay, u.row.day)
		items = append(items, item{name: u.what + " by " + u.row.instrument, row: u.row.place.String(), counts: u.row.counts, value: left, least: num(0)})
	}
	for _, a := range w.basis.Used {
		left := blank()
		if a.Lack == "" {
			left = w.daysLeft(a.Instrument, num(float64(a.First)+epoch), num(float64(a.Last)+epoch))
		}
		items = append(items, item{name: "the air by " + a.Instrument, row: "Air", counts: num(1), value: left, least: num(0)})
	}
	w.answers["calibration"] = w.weigh("calibration: days left on the day of each reading, below nought where it was past due or calibrated later", items, nil)
}

// epoch is 1 January 1970 as spreadsheets count days.
const epoch = 25569

func (w *work) daysLeft(instrument string, first, last formula.Expr) formula.Expr {
	meter, listed := w.job.Instruments.Find(instrument)
	if !listed {
		return blank()
	}
	p := placeOf(meter.Place)
	on, due := w.figure(p, "Calibrated on"), w.figure(p, "Due on")
	until := formula.If(due.Shown(), due, on.Plus(num(365)))
	left := formula.If(first.Below(on), first.Minus(on), until.Minus(last))
	return known(left, on)
}

// probes answers whether the probe of every judged hole could be believed.
func (w *work) probes(t things) {
	if !w.needed("probe-check") {
		return
	}
	checks := w.checksOf(t)
	var items []item
	for _, j := range t.rows {
		meter, listed := w.job.Instruments.Find(j.instrument)
		switch {
		case !listed:
			items = append(items, item{name: j.thing, row: j.place.String(), counts: j.counts, value: blank(), most: num(720)})
		case meter.Kind == evidence.Probe:
			items = append(items, w.believed(j, checks[evidence.Key(meter.ID)])...)
		case meter.Kind == evidence.SingleUse:
			w.fixAllHoles()
			items = append(items, item{name: j.thing, row: j.place.String(), counts: j.counts, value: known(num(float64(w.usedIn(meter))), j.read), most: num(1)})
		default: // no probe at all
			items = append(items, item{name: j.thing, row: j.place.String(), counts: j.counts, value: num(1), most: num(0)})
		}
	}
	w.answers["probe-check"] = w.weigh("probe-check: hours since the last check of each probe, and how far its checks were off", items, nil)
}

// probeChecks are the checks of one probe: their times, how far off they were,
// and whether that cannot be told.
type probeChecks struct {
	times, off, bad formula.List
	untimed         bool
}

func (w *work) checksOf(t things) map[string]probeChecks {
	all := map[string]probeChecks{}
	for _, c := range w.job.Checks {
		w.fix(placeOf(c.Place), "Instrument")
	}
	w.fixLength("Instrument checks", "Instrument")
	for _, j := range t.rows {
		key := evidence.Key(j.instrument)
		if _, done := all[key]; !done {
			all[key] = w.checksOfOne(j.instrument)
		}
	}
	return all
}

func (w *work) checksOfOne(instrument string) probeChecks {
	var own []report.InstrumentCheck
	for _, c := range w.job.Checks {
		if evidence.Same(c.Instrument, instrument) {
			own = append(own, c)
		}
	}
	if len(own) == 0 {
		return probeChecks{}
	}
	var at []place
	for _, c := range own {
		at = append(at, placeOf(c.Place))
	}
	w.list("Instrument checks", at, "Checked at", "Expected", "Read")
	w.heading("Checks of " + instrument)
	w.header("Check", "Row of the record", "Checked at", "Off by (% RH)", "Cannot be told")
	from := w.next()
	p := probeChecks{}
	for _, c := range own {
		at := placeOf(c.Place)
		time := w.first(w.figure(at, "Checked at"))
		p.untimed = p.untimed || !c.CheckedAt.Shown()
		expected, read := w.figure(at, "Expected"), w.figure(at, "Read")
		if rh, from := c.Expectation(); from != "" {
			w.fix(at, "Standard", "Expected")
			expected = num(rh.Exact().Float())
		}
		off := known(read.Minus(expected).Abs().Round(9), expected, read)
		w.add(label(c.CheckedAt.Written), label(at.String()), formed(formula.If(missing(time), num(0), time), Minute),
			plain(formula.If(missing(off), num(0), off)), plain(flag(missing(off))))
	}
	to := w.next() - 1
	p.times, p.off, p.bad = w.column(2, from, to), w.column(3, from, to), w.column(4, from, to)
	return p
}

// believed are the age of the last check before a reading and how far that one
// and the first after it were off.
func (w *work) believed(j judged, c probeChecks) []item {
	lack := item{name: j.thing, row: j.place.String(), counts: j.counts, value: blank(), most: num(720)}
	if c.times.Empty() || c.untimed {
		return []item{lack}
	}
	last, first := c.times.LastBefore(j.read), c.times.FirstFrom(j.read)
	before := formula.If(missing(j.read), blank(), formula.If(last.Same(num(0)), blank(), last))
	after := formula.If(missing(j.read), blank(), formula.If(first.Below(num(none)), first, blank()))
	r := w.add(label("Checks around "+j.thing), label(j.place.String()), formed(before, Minute), formed(after, Minute))
	before, after = r[2], r[3]
	off := func(at formula.Expr) formula.Expr {
		told := formula.If(c.bad.HighestWhere(c.times, at).Above(num(0)), blank(), c.off.HighestWhere(c.times, at))
		return formula.If(missing(at), blank(), told)
	}
	was, is := flag(before.Shown()), flag(after.Shown())
	age := known(j.read.Minus(before).Times(num(24)).Round(6), before, j.read)
	both := func(a formula.Expr) formula.Expr { return formula.Of(a, j.counts).Min() }
	return []item{
		{name: j.thing + ": hours since the last check", row: j.place.String(), counts: j.counts, value: age, most: num(720)},
		{name: j.thing + ": the check before", row: j.place.String(), counts: both(was), value: off(before), most: num(2)},
		{name: j.thing + ": the check after", row: j.place.String(), counts: both(is), value: off(after), most: num(2)},
	}
}

// none is above every time a record can hold: there is no check after.
const none = 10000000

// usedIn is how many holes of the record a single-use probe was used in.
func (w *work) usedIn(m evidence.Instrument) int {
	holes := map[string]bool{}
	for _, h := range w.job.Holes {
		if evidence.Same(h.Instrument, m.ID) {
			holes[evidence.Key(h.Area)+"\x00"+evidence.Key(h.Hole)] = true
		}
	}
	return len(holes)
}

func (w *work) fixAllHoles() {
	const what = "Slab RH: which hole each instrument was used in"
	if w.granted(what) {
		return
	}
	var stand []formula.Expr
	for _, h := range w.job.Holes {
		p := placeOf(h.Place)
		stand = append(stand, unchanged(w.rec.cell(p, "Area")), unchanged(w.rec.cell(p, "Hole")), unchanged(w.rec.cell(p, "Instrument")))
		if len(stand) > 200 { // a formula holds no more arguments
			w.fixed = append(w.fixed, fixed{what, formula.All(stand...)})
			stand = nil
		}
	}
	if len(stand) > 0 {
		w.fixed = append(w.fixed, fixed{what, formula.All(stand...)})
	}
}
