package record

import (
	"slices"

	"firstboard/report"
)

// With is the record's tables with one of them in its new form, in the
// design's order. The record keeps its own.
func (r Record) With(t report.Table) []report.Table {
	var all []report.Table
	for _, s := range schemas() {
		at := slices.IndexFunc(r.Tables, func(was report.Table) bool { return was.Name == s.title() })
		switch {
		case s.title() == t.Name:
			all = append(all, t)
		case at >= 0:
			all = append(all, r.Tables[at])
		}
	}
	return all
}
