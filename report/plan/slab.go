package plan

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/slab"
)

// survey looks at everything that the area's checks judge.
func (p *planner) survey() {
	p.surveyHoles()
	p.surveyDishes()
	p.surveySpots()
	p.surveyWood()
	p.surveySurfaces()
}

// surveySpots looks at the spots of pH and carbide, and at further tests.
func (p *planner) surveySpots() {
	f := p.Slab
	if f.NoPH == "" {
		p.pH = survey(p, p.onSlab(task{
			one: "pH spot", many: "pH spots", verb: "read", tool: aPHMeter(), checks: also("slab-ph"), recounts: true,
			table: "Slab pH", column: "Spot", mend: p.neutral, asked: slab.PHSpots, head: "PH",
		}), f.JudgedPH(), f.PHs, seePH)
	}
	if f.NoCM == "" {
		p.cm = survey(p, p.onSlab(task{
			one: "carbide spot", many: "carbide spots", verb: "sample", tool: aCarbideKit(), checks: also("slab-cm"),
			recounts: true, table: "Slab CM", column: "Spot", mend: p.dried,
			asked: slab.CarbidesNeeded(f.Sizes...), head: "CM",
		}), f.JudgedCarbides(), f.Carbides, func(r slab.Carbide) seen {
			return seen{area: r.Area, id: r.Spot, row: instruments.CarbideRow("", r), read: r.CM.Shown()}
		})
	}
	p.others = survey(p, task{
		one: "further test", many: "further tests", verb: "make", who: tester, stage: ofSlab,
		checks: []string{"other-tests", "calibration", "reading-age"}, table: "Other tests", column: "Test",
		from: p.young(p.Job.Settings.SlabReadingLife, p.Area.InstallOn), mend: func([]thing) mending {
			return mending{do: "do what the data sheet asks for", how: p.finding("other-tests").Reason, open: true}
		},
	}, f.JudgedOthers(), f.Others, func(r slab.Other) seen {
		return seen{
			area: r.Area, id: r.Test + atSpot + r.Spot, row: instruments.OtherRow("", r), read: r.Result.Shown(),
			blank: blanks(cell{"At least or At most", r.AtLeast.Shown() || r.AtMost.Shown()}),
		}
	})
	p.others.tool = aFurtherTest() // which says nothing of a test that does not name its instrument
}

// atSpot parts the name of a further test from its spot.
const atSpot = "\x00"

func seePH(r slab.PH) seen {
	s := seen{area: r.Area, id: r.Spot, row: instruments.PHRow("", r), read: r.PH.Shown()}
	if s.read && r.PH.Exact().Cmp(slab.LeastPH().Exact()) < 0 {
		s.spoiled = "it read under " + slab.LeastPH().String() + ": the meter or its paper failed"
	}
	return s
}

// slab adds what is left to do to the slab.
func (p *planner) slab() {
	f := p.Slab
	if unfit := f.UnfitForHoles(); f.NoHoles == "" && unfit != "" {
		p.unsettled(true, maker, holeIDs(), otherTest, unfit)
	} else {
		p.drill()
	}
	if unfit := f.UnfitForDishes(); f.NoDishes == "" && unfit != "" {
		p.unsettled(true, maker, dishIDs(), otherTest, unfit)
	}
	p.setDishes()
	p.do(p.pH)
	p.do(p.cm)
	p.do(p.others)
}

// onSlab is a task of the tester on the slab.
func (p *planner) onSlab(t task) task {
	t.who, t.stage, t.from, t.heated = tester, ofSlab, latest(p.youngSlab(), p.warm()), true
	return t
}

// otherTest is asked for where the method of holes or dishes does not suit the slab.
const otherTest = "name a test that is made for this slab"

func holeIDs() []string {
	return also("slab-holes", "slab-edge", "slab-depth", "slab-wait", "slab-temp", "slab-rh", "probe-check")
}

func dishIDs() []string { return also("mver-dishes", "mver-time", "mver-rate") }

// drill adds the holes: drilled and sealed on one day, read on another.
func (p *planner) drill() {
	p.leaveOut()
	p.seal(p.holes)
	for i, x := range p.holes.things {
		p.holes.things[i].not = latest(x.not, p.sealed[x.name])
	}
	p.do(p.holes)
	p.wallDistance(p.holes)
}

// leaveOut asks for a word on the holes at a wrong depth.
func (p *planner) leaveOut() {
	if len(p.wrong) == 0 {
		return
	}
	fills := lists.Each(p.wrong, func(x thing) Fill {
		columns := []string{"Discarded"}
		for _, h := range p.rowsOf(x) {
			columns = append(columns, blanks(cell{"Read at", h.ReadAt.Shown()})...)
		}
		return p.holes.fill(x, slices.Compact(columns)...)
	})
	p.ask(tester, []string{"slab-depth", "slab-holes"},
		"write wrong depth in Discarded of "+p.holes.called(names(p.wrong)),
		"(Slab RH): another hole takes the place of each", fills...)
}

// seal adds the drilling and sealing of holes that are new, or on record without
// a time of sealing.
func (p *planner) seal(t task) {
	unsealed := names(lists.Where(t.things, p.isUnsealed))
	if len(unsealed)+len(t.more) == 0 {
		return
	}
	a := p.reading(t, len(unsealed)+len(t.more))
	a.stage, a.takes, a.from = sealing, evidence.Duration(p.Job.Settings.ProbeWait.Exact()), time.Time{}
	a.Short = "drill and seal " + t.called(append(unsealed, t.more...))
	if len(unsealed) == 0 {
		a.Short = "drill and seal " + t.count()
	}
	a.How, a.Rows = sentence(p.depth(), p.where()), p.holeRows(t)
	a.Fills = t.fills(lists.Where(t.things, p.isUnsealed), "Sealed at", "Depth")
	p.add(a)
}

func (p *planner) isUnsealed(x thing) bool { return x.open && p.sealed[x.name].IsZero() }

// wallDistance asks how far holes lie from the exterior walls where it is not
// known whether enough are near one.
func (p *planner) wallDistance(t task) {
	which := lists.Where(t.things, func(x thing) bool { return slices.Contains(p.unknownWall, x.name) })
	if len(which) == 0 {
		return
	}
	p.ask(tester, []string{"slab-edge"},
		"write down how far "+t.called(names(which))+" lie from the exterior wall and which wall that is",
		"(Slab RH, To exterior wall and Wall), with a tape: one hole within "+slab.NearWall().String()+" of each",
		t.fills(which, "To exterior wall", "Wall")...)
}

// holeRows are the rows of holes to be drilled, with their depth in words.
func (p *planner) holeRows(t task) []PlannedRow {
	var rows []PlannedRow
	near := p.replaced()
	for i, name := range t.more {
		note := "planned: " + p.depth()
		if i < p.walls {
			note += ", within " + slab.NearWall().String() + " of an exterior wall"
		}
		if i < len(near) {
			note += ", within " + slab.Reach().String() + " of " + near[i]
		}
		rows = append(rows, p.row(t, name, note))
	}
	return rows
}
