package acclimate

import "firstboard/report/evidence"

// serviceCheck asks whether the floor may live in its service climate.
func serviceCheck() evidence.Check[Room] {
	return evidence.Check[Room]{
		ID: "climate-range", Deciding: true, Judge: climateRange,
		Asks: "does every period of the service climate lie in the air bounds that the flooring states?",
		Cite: evidence.Cite{Source: "the record", Standing: evidence.ByHand},
	}
}

func climateRange(r Room) evidence.Finding {
	if !r.StatedTemp.Shown() && !r.StatedRH.Shown() {
		return evidence.Unneeded("the flooring states no bounds for the air")
	}
	var items []evidence.Item
	for _, p := range r.Service {
		name := "period " + p.Name + " of climate " + p.Climate
		if r.StatedTemp.Shown() {
			items = append(items, lives(evidence.Measure(name, p.Temp, r.StatedTemp)))
		}
		if r.StatedRH.Shown() {
			items = append(items, lives(evidence.Measure(name, p.RH, r.StatedRH)))
		}
	}
	return evidence.Weigh(items, evidence.Acceptance{}, noPeriods)
}

func lives(it evidence.Item) evidence.Item {
	if it.Says == "" {
		it.Says = it.Name + " is at " + it.Written + " " + string(it.Limit.Unit())
	}
	return it
}
