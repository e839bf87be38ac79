package evidence_test

import (
	"math"
	"testing"

	"firstboard/report/evidence"
)

// Worked by hand: 40 % for two days, then 60 % for one, a last state that
// holds no time at all: the mean is 140/3.
func TestAirMeanAnAirLog(t *testing.T) {
	log := []evidence.AirState{{Day: 12, RHPct: 60}, {Day: 10, RHPct: 40}, {Day: 13, RHPct: 99}}
	mean := evidence.AirMean(log, func(a evidence.AirState) float64 { return a.RHPct })
	for _, c := range []struct{ from, to, want float64 }{
		{10, 13, 140.0 / 3},
		{10, 12, 40},
		{11, 12.5, (40 + 30) / 1.5},
		{12, 13, 60},
		{0, 10, 140.0 / 3},
		{13, 20, 140.0 / 3},
		{12, 14, (60 + 140.0/3) / 2},
		{11, 11, 140.0 / 3},
	} {
		if got := mean(c.from, c.to); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("from day %v to %v: %v, want %v", c.from, c.to, got, c.want)
		}
	}
	alone := evidence.AirMean(log[:1], func(a evidence.AirState) float64 { return a.RHPct })
	if got := alone(3, 30); got != 60 {
		t.Errorf("one state gives %v, want its own 60", got)
	}
}
