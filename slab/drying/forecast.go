package drying

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"firstboard/report/evidence"
)

// Expected is the humidity expected in the hole on a day: the middle of what
// is possible, and the band that holds nine in ten of it.
type Expected struct{ Day, RHPct, LowPct, HighPct float64 }

// Outlook is when a hole will be at its limit.
type Outlook struct {
	Prospect evidence.Prospect
	// Ready is the middle of the days on which it may be at its limit, From to
	// To an interval that holds nine in ten of them, at most ten years after
	// the last sample. Told for Losing only.
	Ready, From, To float64
	// StartPct and RateMM2Day are the uniform RH it began with and D1 at 20 C,
	// in mm2/day, the middle of what is likely.
	StartPct, RateMM2Day float64
	// CoveredPct is the humidity the slab settles to if it is covered on the
	// day of the last sample: its mean, as no water leaves it any more.
	// Expected is the course of the hole. None of these is told where fewer
	// than three samples over seven days were taken.
	CoveredPct float64
	Expected   []Expected
	Why        string // a sentence
}

// Forecast tells when a hole will be at its limit.
//
// The slab dries in one dimension from a uniform 93 to 99 % RH by the
// diffusivity of Shape, its faces at the humidity of the recorded air, faster
// where that is warmer. Start, rate and shape are weighed by the samples, over
// the published shapes: the interval holds what all of them leave possible. An
// error is a hole that cannot be: its geometry, a sample or a limit outside 0
// to 100 %, a deviation not above 0, or no air.
func Forecast(h Hole) (Outlook, error) {
	if err := h.check(); err != nil {
		return Outlook{}, err
	}
	start := h.StartDay
	if math.IsNaN(start) {
		start = math.Inf(-1)
	}
	past := historyFrom(start, h.Samples)
	if past.tooFew() {
		return h.unread(past), nil
	}
	if len(h.Air) > 0 {
		return h.forecast(past), nil
	}
	if why, reached := h.Reached(); reached {
		return Outlook{Prospect: evidence.Reached, Why: why}, nil
	}
	return Outlook{}, ErrNoAir
}

func (h Hole) unread(past history) Outlook {
	if why, reached := h.Reached(); reached {
		return Outlook{Prospect: evidence.Reached, Why: why}
	}
	days := 0.0
	if len(past) > 0 {
		days = math.Floor(past.days()) // 6.9 days are not 7
	}
	return Outlook{Prospect: evidence.Unread, Why: fmt.Sprintf("%s over %.0f days: a forecast takes %d over %.0f days",
		evidence.Count(len(past), "reading", "readings"), days, fewest, shortestPast)}
}

func (h Hole) forecast(past history) Outlook {
	day, today := h.StartDay, past.last().Day
	if math.IsNaN(day) {
		day = past[0].Day
	}
	c, samples := courseFrom(day, h.Air), past.thinned()
	guesses := h.guesses(c, samples)
	days := h.ready(c, today, guesses)
	o := h.slab(c, today, guesses)
	o.Prospect, o.Why = h.prospect(past, samples, c, middle(days) < today+longest)
	end := today + longest
	if o.Prospect == evidence.Losing {
		o.Ready = middle(days)
		o.From, o.To = interval(days)
		end = o.To
	}
	o.Expected = expected(c, day, min(end, today+2*(today-day)+90), guesses)
	return o
}

// prospect says whether the hole is on its way, and why.
func (h Hole) prospect(past, samples history, c course, arrives bool) (evidence.Prospect, string) {
	perDay, highest := samples.slope()
	why, reached := h.Reached()
	switch {
	case reached:
		return evidence.Reached, why
	case highest >= 0:
		return evidence.Stalled, fmt.Sprintf(
			"its readings are not surely falling: %+.2f points of RH a week, at 95 %% up to %+.2f", 7*perDay, 7*highest)
	case 100*c.settled() >= h.LimitPct:
		return evidence.Stalled, fmt.Sprintf(
			"the air is at %.0f %% RH, and concrete dries no further than its air", 100*c.settled())
	case !arrives:
		return evidence.Stalled, "at this pace it takes more than ten years"
	}
	return evidence.Losing, fmt.Sprintf("%s over %.0f days fall by %.2f points of RH a week",
		evidence.Count(len(past), "reading", "readings"), past.days(), -7*perDay)
}

// Reached says why the hole is at its limit already, by the latest of all its
// samples, whenever it began to dry; and whether it is.
func (h Hole) Reached() (why string, reached bool) {
	if len(h.Samples) == 0 {
		return "", false
	}
	last := historyFrom(math.Inf(-1), h.Samples).last()
	if last.RHPct > h.LimitPct {
		return "", false
	}
	return fmt.Sprintf("its latest reading, %.4g %% RH, is at or under %.4g %%", last.RHPct, h.LimitPct), true
}

// unlikely is the chance under which the samples are taken to scatter by more
// than their instrument explains.
const unlikely = 0.01

// guesses fits the samples; where they scatter by more than their deviations
// explain, these are widened until they do.
func (h Hole) guesses(c course, samples history) []guess {
	f := h.fit(c, samples, 1)
	free := max(float64(len(samples)-2), 1)
	if (distuv.ChiSquared{K: free}).Survival(f.misfit) < unlikely {
		f = h.fit(c, samples, math.Sqrt(f.misfit/free))
	}
	return f.draw()
}

// fit weighs all shapes under the mean air, and where the air varies those
// that stay likely once more under its course, at the rate they had.
func (h Hole) fit(c course, samples history, widen float64) *fit {
	thickness, depth := h.layerMM()
	all, ages := make([]fitted, len(samples)), h.ages()
	for i, s := range samples {
		all[i] = fitted{max(c.lived(s.Day), 0.01), s.RHPct / 100, widen * s.SDPct / 100}
	}
	level, followed := c.level(samples.last().Day), c.varies() && !math.IsNaN(h.StartDay)
	whole := newFit(all, ages, thickness)
	var single []*fit
	for _, s := range likelyShapes() {
		one := newFit(all, ages, thickness)
		one.add(family(s.Shape, depth, level), s.share)
		single = append(single, one)
		whole.join(one)
	}
	if !followed {
		return whole
	}
	again := newFit(all, ages, thickness)
	for i, s := range likelyShapes() {
		if single[i].best > whole.best-negligible/2 {
			air := c.surfaces(math.Exp(meanRate(single[i].draw())))
			again.add(family(s.Shape, depth, air), s.share)
		}
	}
	return again
}
