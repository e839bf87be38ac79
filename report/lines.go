package report

import "firstboard/report/evidence"

// Rule is one check of the catalog as the outputs list it.
type Rule struct {
	ID       string
	Asks     string
	Default  string // the limit where no product states one; empty for none
	Cite     evidence.Cite
	Deciding bool
}

// LimitLine is one limit that was held against an area, and whose it is.
type LimitLine struct {
	Area  string
	What  string
	Limit string // as stated: "75", "60 to 80"
	Unit  evidence.Unit
	Whose string // a product, or nobody's where it is the check's own
	Cite  evidence.Cite
	Place evidence.Place // where it was typed; nil for a default
	Note  string
}

// Caution is what travels with every workbook and plan under one heading.
type Caution struct {
	Heading   string
	Sentences []string
}
