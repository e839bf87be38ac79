package evidence

import (
	"slices"
	"strings"
)

// Short is a unit as a header carries it in its bracket.
func (u Unit) Short() string {
	switch u {
	case RH, MC, CM:
		return "%"
	case Pounds:
		return "lb"
	case Grams:
		return "g"
	case PH:
		return ""
	}
	return string(u)
}

// Heading is a header: a name, and a unit in a bracket where there is one.
func Heading(name string, u Unit) string {
	if short := u.Short(); short != "" {
		return name + " (" + short + ")"
	}
	return name
}

// Parted are a header's name and the text of its bracket.
func Parted(header string) (name, unit string) {
	header = Tidy(header)
	open := strings.LastIndexByte(header, '(')
	if open < 0 || !strings.HasSuffix(header, ")") {
		return header, ""
	}
	return strings.TrimSpace(header[:open]), header[open+1 : len(header)-1]
}

// UnitNamed is the unit among some that a text names: °F is F, sq ft and ft²
// are ft2.
func UnitNamed(text string, among []Unit) (Unit, bool) {
	name := folded(text)
	at := slices.IndexFunc(among, func(u Unit) bool { return name == folded(u.Short()) })
	if at < 0 {
		return None, false
	}
	return among[at], true
}

// UnitMeant is UnitNamed for a text in words as well: degrees Celsius, inches,
// %RH.
func UnitMeant(text string, among []Unit) (Unit, bool) {
	short := shortened(text)
	if short == "" {
		return None, false
	}
	return UnitNamed(short, among)
}

// folded is a unit's name as units are compared.
func folded(unit string) string {
	unit = strings.Map(func(r rune) rune {
		switch r {
		case ' ', '°', 'º':
			return -1
		case '²':
			return '2'
		}
		return r
	}, Key(unit))
	if rest, square := strings.CutPrefix(unit, "sq"); square {
		return rest + "2"
	}
	return unit
}

// shortened is the short name of a unit in words, or empty.
func shortened(word string) string {
	w := strings.Trim(folded(word), "()[].")
	if rest, ok := strings.CutPrefix(w, "deg"); ok {
		w = strings.TrimLeft(strings.TrimPrefix(strings.TrimPrefix(rest, "rees"), "ree"), ".")
	}
	switch w {
	case "fahrenheit":
		return "f"
	case "celsius", "centigrade":
		return "c"
	case "%rh", "rh%", "percent", "pct", "%mc":
		return "%"
	case "inch", "inches", `"`:
		return "in"
	case "foot", "feet", "'":
		return "ft"
	case "millimeter", "millimeters":
		return "mm"
	case "centimeter", "centimeters":
		return "cm"
	case "meter", "meters":
		return "m"
	}
	known := []Unit{
		Fahrenheit, Celsius, Percent, Inch, Foot, Millimeter, Centimeter, Meter,
		SquareFoot, SquareInch, SquareCM, SquareM, Gram, Pounds,
	}
	if u, ok := UnitNamed(w, known); ok {
		return folded(u.Short())
	}
	return ""
}
