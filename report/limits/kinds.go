package limits

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// Kind is one limit that the products of a flooring system state: the
// columns of Products it is typed in, whose blank cell brings the default, the
// checks that are held against it, and of which products it must have been
// looked up.
type Kind struct {
	What        string          // what it bounds, in words
	Least, Most Column          // without a name where it has no such end
	Units       []evidence.Unit // it may be typed in, the default's first
	Between     bool            // a membrane that states a number stands alone
	Checks      []string        // which read it

	blanks   blankBrings
	usual    func(System, []acclimate.Period) evidence.Limit // where nobody states one
	expected func(Floor, *Product) bool                      // a data sheet may be expected to speak of it
	known    func(Floor, *Product) bool                      // limits-known asks for it
	unneeded func(Floor) string                              // why nothing is held against it here
	among    func(*InForce) *evidence.Limit
}

// Column is one end of a limit: its column of Products, without the unit,
// and its cell in a product.
type Column struct {
	Name string
	Cell func(*Product) *Stated
}

// Of is what a product states.
func (c Column) Of(p *Product) Stated { return *c.Cell(p) }

// Columns are the columns that the limit has.
func (k Kind) Columns() []Column {
	return lists.Where([]Column{k.Least, k.Most}, func(c Column) bool { return c.Name != "" })
}

// blankBrings says whose blank cell brings the default.
type blankBrings int

const (
	nobodys blankBrings = iota
	floorings
	everyones
)

// Kinds are the limits of products, in the order of their columns. It is
// the one place that says what there is to be looked up.
func Kinds() []Kind {
	return []Kind{
		SlabRH(), MVER(), Carbide(), Alkalinity(), subfloorMC(), flooringMC(), difference(),
		airTemp(), airRH(), surfaceTemp(),
	}
}

func SlabRH() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.RH},
		What:  "slab relative humidity", Between: true, Checks: []string{"slab-rh"},
		Most:     Column{"Slab RH max", func(p *Product) *Stated { return &p.SlabRH }},
		blanks:   everyones,
		usual:    func(System, []acclimate.Period) evidence.Limit { return evidence.AtMost(slab.DefaultRH()) },
		expected: Floor.overSlab, known: Floor.standsOnSlab,
		unneeded: func(f Floor) string { return f.Slab.NoHoles },
		among:    func(l *InForce) *evidence.Limit { return &l.SlabRH },
	}
}

func MVER() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.Pounds, evidence.Grams},
		What:  "slab moisture emission", Between: true, Checks: []string{"mver-rate"},
		Most:     Column{"MVER max", func(p *Product) *Stated { return &p.MVER }},
		expected: Floor.overSlab, known: Floor.standsOnSlab,
		unneeded: func(f Floor) string { return f.Slab.NoDishes },
		among:    func(l *InForce) *evidence.Limit { return &l.MVER },
	}
}

func Carbide() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.CM},
		What:  "slab carbide (CM)", Between: true, Checks: []string{"slab-cm"},
		Most:     Column{"CM max", func(p *Product) *Stated { return &p.CM }},
		expected: Floor.overSlab,
		known:    func(f Floor, p *Product) bool { return len(f.Slab.Carbides) > 0 && f.standsOnSlab(p) },
		unneeded: func(f Floor) string { return f.Slab.NoCM },
		among:    func(l *InForce) *evidence.Limit { return &l.CM },
	}
}

func Alkalinity() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.PH},
		What:  "slab pH", Between: true, Checks: []string{"slab-ph"},
		Least:    Column{"pH min", func(p *Product) *Stated { return &p.PHMin }},
		Most:     Column{"pH max", func(p *Product) *Stated { return &p.PHMax }},
		expected: func(f Floor, _ *Product) bool { return f.Substrate == OnSlab },
		known:    Floor.gluedToSlab,
		unneeded: func(f Floor) string { return f.Slab.NoPH },
		among:    func(l *InForce) *evidence.Limit { return &l.PH },
	}
}

func subfloorMC() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.MC},
		What:  "subfloor moisture content", Checks: []string{"subfloor-mc", "joists-dry"},
		Most:     Column{"Subfloor MC max", func(p *Product) *Stated { return &p.SubfloorMC }},
		blanks:   floorings,
		usual:    func(System, []acclimate.Period) evidence.Limit { return evidence.AtMost(wood.DefaultSubfloorMC()) },
		expected: func(f Floor, p *Product) bool { return p == f.Flooring && f.Substrate != OnSlab },
		unneeded: func(f Floor) string { return f.Wood.NoSubfloor },
		among:    func(l *InForce) *evidence.Limit { return &l.Subfloor },
	}
}

func flooringMC() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.MC},
		What:  "flooring moisture content", Checks: []string{"flooring-mc"},
		Least:    Column{"Flooring MC min", func(p *Product) *Stated { return &p.FlooringMin }},
		Most:     Column{"Flooring MC max", func(p *Product) *Stated { return &p.FlooringMax }},
		expected: Floor.woodOf, known: Floor.woodOf,
		unneeded: func(f Floor) string { return f.Wood.NoFlooring },
		among:    func(l *InForce) *evidence.Limit { return &l.Flooring },
	}
}

func difference() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.Points},
		What:  "flooring less subfloor", Checks: []string{"wood-difference"},
		Most:     Column{"Difference max", func(p *Product) *Stated { return &p.Difference }},
		blanks:   floorings,
		usual:    func(s System, _ []acclimate.Period) evidence.Limit { return evidence.AtMost(s.usualDifference()) },
		expected: func(f Floor, p *Product) bool { return f.woodOf(p) && f.Wood.NoDifference == "" },
		unneeded: func(f Floor) string { return f.Wood.NoDifference },
		among:    func(l *InForce) *evidence.Limit { return &l.Difference },
	}
}

func airTemp() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.Fahrenheit, evidence.Celsius},
		What:  "air temperature", Checks: []string{"air-range", "air-held", "slab-temp", "climate-range"},
		Least:    Column{"Air temp min", func(p *Product) *Stated { return &p.AirTempMin }},
		Most:     Column{"Air temp max", func(p *Product) *Stated { return &p.AirTempMax }},
		usual:    func(s System, _ []acclimate.Period) evidence.Limit { return acclimate.UsualTemp(s.covering()) },
		expected: Floor.isFlooring,
		among:    func(l *InForce) *evidence.Limit { return &l.AirTemp },
	}
}

func airRH() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.RH},
		What:  "air humidity", Checks: []string{"air-range", "air-held", "climate-range"},
		Least:    Column{"Air RH min", func(p *Product) *Stated { return &p.AirRHMin }},
		Most:     Column{"Air RH max", func(p *Product) *Stated { return &p.AirRHMax }},
		usual:    func(s System, of []acclimate.Period) evidence.Limit { return acclimate.UsualRH(s.covering(), of) },
		expected: Floor.isFlooring,
		among:    func(l *InForce) *evidence.Limit { return &l.AirRH },
	}
}

func surfaceTemp() Kind {
	return Kind{
		Units: []evidence.Unit{evidence.Fahrenheit, evidence.Celsius},
		What:  "surface temperature", Checks: []string{"surface-max"},
		Most:   Column{"Surface temp max", func(p *Product) *Stated { return &p.SurfaceTemp }},
		blanks: floorings,
		usual: func(s System, _ []acclimate.Period) evidence.Limit {
			return evidence.AtMost(acclimate.DefaultSurfaceMax(s.covering()))
		},
		expected: func(f Floor, p *Product) bool { return f.isFlooring(p) && f.Room.NoMax == "" },
		unneeded: func(f Floor) string { return f.Room.NoMax },
		among:    func(l *InForce) *evidence.Limit { return &l.SurfaceMax },
	}
}
