package settling

import (
	"math"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// stretch is a time under air of one EMC.
type stretch struct{ days, emc float64 }

// after is the moisture content of boards after a stretch: first order.
func (s stretch) after(mc, timeConstant float64) float64 {
	return s.emc + (mc-s.emc)*math.Exp(-s.days/timeConstant)
}

// surroundings are the air of a lot: between each two visits, from the last
// one to the end of the log, and the EMC and temperature it goes on with.
type surroundings struct {
	between [][]stretch
	ahead   []stretch
	end     float64
	tempC   float64
}

// stretchesMost is how many stretches a time is cut in at most: days, where
// they are no more.
const stretchesMost = 100

func (l Lot) surroundings(visits []Visit) (surroundings, error) {
	emc := evidence.AirMean(l.Air, func(a evidence.AirState) float64 {
		at, _ := wood.EMC(a.TempC, a.RHPct) // checked before
		return at
	})
	cut := func(from, to float64) (all []stretch) {
		n := min(math.Ceil(to-from), stretchesMost)
		for i := range int(n) {
			a, b := from+(to-from)*float64(i)/n, from+(to-from)*float64(i+1)/n
			all = append(all, stretch{b - a, emc(a, b)})
		}
		return all
	}
	var s surroundings
	first, last := l.Air[0].Day, l.Air[0].Day
	for _, a := range l.Air {
		first, last = min(first, a.Day), max(last, a.Day)
	}
	for i := 1; i < len(visits); i++ {
		s.between = append(s.between, cut(visits[i-1].Day, visits[i].Day))
	}
	if n := len(visits); n > 0 {
		s.ahead = cut(visits[n-1].Day, max(last, visits[n-1].Day))
	}
	s.tempC = evidence.AirMean(l.Air, func(a evidence.AirState) float64 { return a.TempC })(first, last)
	rh := evidence.AirMean(l.Air, func(a evidence.AirState) float64 { return a.RHPct })(first, last)
	end, err := wood.EMC(s.tempC, rh)
	s.end = end
	return s, err
}

// until gives the days from the last visit until boards come to a bound from
// above or below it; false where they never do.
func (s surroundings) until(bound, mc, timeConstant float64) (days float64, ok bool) {
	falls := mc > bound
	for _, part := range append(s.ahead[:len(s.ahead):len(s.ahead)], stretch{math.Inf(1), s.end}) {
		if share := (bound - part.emc) / (mc - part.emc); (part.emc < bound) == falls && part.emc != bound &&
			share < 1 {
			if took := -timeConstant * math.Log(share); took <= part.days {
				return days + took, true
			}
		}
		mc = part.after(mc, timeConstant)
		days += part.days
	}
	return 0, false
}
