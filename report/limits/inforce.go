package limits

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// InForce are the limits in force for one area.
type InForce struct {
	AirTemp, AirRH         evidence.Limit
	StatedTemp, StatedRH   evidence.Limit // by the flooring alone
	SlabRH, MVER           evidence.Limit
	PH, CM                 evidence.Limit
	Subfloor, Flooring     evidence.Limit
	Difference, SurfaceMax evidence.Limit
}

// InForce resolves every kind of limit for the flooring system.
func (s System) InForce(service []acclimate.Period) InForce {
	var l InForce
	for _, k := range Kinds() {
		var usual evidence.Limit
		if k.usual != nil {
			usual = k.usual(s, service)
		}
		*k.among(&l) = s.limit(k, usual)
	}
	alone := System{Flooring: s.Flooring}
	l.StatedTemp, l.StatedRH = alone.limit(airTemp(), evidence.Limit{}), alone.limit(airRH(), evidence.Limit{})
	return l
}

// limit is the limit in force, and why an end of it is not known where neither
// a product nor the default gives one.
func (s System) limit(k Kind, usual evidence.Limit) evidence.Limit {
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
func (s System) govern(k Kind, end Column, usual evidence.Bound, stricter stricterOf) evidence.Bound {
	if end.Name == "" {
		return usual
	}
	if k.Between && s.Membrane != nil && end.Of(s.Membrane).Number.Shown() {
		return s.Membrane.bound(end)
	}
	var best evidence.Bound
	for _, p := range s.Products() {
		switch stated := end.Of(p); {
		case stated.Number.Shown():
			best = stricter(best, p.bound(end))
		case stated.Blank() && (k.blanks == everyones || k.blanks == floorings && p == s.Flooring):
			best = stricter(best, usual)
		}
	}
	if !best.Shown() {
		return usual
	}
	return best
}
