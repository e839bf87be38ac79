package evidence

import (
	"cmp"
	"slices"
	"sort"
)

// AirState is the air from a day on until the next state: days are floats on
// any one axis, the temperature is in C, the humidity in % RH.
type AirState struct{ Day, TempC, RHPct float64 }

// AirMean gives the mean over time, between two days, of what value makes of
// the air. Each state of the log holds until the next one; before the log and
// beyond it its mean goes on. The log holds one state at least, in any order.
func AirMean(log []AirState, value func(AirState) float64) func(from, to float64) float64 {
	byDay := func(a, b AirState) int { return cmp.Compare(a.Day, b.Day) }
	states := log
	if !slices.IsSortedFunc(log, byDay) {
		states = slices.SortedStableFunc(slices.Values(log), byDay)
	}
	values, sums := make([]float64, len(states)), make([]float64, len(states))
	for i, s := range states {
		values[i] = value(s)
		if i > 0 {
			sums[i] = sums[i-1] + values[i-1]*(s.Day-states[i-1].Day)
		}
	}
	first, last, mean := states[0].Day, states[len(states)-1].Day, values[len(states)-1]
	if last > first {
		mean = sums[len(states)-1] / (last - first)
	}
	sum := func(day float64) float64 {
		if day <= first {
			return mean * (day - first)
		}
		if day >= last {
			return sums[len(states)-1] + mean*(day-last)
		}
		i := sort.Search(len(states), func(i int) bool { return states[i].Day > day }) - 1
		return sums[i] + values[i]*(day-states[i].Day)
	}
	return func(from, to float64) float64 {
		if from == to {
			return mean
		}
		return (sum(to) - sum(from)) / (to - from)
	}
}
