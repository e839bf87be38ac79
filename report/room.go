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
		Air: s.record.air.Of(s.Area.ID, s.Area.InstallOn), Wood: s.system.woodFlooring(),
		Temp: s.Limits.AirTemp, RH: s.Limits.AirRH, Service: service,
		StatedTemp: s.Limits.StatedTemp, StatedRH: s.Limits.StatedRH,
		Boards: s.Wood, Tolerance: j.Settings.Bound("Target tolerance (points)"), TargetAdvises: s.targetAdvises(),
		Held: j.Settings.HeldConditions, Gap: j.Settings.LargestAirGap, Excursion: j.Settings.AirExcursion,
		Acceptance: j.acceptance(), Instruments: j.Instruments,
	}
	surfaces := s.record.surfaces[evidence.Key(s.Area.ID)]
	r.Surfaces = slices.DeleteFunc(slices.Clone(surfaces), func(t acclimate.Surface) bool { return s.afterInstalling(t.ReadAt) })
	r.LaterSurfaces = len(surfaces) - len(r.Surfaces)
	r.Leveled, r.Open = s.lastEvent("leveler placed").At.First, s.opened()
	r.SurfaceMax = s.Limits.SurfaceMax
	r.DewF, r.DewC = j.Settings.dewMargins()
	r.NoDew, r.NoMax, r.NoHeld = s.noDew(), s.noSurfaces(), s.noHeld()
	for _, e := range s.heldRows() {
		if lack := e.began(); lack != "" {
			r.HeldLack = e.what + ": " + lack
			continue
		}
		r.HeldFor = append(r.HeldFor, e.from, e.at)
	}
	return r
}

// noDew says why surfaces need not be held against the dew point.
func (s Site) noDew() string {
	a := s.Area
	onto := a.Substrate == onSlab && (a.Installation == "glue-down" || a.Installation == "")
	if onto || a.Adhesive != "" || a.Membrane != "" {
		return ""
	}
	return "nothing is glued or spread on the substrate"
}

// noSurfaces says why surfaces need not be held against a highest temperature:
// rows of any day make them needed.
func (s Site) noSurfaces() string {
	if s.Area.RadiantHeat == "yes" || len(s.record.surfaces[evidence.Key(s.Area.ID)]) > 0 {
		return ""
	}
	return "the floor is not heated, and no surface was read"
}

// noHeld says why the air need not be held for any reading.
func (s Site) noHeld() string {
	switch {
	case s.system.woodFlooring():
		return ""
	case s.Area.Substrate == onWood:
		return "there is no slab to read, and the flooring is not wood"
	case s.loose():
		return "nothing is glued to the slab, and the flooring is not wood"
	}
	return ""
}

// lastEvent is the latest event of some kinds, up to the day of installing, of
// the area or the whole site; its time is blank where there was none.
func (s Site) lastEvent(kinds ...string) Event {
	var last Event
	for _, e := range here(s.record.events, s.Area.ID) {
		if slices.Contains(kinds, e.What) && !s.afterInstalling(e.At) && (!last.At.Shown() || e.At.After(last.At)) {
			last = e
		}
	}
	return last
}

// opened is the latest event after which the air of before says nothing.
func (s Site) opened() acclimate.Opened {
	e := s.lastEvent("HVAC off", "building open")
	return acclimate.Opened{What: e.What, At: e.At, Place: e.Place}
}

// afterInstalling says whether a time lies after the day of installing: history.
func (s Site) afterInstalling(t evidence.Time) bool {
	return s.Area.InstallOn.Shown() && t.Shown() && t.Day() > s.Area.InstallOn.Day
}

// targetAdvises says whether the manufacturer states the whole range of moisture
// content of an engineered wood or a bamboo: then that comes first.
func (s Site) targetAdvises() bool {
	c := s.system.flooring
	return c != nil && (c.Kind == "engineered wood" || c.Kind == "bamboo") &&
		c.FlooringMin.Number.Shown() && c.FlooringMax.Number.Shown()
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

// what is the kind in words.
func (k kind) what() string {
	return [...]string{"the slab", "the other tests", "the wood", "the air", "the surfaces"}[k]
}

// entry is one judged row for the checks that look at all of them. From is
// when it began: for a dish, when it was set, which may be blank. Lack says
// why it has no time of reading.
type entry struct {
	kind       kind
	what       string
	from, at   evidence.Time
	instrument string
	as         string        // the kind of instrument that takes such a reading
	unit       evidence.Unit // of a surface's reading
	lack       string
	place      evidence.Place
}

// at is the entry of a row that took no time.
func at(t evidence.Time, instrument string, place evidence.Place) entry {
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
func entries[T any](k kind, what string, things []evidence.Judged[T], read func(T) entry) []entry {
	var all []entry
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
			return at(h.ReadAt, h.Instrument, h.Place)
		})...)
	}
	if f.NoDishes == "" {
		all = append(all, entries(slabRow, "dish", f.JudgedDishes(), dishEntry)...)
	}
	if f.NoPH == "" {
		all = append(all, entries(slabRow, "pH spot", f.JudgedPH(), func(r slab.PH) entry {
			return at(r.ReadAt, r.Instrument, r.Place)
		})...)
	}
	if f.NoCM == "" {
		all = append(all, entries(slabRow, "carbide spot", f.JudgedCarbides(), func(r slab.Carbide) entry {
			return at(r.ReadAt, r.Instrument, r.Place)
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
	e := at(r.ReadAt, r.Instrument, r.Place)
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
		return at(r.ReadAt, r.Instrument, r.Place)
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
	e := at(r.ReadAt, r.Instrument, r.Place)
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
	e := at(a.ReadAt, a.Instrument, a.Place)
	e.kind, e.what, e.as = airRow, "the air", evidence.AirMeter
	if !a.ReadAt.Shown() {
		e.lack = evidence.NoTime
	}
	return e
}
