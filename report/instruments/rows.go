package instruments

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// Kind sorts judged rows for the rules of age.
type Kind int

// The kinds of row.
const (
	OfSlab Kind = iota
	OfOther
	OfWood
	OfAir
	OfSurface
)

// String is the kind in words.
func (k Kind) String() string {
	return [...]string{"the slab", "the other tests", "the wood", "the air", "the surfaces"}[k]
}

// Row is one judged row, as ages, calibrations and heat see it. From is when it
// began: for a dish, when it was set, which may be blank. Lack says why it has
// no time of reading.
type Row struct {
	Kind       Kind
	What       string
	From, At   evidence.Time
	Instrument string
	As         string        // the kind of instrument that takes such a reading, empty where any may
	Unit       evidence.Unit // of a surface's reading
	Lack       string
	Place      evidence.Place
}

// Began is why it is not known when the row began, empty where it is.
func (r Row) Began() string {
	if r.Lack == "" && !r.From.Shown() {
		return "no time of setting"
	}
	return r.Lack
}

// Untimed says whether it is not known when a row was read, or when it began.
func (r Row) Untimed() bool { return r.Began() != "" || !r.At.Shown() }

// rowOf is a row that took no time, read with a kind of instrument.
func rowOf(k Kind, what string, at evidence.Time, instrument, as string, place evidence.Place) Row {
	return Row{Kind: k, What: what, From: at, At: at, Instrument: instrument, As: as, Place: place}
}

// HoleRow is a row of a hole.
func HoleRow(what string, h slab.Hole) Row {
	return rowOf(OfSlab, what, h.ReadAt, h.Instrument, evidence.Probe, h.Place)
}

// DishRow is a row of a dish. It counts from the time the dish was set, which is
// not known where that is blank.
func DishRow(what string, d slab.Dish) Row {
	r := rowOf(OfSlab, what, d.RetrievedAt, d.Instrument, evidence.Balance, d.Place)
	r.From = d.SetAt
	return r
}

// PHRow is a row of a spot of pH.
func PHRow(what string, r slab.PH) Row {
	return rowOf(OfSlab, what, r.ReadAt, r.Instrument, evidence.PHMeter, r.Place)
}

// CarbideRow is a row of a carbide spot.
func CarbideRow(what string, r slab.Carbide) Row {
	return rowOf(OfSlab, what, r.ReadAt, r.Instrument, evidence.CMMeter, r.Place)
}

// OtherRow is a row of a further test, which any instrument may take.
func OtherRow(what string, r slab.Other) Row {
	return rowOf(OfOther, what, r.ReadAt, r.Instrument, "", r.Place)
}

// WoodRow is a row of a board, a subfloor piece or a joist.
func WoodRow(what string, r wood.Row) Row {
	return rowOf(OfWood, what, r.ReadAt, r.Instrument, r.MeterKind(), r.Place)
}

// SurfaceRow is a row of a surface spot.
func SurfaceRow(what string, r acclimate.Surface) Row {
	row := rowOf(OfSurface, what, r.ReadAt, r.Instrument, evidence.Surface, r.Place)
	row.Unit = r.Temp.Unit
	return row
}

// AirRow is a row of the air.
func AirRow(a *acclimate.Air) Row {
	r := rowOf(OfAir, "the air", a.ReadAt, a.Instrument, evidence.AirMeter, a.Place)
	if !a.ReadAt.Shown() {
		r.Lack = evidence.NoTime
	}
	return r
}
