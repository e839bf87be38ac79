package record

import (
	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record/cell"
)

// schemas are the tables of a record, in the design's order.
func schemas() []schema {
	return []schema{
		jobTable(), areasTable(), productsTable(), climatesTable(), instrumentsTable(), checksTable(),
		slabRHTable(), mverTable(), slabPHTable(), slabCMTable(), otherTable(),
		airTable(), surfaceTable(), woodTable(), scanTable(),
		eventsTable(), photosTable(), signOffTable(),
	}
}

// The units that headers may carry, the design's own first.
func fahrenheit() []evidence.Unit { return []evidence.Unit{evidence.Fahrenheit, evidence.Celsius} }

func inches() []evidence.Unit {
	return []evidence.Unit{evidence.Inch, evidence.Foot, evidence.Millimeter, evidence.Centimeter, evidence.Meter}
}

func feet() []evidence.Unit {
	return []evidence.Unit{evidence.Foot, evidence.Inch, evidence.Millimeter, evidence.Centimeter, evidence.Meter}
}

func patches() []evidence.Unit {
	return []evidence.Unit{evidence.SquareFoot, evidence.SquareInch, evidence.SquareCM, evidence.SquareM}
}

func only(u evidence.Unit) []evidence.Unit { return []evidence.Unit{u} }

// unitless is for a number in no unit, or in one that its row names.
func unitless() []evidence.Unit { return nil }

// The rules of the percentages.
func humidity() rule { return percents(100) }
func moisture() rule { return percents(200) }
func acidity() rule  { return within(0, 14) }

// The products a flooring system may be made of.
func floorings() []string {
	return []string{"solid wood", "engineered wood", "bamboo", "laminate", "resilient", "carpet"}
}

// TableNames are the names of all tables a record may have, in the design's
// order.
func TableNames() []string {
	return lists.Each(schemas(), schema.title)
}

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
func since90() cell.Era  { return cell.Era{Since: 1990} }
func measured() cell.Era { return cell.Era{Since: 1990, ToInstall: true} }
