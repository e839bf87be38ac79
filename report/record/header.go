package record

import (
	"fmt"
	"slices"
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

// headerMatch is the column that a header names and the unit it carries. The
// column is -1 where there is none; meant is the one that it may be misspelt
// from, or -1. Where either is wrong the complaint says so.
type headerMatch struct {
	column, meant int
	unit          evidence.Unit
	complaint     string
}

// match finds the column that a header names.
func match[T any](table, header string, columns []column[T]) headerMatch {
	name, in := split(header)
	m := headerMatch{column: -1, meant: -1}
	var namesakes []string
	for i, c := range columns {
		if !evidence.Same(name, c.name) {
			continue
		}
		if unit, ok := c.carries(in); ok {
			return headerMatch{i, i, unit, ""}
		}
		m.column, m.meant, namesakes = i, i, append(namesakes, c.titles()...)
	}
	switch {
	case m.column < 0:
		m.meant, m.complaint = unmatched(table, header, columns)
	case in == "":
		m.complaint = "carries no unit; write " + either(namesakes)
	default:
		m.complaint = unitMeant(in, columns[m.column]) + "write " + either(namesakes)
	}
	return m
}

// unmatched is what is wrong with a header that names no column, and which it
// may be meant for.
func unmatched[T any](table, header string, columns []column[T]) (meant int, complaint string) {
	name, _ := split(header)
	if now := nowCalled(name, columnsNow(table)); now != "" {
		meant = slices.IndexFunc(columns, func(c column[T]) bool { return evidence.Same(c.name, now) })
		if meant >= 0 {
			return meant, fmt.Sprintf("%s is now %s; write %s", quote(name), quote(now), either(columns[meant].titles()))
		}
	}
	var names, titles []string
	for _, c := range columns {
		names, titles = append(names, c.name), append(titles, c.titles()...)
	}
	return slices.Index(names, evidence.NearMiss(name, names)),
		fmt.Sprintf("is not known here; the nearest is %q", evidence.Nearest(evidence.Tidy(header), titles))
}

// unitMeant says of a unit that is not known in a column which one it spells.
func unitMeant[T any](in string, c column[T]) string {
	if u, ok := c.carries(unitWord(in)); ok && len(c.units) > 0 {
		return fmt.Sprintf("writes its unit %s; ", quote(bracket(u)))
	}
	return "carries a unit that is not known here; "
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

// headerBelow is the number of the row that holds the header where row 1 does
// not, or 0.
func headerBelow(s schema, src *source) int {
	const enough = 2 // columns of the table, for a row to be a header
	for i, row := range src.above {
		named := 0
		for _, text := range row.texts {
			if s.names(text) {
				named++
			}
		}
		switch {
		case i == 0 && row.number == 1 && named >= min(enough, len(row.texts)) && named > 0:
			return 0
		case named >= enough && row.number > 1:
			return row.number
		}
	}
	return 0
}
