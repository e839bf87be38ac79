package report

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// LimitKind is one limit that the products of a flooring system state: the
// columns of Products it is typed in, whose blank cell brings the default, the
// checks that are held against it, and of which products it must have been
// looked up.
type LimitKind struct {
	What        string          // what it bounds, in words
	Least, Most LimitColumn     // without a name where it has no such end
	Units       []evidence.Unit // it may be typed in, the default's first
	Between     bool            // a membrane that states a number stands alone
	Checks      []string        // which read it

	blanks   blankBrings
	usual    func(system, []acclimate.Period) evidence.Limit // where nobody states one
	expected func(Site, *Product) bool                       // a data sheet may be expected to speak of it
	known    func(Site, *Product) bool                       // limits-known asks for it
	unneeded func(Site) string                               // why nothing is held against it here
	inForce  func(*Limits) *evidence.Limit
}

// LimitColumn is one end of a limit: its column of Products, without the unit,
// and its cell in a product.
type LimitColumn struct {
	Name string
	Cell func(*Product) *Stated
}

// Of is what a product states.
func (c LimitColumn) Of(p *Product) Stated { return *c.Cell(p) }

// Columns are the columns that the limit has.
func (k LimitKind) Columns() []LimitColumn {
	var all []LimitColumn
	for _, c := range []LimitColumn{k.Least, k.Most} {
		if c.Name != "" {
			all = append(all, c)
		}
	}
	return all
}

// blankBrings says whose blank cell brings the default.
type blankBrings int

const (
	nobodys blankBrings = iota
	floorings
	everyones
)

// LimitKinds are the limits of products, in the order of their columns. It is
// the one place that says what there is to be looked up.
func LimitKinds() []LimitKind {
	return []LimitKind{
		slabRH(), mver(), carbide(), alkalinity(), subfloorMC(), flooringMC(), difference(),
		airTemp(), airRH(), surfaceTemp(),
	}
}

func slabRH() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.RH},
		What:  "slab relative humidity", Between: true, Checks: []string{"slab-rh"},
		Most:     LimitColumn{"Slab RH max", func(p *Product) *Stated { return &p.SlabRH }},
		blanks:   everyones,
		usual:    func(system, []acclimate.Period) evidence.Limit { return evidence.AtMost(slab.DefaultRH()) },
		expected: overSlab, known: Site.standsOnSlab,
		unneeded: func(s Site) string { return s.Slab.NoHoles },
		inForce:  func(l *Limits) *evidence.Limit { return &l.SlabRH },
	}
}

func mver() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.Pounds, evidence.Grams},
		What:  "slab moisture emission", Between: true, Checks: []string{"mver-rate"},
		Most:     LimitColumn{"MVER max", func(p *Product) *Stated { return &p.MVER }},
		expected: overSlab, known: Site.standsOnSlab,
		unneeded: func(s Site) string { return s.Slab.NoDishes },
		inForce:  func(l *Limits) *evidence.Limit { return &l.MVER },
	}
}

func carbide() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.CM},
		What:  "slab carbide (CM)", Between: true, Checks: []string{"slab-cm"},
		Most:     LimitColumn{"CM max", func(p *Product) *Stated { return &p.CM }},
		expected: overSlab,
		known:    func(s Site, p *Product) bool { return len(s.Slab.Carbides) > 0 && s.standsOnSlab(p) },
		unneeded: func(s Site) string { return s.Slab.NoCM },
		inForce:  func(l *Limits) *evidence.Limit { return &l.CM },
	}
}

func alkalinity() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.PH},
		What:  "slab pH", Between: true, Checks: []string{"slab-ph"},
		Least:    LimitColumn{"pH min", func(p *Product) *Stated { return &p.PHMin }},
		Most:     LimitColumn{"pH max", func(p *Product) *Stated { return &p.PHMax }},
		expected: func(s Site, _ *Product) bool { return s.Area.Substrate == onSlab },
		known:    Site.gluedToSlab,
		unneeded: func(s Site) string { return s.Slab.NoPH },
		inForce:  func(l *Limits) *evidence.Limit { return &l.PH },
	}
}

func subfloorMC() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.MC},
		What:  "subfloor moisture content", Checks: []string{"subfloor-mc", "joists-dry"},
		Most:   LimitColumn{"Subfloor MC max", func(p *Product) *Stated { return &p.SubfloorMC }},
		blanks: floorings,
		usual:  func(system, []acclimate.Period) evidence.Limit { return evidence.AtMost(wood.DefaultSubfloorMC()) },
		expected: func(s Site, p *Product) bool {
			return p == s.system.flooring && s.Area.Substrate != onSlab
		},
		unneeded: func(s Site) string { return s.Wood.NoSubfloor },
		inForce:  func(l *Limits) *evidence.Limit { return &l.Subfloor },
	}
}

func flooringMC() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.MC},
		What:  "flooring moisture content", Checks: []string{"flooring-mc"},
		Least:    LimitColumn{"Flooring MC min", func(p *Product) *Stated { return &p.FlooringMin }},
		Most:     LimitColumn{"Flooring MC max", func(p *Product) *Stated { return &p.FlooringMax }},
		expected: Site.woodOf, known: Site.woodOf,
		unneeded: func(s Site) string { return s.Wood.NoFlooring },
		inForce:  func(l *Limits) *evidence.Limit { return &l.Flooring },
	}
}

func difference() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.Points},
		What:  "flooring less subfloor", Checks: []string{"wood-difference"},
		Most:   LimitColumn{"Difference max", func(p *Product) *Stated { return &p.Difference }},
		blanks: floorings,
		usual:  func(s system, _ []acclimate.Period) evidence.Limit { return evidence.AtMost(s.usualDifference()) },
		expected: func(s Site, p *Product) bool {
			return s.woodOf(p) && s.Wood.NoDifference == ""
		},
		unneeded: func(s Site) string { return s.Wood.NoDifference },
		inForce:  func(l *Limits) *evidence.Limit { return &l.Difference },
	}
}

func airTemp() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.Fahrenheit, evidence.Celsius},
		What:  "air temperature", Checks: []string{"air-range", "air-held", "slab-temp", "climate-range"},
		Least:    LimitColumn{"Air temp min", func(p *Product) *Stated { return &p.AirTempMin }},
		Most:     LimitColumn{"Air temp max", func(p *Product) *Stated { return &p.AirTempMax }},
		usual:    func(s system, _ []acclimate.Period) evidence.Limit { return acclimate.UsualTemp(s.covering()) },
		expected: ofFlooring,
		inForce:  func(l *Limits) *evidence.Limit { return &l.AirTemp },
	}
}

func airRH() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.RH},
		What:  "air humidity", Checks: []string{"air-range", "air-held", "climate-range"},
		Least: LimitColumn{"Air RH min", func(p *Product) *Stated { return &p.AirRHMin }},
		Most:  LimitColumn{"Air RH max", func(p *Product) *Stated { return &p.AirRHMax }},
		usual: func(s system, service []acclimate.Period) evidence.Limit {
			return acclimate.UsualRH(s.covering(), service)
		},
		expected: ofFlooring,
		inForce:  func(l *Limits) *evidence.Limit { return &l.AirRH },
	}
}

func surfaceTemp() LimitKind {
	return LimitKind{
		Units: []evidence.Unit{evidence.Fahrenheit, evidence.Celsius},
		What:  "surface temperature", Checks: []string{"surface-max"},
		Most:   LimitColumn{"Surface temp max", func(p *Product) *Stated { return &p.SurfaceTemp }},
		blanks: floorings,
		usual: func(s system, _ []acclimate.Period) evidence.Limit {
			return evidence.AtMost(acclimate.DefaultSurfaceMax(s.covering()))
		},
		expected: func(s Site, p *Product) bool { return ofFlooring(s, p) && s.Room.NoMax == "" },
		unneeded: func(s Site) string { return s.Room.NoMax },
		inForce:  func(l *Limits) *evidence.Limit { return &l.SurfaceMax },
	}
}

func overSlab(s Site, _ *Product) bool { return s.Area.Substrate != onWood }

func ofFlooring(s Site, p *Product) bool { return p == s.system.flooring }

func (s Site) woodOf(p *Product) bool { return ofFlooring(s, p) && s.system.woodFlooring() }
