package report

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// Order is the order of the checks, everywhere.
func Order() []string {
	return []string{
		"limits-known", "grade", "retarder", "slab-age",
		"air-range", "air-held", "air-usual", "surface-dew",
		"slab-holes", "slab-edge", "slab-depth", "slab-wait", "slab-temp", "slab-rh",
		"mver-dishes", "mver-time", "mver-rate", "slab-ph", "slab-cm", "other-tests", "scan-probed",
		"heat-run", "surface-max", "joists-dry",
		"subfloor-count", "subfloor-mc", "subfloor-spots",
		"flooring-count", "flooring-mc", "flooring-target", "flooring-spread", "flooring-steady", "wood-difference",
		"climate-range", "calibration", "probe-check", "reading-age",
	}
}

// Catalog is every check, in order, put to a site.
func Catalog() []evidence.Check[Site] {
	all := slices.Concat(
		over(acclimate.Checks(), func(s Site) acclimate.Room { return s.Room }),
		over(slab.Checks(), func(s Site) slab.Floor { return s.Slab }),
		over(wood.Checks(), func(s Site) wood.Floor { return s.Wood }),
		over(instruments.Checks(), func(s Site) instruments.Readings { return s.Readings }),
		over(limits.Checks(), Site.Floor),
		[]evidence.Check[Site]{heatRun()},
	)
	order := Order()
	slices.SortStableFunc(all, func(a, b evidence.Check[Site]) int {
		return slices.Index(order, a.ID) - slices.Index(order, b.ID)
	})
	return all
}

func over[T any](checks []evidence.Check[T], part func(Site) T) []evidence.Check[Site] {
	return lists.Each(checks, func(c evidence.Check[T]) evidence.Check[Site] { return evidence.Over(c, part) })
}

// Rules are the checks as the outputs list them.
func Rules() []Rule {
	return lists.Each(Catalog(), func(c evidence.Check[Site]) Rule {
		return Rule{ID: c.ID, Asks: c.Asks, Default: c.Default, Cite: c.Cite, Deciding: c.Deciding}
	})
}
