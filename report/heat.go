package report

import (
	"fmt"

	"firstboard/report/evidence"
)

// heatRun is the check of a heated floor's run before it was read.
func heatRun() evidence.Check[Site] {
	return evidence.Check[Site]{
		ID: "heat-run", Deciding: true, Judge: heatedLong,
		Asks: "where the floor is heated: had the heating run at its design setpoint for 72 h " +
			"before the first judged slab, subfloor or flooring row?",
		Default: "72 h",
		Cite: evidence.Cite{
			Source:   "common practice, no source (texts say 72 h to 14 days)",
			Standing: evidence.Practice,
		},
	}
}

func heatedLong(s Site) evidence.Finding {
	if s.Area.RadiantHeat != "yes" {
		return evidence.Unneeded("the area is not heated")
	}
	limit := evidence.AtLeast(s.Job.Settings.Bound("Heat run (h)"))
	if !s.Area.HeatOnSince.Shown() {
		return evidence.Unshown("since when the heating has run is not recorded").Against(limit)
	}
	var items []evidence.Item
	for _, e := range append(s.baseRows(), s.subfloorRows()...) {
		items = append(items, s.heated(e, limit))
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "there is no judged reading of slab, subfloor or flooring")
}

// heated is how long the heating had run when a row began.
func (s Site) heated(e entry, limit evidence.Limit) evidence.Item {
	it := evidence.Item{Name: e.what, Limit: limit, Place: e.place}
	if !e.from.Shown() {
		it.Lack = "when it began is not recorded"
		return it
	}
	it = it.By(evidence.HoursBetween(s.Area.HeatOnSince, e.from, evidence.Shortest).Called(e.what))
	it.Says = fmt.Sprintf("the heating had run for %s h when %s began", it.Figure(), e.what)
	return it
}
