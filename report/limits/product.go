package limits

import "firstboard/report/evidence"

// Stated is one limit cell of a product: a number, none (the data sheet
// states none), or blank (not looked up).
type Stated struct {
	Number evidence.Reading
	None   bool
}

// Blank says that the limit was not looked up.
func (s Stated) Blank() bool { return !s.None && !s.Number.Shown() }

// Product is one product of a flooring system, with the limits its data sheet states.
type Product struct {
	ID, Kind, Description string
	Species, Cut          string
	BelowGrade            string // whether it may be installed there
	FaceWidth, Thickness  evidence.Reading

	SlabRH, MVER, CM       Stated
	PHMin, PHMax           Stated
	SubfloorMC             Stated
	FlooringMin            Stated
	FlooringMax            Stated
	Difference             Stated
	AirTempMin, AirTempMax Stated
	AirRHMin, AirRHMax     Stated
	SurfaceTemp            Stated

	Across    evidence.Reading
	DataSheet string
	Place     evidence.Place
}

// bound is the product's own number as a bound, with its source.
func (p *Product) bound(c Column) evidence.Bound {
	b := evidence.Bound{Number: c.Of(p).Number, Whose: p.ID}
	b.Cite = evidence.Cite{Source: "the record: product " + p.ID + ", no data sheet named", Standing: evidence.ByHand}
	if p.DataSheet != "" {
		b.Cite = evidence.Cite{Source: p.DataSheet, Standing: evidence.Manufacturer}
	}
	return b
}
