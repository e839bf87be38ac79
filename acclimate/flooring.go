package acclimate

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

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
			Asks:    "is each lot's mean within 2.0 points of the target?",
			Default: "2.0 points",
			Cite:    evidence.Cite{Source: "FPL Report 1655 (the midpoint); the 2.0: common practice, no source", Standing: evidence.Published},
		},
		{
			ID: "flooring-spread", Deciding: true, Judge: flooringSpread,
			Asks:    "do at least 19 in 20 boards of each lot lie between 0.7 and 1.3 of the target?",
			Default: "0.7 to 1.3 of the target",
			Cite:    evidence.Cite{Source: "EN 14298 family (the spread); 1 in 20: common practice, no source", Standing: evidence.Published},
		},
	}
}

// onBoards answers a check of flooring against the target.
func (r Room) onBoards(judge func(lots []wood.Lot, target Target) evidence.Finding) evidence.Finding {
	if r.Boards.NoFlooring != "" {
		return evidence.Unneeded("%s", r.Boards.NoFlooring)
	}
	target, lots := TargetOf(r.Service), r.Boards.Lots()
	switch {
	case len(lots) == 0:
		return evidence.Unshown("no board was read")
	case target.Lack != "":
		return evidence.Unshown("the target is not known: %s", target.Lack)
	}
	return judge(lots, target)
}

func flooringTarget(r Room) evidence.Finding {
	return r.onBoards(func(lots []wood.Lot, target Target) evidence.Finding {
		var items []evidence.Item
		for _, lot := range lots {
			items = append(items, wood.MeanItems(r.Boards.Mean(lot), func(mean evidence.Exact) evidence.Item {
				return r.onTarget(lot, mean, target)
			})...)
		}
		return evidence.Weigh(items, r.Acceptance, "no board was read")
	})
}

// around is the tolerance either side of the target.
func (r Room) around(t Target) evidence.Limit {
	least, most := r.Tolerance, r.Tolerance
	least.Number = evidence.Computed(t.Mid.Sub(r.Tolerance.Number.Value), evidence.MC)
	most.Number = evidence.Computed(t.Mid.Add(r.Tolerance.Number.Value), evidence.MC)
	return evidence.Limit{Least: least, Most: most}
}

// onTarget is a lot's mean against the tolerance around the target; a mean is
// good to 1 point (Wood Handbook ch. 13).
func (r Room) onTarget(lot wood.Lot, mean evidence.Exact, target Target) evidence.Item {
	limit := r.around(target)
	written := mean.Text(limit.Ends()...)
	return evidence.Item{
		Name: lot.Title(), Value: mean, Written: written, Limit: limit,
		U:     evidence.Within(evidence.Whole(1)),
		Says:  fmt.Sprintf("%s averages %s %% MC; the target is %s %% MC", lot.Title(), written, target.Mid),
		Place: lot.FirstPlace(),
	}
}

func flooringSpread(r Room) evidence.Finding {
	return r.onBoards(func(lots []wood.Lot, target Target) evidence.Finding {
		limit := spreadOf(target)
		var each []evidence.Finding
		for _, lot := range lots {
			each = append(each, r.spread(lot, limit))
		}
		return evidence.Worst(each...)
	})
}

func spreadOf(t Target) evidence.Limit {
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Computed(t.Mid.Mul(decimal.New(7, -1)), evidence.MC)},
		Most:  evidence.Bound{Number: evidence.Computed(t.Mid.Mul(decimal.New(13, -1)), evidence.MC)},
	}
}

// spread counts a lot's boards outside the limit: more than 1 in 20 fails,
// whatever the unusable ones may be.
func (r Room) spread(lot wood.Lot, limit evidence.Limit) evidence.Finding {
	simple := evidence.Acceptance{}
	boards := r.Boards.BoardItems(lot, limit)
	outside, unusable := 0, 0
	for _, items := range boards {
		switch {
		case slices.ContainsFunc(items, func(it evidence.Item) bool { return it.Breaks(simple) }):
			outside++
		case slices.ContainsFunc(items, func(it evidence.Item) bool { return it.Lack != "" }):
			unusable++
		}
	}
	f := evidence.Weigh(asRead(boards), simple, r.Boards.Mean(lot).Lack).Against(limit)
	f.Reason = fmt.Sprintf("%s: %d of %s outside %s and %d unusable; %s",
		lot.Title(), outside, evidence.Count(len(boards), "board", "boards"), limit, unusable, f.Reason)
	switch {
	case outside*20 > len(boards):
		f.Outcome = evidence.NotMet
	case unusable > 0 || len(boards) == 0:
		f.Outcome = evidence.NotShown
	default:
		f.Outcome = evidence.Met
	}
	return f
}

// asRead are board values without their uncertainty: spreads are compared as
// recorded.
func asRead(boards [][]evidence.Item) []evidence.Item {
	items := slices.Concat(boards...)
	for i := range items {
		items[i].U = nil
	}
	return items
}
