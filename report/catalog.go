package report

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report/ahead"
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

// Statement is all that the outputs for people say of a judged record.
type Statement struct {
	Job       Job
	Record    string // name of the record
	SHA256    string // of the record
	Tool      string // name and version
	Seal      string // of the record and the decisions
	Decisions []Decision
	Advice    []ahead.Advice // of the same areas; none where nobody gave any
	Rules     []Rule
	Limits    []limits.Line
	Cautions  []Caution
}

// Rule is one check of the catalog as the outputs list it.
type Rule struct {
	ID       string
	Asks     string
	Default  string // the limit where no product states one; empty for none
	Cite     evidence.Cite
	Deciding bool
}

// LimitLines are the limits in force for every area, whose they are, where
// they were typed, and what was looked up and not used.
func LimitLines(all []Decision) []limits.Line {
	return slices.Concat(lists.Each(all, func(d Decision) []limits.Line { return d.Site.Floor().Lines() })...)
}

// Caution is what travels with every workbook and plan under one heading.
type Caution struct {
	Heading   string
	Sentences []string
}
