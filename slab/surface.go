package slab

import (
	"firstboard/report/evidence"
)

// surfaceChecks are the checks of pH and of carbide samples, in report order.
func surfaceChecks() []evidence.Check[Floor] {
	advises := func(f Floor) bool { return f.advises(false) }
	return []evidence.Check[Floor]{
		{
			ID: "slab-ph", Deciding: true, Advises: advises, Judge: slabPH,
			Asks: "is the slab's pH within the range that a product states, at two spots at least?",
			Cite: evidence.Cite{Source: "the record; the two spots: common practice, no source", Standing: evidence.Practice},
		},
		{
			ID: "slab-cm", Deciding: true, Advises: advises, Judge: slabCM,
			Asks: "is every carbide reading within the limit that a product states, at two spots, or three above 50 m2?",
			Cite: evidence.Cite{Source: "the record; the number of spots: common practice, no source", Standing: evidence.Practice},
		},
	}
}

func phTime(r PH) evidence.Time           { return r.ReadAt }
func carbideTime(r Carbide) evidence.Time { return r.ReadAt }

// JudgedPH are the pH spots that count, with their judged rows.
func (f Floor) JudgedPH() []evidence.Judged[PH] {
	return evidence.Latest(standing(f, f.PHs, phTime), f.Wet, func(r PH) string { return r.Spot }, phTime)
}

// JudgedCarbides are the carbide spots that count, with their judged rows.
func (f Floor) JudgedCarbides() []evidence.Judged[Carbide] {
	return evidence.Latest(standing(f, f.Carbides, carbideTime), f.Wet, func(r Carbide) string { return r.Spot }, carbideTime)
}

func slabPH(f Floor) evidence.Finding {
	if f.NoPH != "" {
		return evidence.Unneeded("%s", f.NoPH)
	}
	spots := f.JudgedPH()
	usable, _ := evidence.TallyOf(spots, func(r PH) bool { return r.PH.Shown() && r.ReadAt.Shown() },
		func(r PH) evidence.Working { return evidence.Cell("spot", r.PH) })
	items := evidence.Items(spots, phTime, func(name string, r PH) evidence.Item {
		it := evidence.Measure("spot "+name, r.PH, f.PH)
		it.U = f.Instruments.U(r.Instrument, evidence.PH)
		return it
	})
	return few(evidence.Weigh(items, f.Acceptance, "no pH was read").Against(f.PH), len(usable), PHSpots)
}

func slabCM(f Floor) evidence.Finding {
	if f.NoCM != "" {
		return evidence.Unneeded("%s", f.NoCM)
	}
	spots := f.JudgedCarbides()
	usable, _ := evidence.TallyOf(spots, func(r Carbide) bool { return r.CM.Shown() && r.ReadAt.Shown() },
		func(r Carbide) evidence.Working { return evidence.Cell("spot", r.CM) })
	items := evidence.Items(spots, carbideTime, func(name string, r Carbide) evidence.Item {
		it := evidence.Measure("spot "+name, r.CM, f.CM)
		it.U = f.Instruments.U(r.Instrument, evidence.CM)
		return it
	})
	weighed := evidence.Weigh(items, f.Acceptance, "no carbide sample was read").Against(f.CM)
	if !f.Size.Shown() && weighed.Outcome == evidence.Met {
		weighed.Outcome, weighed.Reason = evidence.NotShown, "how many spots are needed cannot be told: the area's size is not recorded"
	}
	return few(weighed, len(usable), CarbidesNeeded(f.Size))
}

// PHSpots is how many spots of a slab are read for pH (practice).
const PHSpots = 2

// CarbidesNeeded is how many spots are sampled for carbide: 2, or 3 above 50 m2
// (practice). A blank size asks for 2 at least.
func CarbidesNeeded(size evidence.Reading) int {
	if size.Shown() && size.In(evidence.SquareM).Cmp(evidence.Whole(50)) > 0 {
		return 3
	}
	return 2
}

// few turns a finding that was met on too few spots to one that is not shown.
func few(f evidence.Finding, usable, needed int) evidence.Finding {
	if f.Outcome == evidence.Met && usable < needed {
		f.Outcome = evidence.NotShown
		f.Reason = evidence.Count(usable, "spot", "spots") + " usable; " + evidence.Count(needed, "is", "are") + " asked for"
	}
	return f
}
