package drying

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/distuv"
)

// The uniform humidities at which a slab may have begun to dry, fractions:
// traces are solved from some, and the others lie between.
const (
	lowestStart = 0.93
	solvedStep  = 0.03
	solvedCount = 3
	startStep   = 0.01
	startCount  = 7
)

// The rates tried, D1 in mm2/day at 20 C: equal steps of the logarithm.
const (
	slowest   = 1.5
	rateCount = 227 // up to 430
)

// usualRate is how likely a rate is before a reading was taken: the published
// ones are 15 to 43 mm2/day, and far slower and faster ones stay open.
//
// Source of the values: with the shapes; of the spread: ours.
func usualRate() distuv.StudentsT {
	return distuv.StudentsT{Mu: math.Log(26), Sigma: 0.6, Nu: 4}
}

// fitted is a sample as it is fitted: lived days since the course began, the
// humidity and one standard deviation, fractions.
type fitted struct{ lived, rh, sd float64 }

// guess is one way in which the slab may dry, and how likely it is. rate is
// the logarithm of D1 over the square of the thickness; age the lived days
// before the course began.
type guess struct {
	*trace
	start, rate, age, weight float64
}

// log is the logarithm of the time on the trace after so many lived days.
func (g guess) log(lived float64) float64 { return g.rate + math.Log(lived+g.age) }

// family are the traces of one shape from every start.
func family(s Shape, depth float64, air []surface) []*trace {
	wet := s.potential()
	var solved [solvedCount]*trace
	for i := range solved {
		solved[i] = dry(wet, lowestStart+solvedStep*float64(i), depth, air)
	}
	all := make([]*trace, startCount)
	for i := range all {
		all[i] = &trace{}
		for j, part := range lagrange(startStep / solvedStep * float64(i)) {
			floats.AddScaled(all[i].hole[:], part, solved[j].hole[:])
			floats.AddScaled(all[i].mean[:], part, solved[j].mean[:])
		}
	}
	return all
}

// lagrange gives the parts of values at 0, 1 and 2 that make up the value
// at x.
func lagrange(x float64) (parts [solvedCount]float64) {
	for i := range parts {
		parts[i] = 1
		for j := range parts {
			if i != j {
				parts[i] *= (x - float64(j)) / float64(i-j)
			}
		}
	}
	return parts
}

// fit holds the guesses that the samples leave likely.
type fit struct {
	samples []fitted
	ages    []float64
	slowest float64 // rate, its logarithm
	usual   [rateCount]float64
	guesses []guess
	best    float64 // weight
	misfit  float64 // least sum of squared deviations in standard deviations
}

func newFit(samples []fitted, ages []float64, thicknessMM float64) *fit {
	f := &fit{samples: samples, ages: ages, best: math.Inf(-1), misfit: math.Inf(1)}
	f.slowest = math.Log(slowest / (thicknessMM * thicknessMM))
	usual := usualRate()
	for k := range f.usual {
		f.usual[k] = usual.LogProb(math.Log(slowest) + logStep*float64(k))
	}
	return f
}

// add weighs the traces of a shape, at each age and rate.
func (f *fit) add(traces []*trace, share float64) {
	for i, t := range traces {
		start := lowestStart + startStep*float64(i)
		for _, age := range f.ages {
			var squares [rateCount]float64
			for _, s := range f.samples {
				t.deviate(&squares, f.slowest+math.Log(s.lived+age), s)
			}
			f.keep(guess{trace: t, start: start, age: age, weight: math.Log(share)}, &squares)
		}
	}
}

// deviate adds the squared deviation of a sample from the trace, in standard
// deviations, at each rate; log is its time on the trace at the slowest.
func (t *trace) deviate(squares *[rateCount]float64, log float64, s fitted) {
	x := (log - firstLog) / logStep
	whole := math.Floor(x)
	part, first := x-whole, int(whole)
	for k := range squares {
		i := min(max(first+k, 0), points-2)
		off := (s.rh - t.hole[i] - part*(t.hole[i+1]-t.hole[i])) / s.sd
		squares[k] += off * off
	}
}

// negligible is how far, as a logarithm, a guess may fall below the best one
// before it is dropped.
const negligible = 12

func (f *fit) keep(g guess, squares *[rateCount]float64) {
	before := g.weight
	for k, sum := range squares {
		f.misfit = min(f.misfit, sum)
		g.weight = before + f.usual[k] - sum/2
		if g.weight > f.best-negligible {
			f.best = max(f.best, g.weight)
			g.rate = f.slowest + logStep*float64(k)
			f.guesses = append(f.guesses, g)
		}
	}
}

// join takes in the guesses of another fit to the same samples.
func (f *fit) join(other *fit) {
	f.best, f.misfit = max(f.best, other.best), min(f.misfit, other.misfit)
	f.guesses = append(f.guesses, other.guesses...)
}

// drawn is how many guesses stand for all.
const drawn = 400

// draw picks guesses that stand for equal shares of what the samples leave
// possible.
func (f *fit) draw() []guess {
	total := 0.0
	for _, g := range f.guesses {
		total += math.Exp(g.weight - f.best)
	}
	picked, past := make([]guess, 0, drawn), 0.0
	for _, g := range f.guesses {
		past += math.Exp(g.weight-f.best) / total
		for len(picked) < drawn && (float64(len(picked))+0.5)/drawn < past {
			picked = append(picked, g)
		}
	}
	return picked
}

// meanRate is the mean of the logarithms of the rates.
func meanRate(guesses []guess) float64 {
	sum := 0.0
	for _, g := range guesses {
		sum += g.rate
	}
	return sum / float64(len(guesses))
}
