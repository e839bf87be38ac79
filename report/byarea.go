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
	checks   map[string][]instruments.Comparison
	probes   map[string][]slab.Hole // by instrument
	doubtful doubtful
	latest   time.Time // of any entry
}

func (j Job) byArea() *byArea {
	return &byArea{
		holes:    gathered(j.Holes, func(r slab.Hole) string { return r.Area }),
		dishes:   gathered(j.Dishes, func(r slab.Dish) string { return r.Area }),
		phs:      gathered(j.PHs, func(r slab.PH) string { return r.Area }),
		carbides: gathered(j.Carbides, func(r slab.Carbide) string { return r.Area }),
		others:   gathered(j.Others, func(r slab.Other) string { return r.Area }),
		scans:    gathered(j.Scans, func(r slab.Scan) string { return r.Area }),
		air:      acclimate.NewLog(j.Air),
		surfaces: gathered(j.Surfaces, func(r acclimate.Surface) string { return r.Area }),
		wood:     gathered(j.Wood, func(r wood.Row) string { return r.Area }),
		events:   gathered(j.Events, func(r Event) string { return r.Area }),
		signOffs: gathered(j.SignOffs, func(r SignOff) string { return r.Area }),
		zones:    gathered(j.Areas, func(a Area) string { return a.Zone }),
		checks:   gathered(j.Checks, func(r instruments.Comparison) string { return r.Instrument }),
		probes:   gathered(j.Holes, func(r slab.Hole) string { return r.Instrument }),
		doubtful: j.doubtful(),
		latest:   j.latest(),
	}
}

// zone are the areas that share the slab tests of an area, itself first.
func (r *byArea) zone(a Area) []Area {
	all := []Area{a}
	if evidence.Key(a.Zone) == "" {
		return all
	}
	for _, b := range r.zones[evidence.Key(a.Zone)] {
		if !evidence.Same(b.ID, a.ID) {
			all = append(all, b)
		}
	}
	return all
}

// gathered are rows by the key of a name, in their order. Rows that are all of
// one name are shared, not copied.
func gathered[T any](rows []T, name func(T) string) map[string][]T {
	groups := map[string][]T{}
	var last, key string
	keyOf := func(r T) string {
		if n := name(r); n != last {
			last, key = n, evidence.Key(n)
		}
		return key
	}
	counts := map[string]int{}
	for _, r := range rows {
		counts[keyOf(r)]++
	}
	if len(counts) == 1 {
		groups[key] = slices.Clip(rows)
		return groups
	}
	for _, r := range rows {
		key := keyOf(r)
		if groups[key] == nil {
			groups[key] = make([]T, 0, counts[key])
		}
		groups[key] = append(groups[key], r)
	}
	return groups
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
