package acclimate

import (
	"fmt"
	"strconv"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// surfaceChecks are the checks of surface temperatures.
func surfaceChecks() []evidence.Check[Room] {
	return []evidence.Check[Room]{
		{
			ID: "surface-dew", Deciding: true, Judge: surfaceDew,
			Asks:    "is every surface at least 5 F (3 C) above the dew point of the air read nearest in time, at most 2 h away?",
			Default: "5 F, or 3 C for a surface read in C",
			Cite:    evidence.Cite{Source: "the figure of ISO 8502-4 for coatings, used for floors: common practice", Standing: evidence.Practice},
		},
		{
			ID: "surface-max", Deciding: true, Judge: heatedSurface,
			Asks:    "is every surface of a heated floor at or under 85 F, or what a product states?",
			Default: "85 F",
			Cite:    evidence.Cite{Source: "ASTM F710 summary", Standing: evidence.Published},
		},
	}
}

func spotName(s Surface) string        { return s.Spot }
func spotTime(s Surface) evidence.Time { return s.ReadAt }

// JudgedSurfaces are the surface spots that count, with their judged rows.
func (r Room) JudgedSurfaces() []evidence.Judged[Surface] {
	return evidence.Latest(r.Surfaces, time.Time{}, spotName, spotTime)
}

const noSurface = "no surface temperature was read"

func heatedSurface(r Room) evidence.Finding {
	if r.NoHeat != "" {
		return evidence.Unneeded("%s", r.NoHeat)
	}
	items := evidence.Items(r.JudgedSurfaces(), spotTime, func(name string, s Surface) evidence.Item {
		it := evidence.Measure("surface spot "+name, s.Temp, r.SurfaceMax)
		u := r.Instruments.USurface(s.Instrument, s.Temp.Unit)
		it.U = &evidence.Uncertainty{Value: evidence.ConvertSpan(u.Value, s.Temp.Unit, r.SurfaceMax.Unit()), Known: u.Known}
		return it
	})
	return evidence.Weigh(items, r.Acceptance, noSurface).Against(r.SurfaceMax)
}

// surfaceDew weighs the signed margin of each surface above the dew point:
// below zero it is wet already, above it is how far it may still cool.
func surfaceDew(r Room) evidence.Finding {
	if r.NoDew != "" {
		return evidence.Unneeded("%s", r.NoDew)
	}
	var items []evidence.Item
	for _, spot := range r.JudgedSurfaces() {
		for _, s := range spot.Rows {
			items = append(items, r.margins(s)...)
		}
	}
	return evidence.Weigh(items, r.Acceptance, noSurface)
}

// Nearest is how far from a surface reading the air may have been read.
const Nearest = 2 * time.Hour

// margins are the margins of a surface reading above the dew point of the air
// rows nearest in time: of equally near ones the worst decides.
func (r Room) margins(s Surface) []evidence.Item {
	base := evidence.Item{Name: "surface spot " + s.Spot, Limit: r.dewMargin(s.Temp.Unit), Place: s.Place}
	fail := func(lack string) []evidence.Item {
		base.Lack = lack
		return []evidence.Item{base}
	}
	switch {
	case !s.Temp.Shown():
		return fail("no reading")
	case !s.ReadAt.Shown():
		return fail(evidence.NoTime)
	}
	base.U = r.Instruments.USurface(s.Instrument, s.Temp.Unit)
	near, untimed := r.AirNear(s)
	if len(near) == 0 {
		return fail("no air reading within 2 h of it")
	}
	var items []evidence.Item
	for _, a := range near {
		items = append(items, margin(base, s, a))
	}
	if untimed {
		items = append(items, fail("an air row has no time, and may be the nearest")...)
	}
	return items
}

// AirNear are the air rows nearest in time to a surface reading, at most 2 h
// away; untimed says that a row without a time may be nearer.
func (r Room) AirNear(s Surface) (near []Air, untimed bool) {
	best := Nearest
	for _, a := range r.Air {
		if !a.ReadAt.Shown() {
			untimed = true
			continue
		}
		switch away := a.ReadAt.First.Sub(s.ReadAt.First).Abs(); {
		case away < best || away == best && len(near) == 0:
			best, near = away, []Air{a}
		case away == best:
			near = append(near, a)
		}
	}
	return near, untimed
}

// dewMargin is the margin asked for, by the unit the surface was read in.
func (r Room) dewMargin(unit evidence.Unit) evidence.Limit {
	if unit == evidence.Celsius {
		return evidence.AtLeast(r.DewC)
	}
	return evidence.AtLeast(r.DewF)
}

// margin is where the dew point becomes a decimal: rounded once, to 0.01, in
// the unit the surface was read in.
func margin(it evidence.Item, s Surface, a Air) evidence.Item {
	if !a.Temp.Shown() || !a.RH.Shown() {
		it.Lack = "the air at " + a.ReadAt.Written + " has no temperature or no humidity"
		return it
	}
	dewC, err := DewPoint(a.Temp.In(evidence.Celsius).Float(), a.RH.Exact().Float())
	if err != nil {
		it.Lack = "the air at " + a.ReadAt.Written + ": " + err.Error()
		return it
	}
	dew := dewC
	if s.Temp.Unit == evidence.Fahrenheit {
		dew = dewC*1.8 + 32
	}
	rounded := evidence.Computed(decimal.RequireFromString(strconv.FormatFloat(dew, 'f', 2, 64)), s.Temp.Unit)
	it.Value = s.Temp.Exact().Sub(rounded.Exact())
	it.Written = it.Value.Text(it.Limit.Ends()...)
	it.Says = fmt.Sprintf("%s read %s, %s %s above the dew point of %s (air at %s: %s, %s)",
		it.Name, s.Temp, it.Written, s.Temp.Unit, rounded, a.ReadAt.Written, a.Temp, a.RH)
	return it
}
