package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// measure is a kind of quantity: the units it could carry and the one it is
// computed in.
type measure struct {
	units []evidence.Unit
	base  evidence.Unit
}

const pascal, percent evidence.Unit = "Pa", "%"

// measureOf is what a flag holds a quantity of.
func measureOf(flag string) measure {
	switch flag {
	case "rh", "emc", "from", "to":
		return measure{[]evidence.Unit{percent}, percent}
	case "width", "thickness", "elevation":
		return measure{[]evidence.Unit{"in", "ft", "mm", "cm", "m"}, evidence.Millimeter}
	case "area":
		return measure{[]evidence.Unit{"ft2", "in2", "m2", "cm2"}, evidence.SquareFoot}
	case "gain":
		return measure{[]evidence.Unit{"g"}, evidence.Gram}
	case "hours":
		return measure{[]evidence.Unit{"h"}, evidence.Hour}
	case "pressure":
		return measure{[]evidence.Unit{pascal}, pascal}
	}
	return measure{[]evidence.Unit{"F", "C"}, evidence.Celsius}
}

// quantity reads a flag such as 70F or 4 in. A bare number is refused with
// the units it could carry.
func quantity(c *cli.Context, flag string) (evidence.Exact, error) {
	fail := func(why string) (evidence.Exact, error) {
		return evidence.Exact{}, fmt.Errorf("--%s %s: %s", flag, c.String(flag), why)
	}
	text, m := c.String(flag), measureOf(flag)
	digits, unit := m.split(text)
	switch {
	case strings.TrimSpace(text) == "":
		return evidence.Exact{}, fmt.Errorf("--%s is missing; give a number with its unit: %s", flag, names(m.units))
	case strings.Contains(text, ","):
		return fail("write the number with a point, not a comma: " + strings.ReplaceAll(text, ",", "."))
	case !plainDecimal(digits):
		return fail("write a plain number with its unit: " + names(m.units))
	case unit == "":
		return fail("its unit is missing; write " + spelledOut(digits, m.units))
	case !slices.Contains(m.units, unit):
		return fail(fmt.Sprintf("%q is no unit here; write %s", unit, spelledOut(digits, m.units)))
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
	digits = strings.TrimRight(text[:numberEnd(text)], " ")
	unit = evidence.Unit(strings.TrimSpace(text[numberEnd(text):]))
	for _, u := range m.units {
		if strings.EqualFold(string(u), string(unit)) {
			return digits, u
		}
	}
	return digits, unit
}

// numberEnd is where the number at the head of a text ends.
func numberEnd(text string) int {
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("+-.0123456789", r) })
	if end < 0 {
		return len(text)
	}
	return end
}

func plainDecimal(s string) bool {
	_, err := strconv.ParseFloat(s, 64)
	return err == nil && len(s) < 40 && !strings.HasPrefix(s, "+")
}

func names(units []evidence.Unit) string { return spelledOut("", units) }

func spelledOut(digits string, units []evidence.Unit) string {
	return evidence.Either(lists.Each(units, func(u evidence.Unit) string { return digits + string(u) }))
}
