package outlook

import (
	"slices"
	"time"

	"firstboard/report"
	"firstboard/report/plan"
)

// Next is what leads to GO from the record's latest reading on: the acts of the
// plan that a check which stops the area waits for, with the earliest time each
// can end, and the first day on which the area could be GO. Both are empty where
// they cannot be told.
func Next(p plan.Plan) report.Next {
	next := report.Next{Earliest: p.Earliest.Written, Acts: []report.Act{}}
	blocking := p.Decision.Blocking()
	for _, a := range inTurn(p.Acts) {
		if !slices.ContainsFunc(a.Checks, func(id string) bool { return slices.Contains(blocking, id) }) {
			continue
		}
		act := report.Act{Act: a.Short, Who: a.Who, Ends: written(a.Ends)}
		if a.Or != "" {
			act.Act += "; or " + a.Or
		}
		next.Acts = append(next.Acts, act)
	}
	return next
}

// inTurn are acts in the order in which they can begin.
func inTurn(acts []plan.Act) []plan.Act {
	acts = slices.Clone(acts)
	slices.SortStableFunc(acts, func(a, b plan.Act) int { return a.Begins.Compare(b.Begins) })
	return acts
}

func written(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format("2006-01-02 15:04")
}
