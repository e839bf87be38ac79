package report

import (
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// JudgedRow is one row that was judged, as ages, calibrations and heat see it.
type JudgedRow struct{ entry }

// ReadAt is when it was read; blank where it has no time.
func (r JudgedRow) ReadAt() evidence.Time { return r.at }

// BeganAt is when it began: for a dish, when it was set.
func (r JudgedRow) BeganAt() evidence.Time { return r.from }

// Instrument is the instrument it was read with.
func (r JudgedRow) Instrument() string { return r.instrument }

// By is the same row, read with another instrument.
func (r JudgedRow) By(instrument string) JudgedRow {
	r.instrument = instrument
	return r
}

// As is the kind of instrument that takes such a reading, empty where any may.
func (r JudgedRow) As() string { return r.as }

// OfAir says whether it is a row of the air.
func (r JudgedRow) OfAir() bool { return r.kind == airRow }

// SlabRow is a row of a hole, or of a spot of pH or carbide.
func SlabRow(what string, at evidence.Time, instrument string) JudgedRow {
	return JudgedRow{entry{kind: slabRow, what: what, from: at, at: at, instrument: instrument}}
}

// OtherRow is a row of a further test.
func OtherRow(what string, r slab.Other) JudgedRow {
	return JudgedRow{entry{kind: otherRow, what: what, from: r.ReadAt, at: r.ReadAt, instrument: r.Instrument}}
}

// DishRow is a row of a dish.
func DishRow(what string, d slab.Dish) JudgedRow { return judgedAs(dishEntry(d), slabRow, what) }

// WoodRow is a row of a board, a subfloor piece or a joist.
func WoodRow(what string, r wood.Row) JudgedRow { return judgedAs(woodEntry(r), woodRow, what) }

// SurfaceRow is a row of a surface spot.
func SurfaceRow(what string, r acclimate.Surface) JudgedRow {
	return judgedAs(surfaceEntry(r), surfaceRow, what)
}

// AirRow is a row of the air.
func AirRow(a *acclimate.Air) JudgedRow { return JudgedRow{airEntry(a)} }

func judgedAs(e entry, k rowKind, what string) JudgedRow {
	e.kind, e.what = k, what
	return JudgedRow{e}
}

// JudgedRows are all rows behind the findings of the area.
func (s Site) JudgedRows() []JudgedRow {
	all := make([]JudgedRow, len(s.rows))
	for i, e := range s.rows {
		all[i] = JudgedRow{e}
	}
	return all
}

// LatestAir is the latest row of the air.
func (s Site) LatestAir() JudgedRow {
	latest := s.Room.Latest()
	return JudgedRow{entry{kind: airRow, what: "the latest air reading", from: latest, at: latest}}
}

// TooOld says whether a row will be too old on the day of installing.
func (s Site) TooOld(r JudgedRow) bool {
	life := evidence.AtMost(s.lifeOf(r.kind).Most)
	return s.Area.InstallOn.Shown() && s.aged(evidence.Item{Limit: life}, r.entry).Breaks(evidence.Acceptance{})
}

// Uncalibrated says why the instrument of a row was not calibrated when it was
// read; empty where it was, and where that is not known.
func (s Site) Uncalibrated(r JudgedRow) string {
	meter, listed := s.Job.Instruments.Find(r.instrument)
	if !listed || covers(meter, r.entry) {
		return ""
	}
	use := &meterUse{meter: meter, as: r.as, unit: r.unit, rows: []entry{r.entry}}
	for _, it := range s.calibrated(use) {
		if it.Breaks(evidence.Acceptance{}) {
			return it.Says
		}
	}
	return ""
}

// Unheated says whether a row was read before the heating of the floor had run
// for long enough.
func (s Site) Unheated(r JudgedRow) bool {
	run := s.Area.HeatOnSince
	return s.Area.RadiantHeat == "yes" && run.Shown() &&
		evidence.Hours(evidence.Shortest(run, r.from)).Cmp(s.Job.Settings.HeatRun.Exact()) < 0
}

// Untimed says whether it is not known when a row was read, or when it began.
func (r JudgedRow) Untimed() bool { return r.began() != "" || !r.at.Shown() }

// Latest is the time of the latest entry of the record, of whatever area: what
// a plan takes for today. It is zero where nothing has a time.
func (s Site) Latest() time.Time { return s.record.latest }

// As is the decision on the same area, described otherwise.
func (d Decision) As(a Area) Decision {
	return d.Site.Job.siteOf(a, d.Site.record).decide()
}

// latest is the time of the latest entry of a job; zero where nothing has one.
func (j Job) latest() time.Time {
	var last time.Time
	see := func(times ...evidence.Time) {
		for _, t := range times {
			if t.Shown() && t.First.After(last) {
				last = t.First
			}
		}
	}
	for _, r := range j.Holes {
		see(r.SealedAt, r.ReadAt)
	}
	for _, r := range j.Dishes {
		see(r.SetAt, r.RetrievedAt)
	}
	for _, r := range j.PHs {
		see(r.ReadAt)
	}
	for _, r := range j.Carbides {
		see(r.ReadAt)
	}
	for _, r := range j.Others {
		see(r.ReadAt)
	}
	for _, r := range j.Scans {
		see(r.ReadAt)
	}
	for i := range j.Air {
		see(j.Air[i].ReadAt)
	}
	for _, r := range j.Surfaces {
		see(r.ReadAt)
	}
	for _, r := range j.Wood {
		see(r.ReadAt)
	}
	for _, r := range j.Checks {
		see(r.CheckedAt)
	}
	for _, r := range j.Events {
		see(r.At)
	}
	return last
}
