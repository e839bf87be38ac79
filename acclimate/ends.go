package acclimate

import (
	"cmp"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// ends are the ends of a limit in one unit, for comparing many readings with
// them: exactly, and by whole millionths where a reading has no finer part.
type ends struct {
	least, most end
}

// end is one end of a limit, not shown where there is none.
type end struct {
	shown bool
	exact evidence.Exact
	up    int64 // the number in millionths, to the next whole one
	down  int64 // the same down
	fine  bool  // up and down hold
}

// endOf is the end of a limit at a number.
func endOf(x evidence.Exact) end {
	const biggest = 2000 // of which the millionths fit 31 bits
	e := end{shown: true, exact: x}
	if x.Abs().Cmp(evidence.Whole(biggest)) > 0 {
		return e
	}
	millionths := x.Mul(evidence.Whole(1_000_000))
	e.up, e.down = int64(millionths.Ceil()), -int64(evidence.Exact{}.Sub(millionths).Ceil())
	e.fine = true
	return e
}

// endsOf are the ends of a limit in a unit, wider by so much in that unit;
// narrower where that is below zero.
func endsOf(l evidence.Limit, u evidence.Unit, wider evidence.Exact) ends {
	var e ends
	if l.Least.Shown() {
		e.least = endOf(l.Least.Number.In(u).Sub(wider))
	}
	if l.Most.Shown() {
		e.most = endOf(l.Most.Number.In(u).Add(wider))
	}
	return e
}

// hold says whether a number lies within the ends, both included.
func (e ends) hold(d decimal.Decimal) bool {
	m, fine := millionths(d)
	switch {
	case e.least.shown && e.least.over(d, m, fine):
		return false
	case e.most.shown && e.most.under(d, m, fine):
		return false
	}
	return true
}

// over says whether the end lies over a number; under, whether it lies under.
func (e end) over(d decimal.Decimal, m int64, fine bool) bool {
	if fine && e.fine {
		return m < e.up
	}
	return evidence.Of(d).Cmp(e.exact) < 0
}

func (e end) under(d decimal.Decimal, m int64, fine bool) bool {
	if fine && e.fine {
		return m > e.down
	}
	return evidence.Of(d).Cmp(e.exact) > 0
}

// millionths is a number as whole millionths; fine says that it is one.
func millionths(d decimal.Decimal) (m int64, fine bool) {
	const places, digits = 6, 11
	if exp := d.Exponent(); exp > 0 || exp < -places || d.NumDigits() > digits {
		return 0, false
	}
	m = d.CoefficientInt64()
	for range places + int(d.Exponent()) {
		m *= 10
	}
	return m, true
}

// order compares two numbers.
func order(a, b decimal.Decimal) int {
	x, fine := millionths(a)
	y, also := millionths(b)
	if fine && also {
		return cmp.Compare(x, y)
	}
	return a.Cmp(b)
}
