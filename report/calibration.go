package report

import (
	"fmt"

	"firstboard/report/evidence"
)

// instrumentChecks are the checks of what stands behind the readings, in
// report order.
func instrumentChecks() []evidence.Check[Site] {
	return []evidence.Check[Site]{
		{
			ID: "calibration", Deciding: true, Judge: calibration,
			Asks:    "was every instrument behind a judged row calibrated on or before that day, and not past due on it?",
			Default: "365 days where no due day is recorded",
			Cite:    evidence.Cite{Source: "ASTM F2170; the 365 days: common practice, no source", Standing: evidence.Recalled},
		},
		{
			ID: "probe-check", Deciding: true, Judge: probeCheck,
			Advises: func(s Site) bool { return s.Slab.HolesAdvise() },
			Asks:    "was every probe in a hole checked within 30 days before its reading, to 2 % RH, and again right after where it was checked since; was a single-use probe used in one hole only?",
			Default: "720 h and 2 % RH",
			Cite:    evidence.Cite{Source: "ASTM F2170: 30 days (published), 2 % (recalled)", Standing: evidence.Recalled},
		},
		{
			ID: "reading-age", Deciding: true, Judge: readingAge,
			Asks:    "are the readings young enough on the day of installing: slab 30 days (to the day it was covered, where it was), wood 7 days, air and surfaces 48 h before that day begins; and is no slab or wood reading later?",
			Default: "30 days, 7 days, 48 h",
			Cite:    evidence.Cite{Source: "common practice, no source", Standing: evidence.Practice},
		},
	}
}

// calibration weighs the days of calibration left on the day of each reading.
func calibration(s Site) evidence.Finding {
	limit := evidence.AtLeast(evidence.Bound{Number: evidence.Typed("0", evidence.DayUnit)})
	var items []evidence.Item
	seen := map[string]bool{}
	for _, e := range s.rows {
		if e.kind == otherRow && e.instrument == "" {
			continue
		}
		it := s.calibrated(e, limit)
		if key := it.Name + it.Lack + it.Says; !seen[key] {
			seen[key] = true
			items = append(items, it)
		}
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "there is no judged reading")
}

func (s Site) calibrated(e entry, limit evidence.Limit) evidence.Item {
	it := evidence.Item{Name: e.what, Limit: limit, Place: e.place}
	meter, listed := s.Job.Instruments.Find(e.instrument)
	switch {
	case e.began() != "":
		it.Lack = e.began()
	case !listed:
		it.Lack = "no instrument named"
	case !meter.CalibratedOn.Shown():
		it.Name = "instrument " + meter.ID
		it.Lack = "no day of calibration"
	default:
		it.Name = "instrument " + meter.ID
		return daysLeft(it, meter, e)
	}
	return it
}

func daysLeft(it evidence.Item, meter evidence.Instrument, e entry) evidence.Item {
	due, how := dueOn(meter)
	days := int(due - e.at.Day())
	it.Says = fmt.Sprintf("instrument %s was used on %s, %s before %s, %s", meter.ID, e.at.Day(), inDays(days), due, how)
	if days < 0 {
		it.Says = fmt.Sprintf("instrument %s was used on %s, %s past %s, %s", meter.ID, e.at.Day(), inDays(-days), due, how)
	}
	if before := int(e.from.Day() - meter.CalibratedOn.Day); before < 0 {
		days = before
		it.Says = fmt.Sprintf("instrument %s was used on %s and calibrated only on %s", meter.ID, e.from.Day(), meter.CalibratedOn.Day)
	}
	it.Value, it.Written = evidence.Whole(days), fmt.Sprint(days)
	return it
}

// dueOn is the last day that a calibration covers, and what says so.
func dueOn(meter evidence.Instrument) (due evidence.Day, how string) {
	if meter.DueOn.Shown() {
		return meter.DueOn.Day, "its due day"
	}
	return meter.CalibratedOn.Day + 365, "365 days from its calibration"
}

func inDays(n int) string { return evidence.Count(n, "day", "days") }

// readingAge counts ages to the day of installing by calendar date.
func readingAge(s Site) evidence.Finding {
	if !s.Area.InstallOn.Shown() {
		return evidence.Unshown("the day of installing is not recorded: ages cannot be counted")
	}
	var items []evidence.Item
	for _, e := range s.agedRows() {
		it := evidence.Item{Name: e.what, Limit: s.lifeOf(e.kind), Lack: e.lack, Place: e.place}
		if e.lack == "" {
			it = s.aged(it, e)
		}
		items = append(items, it)
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "there is no judged reading")
}

// agedRows are the judged rows, and of the air its latest alone.
func (s Site) agedRows() []entry {
	var all []entry
	for _, e := range s.rows {
		if e.kind != airRow {
			all = append(all, e)
		}
	}
	latest := s.Room.Latest()
	e := entry{kind: airRow, what: "the latest air reading", at: latest}
	if !latest.Shown() {
		e.lack = "there is none"
	}
	for _, a := range s.Room.Air.Untimed() {
		all = append(all, airEntry(a))
	}
	if a := s.Room.Air.Latest(); a != nil {
		e.place = a.Place
	}
	return append(all, e)
}

func (s Site) lifeOf(k kind) evidence.Limit {
	set := s.Job.Settings
	day := func(item string) evidence.Limit {
		none := evidence.Bound{Number: evidence.Typed("0", evidence.DayUnit)}
		return evidence.Limit{Least: none, Most: set.Bound(item)}
	}
	switch k {
	case slabRow, otherRow:
		return day("Slab reading life (days)")
	case woodRow:
		return day("Wood reading life (days)")
	}
	return evidence.AtMost(set.Bound("Air reading life (h)"))
}

// aged is the age of a row: whole days for slab and wood, hours before the
// day of installing begins for air and surfaces.
func (s Site) aged(it evidence.Item, e entry) evidence.Item {
	to, day := "the day of installing", s.Area.InstallOn.Day
	if e.kind == slabRow && s.covered.Shown() {
		to, day = "the day the slab was covered", s.covered.Day
	}
	if e.kind == airRow || e.kind == surfaceRow {
		it.Value = evidence.Hours(day.Begins(s.Job.Zone).Sub(e.at.First))
		it.Written = it.Value.Text(it.Limit.Ends()...)
		it.Says = fmt.Sprintf("%s, %s, is %s h old when the day of installing, %s, begins", e.what, e.at.Written, it.Written, day)
		return it
	}
	age := int(day - e.at.Day())
	it.Value, it.Written = evidence.Whole(age), fmt.Sprint(age)
	it.Says = fmt.Sprintf("%s was read on %s, %s before %s, %s", e.what, e.at.Day(), inDays(age), to, day)
	if age < 0 {
		it.Says = fmt.Sprintf("%s was read on %s, after %s, %s", e.what, e.at.Day(), to, day)
	}
	return it
}
