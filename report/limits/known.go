package limits

import (
	"fmt"
	"strings"

	"firstboard/report/evidence"
)

// Checks is the check whether every limit that decides here was looked up.
func Checks() []evidence.Check[Floor] {
	return []evidence.Check[Floor]{{
		ID: "limits-known", Deciding: true, Judge: lookedUp,
		Asks: "was every limit that decides here looked up, a number or none, in a data sheet that is named?",
		Cite: evidence.Cite{Source: "a limit that was not looked up is never \"no limit\"", Standing: evidence.Derived},
	}}
}

// lookedUp answers for each product that is asked, and for an adhesive that
// must be there and is not named.
func lookedUp(f Floor) evidence.Finding {
	asked := f.askedLimits()
	var lacks []string
	var rows []evidence.Place
	if f.adhesiveUnnamed() {
		lacks = append(lacks, "which adhesive? Installation is glue-down or blank, and none is named")
		rows = append(rows, f.Place)
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

// askedLimits are the products whose limits decide here, each with those limits.
type askedLimit struct {
	product *Product
	columns []Column
}

func (f Floor) askedLimits() []askedLimit {
	var all []askedLimit
	for _, p := range f.Products() {
		q := askedLimit{product: p}
		for _, k := range Kinds() {
			if k.known != nil && k.known(f, p) {
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
