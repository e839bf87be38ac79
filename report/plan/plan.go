package plan

import (
	"cmp"
	"slices"
	"strconv"
	"time"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Plan is what is still to be done before an area can be judged GO.
type Plan struct {
	Area     report.Area
	Decision report.Decision
	Acts     []Act         // in the order to do them
	There    []string      // what is there already, in words
	LookUp   []string      // limits that were not looked up
	Earliest evidence.Date // the first day on which the area could be GO; blank where that cannot be told
	Moved    bool          // the day of installing has to be moved to the earliest day or later
	Opened   bool          // the slab has to be opened again, which was covered
	Drills   bool          // a hole is drilled or a sample is cut

	shut bool // it asks for readings of a slab that is covered by then
}

// Of is what an area's decision still waits for, with what is to be expected of
// its slab and boards. An area that may be installed waits for nothing. Where
// the day of installing cannot be kept, the plan is one for the first day that
// can; where the slab was covered too soon, one for an open slab.
func Of(d report.Decision, coming ahead.Outlook) Plan {
	p, as := planOf(d, coming), d.Area
	for range moves {
		switch {
		case p.shut && !p.Opened:
			as.CoveredOn, p.Opened = evidence.Date{}, true
		case d.Verdict != evidence.Go && p.Earliest.Shown() &&
			(!as.InstallOn.Shown() || as.InstallOn.Day < p.Earliest.Day):
			as.InstallOn, p.Moved = p.Earliest, d.Area.InstallOn.Shown()
		default:
			return p.led()
		}
		again := planOf(d.As(as), coming)
		again.Area, again.Decision = d.Area, d
		again.Moved, again.Opened = p.Moved, p.Opened
		if as.InstallOn != d.Area.InstallOn && again.Earliest.Shown() && again.Earliest.Day < as.InstallOn.Day {
			again.Earliest = as.InstallOn
		}
		p = again
	}
	return p.led()
}

// moves is how often a plan is made anew for a later day: what is moved may let
// other readings grow too old.
const moves = 5

// led is the plan with what has to be changed of the area's days before its
// other acts.
func (p Plan) led() Plan {
	if p.Opened {
		p.Acts = slices.Insert(p.Acts, 0, p.open())
	}
	switch {
	case p.Moved:
		p.Acts = slices.Insert(p.Acts, 0, p.move())
	case !p.Area.InstallOn.Shown():
		p.Acts = slices.Insert(p.Acts, 0, p.first("write down the day of installing", "(Areas, Install on)",
			"Install on", []string{"reading-age", "slab-age"}))
	}
	return p
}

func planOf(d report.Decision, coming ahead.Outlook) Plan {
	p := plannerOf(d, coming)
	if d.Verdict != evidence.Go {
		p.office()
		p.fit()
		p.meters()
		p.heating()
		p.slab()
		p.wood()
		p.surfaceReadings()
		p.air()
		p.rest()
	}
	drills := len(p.holes.more) > 0 || slices.ContainsFunc(p.holes.things, p.isUnsealed)
	plan := Plan{
		Area: d.Area, Decision: d, There: p.there(), LookUp: p.Floor().LookUp(),
		Drills: d.Verdict != evidence.Go && (drills || p.cm.left()),
	}
	p.scheduled()
	plan.Acts, plan.Earliest, plan.shut = p.acts, p.earliest(), p.shut()
	return plan
}

// Over are the findings that are over a limit.
func (p Plan) Over() []evidence.Finding {
	return lists.Where(p.Decision.Findings, func(f evidence.Finding) bool {
		return f.Deciding && f.Outcome == evidence.NotMet
	})
}

// move is the act of moving the day of installing.
func (p Plan) move() Act {
	how := "which is " + p.Area.InstallOn.Written + " now (Areas, Install on)" +
		lists.If(len(p.Acts) > 0, ": the readings cannot be made before", "")
	return p.first("move the day of installing to "+p.Earliest.Written+" or later", how, "Install on",
		p.Decision.Blocking())
}

// open is the act of opening a slab that was covered too soon.
func (p Plan) open() Act {
	return p.first("take "+p.Area.Membrane+" off the slab where it is read, and put it back after that",
		"covered on "+p.Area.CoveredOn.Written+" now (Areas, Covered on): what is read of the slab after that day does not count",
		"Covered on", lists.Among(p.Decision.Blocking(), append(holeIDs(), append(dishIDs(), "slab-ph", "slab-cm")...)))
}

// first is an act on a day of the area, before all others.
func (p Plan) first(short, how, column string, checks []string) Act {
	return Act{
		Short: short, How: how, Who: contractor, Checks: checks, Things: 1, stage: onPaper, Day: p.firstDay(),
		Fills:  []Fill{{"Areas", p.Area.ID, p.Area.ID, []string{column}}},
		Begins: p.today(), Ends: p.today(),
	}
}

func (p Plan) today() time.Time { return p.Decision.Site.Latest() }

func (p Plan) firstDay() int {
	day := 0
	for _, a := range p.Acts {
		day = min(day, a.Day)
	}
	return day
}

// When is the day of an act: a date, or, where the day of installing is blank, a
// number that counts from the first day of work.
func (p Plan) When(a Act) string { return p.dayCalled(a.Day) }

// Laying is the day of installing as When writes days.
func (p Plan) Laying() string { return p.dayCalled(0) }

func (p Plan) dayCalled(n int) string {
	if on := lists.If(p.Moved, p.Earliest, p.Area.InstallOn); on.Shown() { // the day that the plan is made for
		return (on.Day + evidence.Day(n)).String()
	}
	return "day " + strconv.Itoa(n-p.firstDay()+1)
}

// InTurn are the acts in the order in which they can begin, first those that put
// right what is over a limit.
func (p Plan) InTurn() []Act {
	return slices.SortedStableFunc(slices.Values(p.Acts), func(a, b Act) int {
		if a.mends != b.mends {
			return lists.If(a.mends, -1, 1)
		}
		return cmp.Or(a.Begins.Compare(b.Begins), cmp.Compare(a.stage, b.stage))
	})
}

// Missing are the acts in short that the checks which stop an area wait for,
// the one that serves most of them first.
func (p Plan) Missing() []ahead.Missing {
	blocking := p.Decision.Blocking()
	acts := slices.SortedStableFunc(slices.Values(p.Acts), func(a, b Act) int { return cmp.Compare(b.Things, a.Things) })
	all := lists.Each(acts, func(a Act) ahead.Missing {
		return ahead.Missing{What: a.Short, Checks: lists.Among(blocking, a.Checks)}
	})
	slices.SortStableFunc(all, func(a, b ahead.Missing) int { return cmp.Compare(len(b.Checks), len(a.Checks)) })
	return lists.Where(all, func(m ahead.Missing) bool { return len(m.Checks) > 0 })
}

// Cautions are the cautions that stand above plans that ask for anything: what
// comes first, old floors, and, where a slab is opened, drilling. The others
// travel with the workbook.
func Cautions(plans []Plan) []report.Caution {
	if !slices.ContainsFunc(plans, func(p Plan) bool { return len(p.Acts) > 0 }) {
		return nil
	}
	headings := []string{"What comes first", "Old floors"}
	if slices.ContainsFunc(plans, func(p Plan) bool { return p.Drills }) {
		headings = append(headings, "Drilling into a slab")
	}
	return slices.DeleteFunc(report.Cautions(),
		func(c report.Caution) bool { return !slices.Contains(headings, c.Heading) })
}
