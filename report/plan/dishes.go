package plan

import (
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
)

// surveyDishes looks at the dishes that are judged and names those still to be
// set.
func (p *planner) surveyDishes() {
	f := p.Slab
	if f.NoDishes != "" || f.UnfitForDishes() != "" {
		return
	}
	p.dishes = survey(p.Site, f.JudgedDishes(), view[slab.Dish]{
		heat: true, row: report.DishRow, spoil: exposed,
		read: func(d slab.Dish) bool { return d.SetAt.Shown() && d.Start.Shown() && d.End.Shown() },
		blank: func(d slab.Dish) []string {
			return blanks(cell{"Test area", d.TestArea.Shown()}, cell{"Instrument", d.Instrument != ""})
		},
	})
	asked, known := asking(slab.HolesNeeded(f.Sizes...))
	if !known {
		asked, _ = asking(slab.HolesNeeded(evidence.Typed("1", evidence.SquareFoot)))
	}
	p.moreDishes = newNames("D", asked-len(p.dishes), names(p.dishes, always))
}

// exposed says why a dish has to be set again: it lay too short or too long.
func exposed(d slab.Dish) string {
	if !d.SetAt.Shown() || !d.RetrievedAt.Shown() {
		return ""
	}
	for _, passed := range []evidence.Exact{
		evidence.Hours(evidence.Shortest(d.SetAt, d.RetrievedAt)), evidence.Hours(evidence.Longest(d.SetAt, d.RetrievedAt)),
	} {
		if (evidence.Item{Value: passed, Limit: slab.Exposure()}).Breaks(evidence.Acceptance{}) {
			return "it did not lie for " + slab.Exposure().String()
		}
	}
	return ""
}

// setDishes adds the dishes: set on one day, lifted on another.
func (p *planner) setDishes() {
	t := task{
		one: "dish", many: "dishes", verb: "weigh and set", day: p.days.set, tool: aBalance(), checks: dishIDs(),
		table: "Slab MVER", column: "Dish", things: p.dishes, more: p.moreDishes,
	}
	for _, name := range names(p.dishes, p.lies) {
		p.lift(t, name)
	}
	t.things = slices.DeleteFunc(slices.Clone(t.things), p.lies)
	p.do(t)
	which := slices.Concat(names(t.things, func(x thing) bool { return x.open || x.again != "" }), p.moreDishes)
	if len(which) > 0 {
		p.add(p.days.slab, t.checks, "lift "+t.named(which)+", "+slab.Exposure().String()+" after each was set, and weigh "+p.with(t.tool), "")
	}
}

// lies says whether a dish is set and not lifted yet.
func (p *planner) lies(x thing) bool { return x.open && p.setAt(x.name).Shown() }

// setAt is when a dish was set that is not lifted yet; blank where there is none.
func (p *planner) setAt(dish string) evidence.Time {
	return evidence.Last(p.Slab.Dishes, func(d slab.Dish) evidence.Time {
		if !evidence.Same(d.Dish, dish) || d.RetrievedAt.Shown() || !d.Start.Shown() {
			return evidence.Time{}
		}
		return d.SetAt
	})
}

// lift adds the lifting of a dish that lies on the slab.
func (p *planner) lift(t task, dish string) {
	set, ends := p.setAt(dish), slab.Exposure().Ends()
	from, to := set.Last.Add(evidence.Duration(ends[0])), set.First.Add(evidence.Duration(ends[1]))
	what := t.named([]string{dish}) + " from " + clock(from) + " to " + clock(to) + ", weighed " + p.with(t.tool)
	day := p.days.slab
	if p.Area.InstallOn.Shown() {
		day = p.dayOf(from)
	}
	p.add(day, t.checks, "lift "+what, "the lifting of "+what)
}
