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

// Floor is the flooring system of an area, the limits in force for it, and what
// they are held against.
type Floor struct {
	System
	Limits InForce
	Slab   slab.Floor
	Wood   wood.Floor
	Room   acclimate.Room
}
