package report

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

func (s Site) room(service []acclimate.Period) acclimate.Room {
	j := s.Job
	r := acclimate.Room{
		Air: s.air(), Wood: s.stack.isWood(),
		Temp: s.Limits.AirTemp, RH: s.Limits.AirRH, Service: service,
		StatedTemp: s.Limits.StatedTemp, StatedRH: s.Limits.StatedRH,
		Boards: s.Wood, Tolerance: j.Settings.Bound("Target tolerance (points)"), TargetAdvises: s.targetAdvises(),
		Held: j.Settings.HeldConditions, Gap: j.Settings.LargestAirGap, Excursion: j.Settings.AirExcursion,
		Acceptance: j.acceptance(), Instruments: j.Instruments,
	}
	if s.Area.Base == onWood && !r.Wood {
		r.NoHeld = "there is no slab to read, and the covering is not wood"
	}
	for _, e := range s.heldRows() {
		switch {
		case e.lack != "":
			r.HeldLack = e.what + ": " + e.lack
		default:
			r.HeldFor = append(r.HeldFor, e.from, e.at)
		}
	}
	return r
}

// air are the rows of the area and of the whole site up to the day of laying.
func (s Site) air() []acclimate.Air {
	return slices.DeleteFunc(slices.Clone(s.Job.Air), func(r acclimate.Air) bool {
		here := r.Area == "" || evidence.Same(r.Area, s.Area.ID)
		return !here || s.afterLaying(r.ReadAt)
	})
}

// afterLaying says whether a time lies after the day of laying: history.
func (s Site) afterLaying(t evidence.Time) bool {
	return s.Area.LayOn.Shown() && t.Shown() && t.Day() > s.Area.LayOn.Day
}

// targetAdvises: the maker's own range of moisture content comes first for
// engineered wood and bamboo.
func (s Site) targetAdvises() bool {
	c := s.stack.covering
	return c != nil && (c.Kind == "engineered wood" || c.Kind == "bamboo") &&
		(c.FlooringMin.Number.Shown() || c.FlooringMax.Number.Shown())
}

// kind sorts judged rows for the rules of age.
type kind int

const (
	slabRow kind = iota
	otherRow
	woodRow
	airRow
	surfaceRow
)

// entry is one judged row for the checks that look at all of them. From is
// when it began: for a dish, when it was set. Lack says why it has no time.
type entry struct {
	kind       kind
	what       string
	from, at   evidence.Time
	instrument string
	lack       string
	place      evidence.Place
}

// entries are the judged rows of things.
func entries[T any](k kind, what string, things []evidence.Judged[T], read func(T) entry) []entry {
	var all []entry
	for _, thing := range things {
		if len(thing.Rows) == 0 {
			all = append(all, entry{kind: k, what: what + " " + thing.Name, lack: evidence.WetSince})
		}
		for _, r := range thing.Rows {
			e := read(r)
			e.kind, e.what = k, what+" "+thing.Name
			if !e.from.Shown() && e.lack == "" {
				e.from = e.at
			}
			if !e.at.Shown() {
				e.lack = evidence.NoTime
			}
			all = append(all, e)
		}
	}
	return all
}

// slabRows are the judged rows of the tests of the slab that are needed.
func (s Site) slabRows() []entry {
	f := s.Slab
	var all []entry
	if f.NoHoles == "" {
		all = append(all, entries(slabRow, "hole", f.JudgedHoles(), func(h slab.Hole) entry {
			return entry{at: h.ReadAt, instrument: h.Instrument, place: h.Place}
		})...)
	}
	return all
}

// floorRows are the judged rows of wood flooring.
func (s Site) floorRows() []entry {
	if s.Wood.NoFlooring != "" {
		return nil
	}
	var all []entry
	for _, lot := range s.Wood.Lots() {
		if len(lot.Boards) == 0 && lot.SetAside == 0 {
			all = append(all, entry{kind: woodRow, what: lot.Title(), lack: evidence.WetSince})
		}
		all = append(all, entries(woodRow, "board", lot.Boards, woodEntry)...)
	}
	return all
}

func woodEntry(r wood.Row) entry {
	return entry{at: r.ReadAt, instrument: r.Instrument, place: r.Place}
}

// heldRows are the rows for which the air must have been held.
func (s Site) heldRows() []entry { return append(s.slabRows(), s.floorRows()...) }

// judgedRows are all rows behind the findings of the area.
func (s Site) judgedRows() []entry {
	all := s.heldRows()
	if s.Wood.NoSubfloor == "" {
		all = append(all, entries(woodRow, "subfloor piece", s.Wood.Pieces(wood.OfSubfloor), woodEntry)...)
	}
	for _, a := range s.Room.JudgedAir() {
		all = append(all, airEntry(a))
	}
	return all
}

func airEntry(a acclimate.Air) entry {
	e := entry{kind: airRow, what: "the air", from: a.ReadAt, at: a.ReadAt, instrument: a.Instrument, place: a.Place}
	if !a.ReadAt.Shown() {
		e.lack = evidence.NoTime
	}
	return e
}
