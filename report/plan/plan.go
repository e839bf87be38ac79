package plan

import (
	"cmp"
	"slices"
	"strconv"

	"firstboard/report"
	"firstboard/report/evidence"
)

// Plan is what is still to be measured and written down before an area can be
// judged, day by day, and what is there already.
type Plan struct {
	Area     report.Area
	Decision report.Decision
	Steps    []Step   // in the order of their days
	There    []string // what is there already, in words
	LookUp   []string // limits that were not looked up
	Late     []string // why the day of installing cannot be kept
	Drills   bool     // a hole is drilled or a sample is cut
}

// Step is one thing to do. Day counts from the day of installing: -1 is the day
// before it. Do says it as an order, What as the thing that is missing, which
// is empty where another step says it already. Checks are the checks it serves.
type Step struct {
	Day    int
	Do     string
	What   string
	Checks []string
	Rows   []PlannedRow
}

// PlannedRow is a row to fill in: what is known of it, by the names of its
// table's columns without their units.
type PlannedRow struct {
	Table string
	Cells map[string]string
}

// All are the plans of all areas of a job.
func All(decisions []report.Decision) []Plan {
	plans := make([]Plan, len(decisions))
	for i, d := range decisions {
		plans[i] = Of(d)
	}
	return plans
}

// When is the day of a step: a date, or, where the day of installing is blank, a
// number that counts from the first day of work.
func (p Plan) When(s Step) string {
	if p.Area.InstallOn.Shown() {
		return (p.Area.InstallOn.Day + evidence.Day(s.Day)).String()
	}
	return "day " + strconv.Itoa(s.Day-p.Steps[0].Day+1)
}

// Laying is the day of installing as When writes days.
func (p Plan) Laying() string { return p.When(Step{}) }

// Cautions are the cautions that stand above plans that ask for anything:
// what comes first, old floors, and, where a slab is opened, drilling. The
// others travel with the workbook.
func Cautions(plans []Plan) []report.Caution {
	if !slices.ContainsFunc(plans, func(p Plan) bool { return len(p.Steps) > 0 }) {
		return nil
	}
	headings := []string{"What comes first", "Old floors"}
	if slices.ContainsFunc(plans, func(p Plan) bool { return p.Drills }) {
		headings = append(headings, "Drilling into a slab")
	}
	return slices.DeleteFunc(report.Cautions(), func(c report.Caution) bool { return !slices.Contains(headings, c.Heading) })
}

// Of is what an area's decision still waits for. An area that may be installed
// waits for nothing.
func Of(d report.Decision) Plan {
	s := d.Site
	p := planner{Site: s, found: d.Findings}
	p.survey()
	p.days = p.planDays()
	if d.Verdict != evidence.Go {
		p.office()
		p.meters()
		p.heating()
		p.air()
		p.slab()
		p.wood()
		p.surfaceReadings()
	}
	return Plan{
		Area: s.Area, Decision: d, Steps: p.inOrder(), There: p.there(), LookUp: s.LookUp(), Late: p.late,
		Drills: d.Verdict != evidence.Go && (p.drills() || p.left(p.cm, p.moreCM)),
	}
}

// Missing are the things that checks which stop the area wait for.
func Missing(d report.Decision) []report.Missing {
	if d.Verdict == evidence.Go {
		return nil
	}
	var all []report.Missing
	blocking := d.Blocking()
	for _, step := range Of(d).Steps {
		waits := slices.DeleteFunc(slices.Clone(blocking), func(id string) bool { return !slices.Contains(step.Checks, id) })
		if step.What != "" && len(waits) > 0 {
			all = append(all, report.Missing{What: step.What, Checks: waits})
		}
	}
	return all
}

// inOrder are the steps by day. What needs no day of its own comes first.
func (p *planner) inOrder() []Step {
	steps := slices.Concat(p.first, p.steps)
	day := p.days.read
	for _, s := range p.steps {
		day = min(day, s.Day)
	}
	for i := range p.first {
		steps[i].Day = day
	}
	slices.SortStableFunc(steps, func(a, b Step) int { return cmp.Compare(a.Day, b.Day) })
	return steps
}
