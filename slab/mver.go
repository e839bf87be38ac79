package slab

import (
	"fmt"
	"time"

	"firstboard/report/evidence"
)

// emissionChecks are the checks of calcium chloride dishes, in report order.
func emissionChecks() []evidence.Check[Floor] {
	advises := func(f Floor) bool { return f.Loose && f.NoDishes != "" }
	return []evidence.Check[Floor]{
		{
			ID: "mver-dishes", Deciding: true, Advises: advises, Judge: enoughDishes,
			Asks:    "were enough dishes set, as many as holes: " + perSize() + "?",
			Default: firstThenOne(),
			Cite:    evidence.Cite{Source: "ASTM F1869-22", Standing: evidence.Recalled},
		},
		{
			ID: "mver-time", Deciding: true, Advises: advises, Judge: exposure,
			Asks:    "was every dish exposed for " + Exposure().String() + "?",
			Default: Exposure().String(),
			Cite:    evidence.Cite{Source: "ASTM F1869-22", Standing: evidence.Published},
		},
		{
			ID: "mver-rate", Deciding: true, Advises: advises, Judge: emissionRate,
			Asks: "is every dish's MVER within the limit that a product states?",
			Cite: evidence.Cite{
				Source:   "the record; the rate by exact factors, not the rounded 52.911 of ASTM F1869",
				Standing: evidence.ByHand,
			},
		},
	}
}

func dishUsable(d Dish) bool {
	return d.SetAt.Shown() && d.RetrievedAt.Shown() && d.Start.Shown() && d.End.Shown() && d.TestArea.Shown()
}

const noDish = "no dish was set"

func (f Floor) onDishes(judge func(dishes gathered[Dish]) evidence.Finding) evidence.Finding {
	if f.NoDishes != "" {
		return evidence.Unneeded("%s", f.NoDishes)
	}
	if unfit := f.UnfitForDishes(); unfit != "" {
		return evidence.Unshown("%s", unfit)
	}
	return judge(f.rows().dishes)
}

// UnfitForDishes says why the slab cannot be judged by dishes, empty where it
// can.
func (f Floor) UnfitForDishes() string {
	if f.MadeOf == Lightweight || f.MadeOf == Gypsum || f.MadeOf == CalciumSulfate {
		return "the slab is " + f.MadeOf + ": dishes are a method for normal concrete; ask the flooring's manufacturer which test to use"
	}
	return ""
}

func enoughDishes(f Floor) evidence.Finding {
	return f.onDishes(func(dishes gathered[Dish]) evidence.Finding {
		things := dishes.judged()
		counted, unusable := evidence.TallyOf(things, dishUsable,
			func(d Dish) evidence.Working { return evidence.Cell("dish", d.End) })
		tally := evidence.Tally{
			Counted: counted, Unusable: unusable, Unit: evidence.Dishes, One: "dish",
			Many: "dishes",
		}
		return f.count(tally, evidence.Rows(things, func(d Dish) evidence.Place { return d.Place }))
	})
}

// Exposure is how long a dish lies on the slab: 60 to 72 h (ASTM F1869).
func Exposure() evidence.Limit {
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed("60", evidence.Hour)},
		Most:  evidence.Bound{Number: evidence.Typed("72", evidence.Hour)},
	}
}

// exposure weighs the least time that a dish can have lain, and the most, which
// differs only where clocks went back.
func exposure(f Floor) evidence.Finding {
	limit := Exposure()
	return f.onDishes(func(dishes gathered[Dish]) evidence.Finding {
		items := dishes.items(dishTable(), exposed(limit, evidence.Shortest))
		for i, most := range dishes.items(dishTable(), exposed(limit, evidence.Longest)) {
			if !most.Value.Equal(items[i].Value) {
				items = append(items, most)
			}
		}
		return evidence.Weigh(items, evidence.Acceptance{}, noDish).Against(limit)
	})
}

func exposed(limit evidence.Limit, passed func(from, to evidence.Time) time.Duration) func(string, Dish) evidence.Item {
	return func(name string, d Dish) evidence.Item {
		it := evidence.Item{Name: "dish " + name, Limit: limit, Place: d.Place}
		if !d.SetAt.Shown() || !d.RetrievedAt.Shown() {
			it.Lack = "no time of setting"
			return it
		}
		it = it.By(evidence.HoursBetween(d.SetAt, d.RetrievedAt, passed))
		it.Says = fmt.Sprintf("dish %s, exposed for %s h", name, it.Figure())
		return it
	}
}

func emissionRate(f Floor) evidence.Finding {
	return f.onDishes(func(dishes gathered[Dish]) evidence.Finding {
		return evidence.Weigh(dishes.items(dishTable(), f.rateOf), f.Acceptance, noDish).Against(f.MVER)
	})
}

// rateOf is the rate of a dish against the limit. The balance's uncertainty is
// in grams and goes through the same sum as the gain.
func (f Floor) rateOf(name string, d Dish) evidence.Item {
	it := evidence.Item{Name: "dish " + name, Limit: f.MVER, Place: d.Place}
	if !dishUsable(d) {
		it.Lack = "a mass, a time or the test area is missing"
		return it
	}
	gain := evidence.Less(evidence.Cell("end mass", d.End), evidence.Cell("start mass", d.Start))
	hours := evidence.HoursBetween(d.SetAt, d.RetrievedAt, evidence.Shortest)
	if gain.Value.Sign() <= 0 || hours.Value.Sign() <= 0 {
		it.Lack = "it gained nothing, so it was not sealed, or not weighed well"
		return it
	}
	ft2 := evidence.Converted(evidence.Cell("test area", d.TestArea), evidence.SquareFoot)
	rate := func(grams evidence.Working) evidence.Working {
		return evidence.Converted(emission(grams, ft2, hours), f.MVER.Unit())
	}
	it = it.By(rate(gain))
	it.Says = fmt.Sprintf("dish %s, %s %s from a gain of %s g", name, it.Figure(), f.MVER.Unit(), gain.Value.Text())
	it.U = f.Instruments.U(d.Instrument, evidence.Gram)
	if it.U.Known {
		it.U = evidence.Within(rate(evidence.Stated("uncertainty", it.U.Value, evidence.Gram)).Value)
	}
	return it
}

// emission is the moisture emission of a slab in lb per 1000 ft2 in 24 h, by
// exact factors, as Rate.
func emission(grams, ft2, hours evidence.Working) evidence.Working {
	pound := evidence.Stated("g in a pound", evidence.Ratio(45359237, 100000), evidence.Gram)
	scale := evidence.Stated("1000 ft2 x 24 h", evidence.Whole(1000*24), evidence.None)
	scaled := evidence.Times(evidence.DividedBy(grams, pound, evidence.None), scale, evidence.None)
	return evidence.DividedBy(evidence.DividedBy(scaled, ft2, evidence.None), hours, evidence.Pounds)
}

// Rate is the moisture emission of a slab in lb per 1000 ft2 in 24 h, from the
// grams a dish gained, its test area in ft2 and the hours it lay, by exact
// factors (453.59237 g to the pound). Area and hours are above zero.
//
// ASTM F1869 prints the factor rounded, 52.911 (recalled): 4.0 g on 0.449 ft2
// in 66 h give 7.14.
func Rate(grams, ft2, hours evidence.Exact) evidence.Exact {
	number := func(x evidence.Exact) evidence.Working { return evidence.Stated("", x, evidence.None) }
	return emission(number(grams), number(ft2), number(hours)).Value
}
