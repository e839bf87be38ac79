package slab

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

func holeRH(f Floor) evidence.Finding {
	return f.onHoles(func(holes []evidence.Judged[Hole]) evidence.Finding {
		items := evidence.Items(holes, holeTime, f.humidity)
		return evidence.Weigh(append(items, f.unreplaced(holes)...), f.Acceptance, noHole).Against(f.RH)
	})
}

func (f Floor) humidity(name string, h Hole) evidence.Item {
	it := evidence.Measure("hole "+name, h.RH, f.RH)
	it.U = f.Instruments.U(h.Instrument, evidence.RH)
	return it
}

// unreplaced are the discarded holes whose latest reading was over the limit,
// or is not known, and beside which no other hole was sealed since: a high
// reading is no reason to discard.
func (f Floor) unreplaced(holes []evidence.Judged[Hole]) []evidence.Item {
	var items []evidence.Item
	for _, out := range f.DiscardedHoles() {
		for _, h := range out.Rows {
			it := f.humidity(out.Name, h)
			if it.Meets(f.Acceptance) || replaced(h, holes) {
				continue
			}
			broken := it.Breaks(f.Acceptance)
			it.Name, it.Lack = "discarded hole "+out.Name, "whether its latest reading meets the limit cannot be told, and no hole within 3 ft was sealed after that"
			if broken {
				it.Lack = fmt.Sprintf("it read %s, over the limit, and no hole within 3 ft was sealed after that", h.RH)
			}
			items = append(items, it)
		}
	}
	return items
}

// Unreplaced names the discarded holes beside which another hole must still be
// sealed and read, within 3 ft.
func (f Floor) Unreplaced() []string {
	var names []string
	for _, it := range f.unreplaced(f.JudgedHoles()) {
		if !slices.Contains(names, it.Name) {
			names = append(names, it.Name)
		}
	}
	return names
}

func replaced(out Hole, holes []evidence.Judged[Hole]) bool {
	return slices.ContainsFunc(holes, func(hole evidence.Judged[Hole]) bool {
		return len(hole.Rows) > 0 && !slices.ContainsFunc(hole.Rows, func(h Hole) bool {
			return !holeUsable(h) || !within3ft(out.X, out.Y, h.X, h.Y) || !h.SealedAt.After(out.ReadAt)
		})
	})
}

// within3ft says whether two points with known coordinates lie at most 3 ft
// apart.
func within3ft(x1, y1, x2, y2 evidence.Reading) bool {
	if !x1.Shown() || !y1.Shown() || !x2.Shown() || !y2.Shown() {
		return false
	}
	dx := x1.In(evidence.Foot).Sub(x2.In(evidence.Foot))
	dy := y1.In(evidence.Foot).Sub(y2.In(evidence.Foot))
	return dx.Mul(dx).Add(dy.Mul(dy)).Cmp(evidence.Whole(9)) <= 0
}

// count answers whether enough holes or dishes were taken.
func (f Floor) count(counted []evidence.Working, unusable int, unit evidence.Unit, one, many string, rows []evidence.Place) evidence.Finding {
	found := evidence.Tally{
		Counted: counted, Unusable: unusable, Needed: HolesNeeded(f.Size),
		Unit: unit, One: one, Many: many,
	}.Find(f.Size)
	found.Evidence = rows
	return found
}
