package plan

import (
	"slices"

	"firstboard/report"
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

func always(thing) bool     { return true }
func never[T any](T) string { return "" }

// surveySpots looks at the spots of pH and carbide, and at further tests.
func (p *planner) surveySpots() {
	f := p.Slab
	if f.NoPH == "" {
		p.pH = survey(p.Site, f.JudgedPH(), view[slab.PH]{
			heat: true, spoil: never[slab.PH],
			row:   func(name string, r slab.PH) report.JudgedRow { return report.SlabRow(name, r.ReadAt, r.Instrument) },
			read:  func(r slab.PH) bool { return r.PH.Shown() },
			blank: func(r slab.PH) []string { return blanks(cell{"Instrument", r.Instrument != ""}) },
		})
		p.morePH = newNames("P", slab.PHSpots-len(p.pH), names(p.pH, always))
	}
	if f.NoCM == "" {
		p.cm = survey(p.Site, f.JudgedCarbides(), view[slab.Carbide]{
			heat: true, spoil: never[slab.Carbide],
			row: func(name string, r slab.Carbide) report.JudgedRow {
				return report.SlabRow(name, r.ReadAt, r.Instrument)
			},
			read:  func(r slab.Carbide) bool { return r.CM.Shown() },
			blank: func(r slab.Carbide) []string { return blanks(cell{"Instrument", r.Instrument != ""}) },
		})
		p.moreCM = newNames("K", slab.CarbidesNeeded(f.Sizes...)-len(p.cm), names(p.cm, always))
	}
	p.others = survey(p.Site, f.JudgedOthers(), view[slab.Other]{
		spoil: never[slab.Other], row: report.OtherRow,
		read: func(r slab.Other) bool { return r.Result.Shown() },
		blank: func(r slab.Other) []string {
			return blanks(cell{"At least or At most", r.AtLeast.Shown() || r.AtMost.Shown()})
		},
	})
}

// slab adds what is left to do to the slab.
func (p *planner) slab() {
	f := p.Slab
	if unfit := f.UnfitForHoles(); f.NoHoles == "" && unfit != "" {
		p.ask(holeIDs(), unfit, "a test that the flooring's manufacturer names: "+unfit)
	} else {
		p.drill()
	}
	if unfit := f.UnfitForDishes(); f.NoDishes == "" && unfit != "" {
		p.ask(dishIDs(), unfit, "a test that the flooring's manufacturer names: "+unfit)
	}
	p.setDishes()
	p.do(task{
		one: "pH spot", many: "pH spots", verb: "read", day: p.days.slab, tool: aPHMeter(), checks: also("slab-ph"),
		table: "Slab pH", column: "Spot", things: p.pH, more: p.morePH,
	})
	p.do(task{
		one: "carbide spot", many: "carbide spots", verb: "sample", day: p.days.slab, tool: aCarbideKit(), checks: also("slab-cm"),
		table: "Slab CM", column: "Spot", things: p.cm, more: p.moreCM,
	})
	p.do(task{
		one: "further test", many: "further tests", verb: "make", day: p.days.read, tool: tool{words: "what its manufacturer names", kinds: []string{"other"}},
		checks: []string{"other-tests", "calibration", "reading-age"}, table: "Other tests", things: p.others,
	})
}

func holeIDs() []string {
	return also("slab-holes", "slab-edge", "slab-depth", "slab-wait", "slab-temp", "slab-rh", "probe-check")
}

func dishIDs() []string { return also("mver-dishes", "mver-time", "mver-rate") }

// drill adds the holes: drilled and sealed on one day, read on another.
func (p *planner) drill() {
	t := task{
		one: "hole", many: "holes", verb: "read", day: p.days.slab, tool: anRHProbe(), checks: holeIDs(),
		table: "Slab RH", column: "Hole", things: p.holes, more: p.moreHoles,
	}
	for _, name := range p.wrong {
		what := "the word wrong depth in Discarded of hole " + name + " (Slab RH): another hole takes its place"
		p.ask([]string{"slab-depth", "slab-holes"}, "write "+what, what)
	}
	wait := p.Slab.Wait.Number.String()
	if len(t.more) > 0 {
		p.add(p.days.seal, t.checks, "drill and seal "+t.count()+", "+p.depth()+", "+p.where(),
			t.count()+", "+p.depth()+", read "+wait+" after they are sealed or later, "+p.with(t.tool), p.holeRows(t)...)
	}
	unsealed := names(p.holes, p.isUnsealed)
	if len(unsealed) > 0 {
		p.add(p.days.seal, t.checks, "drill and seal "+t.named(unsealed)+", on record without a time of sealing, "+p.depth()+", "+p.where(),
			t.named(unsealed)+" sealed, "+p.depth()+", and read "+wait+" later, "+p.with(t.tool))
	}
	if fresh := slices.Concat(t.more, unsealed); len(fresh) > 0 {
		p.add(p.days.slab, t.checks, "read "+t.named(fresh)+" "+p.with(t.tool)+": humidity and the temperature of the concrete, "+wait+" after they were sealed or later", "")
	}
	p.readSealed(t)
	p.again(t)
	p.complete(t)
	p.wallDistance()
}

// drills says whether a hole is still to be drilled.
func (p *planner) drills() bool { return len(p.moreHoles)+len(names(p.holes, p.isUnsealed)) > 0 }

func (p *planner) isUnsealed(x thing) bool { return x.open && p.sealed[x.name].IsZero() }

// readSealed adds the readings of holes that are sealed already, each from
// the time it can be read.
func (p *planner) readSealed(t task) {
	var seen []string
	for _, x := range p.holes {
		from := p.sealed[x.name]
		if !x.open || from.IsZero() || slices.Contains(seen, clock(from)) {
			continue
		}
		seen = append(seen, clock(from))
		which := names(p.holes, func(y thing) bool { return y.open && p.sealed[y.name].Equal(from) })
		subject, when := t.named(which), "not before "+clock(from)+", "+p.Slab.Wait.Number.String()+" after sealing"
		day := t.day
		if p.Area.InstallOn.Shown() {
			day = max(day, p.dayOf(from))
		}
		if day > 0 {
			p.late = append(p.late, subject+" can be read from "+clock(from)+" on, and installing is planned for "+p.Area.InstallOn.Written)
		}
		p.add(day, t.checks, "read "+subject+" "+p.with(t.tool)+", "+when, "the reading of "+subject+", "+p.with(t.tool)+", "+when)
	}
}

// wallDistance asks how far the holes lie from an exterior wall where none is
// known to be near one.
func (p *planner) wallDistance() {
	if !p.unknownWall || p.drills() {
		return
	}
	what := "how far each hole lies from an exterior wall, and from which (Slab RH, To exterior wall, Wall): one within " +
		slab.NearWall().String() + " of each, with a tape"
	p.ask([]string{"slab-edge"}, "write down "+what, what)
}

// holeRows are the rows of holes to be drilled, with their depth in words.
func (p *planner) holeRows(t task) []PlannedRow {
	var rows []PlannedRow
	for i, name := range t.more {
		note := "planned: " + p.depth()
		if i < p.walls {
			note += ", within " + slab.NearWall().String() + " of an exterior wall"
		}
		rows = append(rows, p.row(t, name, note))
	}
	return rows
}
