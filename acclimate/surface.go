package acclimate

import (
	"fmt"
	"strings"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// surfaceChecks are the checks of surface temperatures.
func surfaceChecks() []evidence.Check[Room] {
	return []evidence.Check[Room]{
		{
			ID: "surface-dew", Deciding: true, Judge: surfaceDew,
			Asks: fmt.Sprintf("is every surface at least %s (%s) above the dew point of the air row nearest in time, "+
				"at most %s h away?",
				DefaultDewF(), DefaultDewC(), evidence.Hours(Nearest).Text()),
			Default: fmt.Sprintf("%s, or %s for a surface read in C", DefaultDewF(), DefaultDewC()),
			Cite: evidence.Cite{
				Source:   "the figure of ISO 8502-4 for coatings, used for floors: common practice",
				Standing: evidence.Practice,
			},
		},
		{
			ID: "surface-max", Deciding: true, Judge: surfaceMax,
			Asks: fmt.Sprintf("is every surface at or under %s (wood flooring) or %s (others), or what the flooring system states?",
				DefaultSurfaceMax(Wooden).Number, DefaultSurfaceMax(Hard).Number),
			Default: fmt.Sprintf("%s under wood flooring, %s under others", DefaultSurfaceMax(Wooden).Number,
				DefaultSurfaceMax(Hard).Number),
			Cite: evidence.Cite{
				Source:   "NWFA installation guidelines 2019 (wood flooring); ASTM F710 summary (others)",
				Standing: evidence.Published,
			},
		},
	}
}

func spotName(s Surface) string        { return s.Spot }
func spotTime(s Surface) evidence.Time { return s.ReadAt }

// JudgedSurfaces are the surface spots that count, with their judged rows:
// none where a leveler was placed since.
func (r Room) JudgedSurfaces() []evidence.Judged[Surface] {
	return evidence.Latest(r.Surfaces, r.Leveled, spotName, spotTime)
}

const (
	noSurface = "no surface temperature was read"
	leveled   = "not read again since a leveler was placed"
)

// surfaceItems are the judged values of all spots, made by measure.
func (r Room) surfaceItems(measure func(Surface) []evidence.Item) []evidence.Item {
	var items []evidence.Item
	for _, spot := range r.JudgedSurfaces() {
		if len(spot.Rows) == 0 {
			items = append(items, evidence.Item{Name: "surface spot " + spot.Name, Lack: leveled})
		}
		for _, s := range spot.Rows {
			s.Spot = spot.Name
			items = append(items, measure(s)...)
		}
	}
	return items
}

func surfaceMax(r Room) evidence.Finding {
	if r.NoMax != "" {
		return evidence.Unneeded("%s", r.NoMax)
	}
	items := r.surfaceItems(func(s Surface) []evidence.Item {
		it := evidence.Measure("surface spot "+s.Spot, s.Temp, r.SurfaceMax)
		u := r.Instruments.USurface(s.Instrument, s.Temp.Unit)
		it.U = &evidence.Uncertainty{
			Value: evidence.ConvertSpan(u.Value, s.Temp.Unit, r.SurfaceMax.Unit()),
			Known: u.Known,
		}
		if !s.ReadAt.Shown() {
			it.Lack = evidence.NoTime
		}
		return []evidence.Item{it}
	})
	return evidence.Weigh(items, r.Acceptance, noSurface).Against(r.SurfaceMax)
}

// surfaceDew weighs the signed margin of each surface above the dew point:
// below zero it is wet already, above it is how far it may still cool.
func surfaceDew(r Room) evidence.Finding {
	if r.NoDew != "" {
		return evidence.Unneeded("%s", r.NoDew)
	}
	return evidence.Weigh(r.surfaceItems(r.margins), r.Acceptance, noSurface)
}

// DefaultDewF and DefaultDewC are how far above the dew point a surface is to
// be: the figure of ISO 8502-4 for coatings (common practice).
func DefaultDewF() evidence.Reading { return evidence.Typed("5", evidence.Fahrenheit) }

// DefaultDewC is DefaultDewF for a surface read in C.
func DefaultDewC() evidence.Reading { return evidence.Typed("3", evidence.Celsius) }

// Nearest is how far from a surface reading the air may have been read.
const Nearest = 2 * time.Hour

// margins are the margins of a surface reading above the dew point of the air
// rows nearest in time: of equally near ones the worst decides, which is that
// of the higher dew point.
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
		return fail(fmt.Sprintf("no air reading within %s h of it", evidence.Hours(Nearest).Text()))
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
func (r Room) AirNear(s Surface) (near []*Air, untimed bool) {
	if !s.ReadAt.Shown() {
		return nil, false
	}
	return r.Air.nearest(s.ReadAt.First, Nearest), len(r.Air.Untimed()) > 0
}

// dewMargin is the margin asked for, by the unit the surface was read in.
func (r Room) dewMargin(unit evidence.Unit) evidence.Limit {
	if unit == evidence.Celsius {
		return evidence.AtLeast(r.DewC)
	}
	return evidence.AtLeast(r.DewF)
}

// margin is how far a surface lies above the dew point of an air row.
func margin(it evidence.Item, s Surface, a *Air) evidence.Item {
	if !a.Temp.Shown() || !a.Humidity().Shown() {
		it.Lack = "the air at " + a.ReadAt.Written + " has no temperature or no humidity"
		return it
	}
	dew, err := dewOf(a)
	if err != nil {
		it.Lack = "the air at " + a.ReadAt.Written + ": " + err.Error()
		return it
	}
	rounded := evidence.Rounded(evidence.Converted(dew, s.Temp.Unit), 2).Called("dew point")
	it = it.By(evidence.Less(evidence.Cell(it.Name, s.Temp), rounded))
	by, side := it.Written, "above"
	if short, under := strings.CutPrefix(by, "-"); under {
		by, side = short, "under"
	}
	it.Says = fmt.Sprintf("%s read %s, %s %s %s the dew point of %s %s (air at %s: %s, %s)",
		it.Name, s.Temp, by, s.Temp.Unit, side, rounded.Value.Text(), s.Temp.Unit, a.ReadAt.Written, a.Temp, a.RH)
	return it
}

// dewOf is where the dew point becomes an exact number, in F. It is rounded
// once, to 0.01, in the unit the surface was read in.
func dewOf(a *Air) (evidence.Working, error) {
	dewC, err := DewPoint(a.Temp.In(evidence.Celsius).Float(), a.RH.Exact().Float())
	if err != nil {
		return evidence.Working{}, err
	}
	temp := evidence.Converted(evidence.Cell("temperature of the air", a.Temp), evidence.Fahrenheit)
	rh := evidence.Cell("humidity of the air", a.RH)
	value := evidence.Convert(evidence.Of(decimal.NewFromFloat(dewC)), evidence.Celsius, evidence.Fahrenheit)
	return evidence.Physics(evidence.OpDewPoint, value, evidence.Fahrenheit, temp, rh).Called("dew point"), nil
}
