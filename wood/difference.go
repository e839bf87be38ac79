package wood

import (
	"fmt"

	"firstboard/report/evidence"
)

// apart is a lot's mean less the subfloor's mean, without sign, as judged
// values: the two most distant pairs where something was read twice at once.
func (f Floor) apart(lot Lot, boards, sub Span) []evidence.Item {
	it := evidence.Item{Name: lot.Title(), Limit: f.Difference, U: f.meansApart(lot), Place: lot.FirstPlace()}
	switch {
	case boards.Lack != "":
		it.Lack = boards.Lack
	case sub.Lack != "":
		it.Lack = sub.Lack
	default:
		return []evidence.Item{
			f.pair(it, boards.High, sub.Low), f.pair(it, boards.Low, sub.High),
		}
	}
	return []evidence.Item{it}
}

func (f Floor) pair(it evidence.Item, boards, sub evidence.Exact) evidence.Item {
	ends := f.Difference.Ends()
	it.Value = boards.Sub(sub).Abs()
	it.Written = it.Value.Text(ends...)
	it.Says = fmt.Sprintf("%s averages %s %% MC and the subfloor %s %% MC: %s points apart",
		it.Name, boards.Text(), sub.Text(), it.Written)
	return it
}

// meansApart is the uncertainty of a difference of two means: 0.5 point by one
// instrument, 1.4 points by several (each mean within 1 point, Wood Handbook
// ch. 13, taken together).
func (f Floor) meansApart(lot Lot) *evidence.Uncertainty {
	used := map[string]bool{}
	for _, things := range [][]evidence.Judged[Row]{lot.Boards, f.Pieces(OfSubfloor)} {
		for _, thing := range things {
			for _, r := range thing.Rows {
				used[evidence.Key(r.Instrument)] = true
			}
		}
	}
	if len(used) == 1 && !used[""] {
		return evidence.Within(evidence.Ratio(1, 2))
	}
	return evidence.Within(evidence.Ratio(7, 5))
}

// FirstPlace is where the first of the lot's boards was read.
func (lot Lot) FirstPlace() evidence.Place {
	for _, board := range lot.Boards {
		for _, r := range board.Rows {
			return r.Place
		}
	}
	return nil
}
