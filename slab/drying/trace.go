package drying

import "math"

// A trace is told at equal steps of the logarithm of time.
const (
	points   = 500
	logStep  = 0.025
	firstLog = -9.2 // 0.0001 of thickness^2/D1: no hole feels the face yet
)

// trace is how a layer dries from a uniform start: its humidity at the depth
// of the hole and its mean, fractions, over the logarithm of time in units of
// thickness^2/D1.
type trace struct{ hole, mean [points]float64 }

// surface is the humidity at the face from a time on.
type surface struct{ time, rh float64 }

// stepError is what a step of time may err by, a fraction of RH. With it the
// converged nonlinear table is met within 0.002.
const stepError = 2e-3

// dry follows a layer under the air of a course, whose first part begins at 0.
func dry(wet *potential, start, depth float64, air []surface) *trace {
	l, t := newLayer(wet, start), &trace{}
	hole := l.reader(depth)
	ends := append(air[1:len(air):len(air)], surface{time: math.Inf(1)})
	now, dt, told, part := 0.0, 1e-6, 0, 0
	was, wasMean, wasLog := start, start, firstLog-1
	for told < points {
		try := min(dt, ends[part].time-now)
		wrong := l.step(try, air[part].rh, stepError)
		dt = try * min(max(0.9*math.Sqrt(stepError/max(wrong, 1e-9)), 0.2), 2)
		if wrong > stepError {
			continue
		}
		now += try
		if now >= ends[part].time {
			part++
		}
		rh, mean, log := hole.rh(l), start-l.lost, math.Log(now)
		for ; told < points && firstLog+logStep*float64(told) <= log; told++ {
			share := (firstLog + logStep*float64(told) - wasLog) / (log - wasLog)
			t.hole[told] = was + share*(rh-was)
			t.mean[told] = wasMean + share*(mean-wasMean)
		}
		was, wasMean, wasLog = rh, mean, max(log, wasLog)
	}
	return t
}

// read is what a trace tells at the logarithm of a time.
func read(told *[points]float64, log float64) float64 {
	x := min(max((log-firstLog)/logStep, 0), points-1)
	i := min(int(x), points-2)
	return told[i] + (x-float64(i))*(told[i+1]-told[i])
}

// reaches gives the logarithm of the first time after another at which the
// hole is at a humidity; false where it never is.
func (t *trace) reaches(rh, after float64) (log float64, ok bool) {
	if read(&t.hole, after) <= rh {
		return after, true
	}
	i := 1 + int(min(max((after-firstLog)/logStep, 0), points-1))
	for i < points && t.hole[i] > rh {
		i++
	}
	if i == points {
		return 0, false
	}
	share := (t.hole[i-1] - rh) / (t.hole[i-1] - t.hole[i])
	return firstLog + logStep*(float64(i-1)+share), true
}
