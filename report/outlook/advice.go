package outlook

import (
	"math"
	"time"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/plan"
)

// Advice is what is said under each of the decisions of a job.
func Advice(decisions []report.Decision) []ahead.Advice {
	all := make([]ahead.Advice, len(decisions))
	for i, d := range decisions {
		all[i].Outlook = Of(d)
		p := plan.Of(d, all[i].Outlook)
		all[i].Missing, all[i].Next = p.Missing(), Next(p)
	}
	return all
}

// Of is what is to be expected of an area: what lies ahead, what would happen
// if it were installed now, and whether its verdict holds.
func Of(d report.Decision) ahead.Outlook {
	o := Ahead(d)
	o.Movement, o.Holds, o.Damage = movementOf(d.Site), Holds(d), damageOf(d)
	return o
}

// Ahead is when the slab and the boards of an area are ready, and what the air
// must do.
func Ahead(d report.Decision) ahead.Outlook {
	air := d.Site.Room.Air.States()
	return ahead.Outlook{Slab: slabOf(d.Site, air), Boards: boardsOf(d.Site, air), Air: airOf(d.Site, air)}
}

// damageOf is what the checks that an area does not meet are known to damage.
func damageOf(d report.Decision) []string {
	var all []string
	for _, f := range d.Findings {
		if known, ok := DamageOf(f.ID); ok && f.Outcome == evidence.NotMet {
			all = append(all, f.ID+" is not met: "+known.KnownFor+" ("+string(DamageStanding)+")")
		}
	}
	return all
}

// Next is what leads to GO from the record's latest reading on: the acts of the
// plan in the order in which they can begin, with the earliest time each can end,
// and the first day on which the area could be GO. Both are empty where they
// cannot be told.
func Next(p plan.Plan) ahead.Next {
	next := ahead.Next{Earliest: p.Earliest.Written, Acts: []ahead.Act{}}
	for _, a := range p.InTurn() {
		next.Acts = append(next.Acts, ahead.Act{
			Act: a.Doing() + lists.If(a.Untold != "", " ("+a.Untold+")", "") + lists.If(a.Or != "", "; or "+a.Or, ""),
			Who: a.Who, Ends: lists.If(a.Ends.IsZero(), "", a.Ends.Format("2006-01-02 15:04")),
		})
	}
	return next
}

// dayAxis is a time on the axis of the forecasts: days since 1970 in UTC.
func dayAxis(t time.Time) float64 { return float64(t.Unix()) / 86400 }

// dayOf is the day on which a point of the axis lies, on the clock of a place.
func dayOf(day float64, zone *time.Location) evidence.Day {
	return evidence.DayOf(time.Unix(int64(math.Round(day*86400)), 0).In(zone))
}

// days are the days of a forecast as they are written.
func days(zone *time.Location, ready, from, to float64) (onReady, onFrom, onTo string) {
	return dayOf(ready, zone).String(), dayOf(from, zone).String(), dayOf(to, zone).String()
}
