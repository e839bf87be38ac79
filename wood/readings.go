package wood

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

func subfloorMC(f Floor) evidence.Finding {
	if f.NoSubfloor != "" {
		return evidence.Unneeded("%s", f.NoSubfloor)
	}
	items := slices.Concat(f.items(f.subfloor.recent, OfSubfloor+" piece", "", f.Subfloor)...)
	return evidence.Weigh(items, f.Acceptance, noSubfloor)
}

// spotOver is how many points over the median a subfloor piece may be.
const spotOver = 3

// subfloorSpots holds each piece against the median: where a piece was read
// twice at one time, its higher reading against the median of the lower ones.
func subfloorSpots(f Floor) evidence.Finding {
	if f.NoSubfloor != "" {
		return evidence.Unneeded("%s", f.NoSubfloor)
	}
	pieces := f.PieceItems(OfSubfloor, evidence.Limit{})
	limit := evidence.Limit{Lack: noSubfloor}
	mid, known := median(pieces)
	if known {
		over := evidence.Stated("points over it", evidence.Whole(spotOver), evidence.MC)
		limit = evidence.AtMost(evidence.Bound{}.Computed(evidence.Total(mid, over)))
	}
	items := slices.Concat(pieces...)
	for i, it := range items {
		items[i].Limit, items[i].U = limit, nil
		items[i].Says = fmt.Sprintf("%s, %s %% MC, beside a median of %s %% MC", it.Name, it.Written, mid.Value.Short())
	}
	return evidence.Weigh(items, evidence.Acceptance{}, noSubfloor)
}

// median is the middle of the pieces' readings.
func median(pieces [][]evidence.Item) (mid evidence.Working, known bool) {
	var values []evidence.Working
	for _, items := range pieces {
		usable := slices.DeleteFunc(slices.Clone(items), func(it evidence.Item) bool { return it.Lack != "" })
		if len(usable) > 0 {
			values = append(values, lowest(usable))
		}
	}
	if len(values) == 0 {
		return mid, false
	}
	slices.SortStableFunc(values, func(a, b evidence.Working) int { return a.Value.Cmp(b.Value) })
	n := len(values)
	return evidence.MeanOf(values[(n-1)/2 : n/2+1]...).Called("median"), true
}

func boardsMC(f Floor) evidence.Finding {
	if f.NoFlooring != "" {
		return evidence.Unneeded("%s", f.NoFlooring)
	}
	if !f.Flooring.Shown() {
		return evidence.Unneeded("no product states a moisture content for the flooring")
	}
	var items []evidence.Item
	for _, lot := range f.Lots() {
		items = append(items, f.eachBoard(lot)...)
	}
	return evidence.Weigh(items, f.Acceptance, f.NoBoard())
}

// eachBoard are the judged values of a lot's boards, or that water left it
// without any.
func (f Floor) eachBoard(lot Lot) []evidence.Item {
	if len(lot.Boards) == 0 {
		return []evidence.Item{{Name: lot.Title(), Limit: f.Flooring, Lack: evidence.WetSince}}
	}
	return slices.Concat(f.BoardItems(lot, f.Flooring)...)
}
