package drying

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Sample is one reading of a hole: SDPct is one standard deviation of it, half
// the instrument's expanded uncertainty.
type Sample struct{ Day, RHPct, SDPct float64 }

// history are the samples of a hole in order of time.
type history []Sample

// The least that carries a forecast.
const (
	fewest       = 3
	shortestPast = 7.0 // days from the first to the last
)

// historyFrom leaves out what was read before the course began. Of two samples
// at one time the wetter one comes last.
func historyFrom(start float64, samples []Sample) history {
	h := slices.DeleteFunc(slices.Clone(samples), func(s Sample) bool { return s.Day < start })
	slices.SortFunc(h, func(a, b Sample) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.RHPct, b.RHPct), cmp.Compare(a.SDPct, b.SDPct))
	})
	return h
}

func (h history) last() Sample { return h[len(h)-1] }

func (h history) days() float64 { return h.last().Day - h[0].Day }

func (h history) tooFew() bool { return len(h) < fewest || h.days() < shortestPast }

// mostSamples is how many samples are fitted at most.
const mostSamples = 60

// thinned is the history with one sample a day: a probe that is read again on
// one day errs as it did before, so their mean is as uncertain as one of them.
// What is still too much is averaged over longer times, each day's error by
// itself.
func (h history) thinned() history {
	daily := h.averaged(1, func(sd, _ float64) float64 { return sd })
	if len(daily) <= mostSamples {
		return daily
	}
	return daily.averaged(daily.days()/(mostSamples-1), func(sd, n float64) float64 { return sd / math.Sqrt(n) })
}

// averaged puts the mean in place of the samples that lie less than a width
// after the first of them.
func (h history) averaged(width float64, sd func(sd, n float64) float64) history {
	var all history
	for i := 0; i < len(h); {
		n := i
		var sum Sample
		for ; n < len(h) && (n == i || h[n].Day < h[i].Day+width); n++ {
			sum = Sample{sum.Day + h[n].Day, sum.RHPct + h[n].RHPct, sum.SDPct + h[n].SDPct}
		}
		count := float64(n - i)
		all = append(all, Sample{sum.Day / count, sum.RHPct / count, sd(sum.SDPct/count, count)})
		i = n
	}
	return all
}

// slope is the change in % RH a day by a weighted straight line, and the
// highest it can be at 95 % (one side, the samples' deviations being known).
func (h history) slope() (perDay, highest float64) {
	var days, rh, weights []float64
	for _, s := range h {
		days, rh, weights = append(days, s.Day), append(rh, s.RHPct), append(weights, 1/(s.SDPct*s.SDPct))
	}
	middle, level := stat.Mean(days, weights), stat.Mean(rh, weights)
	together, spread := 0.0, 0.0
	for i, day := range days {
		together += weights[i] * (day - middle) * (rh[i] - level)
		spread += weights[i] * (day - middle) * (day - middle)
	}
	perDay = together / spread
	return perDay, perDay + distuv.UnitNormal.Quantile(0.95)/math.Sqrt(spread)
}
