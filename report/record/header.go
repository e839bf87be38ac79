package record

import (
	"fmt"
	"strings"

	"firstboard/report/evidence"
)

// spelled is a header: a name and the unit in its bracket.
func spelled(name string, u evidence.Unit) string {
	if b := bracket(u); b != "" {
		return name + " (" + b + ")"
	}
	return name
}

// bracket is a unit as a header carries it.
func bracket(u evidence.Unit) string {
	switch u {
	case evidence.RH, evidence.MC, evidence.CM:
		return "%"
	case evidence.Pounds:
		return "lb"
	case evidence.Grams:
		return "g"
	case evidence.PH:
		return ""
	}
	return string(u)
}

// folded is the text of a bracket as units are compared: °F is f, sq ft is
// ft2.
func folded(unit string) string {
	unit = strings.Map(func(r rune) rune {
		switch r {
		case ' ', '°', 'º':
			return -1
		case '²':
			return '2'
		}
		return r
	}, evidence.Key(unit))
	if rest, square := strings.CutPrefix(unit, "sq"); square {
		return rest + "2"
	}
	return unit
}

// split parts a header into its name and the text of its bracket.
func split(header string) (name, unit string) {
	header = evidence.Tidy(header)
	open := strings.LastIndexByte(header, '(')
	if open < 0 || !strings.HasSuffix(header, ")") {
		return header, ""
	}
	return strings.TrimSpace(header[:open]), header[open+1 : len(header)-1]
}

// match finds the column that a header names, and the unit it carries. The
// column is -1 where there is none; then, and where the unit is wrong, the
// complaint says so.
func match[T any](header string, columns []column[T]) (at int, unit evidence.Unit, complaint string) {
	name, in := split(header)
	at = -1
	var namesakes, titles []string
	for i, c := range columns {
		titles = append(titles, c.titles()...)
		if !evidence.Same(name, c.name) {
			continue
		}
		if unit, ok := c.carries(in); ok {
			return i, unit, ""
		}
		at, namesakes = i, append(namesakes, c.titles()...)
	}
	switch {
	case at < 0:
		complaint = fmt.Sprintf("is not known here; the nearest is %q", evidence.Nearest(evidence.Tidy(header), titles))
	case in == "":
		complaint = "carries no unit; write " + either(namesakes)
	default:
		complaint = "carries a unit that is not known here; write " + either(namesakes)
	}
	return at, unit, complaint
}

// carries is the unit that the text of a bracket stands for in this column.
func (c column[T]) carries(in string) (evidence.Unit, bool) {
	for _, u := range c.units {
		if folded(in) == folded(bracket(u)) {
			return u, true
		}
	}
	return evidence.None, len(c.units) == 0 && in == ""
}
