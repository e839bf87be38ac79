package outlook

import (
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// without is the change that leaves things out.
func without(some []measured) report.Change {
	var hit [aBoard + 1]bool
	left := map[id]bool{}
	for _, m := range some {
		left[m.id], hit[m.kind] = true, true
	}
	var c report.Change
	if hit[aHole] {
		c.Hole = func(h slab.Hole) (slab.Hole, bool) { return h, !left[idOf(aHole, h.Area, "", h.Hole)] }
	}
	if hit[aDish] {
		c.Dish = func(d slab.Dish) (slab.Dish, bool) { return d, !left[idOf(aDish, d.Area, "", d.Dish)] }
	}
	if hit[aPiece] || hit[aBoard] {
		c.Wood = func(r wood.Row) (wood.Row, bool) { return r, !left[ofWood(r)] }
	}
	return c
}

// ofWood names the board or piece of a row; a joist is none.
func ofWood(r wood.Row) id {
	switch r.Of {
	case wood.OfFlooring:
		return idOf(aBoard, r.Area, r.Lot, r.Piece)
	case wood.OfSubfloor:
		return idOf(aPiece, r.Area, "", r.Piece)
	}
	return id{kind: -1}
}

// moving is the change that takes readings to the upper or the lower end of
// their uncertainty, where it is known: all of them, or those of some things.
func moving(s report.Site, only map[id]bool, by int) report.Change {
	to := func(of id, r *evidence.Reading, u *evidence.Uncertainty) {
		if only != nil && !only[of] || !r.Shown() || !u.Known {
			return
		}
		moved := evidence.Computed(r.Exact().Add(u.Value.Mul(evidence.Whole(by))).Decimal(), r.Unit)
		moved.Place = r.Place
		*r = moved
	}
	meters := s.Job.Instruments
	return report.Change{
		Hole: func(h slab.Hole) (slab.Hole, bool) {
			if h.Discarded == "" {
				to(idOf(aHole, h.Area, "", h.Hole), &h.RH, meters.U(h.Instrument, evidence.RH))
			}
			return h, true
		},
		Dish: func(d slab.Dish) (slab.Dish, bool) {
			to(idOf(aDish, d.Area, "", d.Dish), &d.End, meters.U(d.Instrument, evidence.Gram))
			return d, true
		},
		PH: func(r slab.PH) (slab.PH, bool) {
			to(idOf(aPH, r.Area, "", r.Spot), &r.PH, meters.U(r.Instrument, evidence.PH))
			return r, true
		},
		CM: func(r slab.Carbide) (slab.Carbide, bool) {
			to(idOf(aCM, r.Area, "", r.Spot), &r.CM, meters.U(r.Instrument, evidence.CM))
			return r, true
		},
		Wood: func(r wood.Row) (wood.Row, bool) {
			to(ofWood(r), &r.Reading, meters.UAs(r.Instrument, evidence.MC, r.MeterKind()))
			return r, true
		},
	}
}

// eachAlike looks at pieces and boards whose mean is so near its limit that one
// of them could decide, once for all that are judged alike.
func (h *holder) eachAlike(turns func(measured) bool) {
	told := map[string]bool{}
	near := h.near()
	for _, m := range h.all {
		if m.alike == "" || !near[m.kind] || !h.census.spares(m) || h.turns[m.id] {
			continue
		}
		on, known := told[m.alike]
		if !known {
			on = turns(m)
			told[m.alike] = on
		}
		if on {
			h.turns[m.id] = true
		}
	}
}

// near says of boards and of subfloor pieces whether one of them, left out, could
// turn a check of several together: it moves a mean by no more than the range of
// the values over all but one of them, and a share by no more than one in twenty.
func (h *holder) near() map[kind]bool {
	f, boards := h.site.Wood, false
	reach := map[kind]evidence.Exact{aPiece: reachOf(f.PieceItems(wood.OfSubfloor, evidence.Limit{}))}
	for _, lot := range f.Lots() {
		if by := reachOf(f.BoardItems(lot, evidence.Limit{})); !boards || by.Cmp(reach[aBoard]) > 0 {
			reach[aBoard], boards = by, true
		}
	}
	near := map[kind]bool{}
	for _, c := range h.found {
		room := c.Worked.Room
		if !c.Deciding || !room.Shown() || !slices.Contains(ofMeans(), c.ID) {
			continue
		}
		within := func(by evidence.Exact) bool { return room.Value.Abs().Cmp(by) <= 0 }
		switch c.ID {
		case "flooring-spread":
			near[aBoard] = near[aBoard] || within(evidence.Whole(1)) && (c.Blocks() || within(evidence.Ratio(1, 20)))
		case "wood-difference":
			near[aPiece] = near[aPiece] || within(reach[aPiece])
			near[aBoard] = near[aBoard] || within(reach[aBoard])
		default:
			near[aBoard] = near[aBoard] || within(reach[aBoard])
		}
	}
	return near
}

// reachOf is by how much the mean of things can move where one is left out.
func reachOf(things [][]evidence.Item) evidence.Exact {
	known := lists.Where(slices.Concat(things...), func(it evidence.Item) bool { return it.Lack == "" })
	if len(things) < 2 || len(known) == 0 {
		return evidence.Whole(0)
	}
	values := lists.Each(known, func(it evidence.Item) evidence.Exact { return it.Value })
	low, high := slices.MinFunc(values, evidence.Exact.Cmp), slices.MaxFunc(values, evidence.Exact.Cmp)
	return high.Sub(low).Over(evidence.Whole(len(things) - 1))
}
