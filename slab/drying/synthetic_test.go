package drying_test

import (
	"math"
	"math/rand/v2"

	"firstboard/report/evidence"
	"firstboard/slab/drying"
)

// specimen is a slab whose drying is known.
type specimen struct {
	shape              drying.Shape
	rate, start, air   float64 // D1 in mm2/day; fractions
	thickness, depth   float64
	faces              int
	first, gap, limit  float64
	count              int
	humidity           []float64 // at the depth, a value a day
	samples            []drying.Sample
	truth, last, cover float64
}

// follow solves the drying by backward Euler on 60 equal cells with the mean
// of D between neighbors, half a day a step: another scheme, another grid and
// another mean than the package's.
func (s *specimen) follow(days int) {
	const n = 60
	layer := s.thickness / float64(s.faces)
	dx, dt := layer/n, 0.5
	h := make([]float64, n)
	for i := range h {
		h[i] = s.start
	}
	k := s.depth/dx - 0.5
	s.humidity = []float64{s.start}
	up, down, d := make([]float64, n), make([]float64, n), make([]float64, n)
	for day := 1; day <= days; day++ {
		for range 2 {
			s.euler(h, up, down, d, dt/(dx*dx))
		}
		i := int(k)
		s.humidity = append(s.humidity, h[i]+(k-float64(i))*(h[i+1]-h[i]))
		if s.cover == 0 && float64(day) >= s.last {
			for _, v := range h {
				s.cover += 100 * v / n
			}
		}
		if 100*s.humidity[day] <= s.limit {
			return
		}
	}
}

// euler takes h an implicit step on, with D as it is before the step.
func (s *specimen) euler(h, up, down, d []float64, ratio float64) {
	n := len(h)
	for i := range h {
		d[i] = s.rate * s.shape.Relative(h[i])
	}
	// At the face D is averaged over the humidities between the air and the cell.
	face := 0.0
	for i := range 8 {
		face += s.rate * s.shape.Relative(s.air+(h[0]-s.air)*(float64(i)+0.5)/8) / 8
	}
	above := 2 * face * ratio
	for i := range h {
		below := 0.0
		if i < n-1 {
			below = ratio * (d[i] + d[i+1]) / 2
		}
		diagonal, right := 1+above+below, h[i]
		if i == 0 {
			right += above * s.air
		} else {
			diagonal -= above * down[i-1]
			right += above * up[i-1]
		}
		down[i], up[i] = below/diagonal, right/diagonal
		above = below
	}
	h[n-1] = up[n-1]
	for i := n - 2; i >= 0; i-- {
		h[i] = up[i] + down[i]*h[i+1]
	}
}

// random is a slab as sites have them, read with a deviation of 1 % RH: shapes
// between the published ones, rates around theirs.
func random(r *rand.Rand) *specimen {
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	s := &specimen{
		shape: drying.Shape{Floor: between(0.02, 0.05), Middle: between(0.75, 0.83), Power: between(5, 16)},
		rate:  26 * math.Exp(0.4*r.NormFloat64()), start: between(0.93, 0.99), air: between(0.3, 0.6),
		thickness: between(75, 200), faces: 1 + r.IntN(2), first: between(3, 30), gap: 7,
		count: 5 + r.IntN(11), limit: 75 + 5*float64(r.IntN(4)),
	}
	s.depth = s.thickness * 0.4 / float64(s.faces)
	s.last = s.first + s.gap*float64(s.count-1)
	return s
}

// read takes the readings and tells whether a forecast is called for: at the
// last of them, and in what is read then, the hole is over its limit, and
// within ten years it is at it.
func (s *specimen) read(r *rand.Rand) bool {
	s.follow(3650)
	reached := len(s.humidity) - 1
	if 100*s.humidity[reached] > s.limit || float64(reached) < s.last+3 {
		return false
	}
	before, at := 100*s.humidity[reached-1], 100*s.humidity[reached]
	s.truth = float64(reached-1) + (before-s.limit)/(before-at)
	for i := range s.count {
		day := s.first + s.gap*float64(i)
		k := int(day)
		h := s.humidity[k] + (day-float64(k))*(s.humidity[k+1]-s.humidity[k])
		s.samples = append(s.samples, drying.Sample{Day: day, RHPct: min(100, 100*h+r.NormFloat64()), SDPct: 1})
	}
	return s.samples[s.count-1].RHPct > s.limit
}

func (s *specimen) hole() drying.Hole {
	return drying.Hole{
		ThicknessMM: s.thickness, DepthMM: s.depth, Faces: s.faces, LimitPct: s.limit, Samples: s.samples,
		Air: []evidence.AirState{{Day: 0, RHPct: 100 * s.air, TempC: 20}},
	}
}
