package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record/cell"
)

// measure is a kind of quantity: the units it could carry and the one it is
// computed in.
type measure struct {
	units []evidence.Unit
	base  evidence.Unit
}

// quantityFlag is a flag of the calculations: what it holds a quantity of, and what
// it takes in words.
type quantityFlag struct {
	name string
	measure
	help string
}

func quantityFlags() []quantityFlag {
	const pascal, percent evidence.Unit = "Pa", "%"
	length := measure{[]evidence.Unit{"in", "ft", "mm", "cm", "m"}, evidence.Millimeter}
	part := measure{[]evidence.Unit{percent}, percent}
	size := measure{[]evidence.Unit{"ft2", "in2", "m2", "cm2"}, evidence.SquareFoot}
	return []quantityFlag{
		{"temp", tempMeasure(), "`TEMP` of the air, such as 70F or 21.5C"},
		{"rh", part, "relative humidity `RH` of the air, such as 45%"},
		{"emc", part, "moisture content `MC` that the wood is to come to, such as 8%; the answer is the humidity"},
		{"surface", tempMeasure(), "`TEMP` of a surface, such as 62F; the answer tells how far it lies above the dew point"},
		{
			"pressure",
			measure{[]evidence.Unit{pascal}, pascal},
			"`PRESSURE` of the air, such as 84000Pa; that of sea level where neither it nor an elevation is given",
		},
		{"elevation", length, "`HEIGHT` above sea level, such as 5280ft, which gives the pressure"},
		{"width", length, "`WIDTH` of the board across the grain, such as 5in"},
		{"species", measure{}, "`NAME` of the wood as the Wood Handbook or the trade has it, such as \"red oak\""},
		{"cut", measure{}, "`CUT` of the board: plainsawn, quartersawn, riftsawn or mixed"},
		{
			"coefficient",
			measure{},
			"change `COEFFICIENT` from the product's data sheet: the part of the width for 1 % MC, such as 0.00245",
		},
		{"from", part, "moisture content `MC` that the change runs from, such as 6%"},
		{"to", part, "moisture content `MC` that the change runs to, such as 6%"},
		{"thickness", length, "`THICKNESS` of the slab, such as 4in"},
		{"faces", measure{}, "`NUMBER` of faces that the slab dries from: 1 (on a retarder, a deck or the ground) or 2"},
		{"gain", measure{[]evidence.Unit{"g"}, evidence.Gram}, "`MASS` that the dish gained, such as 4.0g"},
		{"area", size, "`SIZE` of the concrete under the dome less the dish, such as 0.449ft2"},
		{"hours", measure{[]evidence.Unit{"h"}, evidence.Hour}, "`TIME` from setting to retrieving, such as 66h"},
	}
}

func tempMeasure() measure { return measure{[]evidence.Unit{"F", "C"}, evidence.Celsius} }

// quantityOf is the flag of the calculations with a name; any other holds a
// temperature.
func quantityOf(name string) quantityFlag {
	known, found := lists.First(quantityFlags(), func(f quantityFlag) bool { return f.name == name })
	return lists.If(found, known, quantityFlag{name: name, measure: tempMeasure()})
}

// quantity reads a flag such as 70F or 4 in. A bare number is refused with
// the units it could carry.
func quantity(c *cli.Context, flag string) (evidence.Exact, error) {
	fail := func(why string) (evidence.Exact, error) {
		return evidence.Exact{}, fmt.Errorf("--%s %s: %s", flag, c.String(flag), why)
	}
	text, m := c.String(flag), quantityOf(flag).measure
	digits, unit := m.split(text)
	if exact := cell.Fraction(digits); exact != "" && (unit == evidence.Inch || unit == evidence.Foot) {
		digits = exact // as on a tape: 2 1/4in
	}
	switch {
	case strings.TrimSpace(text) == "":
		return evidence.Exact{}, fmt.Errorf("--%s is missing; give a number with its unit: %s", flag, spelledOut("", m.units))
	case strings.Contains(text, ","):
		return fail("write the number with a point, not a comma: " + strings.ReplaceAll(text, ",", "."))
	case !plainDecimal(digits):
		return fail("write a plain number with its unit: " + spelledOut("", m.units))
	case unit == "":
		return fail("its unit is missing; write " + spelledOut(digits, m.units))
	case !slices.Contains(m.units, unit):
		return fail(fmt.Sprintf("%q is no unit here; give it in %s", unit, spelledOut("", m.units)))
	}
	return evidence.Typed(digits, unit).In(m.base), nil
}

// quantities reads several flags; floats has them as float64.
func quantities(c *cli.Context, flags ...string) ([]evidence.Exact, error) {
	var all []evidence.Exact
	for _, flag := range flags {
		x, err := quantity(c, flag)
		if err != nil {
			return nil, err
		}
		all = append(all, x)
	}
	return all, nil
}

func floats(c *cli.Context, flags ...string) ([]float64, error) {
	exact, err := quantities(c, flags...)
	return lists.Each(exact, evidence.Exact.Float), err
}

// split parts a quantity into its number and its unit, in this measure's own
// spelling where it is one.
func (m measure) split(text string) (digits string, unit evidence.Unit) {
	text = strings.TrimSpace(strings.ReplaceAll(text, "°", ""))
	digits = strings.TrimSpace(text[:numberEnd(text)])
	unit = evidence.Unit(strings.TrimSpace(text[numberEnd(text):]))
	own, found := lists.First(m.units, func(u evidence.Unit) bool { return strings.EqualFold(string(u), string(unit)) })
	return digits, lists.If(found, own, unit)
}

// numberEnd is where the number at the head of a text ends.
func numberEnd(text string) int {
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("+-./ 0123456789", r) })
	if end < 0 {
		return len(text)
	}
	return end
}

func plainDecimal(s string) bool {
	_, err := strconv.ParseFloat(s, 64)
	return err == nil && len(s) < 40 && !strings.HasPrefix(s, "+")
}

func spelledOut(digits string, units []evidence.Unit) string {
	return evidence.Either(lists.Each(units, func(u evidence.Unit) string { return digits + string(u) }))
}
