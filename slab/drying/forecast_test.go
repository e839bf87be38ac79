package drying_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"firstboard/report/evidence"
	"firstboard/slab/drying"
)

// 200 histories of slabs whose drying is known: the interval covers at least
// 80 % of the days, the median error is at most 0.28 of the time to go and the
// median width at most 1.25 of it; the settled humidity is within 1.5 % of the
// mean for nine in ten.
func TestForecastOfKnownSlabs(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	var errs, widths, covers []float64
	inside := 0
	for len(errs) < 200 {
		s := random(r)
		if !s.read(r) {
			continue
		}
		o, err := drying.Forecast(s.hole())
		if err != nil {
			t.Fatal(err)
		}
		if o.Prospect != evidence.Losing {
			continue // a history of which no slope can be told
		}
		toGo := s.truth - s.last
		errs, widths = append(errs, math.Abs(o.Ready-s.truth)/toGo), append(widths, (o.To-o.From)/toGo)
		covers = append(covers, math.Abs(o.CoveredPct-s.cover))
		if o.From <= s.truth && s.truth <= o.To {
			inside++
		}
	}
	slices.Sort(errs)
	slices.Sort(widths)
	slices.Sort(covers)
	t.Logf("covered %d of 200, median error %.3f, median width %.3f, settled within %.2f %%",
		inside, errs[100], widths[100], covers[180])
	if inside < 160 || errs[100] > 0.28 || widths[100] > 1.25 || covers[180] > 1.5 {
		t.Error("the forecasts miss more than they may")
	}
}

// With many readings that err by nothing what was put in comes out: the day
// within 15 % of the time to go, as the shape stays open, D1 within 15 %, the
// start within 1 % RH.
func TestForecastRecoversWhatWasPutIn(t *testing.T) {
	for _, s := range []*specimen{
		{
			shape: drying.Shape{Floor: 0.05, Middle: 0.8, Power: 15}, rate: 28.8, start: 0.95, air: 0.5,
			thickness: 100, depth: 40, faces: 1, limit: 82,
		},
		{
			shape: drying.Shape{Floor: 0.02, Middle: 0.83, Power: 8}, rate: 15, start: 0.97, air: 0.4,
			thickness: 150, depth: 30, faces: 2, limit: 85,
		},
		{
			shape: drying.Shape{Floor: 0.02, Middle: 0.775, Power: 5}, rate: 31, start: 0.98, air: 0.45,
			thickness: 120, depth: 48, faces: 1, limit: 80,
		},
	} {
		s.last = 1e9
		s.follow(3650)
		end := len(s.humidity) - 1
		for day := 4; day < end*3/4; day += 2 {
			s.samples = append(s.samples, drying.Sample{Day: float64(day), RHPct: 100 * s.humidity[day], SDPct: 1})
		}
		last := s.samples[len(s.samples)-1].Day
		o, err := drying.Forecast(s.hole())
		if err != nil {
			t.Fatal(err)
		}
		if off := math.Abs(o.Ready-float64(end)) / (float64(end) - last); off > 0.15 {
			t.Errorf("%+v: ready on day %.1f, true %d, off by %.3f of the time to go", s.shape, o.Ready, end, off)
		}
		if math.Abs(o.RateMM2Day/s.rate-1) > 0.15 || math.Abs(o.StartPct-100*s.start) > 1 {
			t.Errorf("%+v: D1 %.1f from %.1f %%, put in %v from %v", s.shape, o.RateMM2Day, o.StartPct, s.rate, 100*s.start)
		}
	}
}

// Practice: about a month an inch to 85 % RH, as an order of magnitude: a 4 in
// slab that dries through one face takes between one and twelve months.
func TestAMonthAnInch(t *testing.T) {
	for _, shape := range []drying.Shape{
		{Floor: 0.05, Middle: 0.8, Power: 15}, {Floor: 0.02, Middle: 0.83, Power: 8}, {Floor: 0.0468, Middle: 0.75, Power: 11},
	} {
		s := specimen{shape: shape, rate: 26, start: 0.97, air: 0.45, thickness: 101.6, depth: 40.6, faces: 1, limit: 85}
		s.follow(3650)
		var samples []drying.Sample
		for day := 7; day < 40; day += 7 {
			samples = append(samples, drying.Sample{Day: float64(day), RHPct: 100 * s.humidity[day], SDPct: 1})
		}
		s.samples = samples
		o, err := drying.Forecast(s.hole())
		if err != nil || o.Ready < 30 || o.Ready > 365 {
			t.Errorf("%+v: ready after %.0f days (%v)", shape, o.Ready, err)
		}
	}
}

// steady is a history that changes by so much a week.
func steady(count int, gap, from, perWeek float64) drying.Hole {
	h := drying.Hole{
		ThicknessMM: 100, DepthMM: 40, Faces: 1, LimitPct: 80,
		Air: []evidence.AirState{{Day: 0, RHPct: 45, TempC: 21}},
	}
	for i := range count {
		day := 14 + gap*float64(i)
		h.Samples = append(h.Samples, drying.Sample{Day: day, RHPct: from + perWeek*gap*float64(i)/7, SDPct: 1})
	}
	return h
}

func TestProspects(t *testing.T) {
	wet := steady(8, 7, 94, -1)
	wet.Air[0].RHPct = 80
	slow := steady(60, 7, 96, -0.1)
	slow.LimitPct = 60
	nobody := steady(8, 7, 94, -1)
	nobody.StartDay = math.NaN()
	late := steady(8, 7, 94, -1)
	late.StartDay = 50
	coarse := map[float64]drying.Hole{0: steady(4, 7, 94, 0), -2: steady(4, 7, 94, -2)}
	for _, h := range coarse {
		for i := range h.Samples {
			h.Samples[i].SDPct = 2 // four such weigh as much as one of 1 %
		}
	}
	before := steady(8, 7, 87, -1)
	before.StartDay = 70
	twice := steady(8, 7, 94, -1)
	twice.Samples = append(twice.Samples, drying.Sample{Day: 63, RHPct: 79, SDPct: 1})
	for name, c := range map[string]struct {
		hole drying.Hole
		want evidence.Prospect
	}{
		"falling":                        {steady(8, 7, 94, -1), evidence.Losing},
		"falling since nobody knows":     {nobody, evidence.Losing},
		"at its limit":                   {steady(8, 7, 87, -1), evidence.Reached},
		"at its limit, one reading":      {steady(1, 7, 80, 0), evidence.Reached},
		"one last digit over, alone":     {steady(1, 7, 80.1, 0), evidence.Unread},
		"rising":                         {steady(8, 7, 85, 0.5), evidence.Stalled},
		"flat":                           {steady(8, 7, 85, 0), evidence.Stalled},
		"the air is as wet as the limit": {wet, evidence.Stalled},
		"takes over ten years":           {slow, evidence.Stalled},
		"no reading":                     {steady(0, 7, 94, -1), evidence.Unread},
		"two readings":                   {steady(2, 7, 94, -5), evidence.Unread},
		"three over seven days":          {steady(3, 3.5, 94, -9), evidence.Losing},
		"three over less":                {steady(3, 3.49, 94, -9), evidence.Unread},
		"most before it began":           {late, evidence.Unread},
		"at its limit before it began":   {before, evidence.Reached},
		"twice at once, once over":       {twice, evidence.Losing},
		// Slopes of 8 weekly readings with 1 % each are known to 1.645/sqrt(42) a week.
		"flat, 2 % each":     {coarse[0], evidence.Stalled},
		"falling, 2 % each":  {coarse[-2], evidence.Losing},
		"surely falling":     {steady(8, 7, 94, -0.26), evidence.Losing},
		"not surely falling": {steady(8, 7, 94, -0.25), evidence.Stalled},
	} {
		t.Run(name, func(t *testing.T) {
			o, err := drying.Forecast(c.hole)
			if err != nil || o.Prospect != c.want || o.Why == "" || strings.Contains(o.Why, "NaN") {
				t.Fatalf("%s (%v), want %s: %s", o.Prospect, err, c.want, o.Why)
			}
			if told := o.Ready != 0 || o.From != 0 || o.To != 0; told != (c.want == evidence.Losing) {
				t.Errorf("a day of %v, from %v to %v", o.Ready, o.From, o.To)
			}
		})
	}
}

// A time that is just too short is never told as long enough.
func TestTooShortAHistoryIsToldSo(t *testing.T) {
	o, err := drying.Forecast(steady(3, 3.49, 94, -9))
	if want := "3 readings over 6 days: a forecast takes 3 over 7 days"; err != nil || o.Why != want {
		t.Errorf("%s (%v), want %s", o.Why, err, want)
	}
}

// The interval lies between the last reading and ten years on, around the
// middle; the expected course never rises under steady air, and its band holds
// its middle.
func TestOutlookKeepsOrder(t *testing.T) {
	h := steady(8, 7, 94, -0.6)
	h.LimitPct = 72
	o, err := drying.Forecast(h)
	if err != nil {
		t.Fatal(err)
	}
	last := h.Samples[len(h.Samples)-1].Day
	if !(last <= o.From && o.From < o.Ready && o.Ready < o.To && o.To <= last+3652) {
		t.Errorf("from %v, ready %v, to %v after day %v", o.From, o.Ready, o.To, last)
	}
	before := drying.Expected{RHPct: 100}
	for _, e := range o.Expected {
		held := e.LowPct <= e.RHPct && e.RHPct <= e.HighPct
		if !held || e.RHPct > before.RHPct+1e-6 || e.Day <= before.Day && before.Day > 0 {
			t.Errorf("%+v after %+v", e, before)
		}
		before = e
	}
}

// Readings in any order, a probe read again on one day, and a log cut in more
// rows give the same forecast or nearly so.
func TestForecastTakesRecordsAsTheyCome(t *testing.T) {
	plain := logged()
	want, err := drying.Forecast(plain)
	if err != nil {
		t.Fatal(err)
	}
	turned := logged()
	slices.Reverse(turned.Samples)
	slices.Reverse(turned.Air)
	twice := logged()
	for _, s := range plain.Samples {
		twice.Samples = append(twice.Samples, drying.Sample{Day: s.Day + 0.01, RHPct: s.RHPct, SDPct: s.SDPct})
	}
	for name, h := range map[string]drying.Hole{"turned": turned, "twice": twice} {
		got, err := drying.Forecast(h)
		if err != nil || math.Abs(got.Ready-want.Ready) > 1 || math.Abs(got.To-want.To) > 5 {
			t.Errorf("%s: ready %v to %v (%v), want %v to %v", name, got.Ready, got.To, err, want.Ready, want.To)
		}
	}
}

// Readings that scatter by three times their deviation widen the interval.
func TestForecastWidensWhereReadingsScatter(t *testing.T) {
	calm, wild := steady(12, 7, 94, -0.7), steady(12, 7, 94, -0.7)
	for i := range wild.Samples {
		wild.Samples[i].RHPct += 3 * float64(1-2*(i/2%2))
	}
	a, err := drying.Forecast(calm)
	b, err2 := drying.Forecast(wild)
	if err != nil || err2 != nil || b.To-b.From < 1.3*(a.To-a.From) {
		t.Errorf("%v to %v beside %v to %v (%v, %v)", b.From, b.To, a.From, a.To, err, err2)
	}
}

func TestForecastOfWhatCannotBeIsAnError(t *testing.T) {
	for name, spoil := range map[string]func(*drying.Hole){
		"thickness":        func(h *drying.Hole) { h.ThicknessMM = 0 },
		"endless":          func(h *drying.Hole) { h.ThicknessMM = math.Inf(1) },
		"faces":            func(h *drying.Hole) { h.Faces = 3 },
		"depth":            func(h *drying.Hole) { h.DepthMM = 100.1 },
		"no depth":         func(h *drying.Hole) { h.DepthMM = 0 },
		"limit":            func(h *drying.Hole) { h.LimitPct = math.NaN() },
		"limit over 100":   func(h *drying.Hole) { h.LimitPct = 100.1 },
		"start":            func(h *drying.Hole) { h.StartDay = math.Inf(1) },
		"sample":           func(h *drying.Hole) { h.Samples[2].RHPct = math.NaN() },
		"sample over 100":  func(h *drying.Hole) { h.Samples[2].RHPct = 100.1 },
		"deviation":        func(h *drying.Hole) { h.Samples[2].SDPct = 0 },
		"day of a sample":  func(h *drying.Hole) { h.Samples[2].Day = math.NaN() },
		"humidity":         func(h *drying.Hole) { h.Air[0].RHPct = -1 },
		"temperature":      func(h *drying.Hole) { h.Air[0].TempC = math.NaN() },
		"day of the air":   func(h *drying.Hole) { h.Air[0].Day = math.Inf(-1) },
		"a log of nothing": func(h *drying.Hole) { h.Air = nil },
	} {
		h := steady(8, 7, 94, -1)
		spoil(&h)
		o, err := drying.Forecast(h)
		if err == nil {
			t.Errorf("%s: %+v, want an error", name, o)
		}
		if errors.Is(err, drying.ErrNoAir) != (name == "a log of nothing") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
