package report

import (
	"slices"

	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/report/lists"
)

// Statement is all that the outputs for people say of a judged record.
type Statement struct {
	Job       Job
	Record    string // name of the record
	SHA256    string // of the record
	Tool      string // name and version
	Seal      string // of the record and the decisions
	Decisions []Decision
	Advice    []ahead.Advice // of the same areas; none where nobody gave any
	Rules     []Rule
	Limits    []limits.Line
	Cautions  []Caution
}

// Rule is one check of the catalog as the outputs list it.
type Rule struct {
	ID       string
	Asks     string
	Default  string // the limit where no product states one; empty for none
	Cite     evidence.Cite
	Deciding bool
}

// LimitLines are the limits in force for every area, whose they are, where
// they were typed, and what was looked up and not used.
func LimitLines(all []Decision) []limits.Line {
	return slices.Concat(lists.Each(all, func(d Decision) []limits.Line { return d.Site.Floor().Lines() })...)
}

// Caution is what travels with every workbook and plan under one heading.
type Caution struct {
	Heading   string
	Sentences []string
}
