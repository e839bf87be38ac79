package pictures

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// planOf is where holes, dishes, pieces and scans lie on the plan.
func planOf(s report.Site) Picture {
	p := Picture{Shows: Positions, Title: "Where the floor was measured"}
	f := s.Slab
	hole := func(h slab.Hole) (x, y evidence.Reading) { return h.X, h.Y }
	piece := func(r wood.Row) (x, y evidence.Reading) { return r.X, r.Y }
	if f.NoHoles == "" {
		p.with("hole", Judged, onPlan(f.JudgedHoles(), hole))
		p.with("discarded hole", Discarded, onPlan(f.DiscardedHoles(), hole))
	}
	p.with("dish", Dish, onPlan(f.JudgedDishes(), func(d slab.Dish) (x, y evidence.Reading) { return d.X, d.Y }))
	for _, lot := range s.Wood.Lots() {
		p.with("board of "+lot.Title(), Flooring, onPlan(lot.Boards, piece))
	}
	p.with("subfloor piece", Subfloor, onPlan(s.Wood.Pieces(wood.OfSubfloor), piece))
	p.with("joist", Joist, onPlan(s.Wood.Pieces(wood.OfJoist), piece))
	scans := evidence.Latest(f.BareScans(), f.Wet, func(r slab.Scan) string { return r.Spot },
		func(r slab.Scan) evidence.Time { return r.ReadAt })
	p.with("scan", Scan, onPlan(scans, func(r slab.Scan) (x, y evidence.Reading) { return r.X, r.Y }))
	if len(p.Series) > 0 {
		p.oneUnit()
	}
	return p
}

// onPlan are the points of things that have a place.
func onPlan[T any](things []evidence.Judged[T], at func(T) (x, y evidence.Reading)) []Point {
	var all []Point
	for _, thing := range things {
		var places []Point
		for _, r := range thing.Rows {
			if x, y := at(r); x.Shown() && y.Shown() {
				places = append(places, Point{Name: thing.Name, X: x, Y: y})
			}
		}
		if len(places) > 0 {
			all = append(all, slices.MinFunc(places, func(a, b Point) int {
				return strings.Compare(fmt.Sprint(a.X.Place, a.X, a.Y), fmt.Sprint(b.X.Place, b.X, b.Y))
			}))
		}
	}
	return all
}

// oneUnit brings all points of the plan to the unit of the first.
func (p *Picture) oneUnit() {
	u := p.Series[0].Points[0].X.Unit
	for _, s := range p.Series {
		for i, x := range s.Points {
			s.Points[i].X, s.Points[i].Y = inUnit(x.X, u), inUnit(x.Y, u)
		}
	}
	p.X, p.Y = "X ("+string(u)+")", "Y ("+string(u)+")"
	p.Title, p.Unit = p.Title+" (plan in "+string(u)+")", u
}
