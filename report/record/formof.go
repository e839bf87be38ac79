package record

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// FormOf is what a table of a record takes, in the columns and the units that
// it has: a field for each of its headers. What is no column of it, and of Job
// what is no item, is a field without a name.
func FormOf(t grid.Table) grid.Form {
	f := grid.Form{Name: t.Name}
	forms := [2]grid.Form{formNamed(t.Name, Imperial), formNamed(t.Name, Metric)}
	for _, header := range t.Header {
		f.Fields = append(f.Fields, fieldNamed(header, forms[0].Fields, forms[1].Fields))
	}
	if forms[0].Rows == nil || len(t.Rows) == 0 {
		return f
	}
	f.Rows = make([]grid.Field, t.Rows[len(t.Rows)-1].Number-1)
	for _, r := range t.Rows {
		f.Rows[r.Number-2] = fieldNamed(r.Cells[0].Text, forms[0].Rows, forms[1].Rows)
	}
	return f
}

func formNamed(table string, s System) grid.Form {
	for _, f := range Layout(s) {
		if f.Name == table {
			return f
		}
	}
	return grid.Form{}
}

// fieldNamed is the field that a header names; in a unit of neither system
// without the span of its numbers.
func fieldNamed(header string, lists ...[]grid.Field) (found grid.Field) {
	name, in := split(header)
	for _, f := range slices.Concat(lists...) {
		own, unit := split(f.Header)
		if !evidence.Same(own, name) {
			continue
		}
		found, found.Header = f, header
		if evidence.Same(unit, in) {
			return found
		}
		found.Takes.Span = grid.Span{}
	}
	return found
}
