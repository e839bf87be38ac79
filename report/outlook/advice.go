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

// Damage is what floors are known to suffer where a check is not met and the
// floor is installed all the same.
type Damage struct {
	Check    string // its id
	KnownFor string // a sentence without its end
}

// DamageStanding marks the whole table: common practice, no source.
const DamageStanding = evidence.Practice

// Damages are the conditions that are known to damage floors, in the order of
// the checks. A check that counts evidence, or asks how it was got, is not
// among them: what was not measured is known for nothing.
func Damages() []Damage {
	return []Damage{
		{"grade", "solid wood below grade cups and rots: the ground keeps it damp"},
		{"retarder", "ground moisture rises through the slab for as long as the building stands: " +
			"adhesive lets go, boards cup, mold grows under the floor"},
		{"slab-age", "a young slab still gives off its mixing water: boards cup and adhesive cures badly"},
		{"air-range", "boards take up or lose moisture after they are down: gaps and cracks in dry air, " +
			"cupping and buckling in damp air"},
		{"surface-dew", "water condenses on the slab: adhesive, membrane or primer does not bond"},
		{"slab-temp", "adhesive cures too slowly or too fast, and the humidity in the hole is not that of service"},
		{"slab-rh", "once covered the slab's moisture reaches the adhesive and the floor: " +
			"adhesive softens and lets go, boards cup, resilient flooring bubbles, mold grows"},
		{"mver-rate", "moisture leaves the slab faster than the floor lets it through: " +
			"adhesive lets go, boards cup, resilient flooring bubbles"},
		{"slab-ph", "alkaline moisture breaks adhesive down: it turns soft or brittle and lets go"},
		{"slab-cm", "the screed gives its water to the floor: boards cup, adhesive lets go"},
		{"surface-max", "boards over warm spots dry out: gaps, checks, delaminated plies"},
		{"joists-dry", "damp from below wets the subfloor after the boards are down: cupping, buckling, rot"},
		{"subfloor-mc", "the subfloor gives its moisture to the undersides of the boards: " +
			"they cup, and fasteners loosen and squeak as it dries"},
		{"flooring-mc", "boards outside their maker's range shrink to gaps or swell to cupping and buckling"},
		{"flooring-target", "boards wetter than the target shrink to gaps, drier ones swell, cup and buckle"},
		{"flooring-spread", "boards of one floor move by different amounts: uneven gaps, edges of unequal height"},
		{"wood-difference", "boards and subfloor move against each other as they even out: cupping, squeaks, loose fasteners"},
		{"climate-range", "in service the floor leaves the air its manufacturer states: " +
			"gaps, cupping, delaminated plies"},
	}
}

// DamageOf is the damage a check is known for; false where it is not known for
// any.
func DamageOf(check string) (Damage, bool) {
	return lists.First(Damages(), func(d Damage) bool { return d.Check == check })
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
