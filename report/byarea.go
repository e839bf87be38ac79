package report

import (
	"slices"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/hints"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// byArea are the rows of a job gathered once: by the key of their area, those
// of the whole site under the empty key, and the checks of instruments by that
// of the instrument.
type byArea struct {
	holes    map[string][]slab.Hole
	dishes   map[string][]slab.Dish
	phs      map[string][]slab.PH
	carbides map[string][]slab.Carbide
	others   map[string][]slab.Other
	scans    map[string][]slab.Scan
	air      acclimate.Log
	surfaces map[string][]acclimate.Surface
	wood     map[string][]wood.Row
	events   map[string][]Event
	signOffs map[string][]SignOff
	zones    map[string][]Area
	checks   map[string]instruments.Comparisons
	probes   map[string][]slab.Hole      // by instrument
	used     map[string]evidence.Working // in how many of them each single-use probe was
	points   hints.Points
	latest   time.Time // of any entry
}

func (j Job) byArea() *byArea {
	areas := lists.Each(j.Areas, func(a Area) string { return a.ID })
	r := &byArea{
		holes:    evidence.ByKey(j.Holes, func(r slab.Hole) string { return r.Area }),
		dishes:   evidence.ByKey(j.Dishes, func(r slab.Dish) string { return r.Area }),
		phs:      evidence.ByKey(j.PHs, func(r slab.PH) string { return r.Area }),
		carbides: evidence.ByKey(j.Carbides, func(r slab.Carbide) string { return r.Area }),
		others:   evidence.ByKey(j.Others, func(r slab.Other) string { return r.Area }),
		scans:    evidence.ByKey(j.Scans, func(r slab.Scan) string { return r.Area }),
		air:      acclimate.NewLog(j.Air),
		surfaces: evidence.ByKey(j.Surfaces, func(r acclimate.Surface) string { return r.Area }),
		wood:     evidence.ByKey(j.Wood, func(r wood.Row) string { return r.Area }),
		events:   evidence.ByKey(j.Events, func(r Event) string { return r.Area }),
		signOffs: evidence.ByKey(j.SignOffs, func(r SignOff) string { return r.Area }),
		zones:    evidence.ByKey(j.Areas, func(a Area) string { return a.Zone }),
		checks:   instruments.ComparisonsOf(j.Checks),
		probes:   evidence.ByKey(j.Holes, func(r slab.Hole) string { return r.Instrument }),
		points:   hints.PointsOf(j.Holes, j.Wood, areas),
		latest:   j.latest(),
	}
	r.used = instruments.UsedIn(r.probes, j.Instruments)
	return r
}

// zone are the areas that share the slab tests of an area, itself first.
func (r *byArea) zone(a Area) []Area {
	if evidence.Key(a.Zone) == "" {
		return []Area{a}
	}
	others := lists.Where(r.zones[evidence.Key(a.Zone)], func(b Area) bool { return !evidence.Same(b.ID, a.ID) })
	return append([]Area{a}, others...)
}

// here are the rows of an area and those of the whole site.
func here[T any](groups map[string][]T, area string) []T {
	mine, all := groups[evidence.Key(area)], groups[""]
	switch {
	case len(mine) == 0:
		return all
	case len(all) == 0:
		return mine
	}
	return slices.Concat(mine, all)
}

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
