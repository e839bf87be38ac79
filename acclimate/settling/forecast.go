package settling

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"firstboard/report/evidence"
)

// Outlook is when a lot will be within tolerance of its target.
type Outlook struct {
	Prospect evidence.Prospect
	// Ready is the middle of the days on which the lot's mean may come within
	// tolerance, From to To an interval that holds nine in ten of them, at most
	// ten years after the last visit. Told for Losing and Gaining only.
	Ready, From, To float64
	EndPct          float64 // the EMC of the air the lot lies in
	ConstantDays    float64 // in which 63 % of the way is done; 0 where it cannot be told
	// RHLowPct to RHHighPct is the air, at the log's mean temperature TempC, in
	// which the lot comes within tolerance.
	RHLowPct, RHHighPct, TempC float64
	Leaving                    bool // within tolerance on the way, and out of it in the end
	Why                        string
}

// Forecast tells when a lot will be within tolerance of its target.
//
// The lot's mean nears the EMC of the recorded air (Wood Handbook equation 4-5)
// by a first-order law, and after the log that of its mean air. Its time
// constant is weighed by the visits, each as uncertain as its boards' spread
// over the root of their number. An error is a lot that cannot be: a moisture
// content outside 0 to 200 %, a visit without boards, a target outside 0 to 30
// %, air out of the equation's range or none at all.
func Forecast(l Lot) (Outlook, error) {
	if err := l.check(); err != nil {
		return Outlook{}, err
	}
	visits := l.visits()
	s, err := l.surroundings(visits)
	if err != nil {
		return Outlook{}, err
	}
	o := Outlook{EndPct: s.end, TempC: s.tempC}
	if o.RHLowPct, o.RHHighPct, err = Band(s.tempC, l.TargetPct, l.TolerancePct); err != nil {
		return Outlook{}, err
	}
	l.decide(&o, s, visits)
	return o, nil
}

// shortest is how many days the visits span at least.
const shortest = 3.0

// decide says how the lot stands to its target.
func (l Lot) decide(o *Outlook, s surroundings, visits []Visit) {
	low, high := l.TargetPct-l.TolerancePct, l.TargetPct+l.TolerancePct
	n := len(visits)
	if n > 0 && within(visits[n-1].MeanPct, low, high) {
		o.Prospect, o.Leaving = evidence.Reached, !within(s.end, low, high)
		o.Why = fmt.Sprintf("within tolerance today, and in this air it goes to %.1f %%", s.end)
		if o.Leaving {
			o.Why = fmt.Sprintf("within tolerance today, but leaving: in this air it goes to %.1f %%", s.end)
		}
		return
	}
	if n < 2 || visits[n-1].Day-visits[0].Day < shortest {
		o.Prospect = evidence.Unread
		o.Why = fmt.Sprintf("%s: a forecast takes 2, %.0f days apart", evidence.Count(n, "visit", "visits"), shortest)
		return
	}
	bound, way := high, evidence.Losing
	if visits[n-1].MeanPct < low {
		bound, way = low, evidence.Gaining
	}
	guesses, moved := s.guesses(visits)
	switch {
	case (s.end < bound) != (way == evidence.Losing) || s.end == bound:
		o.Prospect = evidence.Stalled
		o.Why = fmt.Sprintf("in this air the boards go to %.1f %%, and the target asks for %.1f to %.1f %%", s.end, low,
			high)
	case !moved:
		o.Prospect, o.Why = evidence.Stalled, s.stalled(visits)
	default:
		o.Prospect, o.Leaving = way, !within(s.end, low, high)
		l.days(o, s, visits[n-1].Day, bound, guesses)
	}
}

// within tells whether a mean lies between two ends, both included: a mean of
// decimals may miss its end by what float64 cannot hold.
func within(mc, low, high float64) bool { return mc >= low-1e-9 && mc <= high+1e-9 }

// A forecast looks ten years ahead, and stands on so many moisture contents
// for each time constant.
const (
	longest  = 3652.0
	contents = 11
)

// days tells the days on which the lot may come to the bound.
func (l Lot) days(o *Outlook, s surroundings, today, bound float64, guesses []guess) {
	var days, weights, constants, shares []float64
	for _, g := range guesses {
		constants, shares = append(constants, g.constant), append(shares, g.weight)
		for i := range contents {
			mc := g.mc + g.sd*distuv.UnitNormal.Quantile((float64(i)+0.5)/contents)
			day := today
			if past := (mc > bound) != (o.Prospect == evidence.Losing); !past {
				took, ok := s.until(bound, mc, g.constant)
				if !ok {
					took = longest
				}
				day += math.Min(took, longest)
			}
			days, weights = append(days, day), append(weights, g.weight/contents)
		}
	}
	stat.SortWeighted(days, weights)
	o.Ready = stat.Quantile(0.5, stat.Empirical, days, weights)
	o.From, o.To = stat.Quantile(0.05, stat.Empirical, days, weights),
		stat.Quantile(0.95, stat.Empirical, days, weights)
	o.ConstantDays = stat.Quantile(0.5, stat.Empirical, constants, shares)
	o.Why = fmt.Sprintf("on its way to %.1f %% with a time constant of %.0f days", s.end, o.ConstantDays)
	if o.Leaving {
		o.Why += ", past the tolerance and out of it again"
	}
}

// aMove is a change of a lot's mean, in points, that is no steady lot's: the
// half point of the check that asks whether flooring is steady (practice). It is
// sure where chance alone brings it about once in a thousand.
const (
	aMove    = 0.5
	sureMove = 0.999
)

// stalled says that nothing moved between the first visit and the last, or that
// the boards surely moved away from what the air would bring them to.
func (s surroundings) stalled(visits []Visit) string {
	first, last := visits[0], visits[len(visits)-1]
	change := last.MeanPct - first.MeanPct
	says := fmt.Sprintf("%+.1f points in %.0f days, and the air is for %.1f %%; ", change, last.Day-first.Day, s.end)
	sure := math.Abs(change) > max(aMove, distuv.UnitNormal.Quantile(sureMove)*math.Hypot(first.sd(), last.sd()))
	if sure && (change > 0) != (s.end > last.MeanPct) {
		return "moved away from the air's: " + says + "does the lot lie in the air that was read?"
	}
	return "nothing moved: " + says + "is the lot still packed?"
}
