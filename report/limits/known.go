package limits

import (
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
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
	asked := f.Asked()
	var lacks []string
	var rows []evidence.Place
	if f.AdhesiveUnnamed() {
		lacks = append(lacks, "which adhesive? Installation is glue-down or blank, and none is named")
		rows = append(rows, f.Place)
	}
	for _, q := range asked {
		if q.Place != nil {
			rows = append(rows, q.Place)
		}
		if lack := q.Lack(); lack != "" {
			lacks = append(lacks, lack)
		}
	}
	switch {
	case len(lacks) > 0:
		return evidence.Finding{Reason: strings.Join(lacks, "; "), Evidence: rows}
	case len(asked) == 0:
		return evidence.Unneeded("no limit of a product decides here; a slab or wood flooring would make it needed")
	}
	names := lists.Each(asked, func(q Asked) string { return q.ID + " (" + q.DataSheet + ")" })
	return evidence.Finding{Outcome: evidence.Met, Reason: "looked up for " + evidence.List(names), Evidence: rows}
}

// Asked is a product whose limits decide here, and the columns of those that were
// not looked up.
type Asked struct {
	*Product
	Blank []string
}

// Asked are the products whose limits decide here.
func (f Floor) Asked() []Asked {
	var all []Asked
	for _, p := range f.Products() {
		q, decides := Asked{Product: p}, false
		for _, k := range Kinds() {
			if k.known == nil || !k.known(f, p) {
				continue
			}
			for _, c := range k.Columns() {
				decides = true
				if c.Of(p).Blank() {
					q.Blank = append(q.Blank, c.Name)
				}
			}
		}
		if decides {
			all = append(all, q)
		}
	}
	return all
}

// Lack is what was not looked up of a product, empty where all was.
func (q Asked) Lack() string {
	var clauses []string
	if len(q.Blank) > 0 {
		clauses = append(clauses, evidence.List(q.Blank)+" not looked up")
	}
	if q.DataSheet == "" {
		clauses = append(clauses, "no data sheet named")
	}
	return lists.If(clauses == nil, "", q.ID+": "+strings.Join(clauses, ", "))
}
