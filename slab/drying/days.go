package drying

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// longest is how far ahead a forecast looks: ten years.
const longest = 3652.0

// ready are the days on which the hole is at its limit, in order, one for each
// guess: today where it should be there already, ten years on where it takes
// longer.
func (h Hole) ready(c course, today float64, guesses []guess) []float64 {
	days := make([]float64, len(guesses))
	for i, g := range guesses {
		days[i] = today + longest
		log, ok := g.reaches(h.LimitPct/100, g.log(c.lived(today)))
		if ok {
			days[i] = min(max(today, c.day(math.Exp(log-g.rate)-g.age)), today+longest)
		}
	}
	slices.Sort(days)
	return days
}

func middle(sorted []float64) float64 { return stat.Quantile(0.5, stat.Empirical, sorted, nil) }

// interval holds nine in ten of the days: from where two in a hundred lie
// before it to where eight in a hundred lie after it. The days trail off late,
// and this is nearly the shortest interval that holds as many.
func interval(sorted []float64) (from, to float64) {
	return stat.Quantile(0.02, stat.Empirical, sorted, nil), stat.Quantile(0.92, stat.Empirical, sorted, nil)
}

// slab tells what the guesses have in common: how the slab began, how fast it
// dries and what it holds on a day.
func (h Hole) slab(c course, day float64, guesses []guess) Outlook {
	thickness, _ := h.layerMM()
	return Outlook{
		StartPct:   middleOf(guesses, func(g guess) float64 { return 100 * g.start }),
		RateMM2Day: middleOf(guesses, func(g guess) float64 { return math.Exp(g.rate) * thickness * thickness }),
		CoveredPct: middleOf(guesses, func(g guess) float64 { return 100 * read(&g.mean, g.log(c.lived(day))) }),
	}
}

func middleOf(guesses []guess, value func(guess) float64) float64 {
	values := make([]float64, len(guesses))
	for i, g := range guesses {
		values[i] = value(g)
	}
	slices.Sort(values)
	return middle(values)
}

// shown is how many days a course is told for.
const shown = 49

// expected tells the course of the hole from a day to another.
func expected(c course, from, to float64, guesses []guess) []Expected {
	all, rh := make([]Expected, shown), make([]float64, len(guesses))
	for i := range all {
		day := from + (to-from)*float64(i)/(shown-1)
		for k, g := range guesses {
			rh[k] = 100 * read(&g.hole, g.log(c.lived(day)))
		}
		slices.Sort(rh)
		low, high := stat.Quantile(0.05, stat.Empirical, rh, nil), stat.Quantile(0.95, stat.Empirical, rh, nil)
		all[i] = Expected{day, middle(rh), low, high}
	}
	return all
}
