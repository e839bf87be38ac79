package report

import (
	"maps"
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// Change is what is different where an area is judged again. Each part may be
// nil; a row of which false is said is left out.
type Change struct {
	Job  func(*Job)
	Hole func(slab.Hole) (slab.Hole, bool)
	Dish func(slab.Dish) (slab.Dish, bool)
	PH   func(slab.PH) (slab.PH, bool)
	CM   func(slab.Carbide) (slab.Carbide, bool)
	Wood func(wood.Row) (wood.Row, bool)
}

// Again is the same area with other rows or under other rules. The site itself
// stays as it is.
func (s Site) Again(c Change) Site {
	job, record := s.Job, *s.record
	keys := lists.Each(record.zone(s.Area), func(part Area) string { return evidence.Key(part.ID) })
	if c.Hole != nil {
		record.probes = changed(record.probes, probesOf(record.holes, keys), c.Hole)
		record.used = instruments.UsedIn(record.probes, job.Instruments)
		record.holes = changed(record.holes, keys, c.Hole)
	}
	record.dishes, record.phs = changed(record.dishes, keys, c.Dish), changed(record.phs, keys, c.PH)
	record.carbides, record.wood = changed(record.carbides, keys, c.CM), changed(record.wood, keys[:1], c.Wood)
	if c.Job != nil {
		c.Job(&job)
	}
	return job.siteOf(s.Area, &record)
}

// probesOf are the keys of the instruments in the holes of some areas.
func probesOf(holes map[string][]slab.Hole, areas []string) []string {
	used := map[string]bool{}
	for _, key := range areas {
		for _, h := range holes[key] {
			used[evidence.Key(h.Instrument)] = true
		}
	}
	return slices.Collect(maps.Keys(used))
}

// changed are the rows under some keys after a change; those under others are
// not looked at again.
func changed[T any](groups map[string][]T, keys []string, change func(T) (T, bool)) map[string][]T {
	if change == nil {
		return groups
	}
	all := map[string][]T{}
	for _, key := range keys {
		rows := make([]T, 0, len(groups[key]))
		for _, r := range groups[key] {
			if r, stays := change(r); stays {
				rows = append(rows, r)
			}
		}
		all[key] = rows
	}
	return all
}

// Find is the answers to some checks, in the order of the catalog.
func (s Site) Find(ids []string) []evidence.Finding {
	asked := lists.Where(Catalog(), func(c evidence.Check[Site]) bool { return slices.Contains(ids, c.ID) })
	return lists.Each(asked, func(c evidence.Check[Site]) evidence.Finding { return c.Find(s) })
}

// Whole is the verdict of the whole catalog. Nothing is asked beyond the first
// check that stops the area.
func (s Site) Whole() evidence.Verdict {
	var all []evidence.Finding
	for _, c := range Catalog() {
		f := c.Find(s)
		if f.Blocks() {
			return evidence.NoGo
		}
		all = append(all, f)
	}
	v, _ := evidence.Fold(all)
	return v
}

// As is the decision on the same area, described otherwise.
func (d Decision) As(a Area) Decision {
	return d.Site.Job.siteOf(a, d.Site.record).decide()
}
