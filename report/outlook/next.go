package outlook

import (
	"firstboard/report/ahead"
	"firstboard/report/lists"
	"firstboard/report/plan"
)

// Next is what leads to GO from the record's latest reading on: the acts of the
// plan in the order in which they can begin, with the earliest time each can end,
// and the first day on which the area could be GO. Both are empty where they
// cannot be told.
func Next(p plan.Plan) ahead.Next {
	next := ahead.Next{Earliest: p.Earliest.Written, Acts: []ahead.Act{}}
	for _, a := range p.InTurn() {
		act := ahead.Act{Act: a.Doing(), Who: a.Who, Ends: lists.If(a.Ends.IsZero(), "", a.Ends.Format("2006-01-02 15:04"))}
		if a.Untold != "" {
			act.Act += " (" + a.Untold + ")"
		}
		if a.Or != "" {
			act.Act += "; or " + a.Or
		}
		next.Acts = append(next.Acts, act)
	}
	return next
}
