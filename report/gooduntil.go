package report

import (
	"slices"

	"firstboard/report/evidence"
)

// goodUntil is the last day on which installing could start on the same evidence,
// and what has to be read again to go on after it: the readings that grow too
// old first.
func (s Site) goodUntil() (until evidence.Date, again []string) {
	for _, e := range s.agedRows() {
		day, ages := s.lastDay(e)
		if !ages || until.Shown() && day > until.Day {
			continue
		}
		if !until.Shown() || day < until.Day {
			until, again = evidence.Date{Written: day.String(), Day: day}, nil
		}
		if what := e.kind.what(); !slices.Contains(again, what) {
			again = append(again, what)
		}
	}
	return until, again
}

// lastDay is the last day of installing that a row's age allows. The age of a
// covered slab's rows no longer grows.
func (s Site) lastDay(e entry) (evidence.Day, bool) {
	life := s.lifeOf(e.kind).Most.Number.Exact()
	switch e.kind {
	case airRow, surfaceRow:
		day := e.at.Day()
		for (day + 1).Begins(s.Job.Zone).Sub(e.at.First) <= evidence.Duration(life) {
			day++
		}
		return day, true
	case slabRow:
		if s.covered.Shown() {
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
	return e.at.Day() + evidence.Day(whole), true
}
