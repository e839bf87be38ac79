package drying_test

import (
	"math"
	"testing"

	"firstboard/report/evidence"
	"firstboard/slab/drying"
)

// A hole read weekly for twelve weeks, under a log of the air of each hour.
func logged() drying.Hole {
	h := drying.Hole{ThicknessMM: 100, DepthMM: 40, Faces: 1, LimitPct: 80}
	for week := range 12 {
		day := 10 + 7*float64(week)
		h.Samples = append(h.Samples, drying.Sample{Day: day, RHPct: 93.5 - 0.09*day + 0.6*math.Sin(5*day), SDPct: 1})
	}
	for hour := range 24 * 87 {
		day := float64(hour) / 24
		rh := 45 + 9*math.Sin(day/15) + 3*math.Sin(7*day)
		h.Air = append(h.Air, evidence.AirState{Day: day, TempC: 20 + math.Sin(day/9), RHPct: rh})
	}
	return h
}

func BenchmarkForecast(b *testing.B) {
	h := logged()
	for b.Loop() {
		if o, err := drying.Forecast(h); err != nil || o.Prospect != evidence.Losing {
			b.Fatal(o, err)
		}
	}
}
