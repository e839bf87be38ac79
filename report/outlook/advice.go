package outlook

import (
	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
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
