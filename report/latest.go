package report

import (
	"slices"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/slab"
	"firstboard/wood"
)

// Latest is the time of the latest entry of the record, of whatever area: what
// a plan takes for today. It is zero where nothing has a time.
func (s Site) Latest() time.Time { return s.record.latest }

// latest is the time of the latest entry of a job; zero where nothing has one.
func (j Job) latest() time.Time {
	return slices.MaxFunc([]time.Time{
		latestOf(j.Holes, func(r slab.Hole) evidence.Time { return r.SealedAt }),
		latestOf(j.Holes, func(r slab.Hole) evidence.Time { return r.ReadAt }),
		latestOf(j.Dishes, func(r slab.Dish) evidence.Time { return r.SetAt }),
		latestOf(j.Dishes, func(r slab.Dish) evidence.Time { return r.RetrievedAt }),
		latestOf(j.PHs, func(r slab.PH) evidence.Time { return r.ReadAt }),
		latestOf(j.Carbides, func(r slab.Carbide) evidence.Time { return r.ReadAt }),
		latestOf(j.Others, func(r slab.Other) evidence.Time { return r.ReadAt }),
		latestOf(j.Scans, func(r slab.Scan) evidence.Time { return r.ReadAt }),
		latestOf(j.Air, func(r acclimate.Air) evidence.Time { return r.ReadAt }),
		latestOf(j.Surfaces, func(r acclimate.Surface) evidence.Time { return r.ReadAt }),
		latestOf(j.Wood, func(r wood.Row) evidence.Time { return r.ReadAt }),
		latestOf(j.Checks, func(r instruments.Comparison) evidence.Time { return r.CheckedAt }),
		latestOf(j.Events, func(r Event) evidence.Time { return r.At }),
	}, time.Time.Compare)
}

func latestOf[T any](rows []T, at func(T) evidence.Time) (last time.Time) {
	for _, r := range rows {
		if t := at(r); t.Shown() && t.First.After(last) {
			last = t.First
		}
	}
	return last
}
