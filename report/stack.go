package report

import (
	"slices"

	"firstboard/report/evidence"
)

// system is the flooring system of an area. A product that is not named is nil.
type system struct{ flooring, adhesive, membrane *Product }

func (j Job) systemOf(a Area) system {
	return system{j.product(a.Flooring), j.product(a.Adhesive), j.product(a.Membrane)}
}

func (j Job) product(id string) *Product {
	for i, p := range j.Products {
		if id != "" && evidence.Same(p.ID, id) {
			return &j.Products[i]
		}
	}
	return nil
}

// FlooringProduct is the flooring of an area, nil where it is not a product on
// record.
func (s Site) FlooringProduct() *Product { return s.system.flooring }

// products are the products of the system in the order their limits are read.
func (s system) products() []*Product {
	return slices.DeleteFunc([]*Product{s.flooring, s.adhesive, s.membrane}, func(p *Product) bool { return p == nil })
}

// states says whether any product of the system states a number for one of
// the limits.
func (s system) states(limits ...LimitKind) bool {
	for _, k := range limits {
		for _, c := range k.Columns() {
			if slices.ContainsFunc(s.products(), func(p *Product) bool { return c.Of(p).Number.Shown() }) {
				return true
			}
		}
	}
	return false
}

// bound is the product's own number as a bound, with its source.
func (p *Product) bound(c LimitColumn) evidence.Bound {
	b := evidence.Bound{Number: c.Of(p).Number, Whose: p.ID}
	b.Cite = evidence.Cite{Source: "the record: product " + p.ID + ", no data sheet named", Standing: evidence.ByHand}
	if p.DataSheet != "" {
		b.Cite = evidence.Cite{Source: p.DataSheet, Standing: evidence.Manufacturer}
	}
	return b
}
