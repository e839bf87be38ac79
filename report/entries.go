package report

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// rowKind sorts judged rows for the rules of age.
type rowKind int

const (
	slabRow rowKind = iota
	otherRow
	woodRow
	airRow
	surfaceRow
)

// what is the kind in words.
func (k rowKind) what() string {
	return [...]string{"the slab", "the other tests", "the wood", "the air", "the surfaces"}[k]
}

// entry is one judged row for the checks that look at all of them. From is
// when it began: for a dish, when it was set, which may be blank. Lack says
// why it has no time of reading.
type entry struct {
	kind       rowKind
	what       string
	from, at   evidence.Time
	instrument string
	as         string        // the kind of instrument that takes such a reading
	unit       evidence.Unit // of a surface's reading
	lack       string
	place      evidence.Place
}

// entryAt is the entry of a row that took no time.
func entryAt(t evidence.Time, instrument string, place evidence.Place) entry {
	return entry{from: t, at: t, instrument: instrument, place: place}
}

// began is why it is not known when the row began, empty where it is.
func (e entry) began() string {
	if e.lack == "" && !e.from.Shown() {
		return "no time of setting"
	}
	return e.lack
}

// entries are the judged rows of things.
func entries[T any](k rowKind, what string, things []evidence.Judged[T], read func(T) entry) []entry {
	all := make([]entry, 0, evidence.RowCount(things))
	for _, thing := range things {
		for _, r := range thing.Rows {
			e := read(r)
			e.kind, e.what = k, what+" "+thing.Name
			if e.as == "" {
				e.as = meterFor(what)
			}
			if !e.at.Shown() {
				e.lack = evidence.NoTime
			}
			all = append(all, e)
		}
	}
	return all
}

// meterFor is the kind of instrument that reads a thing, empty where any may.
func meterFor(what string) string {
	switch what {
	case "hole":
		return evidence.Probe
	case "dish":
		return evidence.Balance
	case "pH spot":
		return evidence.PHMeter
	case "carbide spot":
		return evidence.CMMeter
	case "surface spot":
		return evidence.Surface
	}
	return ""
}

// slabRows are the judged rows of the tests of the slab that are needed.
func (s Site) slabRows() []entry {
	f := s.Slab
	var all []entry
	if f.NoHoles == "" {
		all = append(all, entries(slabRow, "hole", f.JudgedHoles(), func(h slab.Hole) entry {
			return entryAt(h.ReadAt, h.Instrument, h.Place)
		})...)
	}
	if f.NoDishes == "" {
		all = append(all, entries(slabRow, "dish", f.JudgedDishes(), dishEntry)...)
	}
	if f.NoPH == "" {
		all = append(all, entries(slabRow, "pH spot", f.JudgedPH(), func(r slab.PH) entry {
			return entryAt(r.ReadAt, r.Instrument, r.Place)
		})...)
	}
	if f.NoCM == "" {
		all = append(all, entries(slabRow, "carbide spot", f.JudgedCarbides(), func(r slab.Carbide) entry {
			return entryAt(r.ReadAt, r.Instrument, r.Place)
		})...)
	}
	return all
}

// dishEntry counts from the time the dish was set, which is not known where
// that is blank.
func dishEntry(d slab.Dish) entry {
	return entry{from: d.SetAt, at: d.RetrievedAt, instrument: d.Instrument, place: d.Place}
}

// floorRows are the judged rows of wood flooring.
func (s Site) floorRows() []entry {
	if s.Wood.NoFlooring != "" {
		return nil
	}
	var all []entry
	for _, lot := range s.Wood.Lots() {
		all = append(all, entries(woodRow, "board", lot.Boards, woodEntry)...)
	}
	return all
}

func woodEntry(r wood.Row) entry {
	e := entryAt(r.ReadAt, r.Instrument, r.Place)
	e.as = r.Method
	if r.Method == wood.OvenDry {
		e.as = evidence.OvenMeter
	}
	return e
}

// baseRows are the judged rows of slab and flooring.
func (s Site) baseRows() []entry { return append(s.slabRows(), s.floorRows()...) }

// heldRows are the rows for which the air must have been held.
func (s Site) heldRows() []entry {
	if s.loose() {
		return s.floorRows()
	}
	return s.baseRows()
}

// judgedRows are all rows behind the findings of the area.
func (s Site) judgedRows() []entry {
	all := s.baseRows()
	all = append(all, s.subfloorRows()...)
	if s.Wood.NoBelow == "" {
		all = append(all, entries(woodRow, "joist", s.Wood.Pieces(wood.OfJoist), woodEntry)...)
	}
	all = append(all, entries(otherRow, "test", s.Slab.JudgedOthers(), func(r slab.Other) entry {
		return entryAt(r.ReadAt, r.Instrument, r.Place)
	})...)
	if s.Room.NoDew == "" || s.Room.NoMax == "" {
		all = append(all, entries(surfaceRow, "surface spot", s.Room.JudgedSurfaces(), surfaceEntry)...)
	}
	for _, a := range s.Room.JudgedAir() {
		all = append(all, airEntry(a))
	}
	return all
}

func surfaceEntry(r acclimate.Surface) entry {
	e := entryAt(r.ReadAt, r.Instrument, r.Place)
	e.unit = r.Temp.Unit
	return e
}

// subfloorRows are the judged rows of a wood subfloor.
func (s Site) subfloorRows() []entry {
	if s.Wood.NoSubfloor != "" {
		return nil
	}
	return entries(woodRow, "subfloor piece", s.Wood.Pieces(wood.OfSubfloor), woodEntry)
}

func airEntry(a *acclimate.Air) entry {
	e := entryAt(a.ReadAt, a.Instrument, a.Place)
	e.kind, e.what, e.as = airRow, "the air", evidence.AirMeter
	if !a.ReadAt.Shown() {
		e.lack = evidence.NoTime
	}
	return e
}
