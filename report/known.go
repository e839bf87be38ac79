package report

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
)

// limitsKnown asks whether every limit that decides here was looked up.
func limitsKnown() evidence.Check[Site] {
	return evidence.Check[Site]{
		ID: "limits-known", Deciding: true, Judge: lookedUp,
		Asks: "was every limit that decides here looked up, a number or none, in a data sheet that is named?",
		Cite: evidence.Cite{Source: "a limit that was not looked up is never \"no limit\"", Standing: evidence.Derived},
	}
}

// lookedUp answers for each product that is asked, and for an adhesive that
// must be there and is not named.
func lookedUp(s Site) evidence.Finding {
	asked := s.askedLimits()
	var lacks []string
	var rows []evidence.Place
	if s.adhesiveUnnamed() {
		lacks = append(lacks, "which adhesive? Installation is glue-down or blank, and none is named")
		rows = append(rows, s.Area.Place)
	}
	for _, q := range asked {
		if q.product.Place != nil {
			rows = append(rows, q.product.Place)
		}
		if lack := q.lack(); lack != "" {
			lacks = append(lacks, lack)
		}
	}
	switch {
	case len(lacks) > 0:
		return evidence.Finding{Reason: strings.Join(lacks, "; "), Evidence: rows}
	case len(asked) == 0:
		return evidence.Unneeded("no limit of a product decides here; a slab or wood flooring would make it needed")
	}
	var names []string
	for _, q := range asked {
		names = append(names, fmt.Sprintf("%s (%s)", q.product.ID, q.product.DataSheet))
	}
	return evidence.Finding{Outcome: evidence.Met, Reason: "looked up for " + evidence.List(names), Evidence: rows}
}

// adhesiveUnnamed says whether the flooring is glued down, a blank counting as
// that, with an adhesive that is not named.
func (s Site) adhesiveUnnamed() bool { return s.gluedDown() && s.system.adhesive == nil }

// gluedDown: a blank installation is judged as glue-down.
func (s Site) gluedDown() bool {
	return s.Area.Installation == "" || s.Area.Installation == "glue-down"
}

// askedLimits are the products whose limits decide here, each with those limits.
type askedLimit struct {
	product *Product
	columns []LimitColumn
}

func (s Site) askedLimits() []askedLimit {
	var all []askedLimit
	for _, p := range s.system.products() {
		q := askedLimit{product: p}
		for _, k := range LimitKinds() {
			if k.known != nil && k.known(s, p) {
				q.columns = append(q.columns, k.Columns()...)
			}
		}
		if len(q.columns) > 0 {
			all = append(all, q)
		}
	}
	return all
}

// lack is what was not looked up of a product, empty where all was.
func (q askedLimit) lack() string {
	var blank []string
	for _, c := range q.columns {
		if c.Of(q.product).Blank() {
			blank = append(blank, c.Name)
		}
	}
	var clauses []string
	if len(blank) > 0 {
		clauses = append(clauses, evidence.List(blank)+" not looked up")
	}
	if q.product.DataSheet == "" {
		clauses = append(clauses, "no data sheet named")
	}
	if len(clauses) == 0 {
		return ""
	}
	return q.product.ID + ": " + strings.Join(clauses, ", ")
}

// standsOnSlab says whether the limits of a product for a slab's moisture
// decide: not where the flooring is stretched or laid loose without an adhesive.
func (s Site) standsOnSlab(p *Product) bool { return !s.loose() && s.reachedBySlab(p) }

// reachedBySlab says whether the moisture of a slab reaches a product: the
// membrane where there is one, else flooring and adhesive.
func (s Site) reachedBySlab(p *Product) bool {
	return s.Area.Substrate != onWood && (s.system.membrane == nil || p == s.system.membrane)
}

// gluedToSlab says whether a product is what touches a slab in glue: the
// membrane where there is one, which counts as glued under any flooring, else
// the adhesive.
func (s Site) gluedToSlab(p *Product) bool {
	if s.Area.Substrate != onSlab {
		return false
	}
	glued := []*Product{s.system.membrane, s.system.adhesive}
	first := slices.IndexFunc(glued, func(q *Product) bool { return q != nil })
	return first >= 0 && p == glued[first]
}

// loose says whether the flooring is stretched or laid loose without an
// adhesive.
func (s Site) loose() bool {
	return (s.Area.Installation == "stretch-in" || s.Area.Installation == "loose-lay") && s.system.adhesive == nil
}
