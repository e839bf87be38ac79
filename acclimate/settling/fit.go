package settling

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// The time constants tried, in days: equal steps of the logarithm.
const (
	fastest       = 0.5
	constantStep  = 0.04
	constantCount = 180 // up to 640
)

// usualConstant is how likely a time constant is before a visit: boards
// settle in days to weeks, and far less or more stays open (practice; a board
// of thickness L and diffusivity D settles by L^2/(pi^2 D), with one face
// sealed by four times that).
func usualConstant() distuv.StudentsT {
	return distuv.StudentsT{Mu: math.Log(14), Sigma: 0.9, Nu: 4}
}

// guess is one time constant, the moisture content of the boards at the last
// visit with it and one standard deviation of that, and the logarithm of how
// likely all this is.
type guess struct {
	constant, mc, sd float64
	weight           float64
}

// likely weighs a time constant by the visits: the moisture content at the
// first of them is free.
func (s surroundings) likely(constant float64, visits []Visit) guess {
	kept, given := 1.0, 0.0 // the part left of the first moisture content, and what the air gave
	var weights, cross, squares float64
	for i, v := range visits {
		if i > 0 {
			for _, part := range s.between[i-1] {
				left := math.Exp(-part.days / constant)
				kept, given = kept*left, part.emc+(given-part.emc)*left
			}
		}
		rest, w := v.MeanPct-given, 1/(v.sd()*v.sd())
		weights, cross, squares = weights+w*kept*kept, cross+w*kept*rest, squares+w*rest*rest
	}
	first := cross / weights
	misfit := squares - cross*first
	return guess{
		constant: constant, mc: kept*first + given, sd: kept / math.Sqrt(weights),
		weight: -misfit/2 - math.Log(weights)/2,
	}
}

// A wrapped pack comes nearer to its air by about so many points a month (read);
// of one that is nearer to it than so many points it is taken to be less (ours).
const (
	packMonthly = 0.2
	packGap     = 2.0
)

// packed is the time constant of a lot still wrapped, as far from the end it goes
// to as its first visit was.
func (s surroundings) packed(visits []Visit) float64 {
	return 30 / packMonthly * max(math.Abs(visits[0].MeanPct-s.end), packGap)
}

// guesses weighs all time constants; moved is false where the visits are
// likelier of boards that the air hardly reaches, as in a closed carton, or not
// at all.
func (s surroundings) guesses(visits []Visit) (all []guess, moved bool) {
	usual, best := usualConstant(), math.Inf(-1)
	for i := range constantCount {
		log := math.Log(fastest) + constantStep*float64(i)
		g := s.likely(math.Exp(log), visits)
		g.weight += usual.LogProb(log) + math.Log(constantStep)
		best = max(best, g.weight)
		all = append(all, g)
	}
	sum := 0.0
	for i := range all {
		all[i].weight = math.Exp(all[i].weight - best)
		sum += all[i].weight
	}
	shut := max(s.likely(math.Inf(1), visits).weight, s.likely(s.packed(visits), visits).weight)
	return all, math.Log(sum)+best > shut
}
