package acclimate

import (
	"fmt"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// flooringChecks are the checks of a lot against the climate it will live in,
// in report order.
func flooringChecks() []evidence.Check[Room] {
	return []evidence.Check[Room]{
		{
			ID: "flooring-target", Deciding: true, Judge: flooringTarget,
			Advises: func(r Room) bool { return r.TargetAdvises },
			Asks:    "is each lot's mean within " + DefaultTolerance().String() + " of the target?",
			Default: DefaultTolerance().String(),
			Cite: evidence.Cite{
				Source:   "FPL Report 1655 (the midpoint); the " + DefaultTolerance().Written + ": common practice, no source",
				Standing: evidence.Published,
			},
		},
		{
			ID: "flooring-spread", Deciding: true, Judge: flooringSpread,
			Asks: fmt.Sprintf("do at least %d in %d boards of each lot lie between %s and %s of the target?", outsideIn-1, outsideIn,
				tenths(leastTenths).Text(), tenths(mostTenths).Text()),
			Default: fmt.Sprintf("%s to %s of the target", tenths(leastTenths).Text(), tenths(mostTenths).Text()),
			Cite: evidence.Cite{
				Source:   fmt.Sprintf("EN 14298 family (the spread); 1 in %d: common practice, no source", outsideIn),
				Standing: evidence.Published,
			},
		},
	}
}

// DefaultTolerance is how far from the target a lot's mean may lie (common
// practice, no source).
func DefaultTolerance() evidence.Reading { return evidence.Typed("2.0", evidence.Points) }

// onBoards answers a check of flooring against the target.
func (r Room) onBoards(judge func(lots []wood.Lot, target Target) evidence.Finding) evidence.Finding {
	if r.Boards.NoFlooring != "" {
		return evidence.Unneeded("%s", r.Boards.NoFlooring)
	}
	target, lots := TargetOf(r.Service), r.Boards.Lots()
	if len(lots) == 0 {
		return evidence.Unshown("%s", r.Boards.NoBoard())
	}
	if target.Lack != "" {
		return evidence.Unshown("the target is not known: %s", target.Lack)
	}
	return judge(lots, target)
}

func flooringTarget(r Room) evidence.Finding {
	return r.onBoards(func(lots []wood.Lot, target Target) evidence.Finding {
		limit := r.around(target)
		var items []evidence.Item
		for _, lot := range lots {
			items = append(items, r.onTarget(lot, limit, target)...)
		}
		found := evidence.Weigh(items, r.Acceptance, r.Boards.NoBoard())
		return found.Citing(r.Boards.Cited(found, false))
	})
}

// around is the tolerance either side of the target.
func (r Room) around(t Target) evidence.Limit {
	tolerance := evidence.Cell("tolerance", r.Tolerance.Number)
	return evidence.Limit{
		Least: r.Tolerance.Computed(evidence.Less(t.Mid, tolerance)),
		Most:  r.Tolerance.Computed(evidence.Total(t.Mid, tolerance)),
	}
}

// onTarget is a lot's mean against the tolerance around the target; a mean is
// good to 1 point (Wood Handbook ch. 13).
func (r Room) onTarget(lot wood.Lot, limit evidence.Limit, target Target) []evidence.Item {
	it := evidence.Item{Name: lot.Title(), Limit: limit, U: evidence.Within(evidence.Whole(1)), Place: lot.FirstPlace()}
	mean := r.Boards.Mean(lot)
	if it.Lack = mean.Lack; it.Lack != "" {
		return []evidence.Item{it}
	}
	var items []evidence.Item
	for _, w := range mean.Each() {
		one := it.By(w)
		one.Says = fmt.Sprintf("the mean of %s, %s, beside a target of %s %% MC", lot.Title(), one.Amount(),
			target.Mid.Value.Text())
		items = append(items, one)
	}
	return items
}
