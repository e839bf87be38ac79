package slab

import (
	"fmt"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

func holeDepth(f Floor) evidence.Finding {
	return f.onHoles(func(holes gathered[Hole]) evidence.Finding {
		items := holes.items(holeTable(), func(name string, h Hole) evidence.Item {
			thick := h.Thickness
			if !thick.Shown() {
				thick = f.Thickness
			}
			it := evidence.Measure("hole "+name, h.Depth, f.DepthRange(thick))
			it.Says = fmt.Sprintf("hole %s, %s deep in %s of slab", name, h.Depth, thick)
			if !h.Depth.Shown() {
				it.Lack = "no depth"
			} else if !thick.Shown() {
				it.Lack = "the slab's thickness is not recorded"
			}
			return it
		})
		return evidence.Weigh(items, evidence.Acceptance{}, noHole)
	})
}

// Depth is the depth at which a probe stands for a slab after it is covered:
// 40 % of the thickness with one drying face, 20 % with two (ASTM F2170).
func Depth(thickness decimal.Decimal, twoFaces bool) decimal.Decimal {
	return thickness.Mul(share(twoFaces).Decimal())
}

// How deep that is, in % of the thickness.
const (
	oneFacePct  = 40
	twoFacesPct = 20
)

func share(twoFaces bool) evidence.Exact {
	if twoFaces {
		return evidence.Ratio(twoFacesPct, 100)
	}
	return evidence.Ratio(oneFacePct, 100)
}

// DefaultDepthTolerance is how far off its depth a hole may be, of that depth
// (common practice, no source).
func DefaultDepthTolerance() evidence.Reading { return evidence.Typed("10", evidence.Percent) }

// leastOff is how far off any hole may be.
func leastOff() evidence.Working {
	return evidence.Stated("1/8 in", evidence.Ratio(1, 8), evidence.Inch)
}

// DepthRange is the depth of a hole in a slab of that thickness, with the
// tolerance either side: so much of the depth, or 1/8 in, whichever is more; no
// limit where the thickness is blank.
func (f Floor) DepthRange(thick evidence.Reading) evidence.Limit {
	if !thick.Shown() {
		return evidence.Limit{}
	}
	thickness := evidence.Cell("thickness", thick)
	if thick.Unit == evidence.Foot { // an eighth of an inch is no decimal of a foot
		thickness = evidence.Converted(thickness, evidence.Inch)
	}
	unit := thickness.Unit
	part := evidence.Stated("of the thickness", share(f.TwoFaces), evidence.None)
	depth := evidence.Times(thickness, part, unit)
	hundred := evidence.Stated("%", evidence.Whole(100), evidence.None)
	percent := evidence.DividedBy(evidence.Cell("tolerance", f.DepthTolerance), hundred, evidence.None)
	tolerance := evidence.Highest(evidence.Times(depth, percent, unit), evidence.Converted(leastOff(), unit))
	return evidence.Limit{
		Least: evidence.Bound{}.Computed(evidence.Less(depth, tolerance)),
		Most:  evidence.Bound{}.Computed(evidence.Total(depth, tolerance)),
	}
}

// DefaultWait is how long a probe lies in its sealed hole before it is read
// (ASTM F2170-18 and later).
func DefaultWait() evidence.Reading { return evidence.Typed("24", evidence.Hour) }

// ReadableFrom is when a sealed hole may be read at the earliest.
func (f Floor) ReadableFrom(h Hole) time.Time {
	return h.SealedAt.Last.Add(evidence.Duration(f.Wait.Number.Exact()))
}

func holeWait(f Floor) evidence.Finding {
	limit := evidence.AtLeast(f.Wait)
	return f.onHoles(func(holes gathered[Hole]) evidence.Finding {
		items := holes.items(holeTable(), func(name string, h Hole) evidence.Item {
			it := evidence.Item{Name: "hole " + name, Limit: limit, Place: h.Place}
			if !h.SealedAt.Shown() || !h.ReadAt.Shown() {
				it.Lack = "no time of sealing"
				return it
			}
			it = it.By(evidence.HoursBetween(h.SealedAt, h.ReadAt, evidence.Shortest))
			it.Says = fmt.Sprintf("hole %s, read %s h after sealing", name, it.Figure())
			return it
		})
		return evidence.Weigh(items, evidence.Acceptance{}, noHole)
	})
}

// MayHaveWaited says whether a row may have been read late enough after its
// hole was sealed: where clocks went back, the longest that can have passed.
func (f Floor) MayHaveWaited(h Hole) bool {
	return !h.SealedAt.Shown() || evidence.Hours(evidence.Longest(h.SealedAt, h.ReadAt)).Cmp(f.Wait.Number.Exact()) >= 0
}
