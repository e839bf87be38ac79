package record

import (
	"slices"

	"firstboard/report/grid"
)

// With is the record's tables with one of them in its new form, in the
// design's order. The record keeps its own.
func (r Record) With(t grid.Table) []grid.Table {
	var all []grid.Table
	for _, s := range schemas() {
		at := slices.IndexFunc(r.Tables, func(was grid.Table) bool { return was.Name == s.title() })
		switch {
		case s.title() == t.Name:
			all = append(all, t)
		case at >= 0:
			all = append(all, r.Tables[at])
		}
	}
	return all
}
