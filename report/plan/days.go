package plan

import (
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// planner makes the plan of one area.
type planner struct {
	report.Site
	found []evidence.Finding

	holes, dishes, pH, cm, others []thing
	subfloor, joists, surfaces    []thing
	lots                          []lotWork
	wrong                         []string             // holes at a wrong depth
	sealed                        map[string]time.Time // when a sealed hole can be read
	walls                         int                  // exterior walls that have no hole near them
	unknownWall                   bool                 // whether a hole is near each is not known
	moreHoles, moreDishes         []string
	morePH, moreCM                []string
	moreSubfloor, moreJoists      []string
	moreSpots                     []string

	days  planDays
	first []Step // need no day of their own
	steps []Step
	late  []string
}

// planDays are the days of the work, counted from the day of installing.
type planDays struct {
	read int // wood, surfaces and the last of the air
	slab int // the tests of the slab
	seal int
	set  int // the dishes
	log  int // the air log
	heat int
	last int // the visit before the last one
}

// add adds a step on its day.
func (p *planner) add(day int, checks []string, do, what string, rows ...PlannedRow) {
	p.steps = append(p.steps, Step{Day: day, Checks: checks, Do: do, What: what, Rows: rows})
}

// ask adds a step that needs no day of its own: something to be written down.
func (p *planner) ask(checks []string, do, what string, rows ...PlannedRow) {
	p.first = append(p.first, Step{Checks: checks, Do: do, What: what, Rows: rows})
}

// outcome is the answer to one check.
func (p *planner) outcome(id string) evidence.Outcome {
	return report.Decision{Findings: p.found}.Outcome(id)
}

// planDays counts back from the day of installing. Readings are made on the day
// before it, those of a slab at the latest on the day it is covered.
func (p *planner) planDays() planDays {
	set := p.Job.Settings
	d := planDays{read: -1, slab: -1}
	if lay := p.Area.InstallOn; lay.Shown() && p.Slab.Covered.Shown() {
		d.slab = min(d.slab, int(p.Slab.Covered.Day-lay.Day))
	}
	d.seal = d.slab - wholeDays(set.ProbeWait.Exact())
	d.set = d.slab - wholeDays(slab.Exposure().Most.Number.Exact())
	d.last = d.read - wholeDays(evidence.Hours(wood.Visit))
	held := p.firstReading(d)
	d.log = held - wholeDays(set.HeldConditions.Exact())
	if p.left(p.subfloor, p.moreSubfloor) {
		held = min(held, d.read)
	}
	d.heat = held - wholeDays(set.HeatRun.Exact())
	return d
}

// firstReading is the day of the first planned reading for which the air must
// be held: of the slab, from the day a dish is set, and of the flooring.
func (p *planner) firstReading(d planDays) int {
	first := d.read
	if p.readsSlab() {
		first = min(first, d.slab)
	}
	if p.left(p.dishes, p.moreDishes) {
		first = min(first, d.set)
	}
	return first
}

// left says whether anything of a kind is left to be measured.
func (p *planner) left(things []thing, more []string) bool {
	return len(more)+len(names(things, isOpen))+len(names(things, isAgain)) > 0
}

func (p *planner) readsSlab() bool {
	return p.left(p.holes, p.moreHoles) || p.left(p.pH, p.morePH) || p.left(p.cm, p.moreCM)
}

func (p *planner) readsFlooring() bool {
	for _, lot := range p.lots {
		if p.left(lot.boards, lot.more) {
			return true
		}
	}
	return false
}

// readsHeld says whether a reading is planned for which the air must be held.
func (p *planner) readsHeld() bool {
	return p.readsSlab() || p.left(p.dishes, p.moreDishes) || p.readsFlooring()
}

// wholeDays is a number of hours in days, rounded up,
// and at most a hundred years, longer than any record.
func wholeDays(hours evidence.Exact) int {
	const century = 36600
	return min(hours.Over(evidence.Whole(24)).Ceil(), century)
}

// dayOf is the day of a time, counted from the day of installing.
func (p *planner) dayOf(t time.Time) int { return int(evidence.DayOf(t) - p.Area.InstallOn.Day) }

func clock(t time.Time) string { return t.Format("2006-01-02 15:04") }
