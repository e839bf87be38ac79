package record

import (
	"fmt"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// rule says what is wrong with a number and what to write instead, or
// nothing. A percentage is a number that its source shows with a percent sign.
type rule func(r evidence.Reading, percent bool) string

func anything(evidence.Reading, bool) string { return "" }

func notNegative(r evidence.Reading, _ bool) string {
	if r.Value.IsNegative() {
		return "is below 0; write a number from 0 up, or leave the cell blank"
	}
	return ""
}

func aboveNought(r evidence.Reading, _ bool) string {
	if !r.Value.IsPositive() {
		return "is not above 0; write a number above 0, or leave the cell blank"
	}
	return ""
}

func oneOrTwo(r evidence.Reading, _ bool) string {
	if !r.Value.Equal(decimal.NewFromInt(1)) && !r.Value.Equal(decimal.NewFromInt(2)) {
		return "is not a number of faces; write 1 or 2"
	}
	return ""
}

// within is the rule of a number that lies between two bounds.
func within(low, high int64) rule {
	least, most := decimal.NewFromInt(low), decimal.NewFromInt(high)
	return func(r evidence.Reading, _ bool) string {
		if r.Value.Cmp(least) < 0 || r.Value.Cmp(most) > 0 {
			return fmt.Sprintf("is outside %d to %d; write the number in the unit of its column, or leave the cell blank", low, high)
		}
		return ""
	}
}

// percents is the rule of a percentage: within bounds, and not typed as a
// fraction of one.
func percents(high int64) rule {
	bounds := within(0, high)
	return func(r evidence.Reading, percent bool) string {
		if complaint := fraction(r, percent); complaint != "" {
			return complaint
		}
		return bounds(r, percent)
	}
}

func fraction(r evidence.Reading, percent bool) string {
	if !percent && r.Value.IsPositive() && r.Value.Cmp(decimal.NewFromInt(1)) <= 0 {
		return fmt.Sprintf("looks like a fraction of one; write %s", r.Value.Shift(2))
	}
	return ""
}

// temperature is the rule of a temperature: -40 to 160 F, in either unit.
func temperature() rule {
	inF := within(-40, 160)
	least, most, nine := decimal.NewFromInt(-40), decimal.NewFromInt(640), decimal.NewFromInt(9)
	return func(r evidence.Reading, percent bool) string {
		if r.Unit == evidence.Fahrenheit {
			return inF(r, percent)
		}
		if r.Value.Cmp(least) < 0 || r.Value.Mul(nine).Cmp(most) > 0 {
			return "is outside -40 to 71.1; write the number in the unit of its column, or leave the cell blank"
		}
		return ""
	}
}
