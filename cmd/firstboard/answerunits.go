package main

import (
	"fmt"
	_ "image/png"
	"math"

	"github.com/urfave/cli/v2"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// askedUnit is the unit that a flag was given in, in which the answer is told.
func askedUnit(c *cli.Context, flag string) evidence.Unit {
	_, unit := quantityOf(flag).split(c.String(flag))
	return unit
}

// tempIn is a temperature in F or C, degrees the same in words.
func tempIn(unit evidence.Unit, tempC float64) float64 {
	return lists.If(unit == evidence.Fahrenheit, tempC*1.8+32, tempC)
}

func degrees(unit evidence.Unit, tempC float64) string {
	return fmt.Sprintf("%.1f %s", tempIn(unit, tempC), unit)
}

// lengthIn is a length in the unit asked for, inches also to 1/32.
func lengthIn(unit evidence.Unit, mm float64) string {
	x := evidence.FromFloat(mm, evidence.Millimeter, unit)
	switch unit {
	case evidence.Inch:
		return fmt.Sprintf("%.3f in (%s)", x, thirtySeconds(x))
	case evidence.Millimeter:
		return fmt.Sprintf("%.2f mm", x)
	}
	return fmt.Sprintf("%.4f %s", x, unit)
}

// thirtySeconds is a length in inches to the nearest 1/32, as a rule shows it.
func thirtySeconds(inches float64) string {
	const parts = 32
	sign := lists.If(inches < 0, "-", "")
	n := int(math.Round(math.Abs(inches) * parts))
	whole, over, under := n/parts, n%parts, parts
	for over > 0 && over%2 == 0 {
		over, under = over/2, under/2
	}
	switch {
	case over == 0:
		return fmt.Sprintf("about %s%d in", sign, whole)
	case whole == 0:
		return fmt.Sprintf("about %s%d/%d in", sign, over, under)
	}
	return fmt.Sprintf("about %s%d %d/%d in", sign, whole, over, under)
}
