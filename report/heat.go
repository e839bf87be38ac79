package report

import (
	"fmt"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
)

// heatRun is the check of a heated floor's run before it was read.
func heatRun() evidence.Check[Site] {
	usual := DefaultSettings().HeatRun
	return evidence.Check[Site]{
		ID: "heat-run", Deciding: true, Judge: heatedLong,
		Asks: "where the floor is heated: had the heating run at its design setpoint for " + usual.String() +
			" before the first judged slab, subfloor or flooring row?",
		Default: usual.String(),
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
	items := lists.Each(s.HeatedRows(), func(e instruments.Row) evidence.Item { return s.heated(e, limit) })
	return evidence.Weigh(items, evidence.Acceptance{}, "there is no judged reading of slab, subfloor or flooring")
}

// heated is how long the heating had run when a row began.
func (s Site) heated(e instruments.Row, limit evidence.Limit) evidence.Item {
	it := evidence.Item{Name: e.What, Limit: limit, Place: e.Place}
	if !e.From.Shown() {
		it.Lack = "when it began is not recorded"
		return it
	}
	it = it.By(evidence.HoursBetween(s.Area.HeatOnSince, e.From, evidence.Shortest).Called(e.What))
	it.Says = fmt.Sprintf("the heating had run for %s h when %s began", it.Figure(), e.What)
	return it
}

// Unheated says whether a row was read before the heating of the floor had run
// for long enough.
func (s Site) Unheated(r instruments.Row) bool {
	run := s.Area.HeatOnSince
	return s.Area.RadiantHeat == "yes" && run.Shown() &&
		evidence.Hours(evidence.Shortest(run, r.From)).Cmp(s.Job.Settings.HeatRun.Exact()) < 0
}
