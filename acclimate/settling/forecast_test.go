package settling_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"firstboard/acclimate/settling"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// closed is a lot in steady air at 70 F and 45 % RH that settles by the closed
// form, read on some days without an error: M = E + (M0 - E) exp(-t/constant).
func closed(from, target, constant float64, days ...float64) settling.Lot {
	l := settling.Lot{
		TargetPct: target, TolerancePct: 1,
		Air: []evidence.AirState{{Day: 0, TempC: 21.1, RHPct: 45}},
	}
	end, _ := wood.EMC(21.1, 45)
	for _, day := range days {
		mc := end + (from-end)*math.Exp(-day/constant)
		l.Visits = append(l.Visits, settling.Visit{Day: day, MeanPct: mc, SpreadPct: 0.3, Boards: 40})
	}
	return l
}

// The first-order closed form gives the day: t = constant ln((M0-E)/(bound-E)).
func TestForecastAgainstTheClosedForm(t *testing.T) {
	end, _ := wood.EMC(21.1, 45)
	for _, c := range []struct {
		from, target, constant, bound float64
		way                           evidence.Prospect
	}{
		{13, 8.4, 20, 9.4, evidence.Losing}, {16, 8, 8, 9, evidence.Losing}, {4, 8.4, 15, 7.4, evidence.Gaining},
	} {
		l := closed(c.from, c.target, c.constant, 0, 4, 8)
		want := c.constant * math.Log((c.from-end)/(c.bound-end))
		o, err := settling.Forecast(l)
		if err != nil || o.Prospect != c.way || o.Leaving {
			t.Fatalf("%s (%v): %s", o.Prospect, err, o.Why)
		}
		if math.Abs(o.Ready-want) > 0.05*want || math.Abs(o.ConstantDays/c.constant-1) > 0.05 {
			t.Errorf("ready on day %.2f with %.1f days, closed form %.2f with %.1f", o.Ready, o.ConstantDays, want, c.constant)
		}
		if !(o.From < o.Ready && o.Ready < o.To) || math.Abs(o.EndPct-end) > 1e-9 {
			t.Errorf("from %v to %v around %v, end %v, want %v", o.From, o.To, o.Ready, o.EndPct, end)
		}
	}
}

func TestProspects(t *testing.T) {
	packed := closed(13, 8, 1e9, 0, 7, 14)
	packed.Visits[2].MeanPct -= 0.05
	wrapped := closed(13, 8, 1e9, 0, 60, 120) // and 0.2 points a month nearer to its air
	wrapped.Visits[1].MeanPct, wrapped.Visits[2].MeanPct = 12.6, 12.2
	opened := closed(13, 8, 1e9, 0, 60, 120)
	opened.Visits[1].MeanPct, opened.Visits[2].MeanPct = 12.2, 11.4
	through := closed(15, 10.5, 20, 0, 4, 8)
	edge := closed(13, 8, 20, 0, 4)
	edge.Visits[1].MeanPct = 7.9 + 1.1
	edge.TargetPct, edge.TolerancePct = 7.9, 1.1
	over := closed(13, 8, 20, 0, 4)
	over.Visits[1].MeanPct = 9.1
	for name, c := range map[string]struct {
		lot     settling.Lot
		want    evidence.Prospect
		leaving bool
	}{
		"drying":                        {closed(13, 8, 20, 0, 4, 8), evidence.Losing, false},
		"gaining":                       {closed(4, 8, 20, 0, 4, 8), evidence.Gaining, false},
		"through the tolerance":         {through, evidence.Losing, true},
		"within tolerance":              {closed(8.5, 8, 20, 0), evidence.Reached, false},
		"on the edge of it":             {edge, evidence.Reached, false},
		"one last digit over":           {over, evidence.Losing, false},
		"within tolerance, but leaving": {closed(11, 11.2, 20, 0, 3), evidence.Reached, true},
		"the air is too wet":            {closed(13, 6, 20, 0, 4, 8), evidence.Stalled, false},
		"the air is too dry":            {closed(6, 11, 20, 0, 4, 8), evidence.Stalled, false},
		"a closed carton":               {packed, evidence.Stalled, false},
		"a wrapped pack over months":    {wrapped, evidence.Stalled, false},
		"twice as fast":                 {opened, evidence.Losing, false},
		"slow, but near its end":        {closed(9.6, 7.8, 150, 0, 50, 100), evidence.Losing, false},
		"no visit":                      {closed(13, 8, 20), evidence.Unread, false},
		"one visit":                     {closed(13, 8, 20, 0), evidence.Unread, false},
		"two within three days":         {closed(13, 8, 20, 0, 2.99), evidence.Unread, false},
		"two three days apart":          {closed(13, 8, 20, 0, 3), evidence.Losing, false},
	} {
		t.Run(name, func(t *testing.T) {
			o, err := settling.Forecast(c.lot)
			if err != nil || o.Prospect != c.want || o.Leaving != c.leaving || o.Why == "" {
				t.Fatalf("%s, leaving %v (%v), want %s: %s", o.Prospect, o.Leaving, err, c.want, o.Why)
			}
			dated := c.want == evidence.Losing || c.want == evidence.Gaining
			if told := o.Ready != 0 || o.To != 0; told != dated {
				t.Errorf("a day of %v, to %v", o.Ready, o.To)
			}
			if !(o.RHLowPct < o.RHHighPct) || math.Abs(o.TempC-21.1) > 1e-9 {
				t.Errorf("air from %v to %v %% at %v C", o.RHLowPct, o.RHHighPct, o.TempC)
			}
		})
	}
}

// A lot that surely moved away from the air it is said to lie in, by more than half
// a point, is told so, and one whose boards scatter by more than they moved is not.
func TestAMoveAwayFromTheAirIsTold(t *testing.T) {
	for _, c := range []struct {
		means  [2]float64
		spread float64
		says   string
	}{
		{[2]float64{12, 13}, 0.5, "moved away from the air's: +1.0 points in 7 days"},
		{[2]float64{5, 4.2}, 0.5, "moved away from the air's: -0.8 points in 7 days"},
		{[2]float64{12, 12.4}, 0.3, "nothing moved: +0.4 points in 7 days"},
		{[2]float64{12, 12.8}, 1.2, "nothing moved: +0.8 points in 7 days"},
		{[2]float64{12, 12}, 0.5, "nothing moved: +0.0 points in 7 days"},
	} {
		l := closed(13, 8, 20, 0, 7)
		for i, mean := range c.means {
			l.Visits[i].MeanPct, l.Visits[i].SpreadPct, l.Visits[i].Boards = mean, c.spread, 20
		}
		o, err := settling.Forecast(l)
		if err != nil || o.Prospect != evidence.Stalled || !strings.HasPrefix(o.Why, c.says) {
			t.Errorf("%v: %s (%v)", c, o.Why, err)
		}
	}
}

// More boards and a smaller spread make a shorter interval.
func TestIntervalFollowsTheSpread(t *testing.T) {
	width := func(spread float64, boards int) float64 {
		l := closed(13, 8, 20, 0, 4, 8)
		for i := range l.Visits {
			l.Visits[i].SpreadPct, l.Visits[i].Boards = spread, boards
		}
		o, err := settling.Forecast(l)
		if err != nil {
			t.Fatal(err)
		}
		return o.To - o.From
	}
	if a, b, c := width(0.3, 40), width(0.9, 40), width(0.9, 10); !(a < b && b < c) {
		t.Errorf("widths of %.2f, %.2f and %.2f days", a, b, c)
	}
	if alone, usual := width(0, 1), width(0.5, 1); alone != usual {
		t.Errorf("one board is told within %.2f days, by the usual spread %.2f", alone, usual)
	}
}

// The band is the inverse of the handbook's EMC: its ends bring wood to the
// ends of the tolerance (Wood Handbook Table 4-2: at 70 F, 6.2 % at 30 % RH and
// 9.2 % at 50 %).
func TestBand(t *testing.T) {
	low, high, err := settling.Band((70-32)/1.8, 7.7, 1.5)
	if err != nil || math.Abs(low-30) > 0.5 || math.Abs(high-50) > 0.5 {
		t.Errorf("from %.2f to %.2f %% (%v), the table says 30 to 50", low, high, err)
	}
	if low, _, err := settling.Band(20, 1, 2); !(math.Abs(low) < 1e-6) || err != nil {
		t.Errorf("from %v (%v), want 0", low, err)
	}
	if _, _, err := settling.Band(20, 40, 2); err == nil {
		t.Error("no air brings wood to 40 %")
	}
}

func TestForecastOfWhatCannotBeIsAnError(t *testing.T) {
	for name, spoil := range map[string]func(*settling.Lot){
		"target":           func(l *settling.Lot) { l.TargetPct = math.NaN() },
		"tolerance":        func(l *settling.Lot) { l.TolerancePct = 0 },
		"mean":             func(l *settling.Lot) { l.Visits[1].MeanPct = -1 },
		"spread":           func(l *settling.Lot) { l.Visits[1].SpreadPct = math.NaN() },
		"boards":           func(l *settling.Lot) { l.Visits[1].Boards = 0 },
		"day":              func(l *settling.Lot) { l.Visits[1].Day = math.Inf(1) },
		"air too cold":     func(l *settling.Lot) { l.Air[0].TempC = -20 },
		"air over 100 %":   func(l *settling.Lot) { l.Air[0].RHPct = 101 },
		"air on no day":    func(l *settling.Lot) { l.Air[0].Day = math.NaN() },
		"target off sight": func(l *settling.Lot) { l.TargetPct, l.TolerancePct = 29, 9 },
		"a log of nothing": func(l *settling.Lot) { l.Air = nil },
	} {
		l := closed(13, 8, 20, 0, 4, 8)
		spoil(&l)
		o, err := settling.Forecast(l)
		if err == nil {
			t.Errorf("%s: %+v, want an error", name, o)
		}
		if errors.Is(err, settling.ErrNoAir) != (name == "a log of nothing") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func BenchmarkForecast(b *testing.B) {
	k, _ := unsettled(rand.New(rand.NewPCG(3, 5)))
	for b.Loop() {
		if _, err := settling.Forecast(k.lot); err != nil {
			b.Fatal(err)
		}
	}
}
