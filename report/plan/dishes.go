package plan

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/slab"
)

// surveyDishes looks at the dishes that are judged.
func (p *planner) surveyDishes() {
	f := p.Slab
	if f.NoDishes != "" || f.UnfitForDishes() != "" {
		return
	}
	p.dishes = survey(p, task{
		one: "dish", many: "dishes", verb: "set", who: tester, stage: setting, tool: aBalance(), checks: dishIDs(),
		how: "weighed first", table: "Slab MVER", column: "Dish", from: p.dishesFrom(), mend: p.dried, heated: true,
		asked: asked(slab.HolesNeeded, f.Sizes...), head: "D",
	}, f.JudgedDishes(), f.Dishes, func(d slab.Dish) seen {
		return seen{
			area: d.Area, id: d.Dish, row: instruments.DishRow("", d), spoiled: p.spoiltDish(d),
			read:  d.SetAt.Shown() && d.Start.Shown() && d.End.Shown(),
			blank: blanks(cell{"Test area", d.TestArea.Shown()}),
		}
	})
	most := slab.Exposure().Most.Number
	for i := range p.dishes.things {
		x := &p.dishes.things[i]
		if p.lies(*x) && p.setAt(*x).First.Add(evidence.Duration(most.Exact())).Before(p.now) {
			x.open, x.again = false, "it lay for more than "+most.String()+" (write down when it is lifted)"
			x.blank = []string{"Retrieved at"}
		}
	}
}

// spoiltDish says why a dish has to be set again: it lay too short or too long,
// it gained nothing, or its balance was not calibrated when it was set.
func (p *planner) spoiltDish(d slab.Dish) string {
	if d.Start.Shown() && d.End.Shown() && d.End.Exact().Cmp(d.Start.Exact()) <= 0 {
		return "it gained nothing"
	}
	if !d.SetAt.Shown() || !d.RetrievedAt.Shown() {
		return ""
	}
	for _, passed := range []evidence.Exact{
		evidence.Hours(evidence.Shortest(d.SetAt, d.RetrievedAt)),
		evidence.Hours(evidence.Longest(d.SetAt, d.RetrievedAt)),
	} {
		if (evidence.Item{Value: passed, Limit: slab.Exposure()}).Breaks(evidence.Acceptance{}) {
			return "it did not lie for " + slab.Exposure().String()
		}
	}
	return ""
}

// setDishes adds the dishes: set on one day, lifted on another.
func (p *planner) setDishes() {
	t := p.dishes
	lying := lists.Where(t.things, p.lies)
	t.things = lists.Where(t.things, func(x thing) bool { return !p.lies(x) })
	first := len(p.acts)
	p.do(t)
	for i := range p.acts[first:] {
		if a := &p.acts[first+i]; a.stage == setting {
			a.takes = evidence.Duration(slab.Exposure().Least.Number.Exact())
		}
	}
	which := slices.Concat(names(lists.Where(t.things, toRead)), t.more)
	if len(which) > 0 {
		a := p.reading(t, len(which))
		a.Short = "lift " + t.called(which) + " after " + slab.Exposure().String() + " and weigh"
		a.How, a.stage, a.from = p.with(t.tool), lifting, time.Time{}
		a.later = p.newRows(task{table: t.table, column: t.column, more: which})
		p.add(a)
	}
	p.lift(t, lying)
}

// dishesFrom is when a dish may be set at the earliest: it is lifted when it is
// young enough, and the heating has run before.
func (p *planner) dishesFrom() time.Time {
	from := p.youngSlab()
	if !from.IsZero() {
		from = from.Add(-evidence.Duration(slab.Exposure().Least.Number.Exact()))
	}
	return latest(from, p.warm())
}

// lies says whether a dish is set and not lifted yet.
func (p *planner) lies(x thing) bool { return x.open && p.setAt(x).Shown() }

// setAt is when a dish was set that is not lifted yet; blank where there is none.
func (p *planner) setAt(x thing) evidence.Time {
	return evidence.Last(p.Slab.Dishes, func(d slab.Dish) evidence.Time {
		if !evidence.Same(d.Dish, x.id) || !evidence.Same(d.Area, x.area) || d.RetrievedAt.Shown() || !d.Start.Shown() {
			return evidence.Time{}
		}
		return d.SetAt
	})
}

// lift adds the lifting of dishes that lie on the slab, those set together in
// one act.
func (p *planner) lift(t task, lying []thing) {
	for _, which := range lists.Groups(lying, func(x thing) int64 { return p.setAt(x).First.Unix() }) {
		set, ends := p.setAt(which[0]), slab.Exposure().Ends()
		a := p.reading(t, len(which))
		a.stage, a.from = lifting, set.Last.Add(evidence.Duration(ends[0]))
		a.Short = "lift " + t.called(names(which)) + " and weigh"
		a.How = sentence("from "+clock(a.from)+" to "+clock(set.First.Add(evidence.Duration(ends[1]))), p.with(t.tool))
		a.Fills = t.fills(which)
		p.add(a)
	}
}
