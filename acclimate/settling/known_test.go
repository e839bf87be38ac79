package settling_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"firstboard/acclimate/settling"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// known is a lot whose way is known: the true mean on each hundredth of a day
// by Euler's method, under air that changes every hour.
type known struct {
	lot      settling.Lot
	truth    float64
	last     float64
	constant float64
}

func air(r *rand.Rand, rh float64, days float64) (log []evidence.AirState) {
	swing, drift := 4*r.Float64(), 0.0
	for hour := range int(days * 24) {
		day := float64(hour) / 24
		drift = 0.98*drift + 0.6*r.NormFloat64()
		now := rh + swing*math.Sin(2*math.Pi*day) + drift
		log = append(log, evidence.AirState{Day: day, TempC: 21 + math.Sin(day), RHPct: min(max(now, 10), 90)})
	}
	return log
}

// unsettled is a lot as sites have them; ok is false where no forecast is
// called for.
func unsettled(r *rand.Rand) (k known, ok bool) {
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	k.constant = between(5, 40)
	visits, gap, boards, spread := 2+r.IntN(5), between(3, 10), 10+r.IntN(50), between(0.3, 1)
	k.last = gap * float64(visits-1)
	k.lot = settling.Lot{TargetPct: between(7, 9), TolerancePct: 2, Air: air(r, between(30, 55), k.last+0.1)}
	mc := between(11, 15)
	if r.IntN(3) == 0 {
		mc = between(3.5, 5.5)
	}
	mean := evidence.AirState{Day: k.last, TempC: 0, RHPct: 0}
	for _, a := range k.lot.Air[:len(k.lot.Air)-1] {
		mean.TempC += a.TempC / float64(len(k.lot.Air)-1)
		mean.RHPct += a.RHPct / float64(len(k.lot.Air)-1)
	}
	low, high := k.lot.TargetPct-2, k.lot.TargetPct+2
	for step := 0; step < 40000; step++ {
		day := float64(step) / 100
		state := mean
		if hour := step * 24 / 100; hour < len(k.lot.Air) {
			state = k.lot.Air[hour]
		}
		if i := len(k.lot.Visits); i < visits && day >= gap*float64(i) {
			read := mc + spread/math.Sqrt(float64(boards))*r.NormFloat64()
			k.lot.Visits = append(k.lot.Visits, settling.Visit{Day: day, MeanPct: read, SpreadPct: spread, Boards: boards})
		}
		if mc >= low && mc <= high {
			k.truth = day
			break
		}
		emc, _ := wood.EMC(state.TempC, state.RHPct)
		mc += 0.01 / k.constant * (emc - mc)
	}
	if len(k.lot.Visits) < visits || k.truth < k.last+1 {
		return k, false
	}
	final := k.lot.Visits[visits-1].MeanPct
	return k, final < low || final > high
}

// 200 lots whose way is known: the interval covers at least 80 % of the days,
// the median error is at most 0.28 of the time to go and the median width at
// most 1.25 of it.
func TestForecastOfKnownLots(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	var errs, widths []float64
	inside, lost := 0, 0
	for len(errs) < 200 {
		k, ok := unsettled(r)
		if !ok {
			continue
		}
		o, err := settling.Forecast(k.lot)
		if err != nil {
			t.Fatal(err)
		}
		if o.Prospect != evidence.Losing && o.Prospect != evidence.Gaining {
			lost++
			continue
		}
		toGo := k.truth - k.last
		errs, widths = append(errs, math.Abs(o.Ready-k.truth)/toGo), append(widths, (o.To-o.From)/toGo)
		if o.From <= k.truth && k.truth <= o.To {
			inside++
		}
	}
	slices.Sort(errs)
	slices.Sort(widths)
	t.Logf("covered %d of 200, median error %.3f, median width %.3f, %d without a day",
		inside, errs[100], widths[100], lost)
	if inside < 160 || errs[100] > 0.28 || widths[100] > 1.25 || lost > 10 {
		t.Error("the forecasts miss more than they may")
	}
}
