package drying

import "math"

// The grid: cells that widen from the drying face on, where fronts are steep.
const (
	cells   = 48
	widened = 1.05 // each cell over the one before it
)

// layer is the concrete between a drying face and where no water passes, cut
// in finite volumes: the slab under one open face, half of it under two. Its
// thickness is 1, its time is in units of thickness^2/D1, its humidities are
// fractions.
type layer struct {
	wet     *potential
	width   [cells]float64
	middle  [cells]float64
	between [cells]float64 // from the middle of the cell before, or the face, to this one's
	h       [cells]float64
	lost    float64 // through the face, as a humidity of the whole layer

	slope, rate         [cells]float64
	lower, pivot, upper [cells]float64 // pivot: one over the diagonal
}

func newLayer(wet *potential, start float64) *layer {
	l := &layer{wet: wet}
	width, depth := (widened-1)/(math.Pow(widened, cells)-1), 0.0
	for i := range l.h {
		l.h[i], l.width[i], l.middle[i] = start, width, depth+width/2
		l.between[i] = l.middle[i]
		if i > 0 {
			l.between[i] -= l.middle[i-1]
		}
		depth += width
		width *= widened
	}
	return l
}

// flow fills rate with dh/dt of each cell at humidities h, under a face at the
// humidity of the air, and slope with D/D1. out is what leaves by the face.
func (l *layer) flow(h *[cells]float64, air float64) (out float64) {
	above, _ := l.wet.read(air)
	into := 0.0
	for i := range h {
		var here float64
		here, l.slope[i] = l.wet.read(h[i])
		through := (above - here) / l.between[i]
		if i == 0 {
			out = -through
		} else {
			l.rate[i-1] = (into - through) / l.width[i-1]
		}
		into, above = through, here
	}
	l.rate[cells-1] = into / l.width[cells-1]
	return out
}

// factor eliminates 1 - step J, with J the derivative of flow by h: Thomas'
// algorithm, once for two right-hand sides.
func (l *layer) factor(step float64) {
	for i := range l.h {
		weight, below := step/l.width[i], 0.0
		if i < cells-1 {
			below = 1 / l.between[i+1]
			l.upper[i] = -weight * below * l.slope[i+1]
		}
		diagonal := 1 + weight*(1/l.between[i]+below)*l.slope[i]
		if i > 0 {
			l.lower[i] = -weight / l.between[i] * l.slope[i-1] * l.pivot[i-1]
			diagonal -= l.lower[i] * l.upper[i-1]
		}
		l.pivot[i] = 1 / diagonal
	}
}

// solve puts the solution of the factored system in the place of x.
func (l *layer) solve(x *[cells]float64) {
	for i := 1; i < cells; i++ {
		x[i] -= l.lower[i] * x[i-1]
	}
	x[cells-1] *= l.pivot[cells-1]
	for i := cells - 2; i >= 0; i-- {
		x[i] = (x[i] - l.upper[i]*x[i+1]) * l.pivot[i]
	}
}

// gamma makes the two-stage Rosenbrock method of second order L-stable with its
// smaller error: 1 - 1/sqrt 2 (Verwer, Spee, Blom and Hundsdorfer 1999,
// recalled). A test holds that it keeps the order of the cells.
const gamma = 1 - 1/math.Sqrt2

// step tries a step of time under air of one humidity by the two-stage
// Rosenbrock method of second order, and gives its error beside the first
// order. A step whose error is over the tolerance changes nothing.
func (l *layer) step(dt, air, tolerance float64) (wrong float64) {
	out := l.flow(&l.h, air)
	skin := l.slope[0] / l.between[0]
	l.factor(gamma * dt)
	first := l.rate
	l.solve(&first)
	out += gamma * dt * skin * first[0]
	next := l.h
	for i := range next {
		next[i] += dt * first[i]
	}
	again := l.flow(&next, air)
	second := l.rate
	for i := range second {
		second[i] -= 2 * first[i]
	}
	l.solve(&second)
	again += gamma*dt*skin*second[0] - 2*out
	for i := range next {
		more := dt / 2 * (first[i] + second[i])
		next[i] += more
		wrong = max(wrong, math.Abs(more)*min(1, l.middle[i]/0.1))
	}
	if wrong <= tolerance {
		l.h = next
		l.lost += dt * (1.5*out + again/2)
	}
	return wrong
}

// reader reads the humidity at a depth, 0 at the face and 1 at the other side:
// the parabola through three neighboring cells, of which the last has its
// mirror image behind the side that no water passes.
type reader struct {
	cell [3]int
	part [3]float64
}

func (l *layer) reader(depth float64) reader {
	second := 1
	for second < cells-1 && l.middle[second]+l.between[second]/2 < depth {
		second++
	}
	r := reader{cell: [3]int{second - 1, second, min(second+1, cells-1)}}
	x := [3]float64{l.middle[second-1], l.middle[second], 2 - l.middle[second]}
	if second < cells-1 {
		x[2] = l.middle[second+1]
	}
	for i := range x {
		j, k := (i+1)%3, (i+2)%3
		r.part[i] = (depth - x[j]) * (depth - x[k]) / ((x[i] - x[j]) * (x[i] - x[k]))
	}
	return r
}

func (r reader) rh(l *layer) float64 {
	return r.part[0]*l.h[r.cell[0]] + r.part[1]*l.h[r.cell[1]] + r.part[2]*l.h[r.cell[2]]
}
