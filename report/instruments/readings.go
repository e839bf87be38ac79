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
