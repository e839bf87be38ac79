package slab

import (
	"time"

	"firstboard/report/evidence"
)

// Floor is one area's slab: its rows, those of the areas that share its slab
// tests, the limits that govern it, and what the checks need to know of the
// area. The No fields say why a test is not needed here; they are empty where
// it is.
type Floor struct {
	Area  string
	Place evidence.Place // of the area in the record
	Sizes []evidence.Reading

	Thickness     evidence.Reading
	TwoFaces      bool
	Kind          string // as typed: blank is on grade
	MadeOf        string // blank is normal
	Under         string // what lies under it: retarder, none, unknown
	ExteriorWalls evidence.Reading
	PlacedOn      evidence.Date
	InstallOn     evidence.Date

	Membrane   string // the one named
	SolidWood  bool
	Wood       bool   // the flooring is of wood of any kind
	BelowGrade string // whether the flooring's manufacturer allows it: yes, no

	Loose    bool // stretched in or laid loose, and no adhesive is named
	Isolated bool // a membrane's data sheet states that it needs no RH limit
	StatesRH bool // a product states an RH limit

	Holes    []Hole
	Dishes   []Dish
	PHs      []PH
	Carbides []Carbide
	Others   []Other
	Scans    []Scan

	NoSlab                                string
	NoHoles, NoDishes, NoPH, NoCM, NoScan string

	RH, Temp, MVER, PH, CM evidence.Limit
	Wait                   evidence.Bound
	DepthTolerance         evidence.Reading

	Covered     evidence.Date // blank without a membrane, and where water came after it
	Wet         time.Time     // the latest wetting; zero where there was none
	Leveled     time.Time     // when the latest leveler was placed; zero where none was
	Acceptance  evidence.Acceptance
	Instruments evidence.Instruments

	sorted *sorted
}

// Kinds of slab that a rule names; a blank kind is on grade.
const (
	OnGrade    = "on grade"
	BelowGrade = "below grade"
)

// What a slab is made of for which some methods are not made.
const (
	Lightweight    = "lightweight"
	Gypsum         = "gypsum"
	CalciumSulfate = "calcium sulfate"
)

// onGround says whether the slab lies on or below grade.
func (f Floor) onGround() bool { return f.Kind == "" || f.Kind == OnGrade || f.Kind == BelowGrade }

// HolesAdvise says whether the checks of holes and of their probes are advice:
// a membrane's data sheet states that it needs no limit, or the flooring lies
// loose and no product states one.
func (f Floor) HolesAdvise() bool { return f.Isolated || f.Loose && !f.StatesRH }

// size is the size of the area with those that share its slab tests, in the
// unit of its own; no figure where one of them is blank.
func size(sizes []evidence.Reading) evidence.Working {
	var all []evidence.Working
	for _, s := range sizes {
		if !s.Shown() {
			return evidence.Working{}
		}
		all = append(all, evidence.Converted(evidence.Cell("size", s), sizes[0].Unit))
	}
	switch len(all) {
	case 0:
		return evidence.Working{}
	case 1:
		return all[0]
	}
	return evidence.Total(all...)
}

// written is the size as it is told.
func (f Floor) written() evidence.Reading {
	w := size(f.Sizes)
	if !w.Shown() {
		return evidence.Reading{}
	}
	if len(f.Sizes) == 1 {
		return f.Sizes[0]
	}
	return evidence.Reading{Written: w.Value.Text(), Value: w.Value.Decimal(), Unit: w.Unit}
}
