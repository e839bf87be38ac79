package instruments

import (
	"slices"

	"firstboard/report/evidence"
)

// GoodUntil is the last day on which installing could start on the same evidence,
// and what has to be read again to go on after it: the readings that grow too
// old first.
func (rs Readings) GoodUntil() (until evidence.Date, again []string) {
	for _, e := range rs.agedRows() {
		day, ages := rs.lastDay(e)
		if !ages || until.Shown() && day > until.Day {
			continue
		}
		if !until.Shown() || day < until.Day {
			until, again = evidence.Date{Written: day.String(), Day: day}, nil
		}
		if what := e.Kind.String(); !slices.Contains(again, what) {
			again = append(again, what)
		}
	}
	return until, again
}

// lastDay is the last day of installing that a row's age allows. The age of a
// covered slab's rows no longer grows.
func (rs Readings) lastDay(e Row) (evidence.Day, bool) {
	life := rs.lifeOf(e.Kind).Most.Number.Exact()
	switch e.Kind {
	case OfAir, OfSurface:
		day := e.At.Day()
		for (day + 1).Begins(rs.Zone).Sub(e.At.First) <= evidence.Duration(life) {
			day++
		}
		return day, true
	case OfSlab:
		if rs.Slab.Covered.Shown() {
			return 0, false
		}
	}
	const century = 36600 // days: no record lasts longer
	whole := century
	if life.Cmp(evidence.Whole(century)) < 0 {
		whole = life.Ceil()
	}
	if evidence.Whole(whole).Cmp(life) > 0 {
		whole--
	}
	return e.At.Day() + evidence.Day(whole), true
}
