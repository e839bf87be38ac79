package slab

import (
	"fmt"

	"firstboard/report/evidence"
)

// holeChecks are the checks of probes in sealed holes, in report order.
func holeChecks() []evidence.Check[Floor] {
	return []evidence.Check[Floor]{
		{
			ID: "slab-holes", Deciding: true, Advises: Floor.HolesAdvise, Judge: enoughHoles,
			Asks:    "were enough holes read: " + perSize() + "?",
			Default: firstThenOne(),
			Cite:    evidence.Cite{Source: "ASTM F2170-19a; \"or part\": AS 1884-2012", Standing: evidence.Published},
		},
		{
			ID: "slab-edge", Deciding: true, Advises: Floor.HolesAdvise, Judge: edgeHole,
			Asks: fmt.Sprintf("on a slab on or below grade: is one hole within %s (%s m) of each exterior wall?", NearWall(),
				NearWall().Most.Number.In(evidence.Meter).Text()),
			Default: NearWall().String(),
			Cite:    evidence.Cite{Source: "ASTM F2170-19a", Standing: evidence.Recalled},
		},
		{
			ID: "slab-depth", Deciding: true, Advises: Floor.HolesAdvise, Judge: holeDepth,
			Asks: fmt.Sprintf("is each hole at %d %% of the thickness (one drying face) or %d %% (two), within %s of that depth "+
				"or %s (%s mm), whichever is more?", oneFacePct, twoFacesPct, DefaultDepthTolerance(),
				leastOff().Label, evidence.Converted(leastOff(), evidence.Millimeter).Value.Text()),
			Default: fmt.Sprintf("%d %% or %d %% of the thickness", oneFacePct, twoFacesPct),
			Cite: evidence.Cite{
				Source:   "ASTM F2170-19a (the fraction); the tolerance: common practice, no source",
				Standing: evidence.Published,
			},
		},
		{
			ID: "slab-wait", Deciding: true, Advises: Floor.HolesAdvise, Judge: holeWait,
			Asks:    "was each hole read at least " + DefaultWait().String() + " after it was sealed?",
			Default: DefaultWait().String(),
			Cite: evidence.Cite{
				Source:   "ASTM F2170-18 and later (72 h in the editions before)",
				Standing: evidence.Published,
			},
		},
		{
			ID: "slab-temp", Deciding: true, Advises: Floor.HolesAdvise, Judge: concreteTemp,
			Asks:    "was the concrete at each hole within the temperatures that the air must keep?",
			Default: "the temperatures of air-range",
			Cite:    evidence.Cite{Source: "ASTM F2170-19a", Standing: evidence.Recalled},
		},
		{
			ID: "slab-rh", Deciding: true, Advises: Floor.HolesAdvise, Judge: holeRH,
			Asks: "does every hole meet the RH limit (" + DefaultRH().Number.String() +
				" unless a product states one)? Never an average; " +
				"a reading under " + LeastRH().String() + " shows nothing",
			Default: DefaultRH().Number.String(),
			Cite:    DefaultRH().Cite,
		},
	}
}

// DefaultRH is the limit where no product states one: 75 % RH.
func DefaultRH() evidence.Bound {
	return evidence.Bound{
		Number: evidence.Typed("75", evidence.RH),
		Cite:   evidence.Cite{Source: "ASTM F710-19 summary; AS 1884-2012", Standing: evidence.Published},
	}
}

// How many holes or dishes the first part of a floor has, and how large a part
// is, in ft2 and in m2; each further one has one more.
const (
	FirstHoles = 3
	partFT2    = 1000
	partM2     = 100
)

func perSize() string {
	part := fmt.Sprintf("%d ft2 (%d m2)", partFT2, partM2)
	return fmt.Sprintf("%d for the first %s and 1 for each further %s or part", FirstHoles, part, part)
}

func firstThenOne() string { return fmt.Sprintf("%d, then 1", FirstHoles) }

// HolesNeeded is the number of holes or dishes for an area with those that
// share its slab tests: 3 for the first 1000 ft2 or 100 m2 and 1 for each
// further 1000 ft2 or 100 m2 or part, as the first size was recorded (ASTM
// F2170; AS 1884). It is no figure where a size is blank.
func HolesNeeded(sizes ...evidence.Reading) evidence.Working {
	whole := size(sizes)
	if !whole.Shown() {
		return evidence.Working{}
	}
	number := func(what string, n int, u evidence.Unit) evidence.Working {
		return evidence.Stated(what, evidence.Whole(n), u)
	}
	per := number("for each", partFT2, evidence.SquareFoot)
	if whole.Unit == evidence.SquareM {
		per = number("for each", partM2, evidence.SquareM)
	}
	parts := evidence.RoundedUp(evidence.DividedBy(whole, per, evidence.Holes))
	return evidence.Total(number("and", FirstHoles-1, evidence.Holes),
		evidence.Highest(number("at least", 1, evidence.Holes), parts))
}

// onHoles answers a check of the hole method, where it applies and the slab
// is one that the method is made for.
func (f Floor) onHoles(judge func(holes gathered[Hole]) evidence.Finding) evidence.Finding {
	if f.NoHoles != "" {
		return evidence.Unneeded("%s", f.NoHoles)
	}
	if unfit := f.UnfitForHoles(); unfit != "" {
		return evidence.Unshown("%s", unfit)
	}
	return judge(f.rows().holes)
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

func holeUsable(h Hole) bool { return h.RH.Shown() && h.ReadAt.Shown() }

// enoughHoles counts holes, two at one place once.
func enoughHoles(f Floor) evidence.Finding {
	return f.onHoles(func(holes gathered[Hole]) evidence.Finding {
		reading := func(h Hole) evidence.Working { return evidence.Cell("hole", h.RH) }
		counted, unusable := evidence.TallyOf(apart(holes), holeUsable, reading)
		tally := evidence.Tally{Counted: counted, Unusable: unusable, Unit: evidence.Holes, One: "hole", Many: "holes"}
		return f.count(tally, evidence.Rows(holes.judged(), func(h Hole) evidence.Place { return h.Place }))
	})
}

// apart are the holes less those that lie where another does: of two the
// usable one stays.
func apart(holes gathered[Hole]) []evidence.Judged[Hole] {
	taken := map[[3]string]bool{}
	var kept []evidence.Judged[Hole]
	for _, usable := range []bool{true, false} {
		for _, hole := range holes.groups {
			if allUsable(hole.Rows, holeUsable) != usable {
				continue
			}
			places := spotsOf(hole)
			if !anyTaken(taken, places) {
				kept = append(kept, hole.Judged)
			}
			for _, p := range places {
				taken[p] = true
			}
		}
	}
	return kept
}

func anyTaken(taken map[[3]string]bool, places [][3]string) bool {
	for _, p := range places {
		if taken[p] {
			return true
		}
	}
	return false
}

// spotsOf are the places of a hole: its area, X and Y.
func spotsOf(hole group[Hole]) [][3]string {
	var places [][3]string
	for _, h := range hole.Rows {
		if h.placed() {
			x, y := h.X.In(evidence.Millimeter).Decimal(), h.Y.In(evidence.Millimeter).Decimal()
			places = append(places, [3]string{hole.area, x.String(), y.String()})
		}
	}
	return places
}

// allUsable says whether there is a row and every row is usable.
func allUsable[T any](rows []T, usable func(T) bool) bool {
	for _, r := range rows {
		if !usable(r) {
			return false
		}
	}
	return len(rows) > 0
}

// count answers whether enough holes or dishes were taken.
func (f Floor) count(t evidence.Tally, rows []evidence.Place) evidence.Finding {
	t.Needed = HolesNeeded(f.Sizes...)
	found := t.Find(f.written())
	found.Evidence = rows
	return found
}

func concreteTemp(f Floor) evidence.Finding {
	return f.onHoles(func(holes gathered[Hole]) evidence.Finding {
		items := holes.items(holeTable(), func(name string, h Hole) evidence.Item {
			it := evidence.Measure("hole "+name, h.Temp, f.Temp)
			if !h.Temp.Shown() {
				it.Lack = "no temperature"
			}
			return it
		})
		return evidence.Weigh(items, evidence.Acceptance{}, noHole)
	})
}
