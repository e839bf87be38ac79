package report

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
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

// covering is the flooring as the air is judged for it.
func (s system) covering() acclimate.Covering {
	switch {
	case s.woodFlooring():
		return acclimate.Wooden
	case s.flooring != nil && s.flooring.Kind == "carpet":
		return acclimate.Carpet
	}
	return acclimate.Hard
}

// woodFlooring says whether the flooring is of wood. Bamboo counts as wood.
func (s system) woodFlooring() bool {
	return s.flooring != nil && (s.flooring.Kind == "solid wood" || s.flooring.Kind == "engineered wood" ||
		s.flooring.Kind == "bamboo")
}

// limits resolves every kind of limit for the flooring system.
func (s system) limits(service []acclimate.Period) Limits {
	var l Limits
	for _, k := range LimitKinds() {
		var usual evidence.Limit
		if k.usual != nil {
			usual = k.usual(s, service)
		}
		*k.inForce(&l) = s.limit(k, usual)
	}
	alone := system{flooring: s.flooring}
	l.StatedTemp, l.StatedRH = alone.limit(airTemp(), evidence.Limit{}), alone.limit(airRH(), evidence.Limit{})
	return l
}

// limit is the limit in force, and why an end of it is not known where neither
// a product nor the default gives one.
func (s system) limit(k LimitKind, usual evidence.Limit) evidence.Limit {
	l := evidence.Limit{
		Least: s.govern(k, k.Least, usual.Least, evidence.Higher),
		Most:  s.govern(k, k.Most, usual.Most, evidence.Stricter),
	}
	if !l.Least.Shown() || !l.Most.Shown() {
		l.Lack = usual.Lack
	}
	return l
}

// stricterOf is the stricter of two bounds.
type stricterOf func(a, b evidence.Bound) evidence.Bound

// govern is the bound in force at one end: that of a membrane which lies
// between, else the strictest that the flooring system brings, else the
// default.
func (s system) govern(k LimitKind, end LimitColumn, usual evidence.Bound, stricter stricterOf) evidence.Bound {
	if end.Name == "" {
		return usual
	}
	if k.Between && s.membrane != nil && end.Of(s.membrane).Number.Shown() {
		return s.membrane.bound(end)
	}
	var best evidence.Bound
	for _, p := range s.products() {
		switch stated := end.Of(p); {
		case stated.Number.Shown():
			best = stricter(best, p.bound(end))
		case stated.Blank() && (k.blanks == everyones || k.blanks == floorings && p == s.flooring):
			best = stricter(best, usual)
		}
	}
	if !best.Shown() {
		return usual
	}
	return best
}

func (s system) usualDifference() evidence.Bound {
	if s.flooring == nil {
		return wood.DefaultDifference(evidence.Reading{}, false)
	}
	return wood.DefaultDifference(s.flooring.FaceWidth, s.flooring.Kind == "solid wood")
}
