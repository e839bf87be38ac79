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

// Cautions are what a person must know before acting on a decision or a plan.
// They travel with both.
func Cautions() []Caution {
	return []Caution{
		{"What comes first", []string{
			"Local codes, the manufacturers' instructions and licensed practice come before anything written here.",
			"A result speaks only for the places and times tested (ASTM F2170, published).",
		}},
		{"Drilling into a slab", []string{
			"On a post-tensioned slab locate the tendons and have the engineer's agreement in writing before the first hole: a cut tendon can kill.",
			"Find reinforcement, heating pipes and cables before drilling.",
			"Silica dust harms the lungs for good: use a shroud and a HEPA vacuum, and wear a fitted respirator.",
			"Do not drill through the slab: the vapor retarder below must not be pierced.",
		}},
		{"Old floors", []string{
			"Old flooring, adhesives and levelers may hold asbestos, and old paint lead. " +
				"Do not sand, scrape or drill them until a licensed person has sampled them.",
		}},
		{"Wet cement and chemicals", []string{
			"Wet cement burns skin and eyes: wear gloves and goggles, and wash at once.",
			"Calcium chloride irritates and draws water: keep it off skin and out of the test area after weighing.",
			"A carbide test makes flammable gas under pressure: follow its manufacturer's instructions, " +
				"release it outdoors, away from flame and sparks.",
		}},
		{"Electricity, heat and air", []string{
			"Keep cords and power tools off wet slabs, and plug them into a ground-fault circuit interrupter (GFCI).",
			"A direct-fired heater gives off carbon monoxide and water: vent it, and do not work beside it in a closed room.",
			"A crawl space can hold bad air, live wiring and sharp metal: ventilate it, and do not enter alone.",
		}},
	}
}
