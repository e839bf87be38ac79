package record

import (
	_ "time/tzdata"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/cell"
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

// anyYear is for days of building and of installing.
func anyYear() cell.Era { return cell.Era{} }

// since90 is for calibrations and checks of instruments, measured for readings.
func since90() cell.Era { return cell.Era{Since: 1990} }

func measured() cell.Era { return cell.Era{Since: 1990, ToInstall: true} }
