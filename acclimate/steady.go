package acclimate

import (
	"fmt"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// steadyCheck asks whether a lot has settled. It only advises.
func steadyCheck() evidence.Check[Room] {
	return evidence.Check[Room]{
		ID: "flooring-steady", Judge: flooringSteady,
		Asks: fmt.Sprintf("are the means of each lot's last visit and of the nearest one that ended %s h or more before it "+
			"within %s point, and the last within %s points of the EMC of the mean air of air-range?",
			evidence.Hours(wood.Visit).Text(), tenths(steadyTenths).Text(), tenths(settledTenths).Text()),
		Default: fmt.Sprintf("%s and %s points", tenths(steadyTenths).Text(), tenths(settledTenths).Text()),
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
	found := evidence.Weigh(items, evidence.Acceptance{}, r.Boards.NoBoard())
	return found.Citing(r.Boards.Cited(found, true))
}

// How far a lot's mean may move between visits, and lie from the EMC of the
// air, in tenths of a point.
const (
	steadyTenths  = 5
	settledTenths = 15
)

func withinTenths(n int64) evidence.Limit {
	points := evidence.Stated("points", tenths(n), evidence.Points)
	return evidence.AtMost(evidence.Bound{}.Computed(points))
}

// changed is how far a lot's mean moved since the visit before.
func changed(lot wood.Lot, last, before wood.Span) []evidence.Item {
	it := evidence.Item{Name: lot.Title(), Limit: withinTenths(steadyTenths), Place: lot.FirstPlace()}
	it.Lack = firstLack(last.Lack, before.Lack)
	return asFar(it, last, before, "%s points between the mean of %s, %s %% MC, and that of the visit before, %s %% MC")
}

// settled is how far a lot's mean lies from the EMC of the air around it.
func settled(lot wood.Lot, last wood.Span, air evidence.Working, lack string) []evidence.Item {
	it := evidence.Item{Name: lot.Title(), Limit: withinTenths(settledTenths), Place: lot.FirstPlace()}
	it.Lack = firstLack(last.Lack, lack)
	return asFar(it, last, wood.Span{Low: air, High: air},
		"%s points between the mean of %s, %s %% MC, and the EMC of the air, %s %% MC")
}

func firstLack(lacks ...string) string {
	for _, lack := range lacks {
		if lack != "" {
			return lack
		}
	}
	return ""
}

// asFar is the distance of two means as judged values: the two most distant
// pairs where something was read twice at one time.
func asFar(it evidence.Item, a, b wood.Span, say string) []evidence.Item {
	if it.Lack != "" {
		return []evidence.Item{it}
	}
	items := []evidence.Item{move(it, a.High, b.Low, say)}
	if len(a.Each())+len(b.Each()) > 2 {
		items = append(items, move(it, a.Low, b.High, say))
	}
	return items
}

func move(it evidence.Item, a, b evidence.Working, say string) evidence.Item {
	points := evidence.Unsigned(evidence.Less(a, b))
	points.Unit = evidence.Points
	it = it.By(points)
	it.Says = fmt.Sprintf(say, it.Figure(), it.Name, a.Value.Short(), b.Value.Short())
	return it
}

// airEMC is the equilibrium moisture content of the mean air of the latest 24
// h, rounded once, to 0.1.
func (r Room) airEMC() (emc evidence.Working, lack string) {
	w, known := r.latestDay()
	if !known {
		return emc, noAir
	}
	var temps, rhs []evidence.Working
	if len(r.Air.Untimed()) > 0 {
		return emc, "an air row has no time"
	}
	for _, a := range r.Air.between(w.from, w.to) {
		if !a.Temp.Shown() || !a.Humidity().Shown() {
			return emc, "the air at " + a.ReadAt.Written + " has no temperature or no humidity"
		}
		temps = append(temps, evidence.Converted(evidence.Cell("temperature", a.Temp), evidence.Fahrenheit))
		rhs = append(rhs, evidence.Cell("humidity", a.RH))
	}
	emc, err := emcOf(evidence.MeanOf(temps...), evidence.MeanOf(rhs...))
	if err != nil {
		return emc, err.Error()
	}
	return emc.Called("EMC of the mean air"), ""
}
