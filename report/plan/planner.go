package plan

import (
	"slices"
	"time"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// planner makes the plan of one area.
type planner struct {
	report.Site
	found  []evidence.Finding
	coming ahead.Outlook
	now    time.Time // the latest entry of the record; zero where there is none

	broken     map[string][]string // by place: the checks whose limit a row is over
	distrusted map[string]bool     // instruments of which a check does not agree
	taken      naming
	listed     map[string][]evidence.Instrument // by their kinds, as they were asked for
	decides    map[nameless]string              // the instrument that answers for all, empty where there is none

	holes, dishes, pH, cm, others task
	subfloor, joists, surfaces    task
	lots                          []lotWork
	wrong                         []thing              // holes at a wrong depth
	sealed                        map[string]time.Time // when a sealed hole can be read
	walls                         int                  // exterior walls at which a hole is lacking
	unknownWall                   []string             // holes of which it is not known whether they are at one

	kept time.Time // from when on a reading counts that the air is held for; zero where no reading tells what day it is
	days days
	acts []Act
}

func plannerOf(d report.Decision, coming ahead.Outlook) *planner {
	p := &planner{Site: d.Site, found: d.Findings, coming: coming, now: d.Site.Latest()}
	p.listed, p.decides = map[string][]evidence.Instrument{}, map[nameless]string{}
	p.broken, p.distrusted = p.overs(), p.disagreeing()
	p.taken = p.takenNames()
	p.survey()
	p.nameHoles()
	p.holdAir()
	p.shareBoards()
	p.days = p.daysBack()
	return p
}

// ask adds an act that is done with pen and paper, on as many things as there are
// rows to fill in.
func (p *planner) ask(who string, checks []string, short, how string, fills ...Fill) {
	p.add(Act{
		Short: short, How: how, Who: who, Checks: checks, Things: max(1, len(fills)), Fills: fills, stage: onPaper,
	})
}

// unsettled adds an act of which nothing may tell when it can end.
func (p *planner) unsettled(open bool, who string, checks []string, short, how string) {
	p.add(Act{Short: short, How: how, Who: who, Checks: checks, Things: 1, stage: onPaper, open: open})
}

// ofArea is a blank of the area's own row.
func (p *planner) ofArea(column string) Fill {
	return Fill{"Areas", p.Area.ID, p.Area.ID, []string{column}}
}

func (p *planner) add(a Act) { p.acts = append(p.acts, a) }

// finding is the answer to one check.
func (p *planner) finding(id string) evidence.Finding {
	f, _ := lists.First(p.found, func(f evidence.Finding) bool { return f.ID == id })
	return f
}

// stops says whether a check stops the area.
func (p *planner) stops(id string) bool { return p.finding(id).Blocks() }

// isBroken says whether a deciding check is over its limit.
func (p *planner) isBroken(id string) bool {
	f := p.finding(id)
	return f.Deciding && f.Outcome == evidence.NotMet
}

// overs are the checks, by the places of the rows that break them, for which it
// is not enough to read again.
func (p *planner) overs() map[string][]string {
	all := map[string][]string{}
	for _, f := range p.found {
		if !p.isBroken(f.ID) || !slices.Contains(ofThings(), f.ID) {
			continue
		}
		for _, place := range f.Evidence {
			if k := evidence.RowKey(place); k != "" {
				all[k] = append(all[k], f.ID)
			}
		}
	}
	return all
}

// ofThings are the checks that hold what was measured of a thing against a
// limit of its own.
func ofThings() []string {
	return []string{
		"slab-temp", "slab-rh", "mver-rate", "slab-ph", "slab-cm", "other-tests",
		"surface-dew", "surface-max", "joists-dry", "subfloor-mc", "flooring-mc",
	}
}

// disagreeing are the instruments of which a check against a standard, among
// those that count, does not agree.
func (p *planner) disagreeing() map[string]bool {
	all := map[string]bool{}
	if !p.isBroken("calibration") {
		return all
	}
	cited := map[string]bool{}
	for _, place := range p.finding("calibration").Evidence {
		cited[evidence.RowKey(place)] = true
	}
	for _, c := range p.Job.Checks {
		if k := evidence.RowKey(c.Place); k != "" && cited[k] {
			all[evidence.Key(c.Instrument)] = true
		}
	}
	return all
}
