package wood

import (
	"firstboard/report/evidence"
)

// MeanBefore is the mean of the nearest visit to a lot that ended 72 h or more
// before the first row of its last visit.
func (f Floor) MeanBefore(lot Lot) Span {
	rows := f.ofLot(lot.Name)
	last := within(rows, evidence.Last(rows, readTime))
	var first evidence.Time
	for _, r := range last {
		if r.ReadAt.Shown() && (!first.Shown() || first.After(r.ReadAt)) {
			first = r.ReadAt
		}
	}
	var earlier []Row
	for _, r := range rows {
		if r.ReadAt.Shown() && first.Shown() && first.First.Sub(r.ReadAt.First) >= Visit {
			earlier = append(earlier, r)
		}
	}
	none := "no visit that ended 72 h or more before the last one"
	if len(earlier) == 0 {
		return Span{Lack: none}
	}
	return SpanOf(f.BoardItems(lastVisit(lot.Name, earlier), evidence.Limit{}), none)
}

// ofLot are the rows of a lot since it was last wetted.
func (f Floor) ofLot(name string) []Row {
	var rows []Row
	for _, r := range f.Of(OfFlooring) {
		if evidence.Same(r.Lot, name) && (!r.ReadAt.Shown() || !r.ReadAt.First.Before(f.Wet)) {
			rows = append(rows, r)
		}
	}
	return rows
}
