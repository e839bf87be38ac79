package report

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/report/lists"
)

func (s Site) room(service []acclimate.Period) acclimate.Room {
	j := s.Job
	r := acclimate.Room{
		Air: s.record.air.Of(s.Area.ID, s.Area.InstallOn), Wood: s.System.WoodFlooring(),
		Temp: s.Limits.AirTemp, RH: s.Limits.AirRH, Service: service,
		StatedTemp: s.Limits.StatedTemp, StatedRH: s.Limits.StatedRH,
		Boards: s.Wood, Tolerance: j.Settings.Bound("Target tolerance (points)"), TargetAdvises: s.targetAdvises(),
		Held: j.Settings.HeldConditions, Gap: j.Settings.LargestAirGap, Excursion: j.Settings.AirExcursion,
		Acceptance: j.acceptance(), Instruments: j.Instruments,
	}
	surfaces := s.record.surfaces[evidence.Key(s.Area.ID)]
	r.Surfaces = slices.DeleteFunc(slices.Clone(surfaces),
		func(t acclimate.Surface) bool { return s.afterInstalling(t.ReadAt) })
	r.LaterSurfaces = len(surfaces) - len(r.Surfaces)
	r.Leveled, r.Open = s.lastEvent("leveler placed").At.First, s.opened()
	r.SurfaceMax = s.Limits.SurfaceMax
	r.DewF, r.DewC = j.Settings.dewMargins()
	r.NoDew, r.NoMax, r.NoHeld = s.noDew(), s.noSurfaces(), s.noHeld()
	for _, e := range s.HeldRows() {
		if lack := e.Began(); lack != "" {
			r.HeldLack = e.What + ": " + lack
			continue
		}
		r.HeldFor = append(r.HeldFor, e.From, e.At)
	}
	return r
}

// noDew says why surfaces need not be held against the dew point.
func (s Site) noDew() string {
	a := s.Area
	onto := a.Substrate == limits.OnSlab && (a.Installation == "glue-down" || a.Installation == "")
	return lists.If(onto || a.Adhesive != "" || a.Membrane != "", "", "nothing is glued or spread on the substrate")
}

// noSurfaces says why surfaces need not be held against a highest temperature:
// rows of any day make them needed.
func (s Site) noSurfaces() string {
	needed := s.Area.RadiantHeat == "yes" || len(s.record.surfaces[evidence.Key(s.Area.ID)]) > 0
	return lists.If(needed, "", "the floor is not heated, and no surface was read")
}

// noHeld says why the air need not be held for any reading.
func (s Site) noHeld() string {
	switch {
	case s.System.WoodFlooring():
		return ""
	case s.Area.Substrate == limits.OnWood:
		return "there is no slab to read, and the flooring is not wood"
	case s.System.Loose():
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
	c := s.System.Flooring
	return c != nil && (c.Kind == "engineered wood" || c.Kind == "bamboo") &&
		c.FlooringMin.Number.Shown() && c.FlooringMax.Number.Shown()
}
