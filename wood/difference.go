package wood

import (
	"cmp"
	"fmt"

	"firstboard/report/evidence"
)

func difference(f Floor) evidence.Finding {
	if f.NoDifference != "" {
		return evidence.Unneeded("%s", f.NoDifference)
	}
	sub, under := f.MeanOfSubfloor(), meters(f.Pieces(OfSubfloor))
	var items []evidence.Item
	for _, lot := range f.Lots() {
		items = append(items, f.apart(lot, f.Mean(lot), sub, meansApart(under, meters(lot.Boards)))...)
	}
	found := evidence.Weigh(items, f.Acceptance, f.NoBoard())
	return found.Citing(append(f.Cited(found, false), evidence.Rows(f.Pieces(OfSubfloor), rowPlace)...))
}

// apart is a lot's mean less the subfloor's mean, without sign, as judged
// values: the two most distant pairs where something was read twice at once.
func (f Floor) apart(lot Lot, boards, sub Span, u *evidence.Uncertainty) []evidence.Item {
	it := evidence.Item{Name: lot.Title(), Limit: f.Difference, U: u, Place: lot.FirstPlace()}
	if it.Lack = cmp.Or(boards.Lack, sub.Lack); it.Lack != "" {
		return []evidence.Item{it}
	}
	items := []evidence.Item{pair(it, boards.High, sub.Low)}
	if len(boards.Each())+len(sub.Each()) > 2 {
		items = append(items, pair(it, boards.Low, sub.High))
	}
	return items
}

func pair(it evidence.Item, boards, sub evidence.Working) evidence.Item {
	apart := evidence.Unsigned(evidence.Less(boards, sub))
	apart.Unit = evidence.Points
	it = it.By(apart)
	it.Says = fmt.Sprintf("%s points between the mean of %s, %s %% MC, and the mean of the subfloor, %s %% MC",
		it.Figure(), it.Name, boards.Value.Short(), sub.Value.Short())
	return it
}

// meters are the instruments that read things; a row without one counts as
// one of its own.
func meters(things []evidence.Judged[Row]) map[string]bool {
	used := map[string]bool{}
	for _, thing := range things {
		for _, r := range thing.Rows {
			used[evidence.Key(r.Instrument)] = true
		}
	}
	return used
}

// meansApart is the uncertainty of a difference of two means: 0.5 point by one
// instrument, 1.4 points by several (each mean within 1 point, Wood Handbook
// ch. 13, taken together).
func meansApart(under, boards map[string]bool) *evidence.Uncertainty {
	one := len(under) == 1 && len(boards) == 1
	for meter := range boards {
		if one && under[meter] && meter != "" {
			return evidence.Within(evidence.Ratio(1, 2))
		}
	}
	return evidence.Within(evidence.Ratio(7, 5))
}
