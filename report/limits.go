package report

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// Limits are the limits in force for one area.
type Limits struct {
	AirTemp, AirRH         evidence.Limit
	StatedTemp, StatedRH   evidence.Limit // by the flooring alone
	SlabRH, MVER           evidence.Limit
	PH, CM                 evidence.Limit
	Subfloor, Flooring     evidence.Limit
	Difference, SurfaceMax evidence.Limit
}

// woodFlooring says whether the flooring is of wood. Bamboo counts as wood.
func (s stack) woodFlooring() bool {
	return s.flooring != nil && (s.flooring.Kind == "solid wood" || s.flooring.Kind == "engineered wood" || s.flooring.Kind == "bamboo")
}

func (s stack) limits(service []acclimate.Period) Limits {
	return Limits{
		AirTemp:    s.airTemp(),
		AirRH:      s.airRH(service),
		StatedTemp: s.stated(airTempMin, airTempMax),
		StatedRH:   s.stated(airRHMin, airRHMax),
		SlabRH:     evidence.AtMost(s.govern(slabRH, rule{slab.DefaultRH(), everyones, true, evidence.Stricter})),
		MVER:       evidence.AtMost(s.govern(mver, rule{between: true, stricter: evidence.Stricter})),
		PH:         s.both(pHMin, pHMax, true),
		CM:         evidence.AtMost(s.govern(carbide, rule{between: true, stricter: evidence.Stricter})),
		Subfloor:   evidence.AtMost(s.govern(subfloorMC, rule{wood.DefaultSubfloorMC(), floorings, false, evidence.Stricter})),
		Flooring:   s.both(flooringMin, flooringMax, false),
		Difference: evidence.AtMost(s.govern(difference, rule{s.usualDifference(), floorings, false, evidence.Stricter})),
		SurfaceMax: evidence.AtMost(s.govern(surfaceTemp, rule{acclimate.DefaultSurfaceMax(), floorings, false, evidence.Stricter})),
	}
}

func (s stack) usualDifference() evidence.Bound {
	if s.flooring == nil {
		return wood.DefaultDifference(evidence.Reading{}, false)
	}
	return wood.DefaultDifference(s.flooring.FaceWidth, s.flooring.Kind == "solid wood")
}

func (s stack) both(low, high limitOf, between bool) evidence.Limit {
	return evidence.Limit{
		Least: s.govern(low, rule{between: between, stricter: evidence.Higher}),
		Most:  s.govern(high, rule{between: between, stricter: evidence.Stricter}),
	}
}

// stated is what the flooring alone states.
func (s stack) stated(low, high limitOf) evidence.Limit {
	alone := stack{flooring: s.flooring}
	return alone.both(low, high, false)
}

func (s stack) airTemp() evidence.Limit {
	usual := acclimate.UsualTemp(s.woodFlooring())
	return evidence.Limit{
		Least: s.govern(airTempMin, rule{fallback: usual.Least, stricter: evidence.Higher}),
		Most:  s.govern(airTempMax, rule{fallback: usual.Most, stricter: evidence.Stricter}),
	}
}

// airRH keeps the lack of a service climate only where an end needs it.
func (s stack) airRH(service []acclimate.Period) evidence.Limit {
	usual := acclimate.UsualRH(s.woodFlooring(), service)
	l := evidence.Limit{
		Least: s.govern(airRHMin, rule{fallback: usual.Least, stricter: evidence.Higher}),
		Most:  s.govern(airRHMax, rule{fallback: usual.Most, stricter: evidence.Stricter}),
	}
	if !l.Least.Shown() || !l.Most.Shown() {
		l.Lack = usual.Lack
	}
	return l
}
