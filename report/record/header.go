package record

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/record/sheet"
)

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
		m.complaint = "carries no unit; write " + evidence.Either(namesakes)
	default:
		m.complaint = unitMeant(in, columns[m.column]) + "write " + evidence.Either(namesakes)
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
			return meant, fmt.Sprintf("%s is now %s; write %s", evidence.Quote(name), evidence.Quote(now),
				evidence.Either(columns[meant].titles()))
		}
	}
	var names, titles []string
	for _, c := range columns {
		names, titles = append(names, c.name), append(titles, c.titles()...)
	}
	near, text := slices.Index(names, evidence.NearMiss(name, names)),
		fmt.Sprintf("is not known here; the nearest is %q", evidence.Nearest(evidence.Tidy(header), titles))
	if near < 0 {
		text += "; else take it out"
	}
	return near, text
}

// unitMeant says of a unit that is not known in a column which one it spells.
func unitMeant[T any](in string, c column[T]) string {
	if u, ok := evidence.UnitMeant(in, c.units); ok {
		return fmt.Sprintf("writes its unit %s; ", evidence.Quote(u.Short()))
	}
	return "carries a unit that is not known here; "
}

// carries is the unit that the text of a bracket stands for in this column.
func (c column[T]) carries(in string) (evidence.Unit, bool) {
	if len(c.units) == 0 {
		return evidence.None, in == ""
	}
	return evidence.UnitNamed(in, c.units)
}

// headerBelow is the number of the row that holds the header where row 1 does
// not, or 0.
func headerBelow(s schema, src *sheet.Table) int {
	const enough = 2 // columns of the table, for a row to be a header
	for i, row := range src.Above {
		named := 0
		for _, text := range row.Texts {
			if s.names(text) {
				named++
			}
		}
		switch {
		case i == 0 && row.Number == 1 && named >= min(enough, len(row.Texts)) && named > 0:
			return 0
		case named >= enough && row.Number > 1:
			return row.Number
		}
	}
	return 0
}
