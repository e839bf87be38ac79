package slab

import (
	"fmt"

	"firstboard/report/evidence"
)

// surfaceChecks are the checks of pH and of carbide samples, in report order.
func surfaceChecks() []evidence.Check[Floor] {
	return []evidence.Check[Floor]{
		{
			ID: "slab-ph", Deciding: true, Judge: slabPH,
			Advises: func(f Floor) bool { return f.Loose && f.NoPH != "" },
			Asks: fmt.Sprintf("is every pH within the range that a product states, at %d spots at least? One under %s shows nothing",
				PHSpots, LeastPH().Written),
			Cite: evidence.Cite{
				Source:   "the record; the number of spots: common practice, no source",
				Standing: evidence.Practice,
			},
		},
		{
			ID: "slab-cm", Deciding: true, Judge: slabCM,
			Advises: func(f Floor) bool { return f.Loose && f.NoCM != "" },
			Asks: fmt.Sprintf("is every carbide reading within the limit that a product states, at %d spots, or %d above %s?",
				fewCarbides, manyCarbides, wideFloor()),
			Cite: evidence.Cite{
				Source:   "the record; the number of spots: common practice, no source",
				Standing: evidence.Practice,
			},
		},
	}
}

// LeastPH is the least pH of a concrete surface (practice).
func LeastPH() evidence.Reading { return evidence.Typed("5", evidence.PH) }

func slabPH(f Floor) evidence.Finding {
	if f.NoPH != "" {
		return evidence.Unneeded("%s", f.NoPH)
	}
	spots := f.rows().phs
	usable, _ := evidence.TallyOf(spots.judged(), func(r PH) bool { return r.PH.Shown() && r.ReadAt.Shown() },
		func(r PH) evidence.Working { return evidence.Cell("spot", r.PH) })
	items := append(spots.items(phTable(), f.alkalinity), spots.recents(phTable(), f.alkalinity)...)
	return few(evidence.Weigh(items, f.Acceptance, "no pH was read").Against(f.PH), len(usable), PHSpots)
}

func (f Floor) alkalinity(name string, r PH) evidence.Item {
	it := evidence.Measure("spot "+name, r.PH, f.PH)
	it.U = f.Instruments.U(r.Instrument, evidence.PH)
	if r.PH.Shown() && r.PH.Exact().Cmp(LeastPH().Exact()) < 0 {
		it.Lack = fmt.Sprintf("it read %s, and no concrete reads under %s: the meter or its paper failed", r.PH,
			LeastPH())
	}
	return it
}

func slabCM(f Floor) evidence.Finding {
	if f.NoCM != "" {
		return evidence.Unneeded("%s", f.NoCM)
	}
	spots := f.rows().carbides
	usable, _ := evidence.TallyOf(spots.judged(), func(r Carbide) bool { return r.CM.Shown() && r.ReadAt.Shown() },
		func(r Carbide) evidence.Working { return evidence.Cell("spot", r.CM) })
	items := append(spots.items(carbideTable(), f.carbide), spots.recents(carbideTable(), f.carbide)...)
	weighed := evidence.Weigh(items, f.Acceptance, "no carbide sample was read").Against(f.CM)
	if !size(f.Sizes).Shown() {
		return doubt(weighed, "how many spots are needed cannot be told: the area's size is not recorded")
	}
	return few(weighed, len(usable), CarbidesNeeded(f.Sizes...))
}

func (f Floor) carbide(name string, r Carbide) evidence.Item {
	it := evidence.Measure("spot "+name, r.CM, f.CM)
	it.U = f.Instruments.U(r.Instrument, evidence.CM)
	return it
}

// PHSpots is how many spots of a slab are read for pH (practice).
const PHSpots = 2

// How many spots are sampled for carbide (practice).
const (
	fewCarbides  = 2
	manyCarbides = 3
)

// wideFloor is the size above which more spots are sampled: 50 m2 (practice).
func wideFloor() evidence.Reading { return evidence.Typed("50", evidence.SquareM) }

// CarbidesNeeded is how many spots are sampled for carbide: 2, or 3 above 50 m2
// (practice). A blank size asks for 2 at least.
func CarbidesNeeded(sizes ...evidence.Reading) int {
	whole := size(sizes)
	if whole.Shown() && evidence.Converted(whole, evidence.SquareM).Value.Cmp(wideFloor().Exact()) > 0 {
		return manyCarbides
	}
	return fewCarbides
}

// few turns a finding that was met on too few spots to one that is not shown.
func few(f evidence.Finding, usable, needed int) evidence.Finding {
	if usable >= needed {
		return f
	}
	return doubt(f, evidence.Count(usable, "spot", "spots")+" usable; "+evidence.Count(needed, "is",
		"are")+" asked for")
}

// doubt turns a finding that was met to one that is not shown.
func doubt(f evidence.Finding, why string) evidence.Finding {
	if f.Outcome == evidence.Met {
		f.Outcome, f.Reason = evidence.NotShown, why
		f.Worked.Unusable++
	}
	return f
}
