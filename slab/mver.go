package slab

import (
	"fmt"
	"time"

	"firstboard/report/evidence"
)

// emissionChecks are the checks of calcium chloride dishes, in report order.
func emissionChecks() []evidence.Check[Floor] {
	advises := func(f Floor) bool { return f.advises(false) }
	return []evidence.Check[Floor]{
		{
			ID: "mver-dishes", Deciding: true, Advises: advises, Judge: enoughDishes,
			Asks:    "were enough dishes set: 3 for the first 1000 ft2 (100 m2) and 1 for each further 1000 ft2 (100 m2) or part?",
			Default: "3, then 1",
			Cite:    evidence.Cite{Source: "ASTM F1869", Standing: evidence.Recalled},
		},
		{
			ID: "mver-time", Deciding: true, Advises: advises, Judge: exposure,
			Asks:    "was every dish exposed for 60 to 72 h?",
			Default: "60 to 72 h",
			Cite:    evidence.Cite{Source: "ASTM F1869", Standing: evidence.Published},
		},
		{
			ID: "mver-rate", Deciding: true, Advises: advises, Judge: emissionRate,
			Asks: "is every dish's rate of moisture emission within the limit that a product states?",
			Cite: evidence.Cite{Source: "the record; the rate by exact factors, not the rounded 52.911 of ASTM F1869", Standing: evidence.ByHand},
		},
	}
}

func dishName(d Dish) string        { return d.Dish }
func dishTime(d Dish) evidence.Time { return d.RetrievedAt }
func dishUsable(d Dish) bool {
	return d.SetAt.Shown() && d.RetrievedAt.Shown() && d.Start.Shown() && d.End.Shown() && d.TestArea.Shown()
}

// JudgedDishes are the dishes that count, with their judged rows. A dish that
// lay on the slab when water came counts as read before it.
func (f Floor) JudgedDishes() []evidence.Judged[Dish] {
	rows := standing(f, f.Dishes, dishTime)
	for i, d := range rows {
		if d.SetAt.Shown() && d.RetrievedAt.Shown() && d.SetAt.First.Before(f.Wet) {
			rows[i].RetrievedAt = d.SetAt
		}
	}
	return evidence.Latest(rows, f.Wet, dishName, dishTime)
}

const noDish = "no dish was set"

func (f Floor) onDishes(judge func(dishes []evidence.Judged[Dish]) evidence.Finding) evidence.Finding {
	if f.NoDishes != "" {
		return evidence.Unneeded("%s", f.NoDishes)
	}
	if unfit := f.UnfitForDishes(); unfit != "" {
		return evidence.Unshown("%s", unfit)
	}
	return judge(f.JudgedDishes())
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
	return f.onDishes(func(dishes []evidence.Judged[Dish]) evidence.Finding {
		counted, unusable := evidence.TallyOf(dishes, dishUsable, func(d Dish) evidence.Working { return evidence.Cell("dish", d.End) })
		return f.count(counted, unusable, evidence.Dishes, "dish", "dishes",
			evidence.Rows(dishes, func(d Dish) evidence.Place { return d.Place }))
	})
}

// Exposure is how long a dish lies on the slab: 60 to 72 h (ASTM F1869).
func Exposure() evidence.Limit {
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed("60", evidence.Hour)},
		Most:  evidence.Bound{Number: evidence.Typed("72", evidence.Hour)},
	}
}

// exposure weighs the least and the most time that a dish can have lain, which
// differ only where clocks went back.
func exposure(f Floor) evidence.Finding {
	limit := Exposure()
	return f.onDishes(func(dishes []evidence.Judged[Dish]) evidence.Finding {
		least := evidence.Items(dishes, dishTime, exposed(limit, evidence.Shortest))
		most := evidence.Items(dishes, dishTime, exposed(limit, evidence.Longest))
		return evidence.Weigh(append(least, most...), evidence.Acceptance{}, noDish).Against(limit)
	})
}

func exposed(limit evidence.Limit, passed func(from, to evidence.Time) time.Duration) func(string, Dish) evidence.Item {
	return func(name string, d Dish) evidence.Item {
		it := evidence.Item{Name: "dish " + name, Limit: limit, Place: d.Place}
		if !d.SetAt.Shown() {
			it.Lack = "no time of setting"
			return it
		}
		it.Value = evidence.Hours(passed(d.SetAt, d.RetrievedAt))
		it.Written = it.Value.Text(limit.Ends()...)
		it.Says = fmt.Sprintf("dish %s lay for %s h", name, it.Written)
		return it
	}
}

func emissionRate(f Floor) evidence.Finding {
	return f.onDishes(func(dishes []evidence.Judged[Dish]) evidence.Finding {
		return evidence.Weigh(evidence.Items(dishes, dishTime, f.rateOf), f.Acceptance, noDish).Against(f.MVER)
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
	gain, passed := d.End.Exact().Sub(d.Start.Exact()), evidence.Shortest(d.SetAt, d.RetrievedAt)
	if gain.Sign() <= 0 || passed <= 0 {
		it.Lack = "it gained nothing, so it was not sealed, or not weighed well"
		return it
	}
	unit := f.MVER.Unit()
	rate := func(grams evidence.Exact) evidence.Exact {
		return evidence.Convert(Rate(grams, d.TestArea.In(evidence.SquareFoot), evidence.Hours(passed)), evidence.Pounds, unit)
	}
	it.Value = rate(gain)
	it.Written = it.Value.Text(f.MVER.Ends()...)
	it.Says = fmt.Sprintf("dish %s gained %s g, a rate of %s %s", name, gain.Text(), it.Written, unit)
	it.U = f.Instruments.U(d.Instrument, evidence.Gram)
	if it.U.Known {
		it.U = evidence.Within(rate(it.U.Value))
	}
	return it
}

// Rate is the moisture emission of a slab in lb per 1000 ft2 in 24 h, from the
// grams a dish gained, its test area in ft2 and the hours it lay, by exact
// factors (453.59237 g to the pound). Area and hours are above zero.
//
// ASTM F1869 prints the factor rounded, 52.911 (recalled): 4.0 g on 0.449 ft2
// in 66 h give 7.14.
func Rate(grams, ft2, hours evidence.Exact) evidence.Exact {
	perPound := evidence.Ratio(45359237, 100000)
	return grams.Over(perPound).Mul(evidence.Whole(1000 * 24)).Over(ft2).Over(hours)
}
