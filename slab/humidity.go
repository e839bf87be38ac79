package slab

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

// holeRH judges the latest reading of each hole, and those of the 24 h before
// it that had waited long enough.
func holeRH(f Floor) evidence.Finding {
	return f.onHoles(func(holes gathered[Hole]) evidence.Finding {
		items := holes.items(holeTable(), f.humidity)
		items = append(items, f.repeated(holes)...)
		return evidence.Weigh(append(items, f.unreplaced()...), f.Acceptance, noHole).Against(f.RH)
	})
}

// repeated are the readings of the 24 h before the latest of each hole.
func (f Floor) repeated(holes gathered[Hole]) []evidence.Item {
	var items []evidence.Item
	for _, hole := range holes.groups {
		for _, h := range hole.recent {
			if !f.MayHaveWaited(h) {
				continue
			}
			it := f.humidity(hole.Name+" at "+h.ReadAt.Written, h)
			if !h.SealedAt.Shown() {
				it.Lack = "no time of sealing"
			}
			items = append(items, it)
		}
	}
	return items
}

// LeastRH is the least that a probe in sound concrete reads: below it the probe
// or its seal failed (practice).
func LeastRH() evidence.Reading { return evidence.Typed("30", evidence.RH) }

func (f Floor) humidity(name string, h Hole) evidence.Item {
	it := f.asRead(name, h)
	if h.RH.Shown() && h.RH.Exact().Cmp(LeastRH().Exact()) < 0 {
		it.Lack = fmt.Sprintf("it read %s, and no concrete reads under %s: the probe or its seal failed", h.RH,
			LeastRH())
	}
	return it
}

// asRead is the reading of a hole against the limit, however low.
func (f Floor) asRead(name string, h Hole) evidence.Item {
	it := evidence.Measure("hole "+name, h.RH, f.RH)
	it.U = f.Instruments.U(h.Instrument, evidence.RH)
	return it
}

// unreplaced are the discarded holes whose highest reading was over the limit,
// or is not known, and beside which no other hole was sealed since: a high
// reading is no reason to discard.
func (f Floor) unreplaced() []evidence.Item {
	var items []evidence.Item
	rows := f.rows()
	if len(rows.discarded.groups) == 0 {
		return nil
	}
	beside := placed(rows.holes)
	for _, out := range rows.discarded.groups {
		for _, h := range highestOf(out) {
			it := f.asRead(out.Name, h)
			replaced := func(hole group[Hole]) bool { return replaces(hole, h) }
			if it.Meets(f.Acceptance) || h.placed() && beside.find(out.area, h.X, h.Y, replaced) {
				continue
			}
			broken := it.Breaks(f.Acceptance)
			it.Name = "discarded hole " + out.Name
			what := "whether its highest reading meets the limit cannot be told"
			if broken {
				what = fmt.Sprintf("it read %s, over the limit", h.RH)
			}
			it.Lack = what + ", and no hole within " + Reach().String() + " was sealed after that"
			items = append(items, it)
		}
	}
	return items
}

// highestOf are the rows of a hole that read highest, and those that do not say
// what they read.
func highestOf(hole group[Hole]) []Hole {
	all := hole.all()
	byRH := func(a, b Hole) int { return a.RH.Exact().Cmp(b.RH.Exact()) }
	top := slices.MaxFunc(all, byRH)
	return slices.DeleteFunc(all, func(h Hole) bool { return h.RH.Shown() && byRH(h, top) != 0 })
}

// replaces says whether every judged row of a hole is usable, lies within 3 ft
// of a discarded one and was sealed after its reading.
func replaces(hole group[Hole], out Hole) bool {
	return allUsable(hole.Rows, func(h Hole) bool {
		return holeUsable(h) && h.SealedAt.After(out.ReadAt) && h.placed() && within3ft(out.X, out.Y, h.X, h.Y)
	})
}

// Unreplaced names the discarded holes beside which another hole must still be
// sealed and read, within 3 ft.
func (f Floor) Unreplaced() []string {
	var names []string
	for _, it := range f.unreplaced() {
		if !slices.Contains(names, it.Name) {
			names = append(names, it.Name)
		}
	}
	return names
}
