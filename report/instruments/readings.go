package instruments

import (
	"slices"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// Readings are slab, wood and air of an area as they are judged, the rows behind
// that, and what speaks for the instruments that they were read with.
type Readings struct {
	Slab slab.Floor
	Wood wood.Floor
	Room acclimate.Room
	Rows []Row // every judged row

	Compared map[string]Comparisons      // the whole record's, by the key of the instrument
	Used     map[string]evidence.Working // in how many holes of it each single-use probe was, by the same

	SlabLife, WoodLife, AirLife evidence.Bound // how old readings may be
	Zone                        *time.Location
}

// judged are the judged rows of things.
func judged[T any](what string, things []evidence.Judged[T], row func(string, T) Row) []Row {
	all := make([]Row, 0, evidence.RowCount(things))
	for _, thing := range things {
		for _, t := range thing.Rows {
			r := row(what+" "+thing.Name, t)
			if !r.At.Shown() {
				r.Lack = evidence.NoTime
			}
			all = append(all, r)
		}
	}
	return all
}

// slabRows are the judged rows of the tests of the slab that are needed.
func (rs Readings) slabRows() []Row {
	f := rs.Slab
	var all []Row
	if f.NoHoles == "" {
		all = append(all, judged("hole", f.JudgedHoles(), HoleRow)...)
	}
	if f.NoDishes == "" {
		all = append(all, judged("dish", f.JudgedDishes(), DishRow)...)
	}
	if f.NoPH == "" {
		all = append(all, judged("pH spot", f.JudgedPH(), PHRow)...)
	}
	if f.NoCM == "" {
		all = append(all, judged("carbide spot", f.JudgedCarbides(), CarbideRow)...)
	}
	return all
}

// floorRows are the judged rows of wood flooring.
func (rs Readings) floorRows() []Row {
	if rs.Wood.NoFlooring != "" {
		return nil
	}
	ofLot := func(lot wood.Lot) []Row { return judged("board", lot.Boards, WoodRow) }
	return slices.Concat(lists.Each(rs.Wood.Lots(), ofLot)...)
}

// HeldRows are the rows for which the air must have been held.
func (rs Readings) HeldRows() []Row {
	if rs.Slab.Loose {
		return rs.floorRows()
	}
	return append(rs.slabRows(), rs.floorRows()...)
}

// HeatedRows are the rows for which a floor must have been heated: those of slab,
// flooring and wood subfloor.
func (rs Readings) HeatedRows() []Row {
	all := append(rs.slabRows(), rs.floorRows()...)
	if rs.Wood.NoSubfloor == "" {
		all = append(all, judged("subfloor piece", rs.Wood.Pieces(wood.OfSubfloor), WoodRow)...)
	}
	return all
}

// JudgedRows are all rows behind the findings of the area.
func (rs Readings) JudgedRows() []Row {
	all := rs.HeatedRows()
	if rs.Wood.NoBelow == "" {
		all = append(all, judged("joist", rs.Wood.Pieces(wood.OfJoist), WoodRow)...)
	}
	all = append(all, judged("test", rs.Slab.JudgedOthers(), OtherRow)...)
	if rs.Room.NoDew == "" || rs.Room.NoMax == "" {
		all = append(all, judged("surface spot", rs.Room.JudgedSurfaces(), SurfaceRow)...)
	}
	return append(all, lists.Each(rs.Room.JudgedAir(), AirRow)...)
}

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
