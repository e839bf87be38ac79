package slab

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

// NearWall is how far from an exterior wall a hole may lie: 3 ft.
func NearWall() evidence.Limit {
	return evidence.AtMost(evidence.Bound{Number: evidence.Typed("3", evidence.Foot)})
}

func edgeHole(f Floor) evidence.Finding {
	switch {
	case f.NoHoles != "":
		return evidence.Unneeded("%s", f.NoHoles)
	case !f.onGround():
		return evidence.Unneeded("the slab is of the kind %s; one on or below grade would make it needed", f.Kind)
	case f.ExteriorWalls.Shown() && f.ExteriorWalls.Value.IsZero():
		return evidence.Unneeded("the area has no exterior wall")
	case !f.ExteriorWalls.Shown():
		return evidence.Finding{
			Reason:   "how many walls are exterior is not recorded; write 0 where none is",
			Evidence: rowOf(f.Place),
		}
	}
	return f.onHoles(f.nearWalls)
}

// rowOf is a place as evidence, none where it is not known.
func rowOf(p evidence.Place) []evidence.Place {
	if p == nil {
		return nil
	}
	return []evidence.Place{p}
}

// walls are the exterior walls with the distances of the holes that name each,
// and the holes that may stand at a wall no other does.
type walls struct {
	wanted  evidence.Working
	several bool
	usable  func(Hole) bool
	names   []string
	nearest map[string][]evidence.Working
	unknown []string
}

// onlyWall stands for the name of a wall that needs none.
const onlyWall = "the wall"

// wallsOf are the exterior walls of the area, with none of its holes yet.
func (f Floor) wallsOf(usable func(Hole) bool) walls {
	return walls{
		wanted: evidence.Cell("Exterior walls", f.ExteriorWalls), usable: usable,
		several: f.ExteriorWalls.Exact().Cmp(evidence.Whole(1)) > 0,
		nearest: map[string][]evidence.Working{},
	}
}

// nearWalls counts the exterior walls that have a hole nearby, by the names
// that the holes give; the only wall needs no name.
func (f Floor) nearWalls(holes gathered[Hole]) evidence.Finding {
	w := f.wallsOf(holeUsable)
	for _, hole := range holes.groups {
		w.add(hole.Judged)
	}
	rows := evidence.Rows(holes.judged(), func(h Hole) evidence.Place { return h.Place })
	if len(holes.groups) == 0 {
		return evidence.Finding{Reason: noHole, Limit: f.ExteriorWalls.Written, Unit: evidence.Walls}
	}
	return w.find(rows)
}

// WallsLacking is how many exterior walls have none of these holes nearby, read
// or not, and whether a hole may be near one and does not say so.
func (f Floor) WallsLacking(holes []evidence.Judged[Hole]) (lacking int, unknown bool) {
	if f.NoHoles != "" || !f.onGround() || !f.ExteriorWalls.Shown() {
		return 0, false
	}
	w := f.wallsOf(func(Hole) bool { return true })
	for _, hole := range holes {
		if len(hole.Rows) > 0 {
			w.add(hole)
		}
	}
	return max(0, w.wanted.Value.Sub(w.count().Value).Ceil()), len(w.unknown) > 0
}

// add takes in a hole: how far it lies from the walls that all its judged rows
// name, or that this cannot be told.
func (w *walls) add(hole evidence.Judged[Hole]) {
	var far []evidence.Working
	blank := !allUsable(hole.Rows, w.usable)
	named := map[string]int{}
	for _, h := range hole.Rows {
		if !h.ToWall.Shown() {
			blank = true
			continue
		}
		far = append(far, evidence.Converted(evidence.Cell("hole "+hole.Name, h.ToWall), evidence.Foot))
		blank = blank || w.several && len(h.Walls) == 0
		for wall := range set(h.Walls) {
			named[wall]++
		}
	}
	beyond := len(far) > 0 && evidence.Highest(far...).Value.Cmp(NearWall().Ends()[0]) > 0
	switch {
	case beyond && blank:
		return
	case blank:
		w.unknown = append(w.unknown, hole.Name)
		return
	case !w.several:
		named = map[string]int{onlyWall: len(hole.Rows)}
	}
	for wall, n := range named {
		if n < len(hole.Rows) {
			continue
		}
		if w.nearest[wall] == nil {
			w.names = append(w.names, wall)
		}
		w.nearest[wall] = append(w.nearest[wall], evidence.Highest(far...))
	}
}

func set(names []string) map[string]bool {
	all := map[string]bool{}
	for _, n := range names {
		all[evidence.Key(n)] = true
	}
	return all
}

// count is how many walls have a hole within reach.
func (w *walls) count() evidence.Working {
	slices.SortFunc(w.names, evidence.Order)
	var nearest []evidence.Working
	for _, name := range w.names {
		nearest = append(nearest, evidence.Lowest(w.nearest[name]...).Called(name))
	}
	from := evidence.Stated("from", evidence.Whole(0), evidence.Foot)
	return evidence.Inside(evidence.Walls, from, evidence.Cell("to", NearWall().Most.Number), nearest...)
}

// find answers: met where enough walls have a hole; not shown where one more
// may have; otherwise not met.
func (w *walls) find(rows []evidence.Place) evidence.Finding {
	count := w.count()
	f := evidence.Finding{
		Value: count.Value.Text(), Limit: w.wanted.Value.Text(), Unit: evidence.Walls, Evidence: rows,
		Worked: evidence.AtLeastSo(count, w.wanted, 0),
	}
	if f.Worked.Room.Value.Sign() < 0 && len(w.unknown) > 0 {
		f.Worked.Unusable = len(w.unknown)
		f.Worked.Room = evidence.Less(evidence.Total(count, w.wanted), w.wanted)
	}
	f.Outcome = f.Worked.Outcome()
	verb := "have"
	if f.Value == "1" {
		verb = "has"
	}
	asked := evidence.Count(w.wanted.Value.Ceil(), "exterior wall", "exterior walls")
	f.Reason = fmt.Sprintf("%s of %s %s a hole within %s", f.Value, asked, verb, NearWall())
	if f.Outcome == evidence.NotShown {
		f.Reason += "; of " + evidence.List(w.unknown) + " the reading, the distance or the name of the wall is missing"
	}
	return f
}
