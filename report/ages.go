package report

import (
	"fmt"

	"firstboard/report/evidence"
)

// readingAge counts ages to the day of installing by calendar date.
func readingAge(s Site) evidence.Finding {
	if !s.Area.InstallOn.Shown() {
		return evidence.Unshown("the day of installing is not recorded (Areas, Install on): ages cannot be counted")
	}
	rows := s.agedRows()
	items := make([]evidence.Item, 0, len(rows))
	lives := map[rowKind]evidence.Limit{}
	for _, e := range rows {
		life, known := lives[e.kind]
		if !known {
			life = s.lifeOf(e.kind)
			lives[e.kind] = life
		}
		it := evidence.Item{Name: e.what, Limit: life, Lack: e.lack, Place: e.place}
		if e.lack == "" {
			it = s.aged(it, e)
		}
		items = append(items, it)
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "there is no judged reading")
}

// agedRows are the judged rows, and of the air its latest alone.
func (s Site) agedRows() []entry {
	all := make([]entry, 0, len(s.rows)+1)
	for _, e := range s.rows {
		if e.kind != airRow {
			all = append(all, e)
		}
	}
	latest := s.Room.Latest()
	e := entry{kind: airRow, what: "the latest air reading", at: latest, place: latest.Place}
	if !latest.Shown() {
		e.lack = "there is none"
	}
	for _, a := range s.Room.Air.Untimed() {
		all = append(all, airEntry(a))
	}
	return append(all, e)
}

// lifeOf is how old a reading of a kind may be: whole days of slab and wood,
// none of them later than the day it counts to, and hours of air and surfaces.
func (s Site) lifeOf(k rowKind) evidence.Limit {
	set := s.Job.Settings
	days := func(item string) evidence.Limit {
		return evidence.Limit{Least: noDaysLess().Least, Most: set.Bound(item)}
	}
	switch k {
	case slabRow, otherRow:
		return days("Slab reading life (days)")
	case woodRow:
		return days("Wood reading life (days)")
	}
	return evidence.AtMost(set.Bound("Air reading life (h)"))
}

// aged is the age of a row: days of the calendar for slab and wood, hours
// before the day of installing begins for air and surfaces.
func (s Site) aged(it evidence.Item, e entry) evidence.Item {
	to, day := "the day of installing", s.Area.InstallOn
	if e.kind == airRow || e.kind == surfaceRow {
		it = it.By(evidence.HoursBefore(e.at, day, s.Job.Zone))
		it.Says = fmt.Sprintf("%s, %s h old (read at %s) when %s, %s, begins", e.what, it.Figure(), e.at.Written, to,
			day.Day)
		return it
	}
	if e.kind == slabRow && s.covered.Shown() {
		to, day = "the day the slab was covered", s.covered
	}
	it = it.By(evidence.DaysBetween(evidence.Moment("read", e.at), evidence.OnDay(to, day)))
	it.Says = fmt.Sprintf("%s, read on %s, %s before %s, %s", e.what, e.at.Day(), inDays(it.Value), to, day.Day)
	if it.Value.Sign() < 0 {
		it.Says = fmt.Sprintf("%s, read on %s, after %s, %s", e.what, e.at.Day(), to, day.Day)
	}
	return it
}
