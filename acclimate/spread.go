package acclimate

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
	"firstboard/wood"
)

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

// The least and the most that a board may hold, in tenths of the target.
const (
	leastTenths = 7
	mostTenths  = 13
)

func tenths(n int64) evidence.Exact { return evidence.Ratio(n, 10) }

// spreadOf is 0.7 to 1.3 of the target.
func spreadOf(t Target) evidence.Limit {
	part := func(n int64) evidence.Bound {
		of := evidence.Stated("share of the target", tenths(n), evidence.None)
		return evidence.Bound{}.Computed(evidence.Times(t.Mid, of, evidence.MC))
	}
	return evidence.Limit{Least: part(leastTenths), Most: part(mostTenths)}
}

// outsideIn is of how many boards one may lie outside the spread.
const outsideIn = 20

// spread counts a lot's boards outside the limit: more than 1 in 20 is over,
// whatever the unusable ones may be.
func (r Room) spread(lot wood.Lot, limit evidence.Limit) evidence.Finding {
	boards := r.Boards.BoardItems(lot, limit)
	f := evidence.Weigh(asRead(boards), evidence.Acceptance{}, lot.Title()+": "+evidence.WetSince).Against(limit)
	if len(boards) == 0 {
		return f
	}
	var values []evidence.Working
	for _, items := range boards {
		if w := farthest(items); w.Shown() {
			values = append(values, w)
		}
	}
	unusable := len(boards) - len(values)
	f.Worked.Room, f.Worked.Unusable = evidence.Working{}, unusable
	told := fmt.Sprintf("%s of %s", evidence.Count(len(boards), "board", "boards"), lot.Title())
	if len(values) > 0 {
		out := boardsOutside(values, limit)
		all := evidence.Total(evidence.CountOf(evidence.Pieces, values...),
			evidence.Stated("unusable", evidence.Whole(unusable), evidence.Pieces))
		most := evidence.DividedBy(all, evidence.Stated("1 in", evidence.Whole(outsideIn), evidence.None),
			evidence.Pieces)
		f.Worked.Room = evidence.Less(most, out)
		told = fmt.Sprintf("%s of %s outside %s", out.Value.Text(), told, limit)
	}
	f.Outcome = f.Worked.Outcome()
	f.Reason = told + unusableToo(unusable) + "; " + f.Reason
	return f
}

func unusableToo(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", %d unusable", n)
}

// boardsOutside is how many values lie outside a limit.
func boardsOutside(values []evidence.Working, l evidence.Limit) evidence.Working {
	inside := evidence.Inside(evidence.Pieces, l.Least.Work, l.Most.Work, values...)
	return evidence.Less(evidence.CountOf(evidence.Pieces, values...), inside)
}

// farthest is the value by which a board that was read twice at one time is
// counted: one outside, else none where one is unusable, else the first.
func farthest(items []evidence.Item) evidence.Working {
	for _, it := range items {
		if it.Breaks(evidence.Acceptance{}) {
			return it.Work
		}
	}
	if slices.ContainsFunc(items, func(it evidence.Item) bool { return it.Lack != "" }) {
		return evidence.Working{}
	}
	return items[0].Work
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

// BoardsNotReadAgain are the boards of the week before a lot's last visit that
// lay outside the manufacturer's range or the spread around the target, and
// were not read again.
func (r Room) BoardsNotReadAgain() []evidence.Item {
	if r.Boards.NoFlooring != "" {
		return nil
	}
	limits := []evidence.Limit{r.Boards.Flooring}
	if target := TargetOf(r.Service); target.Lack == "" {
		limits = append(limits, spreadOf(target))
	}
	return r.Boards.NotReadAgain(limits...)
}
