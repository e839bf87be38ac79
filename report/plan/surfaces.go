package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
)

func (p *planner) surveySurfaces() {
	r := p.Room
	if r.NoDew != "" && r.NoMax != "" {
		return
	}
	p.surfaces = survey(p, task{
		one: "surface spot", many: "surface spots", verb: "read", who: installer, stage: ofSurfaces,
		tool: aThermometer(), checks: []string{"surface-dew", "surface-max", "calibration", "reading-age"},
		table: "Surface", column: "Spot", from: p.youngAir(), mend: p.tempered, asked: 1, head: "S",
	}, r.JudgedSurfaces(), r.Surfaces, func(s acclimate.Surface) seen {
		return seen{
			area: p.Area.ID, id: s.Spot, row: instruments.SurfaceRow("", s), read: s.Temp.Shown(),
			spoiled: p.farFromAir(s),
		}
	})
}

// farFromAir says why a surface has to be read again: no air was read near
// enough in time to tell its dew point, or that air says nothing.
func (p *planner) farFromAir(s acclimate.Surface) string {
	if p.Room.NoDew != "" || !s.ReadAt.Shown() {
		return ""
	}
	near, _ := p.Room.AirNear(s)
	if len(near) == 0 {
		return fmt.Sprintf("no air was read within %g h of it", acclimate.Nearest.Hours())
	}
	return p.dewless(near)
}

// dewless says why rows of the air do not tell a dew point, empty where they do.
func (p *planner) dewless(near []*acclimate.Air) string {
	why := ""
	for _, a := range near {
		if !a.Temp.Shown() || !a.Humidity().Shown() {
			return "the air read beside it has no temperature or no humidity"
		}
		why = firstOf(why, p.disbelievedAny(instruments.AirRow(a), anAirMeter()))
	}
	return why
}

// surfaceReadings adds the temperatures of surfaces, with the air beside them.
func (p *planner) surfaceReadings() {
	t := p.surfaces
	if last := p.Room.Air.Latest(); last != nil && p.dewless([]*acclimate.Air{last}) != "" {
		t.from = latest(t.from, p.fresh())
	}
	beside := fmt.Sprintf("the air read within %g h", acclimate.Nearest.Hours())
	switch {
	case p.Room.NoDew == "" && p.Room.NoMax == "":
		t.how = "at the coldest and the hottest place, " + beside
	case p.Room.NoDew == "":
		t.how = "at the coldest place at least, " + beside
	default:
		t.how = "at the hottest place at least, the heating running"
	}
	p.do(t)
}

// tempered is what is done about surfaces that are too near the dew point or
// too hot.
func (p *planner) tempered(over []thing) mending {
	if slices.Contains(over[0].over, "surface-max") {
		return mending{
			do:  "turn the heating of the floor down until no surface is over " + p.Room.SurfaceMax.String(),
			how: p.finding("surface-max").Reason, who: contractor,
		}
	}
	m := mending{do: "warm the surface or dry the air", how: p.finding("surface-dew").Reason, who: contractor}
	if do := p.offTheDew(over); do != "" {
		m.do = do
	}
	return m
}

// offTheDew is by how much the worst of surfaces would have to be warmer, and
// how dry the air beside it would have to be instead.
func (p *planner) offTheDew(over []thing) string {
	warmer, drier := 0.0, 100.0
	for _, s := range p.Room.Surfaces {
		if !slices.ContainsFunc(over, func(x thing) bool { return evidence.Same(x.id, s.Spot) }) || !s.Temp.Shown() {
			continue
		}
		near, _ := p.Room.AirNear(s)
		for _, a := range near {
			if by, rh, ok := p.shortOfMargin(s, a); ok {
				warmer, drier = max(warmer, by), min(drier, rh)
			}
		}
	}
	if warmer <= 0 {
		return ""
	}
	return fmt.Sprintf("warm the surface by %.0f F or bring the air under %.0f %% RH", math.Ceil(warmer),
		math.Floor(drier))
}

// shortOfMargin is by how many F a surface is too cold for the air beside it,
// and at what humidity of that air it would be warm enough.
func (p *planner) shortOfMargin(s acclimate.Surface, a *acclimate.Air) (shortF, rhPct float64, ok bool) {
	margin := p.Room.DewF.Number.Exact().Float()
	airC, surfaceF := a.Temp.In(evidence.Celsius).Float(), s.Temp.In(evidence.Fahrenheit).Float()
	if s.Temp.Unit == evidence.Celsius {
		margin = p.Room.DewC.Number.Exact().Float() * 9 / 5
	}
	dewC, noDew := acclimate.DewPoint(airC, a.RH.Exact().Float())
	wanted, noWanted := acclimate.SaturationPressure((surfaceF - margin - 32) / 1.8)
	full, noFull := acclimate.SaturationPressure(airC)
	if cmp.Or(noDew, noWanted, noFull) != nil {
		return 0, 0, false
	}
	return dewC*1.8 + 32 + margin - surfaceF, 100 * wanted / full, true
}
