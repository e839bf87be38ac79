package forms

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
)

// For is what a table of a record takes, in the columns and the units that
// it has: a field for each of its headers. What is no column of it, and of Job
// what is no item, is a field without a name.
func For(t grid.Table) grid.Form {
	asked := [2]grid.Form{empty(t.Name, Imperial), empty(t.Name, Metric)}
	f := grid.Form{Name: t.Name, Fields: lists.Each(t.Header, func(header string) grid.Field {
		return fieldNamed(header, asked[0].Fields, asked[1].Fields)
	})}
	if asked[0].Rows == nil || len(t.Rows) == 0 {
		return f
	}
	f.Rows = make([]grid.Field, t.Rows[len(t.Rows)-1].Number-1)
	for _, r := range t.Rows {
		f.Rows[r.Number-2] = fieldNamed(r.Cells[0].Text, asked[0].Rows, asked[1].Rows)
	}
	return f
}

// fieldNamed is the field that a header names; in a unit of neither system
// without the span of its numbers.
func fieldNamed(header string, lists ...[]grid.Field) (found grid.Field) {
	name, in := evidence.Parted(header)
	for _, f := range slices.Concat(lists...) {
		own, unit := evidence.Parted(f.Header)
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
