package record

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record/alike"
	"firstboard/report/record/sheet"
)

// headerMatch is the column that a header names and the unit it carries. The
// column is -1 where there is none; meant is the one that it may be misspelt
// from, or -1. Where either is wrong the complaint says so.
type headerMatch struct {
	column, meant int
	unit          evidence.Unit
	complaint     string
}

// match finds the column that a header names.
func match(table, header string, columns []Column) headerMatch {
	name, in := evidence.Parted(header)
	m := headerMatch{column: -1, meant: -1}
	var namesakes []string
	for i, c := range columns {
		if !evidence.Same(name, c.Name) {
			continue
		}
		if unit, ok := c.Carries(in); ok {
			return headerMatch{i, i, unit, ""}
		}
		m.column, m.meant, namesakes = i, i, append(namesakes, c.Titles()...)
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
func unmatched(table, header string, columns []Column) (meant int, complaint string) {
	name, _ := evidence.Parted(header)
	if now := alike.ColumnNow(table, name); now != "" {
		meant = slices.IndexFunc(columns, func(c Column) bool { return evidence.Same(c.Name, now) })
		if meant >= 0 {
			return meant, fmt.Sprintf("%s is now %s; write %s", evidence.Quote(name), evidence.Quote(now),
				evidence.Either(columns[meant].Titles()))
		}
	}
	names := lists.Each(columns, func(c Column) string { return c.Name })
	titles := slices.Concat(lists.Each(columns, Column.Titles)...)
	near := slices.Index(names, evidence.NearMiss(name, names))
	return near, fmt.Sprintf("is not known here; the nearest is %q%s", evidence.Nearest(evidence.Tidy(header), titles),
		lists.If(near < 0, "; else take it out", ""))
}

// unitMeant says of a unit that is not known in a column which one it spells.
func unitMeant(in string, c Column) string {
	u, ok := evidence.UnitMeant(in, c.Units)
	return lists.If(ok, "writes its unit "+evidence.Quote(u.Short()), "carries a unit that is not known here") + "; "
}

// Carries is the unit that the text of a bracket stands for in this column; one
// without units has none.
func (c Column) Carries(in string) (evidence.Unit, bool) {
	if len(c.Units) == 0 {
		return evidence.None, in == ""
	}
	return evidence.UnitNamed(in, c.Units)
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
