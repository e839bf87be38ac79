package slab

import (
	"slices"

	"firstboard/report/evidence"
)

// Histories are the holes that count, each with every reading since water that
// tells the humidity of the concrete: one with a time, taken when the hole had
// waited, and not so low that the probe or its seal failed.
func (f Floor) Histories() []evidence.Judged[Hole] {
	var all []evidence.Judged[Hole]
	for _, hole := range f.rows().holes.groups {
		rows := slices.DeleteFunc(hole.all(), func(h Hole) bool { return !f.tells(h) })
		all = append(all, evidence.Judged[Hole]{Name: hole.Name, Rows: rows})
	}
	return all
}

func (f Floor) tells(h Hole) bool {
	return holeUsable(h) && f.MayHaveWaited(h) && h.RH.Exact().Cmp(LeastRH().Exact()) >= 0
}
