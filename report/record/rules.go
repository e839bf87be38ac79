package record

import (
	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/faults"
)

// rule is the numbers that a column takes in a unit it may carry.
type rule func(evidence.Unit) grid.Span

func anything(evidence.Unit) grid.Span { return grid.Span{} }

func notNegative(evidence.Unit) grid.Span { return grid.Span{Least: bound64(0)} }

func aboveZero(evidence.Unit) grid.Span { return grid.Span{Least: bound64(0), Above: true} }

// count is the rule of a whole number from 0 up.
func count(evidence.Unit) grid.Span { return grid.Span{Least: bound64(0), Whole: true} }

func oneOrTwo(evidence.Unit) grid.Span {
	return grid.Span{Least: bound64(1), Most: bound64(2), Whole: true}
}

// unbounded is the rule of a percentage without bounds.
func unbounded(evidence.Unit) grid.Span { return grid.Span{Percent: true} }

// within is the rule of a number that lies between two bounds.
func within(low, high int64) rule {
	span := grid.Span{Least: bound64(low), Most: bound64(high)}
	return func(evidence.Unit) grid.Span { return span }
}

// percents is the rule of a percentage: within bounds, and not typed as a
// fraction of one.
func percents(high int64) rule {
	span := grid.Span{Least: bound64(0), Most: bound64(high), Percent: true}
	return func(evidence.Unit) grid.Span { return span }
}

// temperature is the rule of a temperature: -40 to 160 F, in either unit.
func temperature() rule {
	inF := within(-40, 160)
	inC := inF(evidence.Celsius)
	inC.Most.Decimal = evidence.Typed("160", evidence.Fahrenheit).In(evidence.Celsius).Decimal()
	return func(u evidence.Unit) grid.Span {
		if u == evidence.Celsius {
			return inC
		}
		return inF(u)
	}
}

func bound64(n int64) decimal.NullDecimal { return decimal.NewNullDecimal(decimal.NewFromInt(n)) }

// outside says what is wrong with a number and what to write instead, or
// nothing. A percentage is a number that its source shows with a percent sign.
func outside(s grid.Span, r evidence.Reading, typed string, percent bool) faults.Complaint {
	x := r.Value
	low := s.Least.Valid && (x.LessThan(s.Least.Decimal) || s.Above && x.Equal(s.Least.Decimal))
	high := s.Most.Valid && x.GreaterThan(s.Most.Decimal)
	switch {
	case s.Percent && !percent && x.IsPositive() && x.Cmp(decimal.NewFromInt(1)) <= 0:
		return faults.Mistake(typed, "looks like a fraction of one; write %s", x.Shift(2))
	case s.Whole && s.Most.Valid && (low || high || !x.IsInteger()):
		return faults.Mistake(typed, "is not %s or %s; write one of the two", s.Least.Decimal, s.Most.Decimal)
	case s.Whole && (low || !x.IsInteger()):
		return faults.Mistake(typed, "is not a count; write a whole number: 0, 1, 2 and so on")
	case high && r.Unit == evidence.Celsius:
		return faults.Mistake(typed, "is outside %s to %s C; is it in F? Then write the unit in the header, or leave the cell blank", s.Least.Decimal, s.Most.Decimal.Truncate(1))
	case s.Most.Valid && (low || high):
		return faults.Mistake(typed, "is outside %s to %s; write the number in the unit of its column, or leave the cell blank", s.Least.Decimal, s.Most.Decimal.Truncate(1))
	case low && s.Above:
		return faults.Mistake(typed, "is not above 0; write a number above 0, or leave the cell blank")
	case low:
		return faults.Mistake(typed, "is below 0; write a number from 0 up, or leave the cell blank")
	}
	return faults.Complaint{}
}
