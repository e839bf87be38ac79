package slab

import (
	"strconv"

	"firstboard/report/evidence"
)

// near finds the holes about a point of an area without looking at all.
type near map[square][]group[Hole]

// square is a square of an area's plan, 3 ft to the side.
type square struct {
	area string
	x, y int
}

// reach is how near one thing stands for another: 3 ft.
const reach = 3

// Reach is that distance.
func Reach() evidence.Reading { return evidence.Typed(strconv.Itoa(reach), evidence.Foot) }

func squareOf(area string, x, y evidence.Reading) square {
	side := evidence.Whole(reach)
	return square{area, x.In(evidence.Foot).Over(side).Ceil(), y.In(evidence.Foot).Over(side).Ceil()}
}

// placed puts holes on the plan, each under every place that its rows give.
func placed(holes gathered[Hole]) near {
	n := near{}
	for _, hole := range holes.groups {
		put := map[square]bool{}
		for _, h := range hole.Rows {
			if h.placed() {
				put[squareOf(hole.area, h.X, h.Y)] = true
			}
		}
		for at := range put {
			n[at] = append(n[at], hole)
		}
	}
	return n
}

// find is whether one of the holes in the squares about a known point holds a
// test.
func (n near) find(area string, x, y evidence.Reading, holds func(hole group[Hole]) bool) bool {
	about := squareOf(area, x, y)
	for _, x := range []int{about.x - 1, about.x, about.x + 1} {
		for _, y := range []int{about.y - 1, about.y, about.y + 1} {
			for _, hole := range n[square{area, x, y}] {
				if holds(hole) {
					return true
				}
			}
		}
	}
	return false
}

// within3ft says whether two points with known coordinates lie at most 3 ft
// apart.
func within3ft(x1, y1, x2, y2 evidence.Reading) bool {
	dx := x1.In(evidence.Foot).Sub(x2.In(evidence.Foot))
	dy := y1.In(evidence.Foot).Sub(y2.In(evidence.Foot))
	return dx.Mul(dx).Add(dy.Mul(dy)).Cmp(evidence.Whole(reach*reach)) <= 0
}
