package slab

import (
	"fmt"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// holeChecks are the checks of probes in sealed holes, in report order.
func holeChecks() []evidence.Check[Floor] {
	advises := func(f Floor) bool { return f.advises(true) }
	return []evidence.Check[Floor]{
		{
			ID: "slab-holes", Deciding: true, Advises: advises, Judge: enoughHoles,
			Asks:    "were enough holes read: 3 for the first 1000 ft2 (100 m2) and 1 for each further 1000 ft2 (100 m2) or part?",
			Default: "3, then 1",
			Cite:    evidence.Cite{Source: "ASTM F2170; \"or part\": AS 1884", Standing: evidence.Published},
		},
		{
			ID: "slab-edge", Deciding: true, Advises: advises, Judge: edgeHole,
			Asks:    "is one hole within 3 ft (0.9144 m) of an exterior wall, where the area has one?",
			Default: "3 ft",
			Cite:    evidence.Cite{Source: "ASTM F2170 (it may ask for each wall)", Standing: evidence.Recalled},
		},
		{
			ID: "slab-depth", Deciding: true, Advises: advises, Judge: holeDepth,
			Asks:    "is each hole at 40 % of the thickness (one drying face) or 20 % (two), within 10 % of that depth or 1/8 in (3.175 mm), whichever is more?",
			Default: "40 % or 20 % of the thickness",
			Cite:    evidence.Cite{Source: "ASTM F2170 (the fraction); the tolerance: common practice, no source", Standing: evidence.Published},
		},
		{
			ID: "slab-wait", Deciding: true, Advises: advises, Judge: holeWait,
			Asks:    "was each hole read at least 24 h after it was sealed?",
			Default: "24 h",
			Cite:    evidence.Cite{Source: "ASTM F2170-18 and later (72 h in the editions before)", Standing: evidence.Published},
		},
		{
			ID: "slab-temp", Deciding: true, Advises: advises, Judge: concreteTemp,
			Asks:    "was the concrete at each hole within the temperatures that the air must keep?",
			Default: "the temperatures of air-range",
			Cite:    evidence.Cite{Source: "ASTM F2170", Standing: evidence.Recalled},
		},
		{
			ID: "slab-rh", Deciding: true, Advises: advises, Judge: holeRH,
			Asks:    "does every hole meet the limit of relative humidity (75 % unless a product states one)? Never an average",
			Default: "75 % RH",
			Cite:    evidence.Cite{Source: "ASTM F710 summary; AS 1884", Standing: evidence.Published},
		},
	}
}

// DefaultRH is the limit where no product states one: 75 % RH.
func DefaultRH() evidence.Bound {
	return evidence.Bound{
		Number: evidence.Typed("75", evidence.RH),
		Cite:   evidence.Cite{Source: "ASTM F710 summary; AS 1884", Standing: evidence.Published},
	}
}

// HolesNeeded is the number of holes for an area: 3 for the first 1000 ft2 or
// 100 m2 and 1 for each further 1000 ft2 or 100 m2 or part, as the size was
// recorded (ASTM F2170; AS 1884). It is no figure for a blank size.
func HolesNeeded(size evidence.Reading) evidence.Working {
	if !size.Shown() {
		return evidence.Working{}
	}
	number := func(what string, n int, u evidence.Unit) evidence.Working {
		return evidence.Stated(what, evidence.Whole(n), u)
	}
	per := number("for each", 1000, evidence.SquareFoot)
	if size.Unit == evidence.SquareM {
		per = number("for each", 100, evidence.SquareM)
	}
	parts := evidence.RoundedUp(evidence.DividedBy(evidence.Cell("size", size), per, evidence.Holes))
	return evidence.Total(number("and", 2, evidence.Holes), evidence.Highest(number("at least", 1, evidence.Holes), parts))
}

// onHoles answers a check of the hole method, where it applies and the slab
// is one that the method is made for.
func (f Floor) onHoles(judge func(holes []evidence.Judged[Hole]) evidence.Finding) evidence.Finding {
	if f.NoHoles != "" {
		return evidence.Unneeded("%s", f.NoHoles)
	}
	if unfit := f.UnfitForHoles(); unfit != "" {
		return evidence.Unshown("%s", unfit)
	}
	return judge(f.JudgedHoles())
}

// UnfitForHoles says why the slab cannot be judged by probes in holes, empty
// where it can.
func (f Floor) UnfitForHoles() string {
	if f.MadeOf == Gypsum || f.MadeOf == CalciumSulfate {
		return "the slab is " + f.MadeOf + ": probes in holes are a method for concrete; ask the flooring's manufacturer which test to use"
	}
	return ""
}

const noHole = "no hole was read"

func enoughHoles(f Floor) evidence.Finding {
	return f.onHoles(func(holes []evidence.Judged[Hole]) evidence.Finding {
		counted, unusable := evidence.TallyOf(holes, holeUsable, func(h Hole) evidence.Working { return evidence.Cell("hole", h.RH) })
		return f.count(counted, unusable, evidence.Holes, "hole", "holes",
			evidence.Rows(holes, func(h Hole) evidence.Place { return h.Place }))
	})
}

func edgeHole(f Floor) evidence.Finding {
	if f.NoHoles == "" && f.ExteriorWalls.Shown() && f.ExteriorWalls.Value.IsZero() {
		return evidence.Unneeded("the area has no exterior wall")
	}
	return f.onHoles(nearWall)
}

// NearWall is how far from an exterior wall one hole may lie: 3 ft.
func NearWall() evidence.Limit {
	return evidence.AtMost(evidence.Bound{Number: evidence.Typed("3", evidence.Foot)})
}

// nearWall asks for one hole of which every judged row is near the wall; a
// hole whose distance is not known may be the one.
func nearWall(holes []evidence.Judged[Hole]) evidence.Finding {
	near := NearWall()
	best := evidence.Finding{Reason: noHole}.Against(near)
	for i, hole := range holes {
		items := evidence.Items([]evidence.Judged[Hole]{hole}, holeTime, func(name string, h Hole) evidence.Item {
			it := evidence.Measure("hole "+name, h.ToWall, near)
			it.Says = fmt.Sprintf("hole %s lies %s from an exterior wall", name, h.ToWall)
			switch {
			case !h.ToWall.Shown():
				it.Lack = "no distance to an exterior wall"
			case !h.RH.Shown() && !it.Breaks(evidence.Acceptance{}):
				it.Lack = "no reading"
			}
			return it
		})
		f := evidence.Weigh(items, evidence.Acceptance{}, noHole)
		if i == 0 || edgeRank(f.Outcome) > edgeRank(best.Outcome) {
			best = f
		}
	}
	return best
}

func edgeRank(o evidence.Outcome) int {
	switch o {
	case evidence.Met:
		return 2
	case evidence.NotShown:
		return 1
	}
	return 0
}

func holeDepth(f Floor) evidence.Finding {
	return f.onHoles(func(holes []evidence.Judged[Hole]) evidence.Finding {
		items := evidence.Items(holes, holeTime, func(name string, h Hole) evidence.Item {
			thick := h.Thickness
			if !thick.Shown() {
				thick = f.Thickness
			}
			it := evidence.Measure("hole "+name, h.Depth, f.DepthRange(thick))
			it.Says = fmt.Sprintf("hole %s is %s deep in %s of slab", name, h.Depth, thick)
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
	if twoFaces {
		return thickness.Mul(decimal.New(20, -2))
	}
	return thickness.Mul(decimal.New(40, -2))
}

// DepthRange is the depth of a hole in a slab of that thickness, with the
// tolerance either side; no limit where the thickness is blank.
func (f Floor) DepthRange(thick evidence.Reading) evidence.Limit {
	if !thick.Shown() {
		return evidence.Limit{}
	}
	thickness, unit := thick.Value, thick.Unit
	if unit == evidence.Foot { // an eighth of an inch is no decimal of a foot
		thickness, unit = thickness.Mul(decimal.New(12, 0)), evidence.Inch
	}
	depth := Depth(thickness, f.TwoFaces)
	tolerance := decimal.Max(depth.Mul(f.DepthTolerance.Value).Shift(-2), eighthInch(unit))
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Computed(depth.Sub(tolerance), unit)},
		Most:  evidence.Bound{Number: evidence.Computed(depth.Add(tolerance), unit)},
	}
}

func eighthInch(unit evidence.Unit) decimal.Decimal {
	switch unit {
	case evidence.Millimeter:
		return decimal.New(3175, -3)
	case evidence.Centimeter:
		return decimal.New(3175, -4)
	case evidence.Meter:
		return decimal.New(3175, -6)
	}
	return decimal.New(125, -3)
}

// ReadableFrom is when a sealed hole may be read at the earliest.
func (f Floor) ReadableFrom(h Hole) time.Time {
	return h.SealedAt.Last.Add(evidence.Duration(f.Wait.Number.Exact()))
}

func holeWait(f Floor) evidence.Finding {
	limit := evidence.AtLeast(f.Wait)
	return f.onHoles(func(holes []evidence.Judged[Hole]) evidence.Finding {
		items := evidence.Items(holes, holeTime, func(name string, h Hole) evidence.Item {
			it := evidence.Item{Name: "hole " + name, Limit: limit, Place: h.Place}
			if !h.SealedAt.Shown() {
				it.Lack = "no time of sealing"
				return it
			}
			it.Value = evidence.Hours(evidence.Shortest(h.SealedAt, h.ReadAt))
			it.Written = it.Value.Text(f.Wait.Number.Exact())
			it.Says = fmt.Sprintf("hole %s was read %s h after it was sealed", name, it.Written)
			return it
		})
		return evidence.Weigh(items, evidence.Acceptance{}, noHole)
	})
}

func concreteTemp(f Floor) evidence.Finding {
	return f.onHoles(func(holes []evidence.Judged[Hole]) evidence.Finding {
		items := evidence.Items(holes, holeTime, func(name string, h Hole) evidence.Item {
			it := evidence.Measure("the concrete at hole "+name, h.Temp, f.Temp)
			if !h.Temp.Shown() {
				it.Lack = "no temperature"
			}
			return it
		})
		return evidence.Weigh(items, evidence.Acceptance{}, noHole)
	})
}
