package acclimate

import (
	"fmt"
	"strconv"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// steadyCheck asks whether a lot has settled. It only advises.
func steadyCheck() evidence.Check[Room] {
	return evidence.Check[Room]{
		ID: "flooring-steady", Judge: flooringSteady,
		Asks:    "are the means of each lot's last visit and of the nearest one that ended 72 h or more before it within 0.5 point, and the last within 1.5 points of the EMC of the latest 24 h of air?",
		Default: "0.5 and 1.5 points",
		Cite:    evidence.Cite{Source: "common practice, no source", Standing: evidence.Practice},
	}
}

func flooringSteady(r Room) evidence.Finding {
	if r.Boards.NoFlooring != "" {
		return evidence.Unneeded("%s", r.Boards.NoFlooring)
	}
	air, lack := r.airEMC()
	var items []evidence.Item
	for _, lot := range r.Boards.Lots() {
		last, before := r.Boards.Mean(lot), r.Boards.MeanBefore(lot)
		items = append(items, changed(lot, last, before)...)
		items = append(items, settled(lot, last, air, lack)...)
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "no board was read")
}

// changed is how far a lot's mean moved since the visit before.
func changed(lot wood.Lot, last, before wood.Span) []evidence.Item {
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("0.5", evidence.Points)})
	it := evidence.Item{Name: lot.Title(), Limit: limit, Place: lot.FirstPlace()}
	if it.Lack = last.Lack; it.Lack == "" {
		it.Lack = before.Lack
	}
	if it.Lack != "" {
		return []evidence.Item{it}
	}
	return []evidence.Item{
		move(it, last.High, before.Low, "%s averages %s %% MC and averaged %s %% MC at the visit before: %s points"),
		move(it, last.Low, before.High, "%s averages %s %% MC and averaged %s %% MC at the visit before: %s points"),
	}
}

// settled is how far a lot's mean lies from the EMC of the air around it.
func settled(lot wood.Lot, last wood.Span, air evidence.Exact, lack string) []evidence.Item {
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("1.5", evidence.Points)})
	it := evidence.Item{Name: lot.Title(), Limit: limit, Place: lot.FirstPlace()}
	if it.Lack = last.Lack; it.Lack == "" {
		it.Lack = lack
	}
	if it.Lack != "" {
		return []evidence.Item{it}
	}
	say := "%s averages %s %% MC and the EMC of the air is %s %% MC: %s points"
	return []evidence.Item{move(it, last.High, air, say), move(it, last.Low, air, say)}
}

func move(it evidence.Item, a, b evidence.Exact, say string) evidence.Item {
	it.Value = a.Sub(b).Abs()
	it.Written = it.Value.Text(it.Limit.Ends()...)
	it.Says = fmt.Sprintf(say, it.Name, a.Text(), b.Text(), it.Written)
	return it
}

// airEMC is the equilibrium moisture content of the mean air of the latest 24
// h, rounded once, to 0.1.
func (r Room) airEMC() (emc evidence.Exact, lack string) {
	w, known := r.latestDay()
	if !known {
		return emc, noAir
	}
	var temps, rhs []evidence.Exact
	if len(r.Air.Untimed()) > 0 {
		return emc, "an air row has no time"
	}
	for _, a := range r.Air.between(w.from, w.to) {
		if !a.Temp.Shown() || !a.Humidity().Shown() {
			return emc, "the air at " + a.ReadAt.Written + " has no temperature or no humidity"
		}
		temps, rhs = append(temps, a.Temp.In(evidence.Celsius)), append(rhs, a.RH.Exact())
	}
	x, err := wood.EMC(evidence.Mean(temps).Float(), evidence.Mean(rhs).Float())
	if err != nil {
		return emc, err.Error()
	}
	return evidence.Of(decimal.RequireFromString(strconv.FormatFloat(x, 'f', 1, 64))), ""
}
