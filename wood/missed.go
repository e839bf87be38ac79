package wood

import "firstboard/report/evidence"

// NotReadAgain are the boards read in the week before their lot's last visit,
// outside one of the limits and not read again: what is installed of them was
// not shown.
func (f Floor) NotReadAgain(limits ...evidence.Limit) []evidence.Item {
	var all []evidence.Item
	for _, lot := range f.lots {
		for _, board := range lot.missed {
			if it, out := outside(f.boardValues(lot, board, limits)); out {
				all = append(all, it)
			}
		}
	}
	return all
}

// boardValues are the values of one board against each of several limits.
func (f Floor) boardValues(lot Lot, board evidence.Judged[Row], limits []evidence.Limit) []evidence.Item {
	var all []evidence.Item
	for _, limit := range limits {
		all = append(all, f.items([]evidence.Judged[Row]{board}, "board", lot.ofLot(), limit)[0]...)
	}
	return all
}

func outside(items []evidence.Item) (evidence.Item, bool) {
	for _, it := range items {
		if it.Lack == "" && it.Breaks(evidence.Acceptance{}) {
			return it, true
		}
	}
	return evidence.Item{}, false
}
