package report

import "firstboard/report/evidence"

// stack is the products named for an area. A product that is not named is nil.
type stack struct{ flooring, adhesive, membrane *Product }

func (j Job) stackOf(a Area) stack {
	return stack{j.product(a.Flooring), j.product(a.Adhesive), j.product(a.Membrane)}
}

func (j Job) product(id string) *Product {
	for i, p := range j.Products {
		if id != "" && evidence.Same(p.ID, id) {
			return &j.Products[i]
		}
	}
	return nil
}

// products are the products of the stack in the order their limits are read.
func (s stack) products() []*Product {
	var all []*Product
	for _, p := range []*Product{s.flooring, s.adhesive, s.membrane} {
		if p != nil {
			all = append(all, p)
		}
	}
	return all
}

// limitOf is one limit of a product.
type limitOf func(*Product) Stated

// states says whether any product of the stack states a number.
func (s stack) states(limits ...limitOf) bool {
	for _, p := range s.products() {
		for _, of := range limits {
			if of(p).Number.Shown() {
				return true
			}
		}
	}
	return false
}

// blank says whether nobody looked up any of these limits.
func (s stack) blank(limits ...limitOf) bool {
	for _, p := range s.products() {
		for _, of := range limits {
			if !of(p).Blank() {
				return false
			}
		}
	}
	return true
}

// bound is the product's own number as a bound, with its source.
func (p *Product) bound(of limitOf) evidence.Bound {
	b := evidence.Bound{Number: of(p).Number, Whose: p.ID}
	b.Cite = evidence.Cite{Source: "the record: product " + p.ID + ", no data sheet named", Standing: evidence.ByHand}
	if p.DataSheet != "" {
		b.Cite = evidence.Cite{Source: p.DataSheet, Standing: evidence.Manufacturer}
	}
	return b
}

// rule says how the bounds of a stack make one: the check's default, whose
// blank cell brings it, and whether a membrane that states a number stands
// alone because it lies between.
type rule struct {
	fallback evidence.Bound
	blanks   blankBrings
	between  bool
	stricter func(a, b evidence.Bound) evidence.Bound
}

// blankBrings says whose blank cell brings the default.
type blankBrings int

const (
	nobodys blankBrings = iota
	floorings
	everyones
)

// govern is the bound in force: the strictest that the stack brings, or the
// default where it brings none.
func (s stack) govern(of limitOf, r rule) evidence.Bound {
	if r.between && s.membrane != nil && of(s.membrane).Number.Shown() {
		return s.membrane.bound(of)
	}
	var best evidence.Bound
	for _, p := range s.products() {
		switch stated := of(p); {
		case stated.Number.Shown():
			best = r.stricter(best, p.bound(of))
		case stated.Blank() && (r.blanks == everyones || r.blanks == floorings && p == s.flooring):
			best = r.stricter(best, r.fallback)
		}
	}
	if !best.Shown() {
		return r.fallback
	}
	return best
}

// The limits of a product, by name.
func slabRH(p *Product) Stated      { return p.SlabRH }
func mver(p *Product) Stated        { return p.MVER }
func carbide(p *Product) Stated     { return p.CM }
func pHMin(p *Product) Stated       { return p.PHMin }
func pHMax(p *Product) Stated       { return p.PHMax }
func subfloorMC(p *Product) Stated  { return p.SubfloorMC }
func flooringMin(p *Product) Stated { return p.FlooringMin }
func flooringMax(p *Product) Stated { return p.FlooringMax }
func difference(p *Product) Stated  { return p.Difference }
func airTempMin(p *Product) Stated  { return p.AirTempMin }
func airTempMax(p *Product) Stated  { return p.AirTempMax }
func airRHMin(p *Product) Stated    { return p.AirRHMin }
func airRHMax(p *Product) Stated    { return p.AirRHMax }
func surfaceTemp(p *Product) Stated { return p.SurfaceTemp }
