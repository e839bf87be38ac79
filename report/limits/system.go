package limits

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// System is the flooring system of an area. A product that is not named is nil,
// blank words are kept blank.
type System struct {
	Area                    string
	Place                   evidence.Place // of the area
	Substrate, Installation string

	Flooring, Adhesive, Membrane *Product
}

// Substrates that a rule names.
const (
	OnSlab = "slab"
	OnWood = "wood"
)

// Products are the products of the system in the order their limits are read.
func (s System) Products() []*Product {
	return slices.DeleteFunc([]*Product{s.Flooring, s.Adhesive, s.Membrane}, func(p *Product) bool { return p == nil })
}

// States says whether any product of the system states a number for one of
// the limits.
func (s System) States(limits ...Kind) bool {
	for _, k := range limits {
		for _, c := range k.Columns() {
			if slices.ContainsFunc(s.Products(), func(p *Product) bool { return c.Of(p).Number.Shown() }) {
				return true
			}
		}
	}
	return false
}

// covering is the flooring as the air is judged for it.
func (s System) covering() acclimate.Covering {
	switch {
	case s.WoodFlooring():
		return acclimate.Wooden
	case s.Flooring != nil && s.Flooring.Kind == "carpet":
		return acclimate.Carpet
	}
	return acclimate.Hard
}

// WoodFlooring says whether the flooring is of wood. Bamboo counts as wood.
func (s System) WoodFlooring() bool {
	return s.Flooring != nil && (s.Flooring.Kind == "solid wood" || s.Flooring.Kind == "engineered wood" ||
		s.Flooring.Kind == "bamboo")
}

func (s System) usualDifference() evidence.Bound {
	if s.Flooring == nil {
		return wood.DefaultDifference(evidence.Reading{}, false)
	}
	return wood.DefaultDifference(s.Flooring.FaceWidth, s.Flooring.Kind == "solid wood")
}

// AdhesiveUnnamed says whether the flooring is glued down, a blank counting as
// that, with an adhesive that is not named.
func (s System) AdhesiveUnnamed() bool {
	return (s.Installation == "" || s.Installation == "glue-down") && s.Adhesive == nil
}

// standsOnSlab says whether the limits of a product for a slab's moisture
// decide: not where the flooring is stretched or laid loose without an adhesive.
func (s System) standsOnSlab(p *Product) bool { return !s.Loose() && s.ReachedBySlab(p) }

// ReachedBySlab says whether the moisture of a slab reaches a product: the
// membrane where there is one, else flooring and adhesive.
func (s System) ReachedBySlab(p *Product) bool {
	return s.Substrate != OnWood && (s.Membrane == nil || p == s.Membrane)
}

// gluedToSlab says whether a product is what touches a slab in glue: the
// membrane where there is one, which counts as glued under any flooring, else
// the adhesive.
func (s System) gluedToSlab(p *Product) bool {
	if s.Substrate != OnSlab {
		return false
	}
	glued := []*Product{s.Membrane, s.Adhesive}
	first := slices.IndexFunc(glued, func(q *Product) bool { return q != nil })
	return first >= 0 && p == glued[first]
}

// Loose says whether the flooring is stretched or laid loose without an
// adhesive.
func (s System) Loose() bool {
	return (s.Installation == "stretch-in" || s.Installation == "loose-lay") && s.Adhesive == nil
}

func (s System) overSlab(*Product) bool { return s.Substrate != OnWood }

func (s System) isFlooring(p *Product) bool { return p == s.Flooring }

func (s System) woodOf(p *Product) bool { return s.isFlooring(p) && s.WoodFlooring() }

// Stated is one limit cell of a product: a number, none (the data sheet
// states none), or blank (not looked up).
type Stated struct {
	Number evidence.Reading
	None   bool
}

// Blank says that the limit was not looked up.
func (s Stated) Blank() bool { return !s.None && !s.Number.Shown() }

// Product is one product of a flooring system, with the limits its data sheet states.
type Product struct {
	ID, Kind, Description string
	Species, Cut          string
	BelowGrade            string // whether it may be installed there
	FaceWidth, Thickness  evidence.Reading

	SlabRH, MVER, CM       Stated
	PHMin, PHMax           Stated
	SubfloorMC             Stated
	FlooringMin            Stated
	FlooringMax            Stated
	Difference             Stated
	AirTempMin, AirTempMax Stated
	AirRHMin, AirRHMax     Stated
	SurfaceTemp            Stated

	Across    evidence.Reading
	DataSheet string
	Place     evidence.Place
}

// bound is the product's own number as a bound, with its source.
func (p *Product) bound(c Column) evidence.Bound {
	b := evidence.Bound{Number: c.Of(p).Number, Whose: p.ID}
	b.Cite = evidence.Cite{Source: "the record: product " + p.ID + ", no data sheet named", Standing: evidence.ByHand}
	if p.DataSheet != "" {
		b.Cite = evidence.Cite{Source: p.DataSheet, Standing: evidence.Manufacturer}
	}
	return b
}

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

// Floor is the flooring system of an area, the limits in force for it, and what
// they are held against.
type Floor struct {
	System
	Limits InForce
	Slab   slab.Floor
	Wood   wood.Floor
	Room   acclimate.Room
}
