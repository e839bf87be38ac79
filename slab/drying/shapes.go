package drying

import "math"

// Shape is how the diffusivity of concrete falls as its pores empty:
// D(h) = D1 [a + (1-a) / (1 + ((1-h)/(1-hc))^n)], where D1 is that of wet
// concrete and h the pore humidity, a fraction.
//
// Source: Bazant and Najjar 1972. Floor is a, 0 to 1; Middle is hc, 0 to below
// 1; Power is n, above 0.
type Shape struct{ Floor, Middle, Power float64 }

// Relative gives D(h)/D1 at a pore humidity from 0 to 1.
func (s Shape) Relative(h float64) float64 {
	return s.Floor + (1-s.Floor)/(1+math.Pow((1-h)/(1-s.Middle), s.Power))
}

// likelyShape is a shape and its share before a reading was taken.
type likelyShape struct {
	Shape
	share float64
}

// likelyShapes are the published sets with equal shares and, with smaller
// ones, the corners of the box that they span: the shape of a slab of its own
// lies somewhere among them, and its readings seldom say where.
//
// Sources: two sets of the manuals of a finite-element program that cites Bazant
// and Najjar 1972, Bazant and Thonguthai 1982 with its powers from 6 to 16, a
// thesis' calibration at 65 % RH (all read); CEB-FIP Model Code 1990 (recalled).
// The shares are ours.
func likelyShapes() []likelyShape {
	const corner = 0.2
	return []likelyShape{
		{Shape{0.05, 0.80, 12}, 1},
		{Shape{0.02, 0.775, 5}, 1},
		{Shape{0.0468, 0.75, 6}, 1.0 / 3},
		{Shape{0.0468, 0.75, 11}, 1.0 / 3},
		{Shape{0.0468, 0.75, 16}, 1.0 / 3},
		{Shape{0.02, 0.83, 8}, 1},
		{Shape{0.05, 0.80, 15}, 1},
		{Shape{0.02, 0.75, 5}, corner},
		{Shape{0.02, 0.75, 16}, corner},
		{Shape{0.02, 0.83, 5}, corner},
		{Shape{0.02, 0.83, 16}, corner},
		{Shape{0.05, 0.75, 5}, corner},
		{Shape{0.05, 0.75, 16}, corner},
		{Shape{0.05, 0.83, 5}, corner},
		{Shape{0.05, 0.83, 16}, corner},
	}
}

// tableCells is how finely a potential is tabulated: by 0.2 % RH.
const tableCells = 500

// potential is the integral of D/D1 from 0 to h, tabulated: the flux between
// two humidities is the difference of their potentials over the distance,
// exact for steady flow however sharply D falls.
type potential struct{ integral, relative [tableCells + 2]float64 }

func (s Shape) potential() *potential {
	p := &potential{}
	for i := range p.relative {
		p.relative[i] = s.Relative(min(float64(i)/tableCells, 1))
		if i > 0 {
			p.integral[i] = p.integral[i-1] + (p.relative[i-1]+p.relative[i])/(2*tableCells)
		}
	}
	return p
}

// read gives the potential and its slope, D/D1, at a pore humidity.
func (p *potential) read(h float64) (integral, relative float64) {
	x := min(max(h, 0), 1) * tableCells
	i := int(x)
	part := x - float64(i)
	rise := p.relative[i+1] - p.relative[i]
	return p.integral[i] + part*(p.relative[i]+part*rise/2)/tableCells, p.relative[i] + part*rise
}
