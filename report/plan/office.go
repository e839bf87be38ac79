package plan

import (
	"fmt"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// office asks for what is written down and not measured.
func (p *planner) office() {
	a := p.Area
	asks := func(missing bool, what, from string, checks ...string) {
		if missing {
			p.ask(checks, "write down "+what+", "+from, what+", "+from)
		}
	}
	asks(!a.InstallOn.Shown(), "the day of installing (Areas, Install on)", "from the general contractor", "reading-age")
	asks(!a.Size.Shown(), "the area's size (Areas, Size)", "from the drawing or with a tape",
		"slab-holes", "mver-dishes", "slab-cm", "joists-dry", "subfloor-count", "flooring-count")
	asks(p.lacksThickness(), "the slab's thickness (Areas, Slab thickness)", "from the drawing or at a hole", "slab-depth")
	asks(p.Wood.NoBelow == "" && p.Wood.CrawlSpace && a.GroundCover == "",
		"whether the ground of the crawl space is covered (Areas, Ground cover)", "from whoever has looked", "joists-dry")
	if lack := acclimate.TargetOf(p.Room.Service).Lack; p.Wood.NoFlooring == "" && lack != "" {
		asks(true, "the service climate (Climates): "+lack, "from the designer or the owner",
			"air-range", "air-held", "flooring-target", "flooring-spread", "climate-range")
	}
}

// lacksThickness says whether a hole's depth cannot be judged for want of the
// slab's thickness.
func (p *planner) lacksThickness() bool {
	f := p.Slab
	if f.NoHoles != "" || f.UnfitForHoles() != "" || f.Thickness.Shown() {
		return false
	}
	if len(p.moreHoles) > 0 {
		return true
	}
	for _, hole := range f.JudgedHoles() {
		for _, h := range hole.Rows {
			if !h.Thickness.Shown() {
				return true
			}
		}
	}
	return false
}

// there is what the record holds already, in words: what was read and can
// stay, the air log, and the calibrations that reach to the readings.
func (p *planner) there() []string {
	var all []string
	kinds := []struct {
		one, many string
		things    []thing
		more      []string
	}{
		{"hole", "holes", p.holes, p.moreHoles},
		{"dish", "dishes", p.dishes, p.moreDishes},
		{"pH spot", "pH spots", p.pH, p.morePH},
		{"carbide spot", "carbide spots", p.cm, p.moreCM},
		{"further test", "further tests", p.others, nil},
		{"subfloor piece", "subfloor pieces", p.subfloor, p.moreSubfloor},
		{"joist", "joists", p.joists, p.moreJoists},
	}
	for _, k := range kinds {
		all = append(all, thereOf(k.one, k.many, k.things, k.more)...)
	}
	for _, lot := range p.lots {
		if lot.again == "" {
			all = append(all, thereOf("board"+lot.of(), "boards"+lot.of(), lot.boards, lot.more)...)
		}
	}
	all = append(all, thereOf("surface spot", "surface spots", p.surfaces, p.moreSpots)...)
	if first, last := p.Room.Earliest(), p.Room.Latest(); last.Shown() {
		all = append(all, "air from "+first.Written+" to "+last.Written)
	}
	return all
}

func thereOf(one, many string, things []thing, more []string) []string {
	fit := len(names(things, isFit))
	switch fit {
	case 0:
		return nil
	case len(things) + len(more):
		return []string{evidence.Count(fit, one, many)}
	}
	return []string{fmt.Sprintf("%d of %d %s", fit, len(things)+len(more), many)}
}
