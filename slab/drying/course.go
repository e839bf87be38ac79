package drying

import (
	"math"
	"sort"

	"firstboard/report/evidence"
)

// stretch is a time under air of one humidity, a fraction. lived counts the
// days since the course began as the concrete lives through them: a day at 20
// C counts one, a warmer one more, pace of them.
type stretch struct{ day, lived, pace, rh float64 }

// course is the air that a slab dries in, from a day on without an end.
type course []stretch

// pace is how fast water moves in concrete at a temperature, beside 20 C.
//
// Source: Bazant and Najjar 1972: exp(2700 (1/Tref - 1/T)), T in K.
func pace(tempC float64) float64 { return math.Exp(2700 * (1/293.15 - 1/(tempC+273.15))) }

// The stretches over which the air is averaged: what the air did in a week
// does not reach a hole by itself.
const (
	shortest = 7.0 // days
	mostOf   = 30  // within the log
)

// courseFrom is the course from a day on. Before its log and beyond it the
// log's mean holds.
func courseFrom(start float64, log []evidence.AirState) course {
	rh := evidence.AirMean(log, func(a evidence.AirState) float64 { return a.RHPct / 100 })
	warm := evidence.AirMean(log, func(a evidence.AirState) float64 { return pace(a.TempC) })
	first, last := log[0].Day, log[0].Day
	for _, a := range log {
		first, last = min(first, a.Day), max(last, a.Day)
	}
	days := []float64{start}
	if from := max(first, start); last > from {
		n := math.Ceil((last - from) / max(shortest, (last-from)/mostOf))
		for i := range int(n) + 1 {
			if day := from + float64(i)*(last-from)/n; day > start {
				days = append(days, day)
			}
		}
	}
	c := make(course, len(days))
	for i, day := range days {
		end := day // from the last day on, the mean of the log
		if i+1 < len(days) {
			end = days[i+1]
		}
		c[i] = stretch{day: day, pace: warm(day, end), rh: rh(day, end)}
		if i > 0 {
			c[i].lived = c[i-1].lived + c[i-1].pace*(day-c[i-1].day)
		}
	}
	return c
}

// lived is how many days the concrete has lived through on a day.
func (c course) lived(day float64) float64 {
	s := c[max(sort.Search(len(c), func(i int) bool { return c[i].day > day })-1, 0)]
	return s.lived + s.pace*(day-s.day)
}

// day is the inverse of lived.
func (c course) day(lived float64) float64 {
	s := c[max(sort.Search(len(c), func(i int) bool { return c[i].lived > lived })-1, 0)]
	return s.day + (lived-s.lived)/s.pace
}

// level is one humidity for the course: its mean up to a day.
func (c course) level(day float64) []surface {
	sum, to := 0.0, c.lived(day)
	for i, s := range c {
		end := to
		if i+1 < len(c) {
			end = min(c[i+1].lived, to)
		}
		sum += s.rh * max(end-s.lived, 0)
	}
	if to <= 0 {
		return []surface{{rh: c[0].rh}}
	}
	return []surface{{rh: sum / to}}
}

// surfaces are the humidities of the course in the time of a layer that dries
// at a rate, D1 over the square of its thickness.
func (c course) surfaces(rate float64) []surface {
	all := make([]surface, len(c))
	for i, s := range c {
		all[i] = surface{s.lived * rate, s.rh}
	}
	return all
}

// varies says whether the course is worth following: its humidity changes by
// over 1 %.
func (c course) varies() bool {
	low, high := c[0].rh, c[0].rh
	for _, s := range c {
		low, high = min(low, s.rh), max(high, s.rh)
	}
	return high-low > 0.01
}

// settled is the humidity that the air goes on with.
func (c course) settled() float64 { return c[len(c)-1].rh }
