package plan

import (
	"fmt"
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
)

// office asks for what is written down and not measured.
func (p *planner) office() {
	a := p.Area
	asks := func(missing bool, who, what, from, column string, checks ...string) {
		if missing {
			p.ask(who, checks, "write down "+what, "(Areas, "+column+"), "+from,
				p.ofArea(column))
		}
	}
	asks(!a.Size.Shown(), installer, "the area's size", "from the drawing or with a tape", "Size",
		"slab-holes", "mver-dishes", "slab-cm", "joists-dry", "subfloor-count", "flooring-count")
	asks(p.lacksThickness(), tester, "the slab's thickness", "from the drawing or at a hole", "Slab thickness",
		"slab-depth")
	asks(p.stops("slab-edge") && !a.ExteriorWalls.Shown(), installer, "how many walls are exterior walls",
		"0 where none is", "Exterior walls", "slab-edge")
	asks(p.stops("retarder") && a.UnderSlab == "", contractor, "what lies under the slab",
		"retarder, none, or unknown where nobody knows", "Under slab", "retarder")
	asks(p.stops("joists-dry") && p.Wood.BelowUnknown, installer, "what lies below the floor",
		"from whoever has looked", "Below", "joists-dry")
	asks(p.Wood.NoBelow == "" && p.Wood.CrawlSpace && a.GroundCover == "", installer,
		"whether the ground of the crawl space is covered", "from whoever has looked", "Ground cover", "joists-dry")
	if lack := acclimate.TargetOf(p.Room.Service).Lack; p.Wood.NoFlooring == "" && lack != "" {
		p.ask(designer, []string{"air-range", "air-held", "flooring-target", "flooring-spread", "climate-range"},
			"write down the service climate", "(Climates), from the designer or the owner: "+lack,
			Fill{"Climates", a.ID, a.Climate, []string{"Temp", "RH"}})
	}
	if p.stops("limits-known") {
		p.lookUp()
	}
}

// lookUp asks for the limits that were not looked up.
func (p *planner) lookUp() {
	floor := p.Floor()
	if floor.AdhesiveUnnamed() {
		p.ask(installer, []string{"limits-known"}, "write down which adhesive is used",
			"(Areas, Adhesive), or how else it is installed (Installation)", p.ofArea("Adhesive"))
	}
	for _, q := range floor.Asked() {
		if q.Lack() == "" {
			continue
		}
		short, columns := "read the data sheet of "+q.ID, q.Blank
		if len(columns) > 0 {
			short += ": " + evidence.List(columns)
		}
		how := "(Products), a number or the word none"
		if q.DataSheet == "" {
			how, columns = sentence(how, "and its title and date in Data sheet"), append(columns, "Data sheet")
		}
		p.ask(installer, []string{"limits-known"}, short, how, Fill{"Products", p.Area.ID, q.ID, columns})
	}
}

// fit adds what has to change where flooring, slab and climate do not go
// together: no reading helps there.
func (p *planner) fit() {
	p.unfits("grade", maker, "have the flooring manufacturer allow it below grade, or choose another flooring",
		"(Products, Below grade, with its data sheet)")
	if p.isBroken("retarder") {
		p.unfits("retarder", contractor, "name a membrane for this slab",
			"(Areas, Membrane): nothing holds the ground's moisture back")
	}
	p.unfits("climate-range", designer,
		"choose a flooring for this climate, or have the HVAC hold what its data sheet asks", "(Climates)")
	if p.isBroken("joists-dry") && p.Wood.CrawlSpace && p.Area.GroundCover == "no" {
		p.ask(contractor, []string{"joists-dry"}, "cover the ground of the crawl space",
			"with a vapor retarder (Areas, Ground cover)", p.ofArea("Ground cover"))
	}
}

func (p *planner) unfits(id, who, short, how string) {
	if f := p.finding(id); f.Blocks() {
		p.unsettled(f.Outcome == evidence.NotMet, who, []string{id}, short, sentence(how, f.Reason))
	}
}

// lacksThickness says whether a hole's depth cannot be judged because the
// slab's thickness is not known.
func (p *planner) lacksThickness() bool {
	f := p.Slab
	if f.NoHoles != "" || f.UnfitForHoles() != "" || f.Thickness.Shown() {
		return false
	}
	if len(p.holes.more) > 0 {
		return true
	}
	return slices.ContainsFunc(p.holes.things, func(x thing) bool {
		rows := p.rowsOf(x)
		return len(rows) == 0 || slices.ContainsFunc(rows, func(h slab.Hole) bool { return !h.Thickness.Shown() })
	})
}

// there is what the record holds already, in words: what was read and can
// stay, the air log, and the calibrations that reach to the readings.
func (p *planner) there() []string {
	kept := lists.Where(p.lots, func(lot lotWork) bool { return !lot.isAnew() })
	tasks := slices.Concat([]task{p.holes, p.dishes, p.pH, p.cm, p.others, p.subfloor, p.joists},
		lists.Each(kept, func(lot lotWork) task { return lot.task }), []task{p.surfaces})
	all := slices.Concat(lists.Each(tasks, task.there)...)
	if first, last := p.Room.Earliest(), p.Room.Latest(); last.Shown() {
		all = append(all, "air from "+first.Written+" to "+last.Written)
	}
	return all
}

func (t task) there() []string {
	fit, all := len(lists.Where(t.things, thing.fit)), len(t.things)+len(t.more)
	switch fit {
	case 0:
		return nil
	case all:
		return []string{evidence.Count(fit, t.one+t.ofLot(), t.many+t.ofLot())}
	}
	return []string{fmt.Sprintf("%d of %d %s", fit, all, t.many+t.ofLot())}
}
