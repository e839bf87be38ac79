package formula

import (
	"math"
	"strconv"

	"firstboard/report/evidence"
)

// emc is the equilibrium moisture content of wood in air, rounded to 0.1: the
// USDA Wood Handbook (FPL-GTR-282), equation 4-5 in SI form. It is long, and so
// has cells of its own.
func (p *Printer) emc(w evidence.Working, args []expr) expr {
	t := p.celsius(w.Args[0], args[0])
	h := p.step("relative humidity (as a fraction)", told{args[1].text, w.Args[1].Value.Float()}.over(number(100)))
	poly := func(a, b, c float64) told {
		return number(a).plus(number(b).times(t)).plus(number(c).times(t).times(t))
	}
	kh := p.step("Wood Handbook eq. 4-5: K h", poly(0.805, 0.000736, -0.00000273).times(h))
	a := p.step("Wood Handbook eq. 4-5: K1 K h", poly(6.27, -0.00938, -0.000303).times(kh))
	b := p.step("Wood Handbook eq. 4-5: K1 K2 (K h)^2", a.times(poly(1.91, 0.0407, -0.000293)).times(kh))
	one := number(1)
	whole := number(1800).over(poly(349, 1.29, 0.0135)).
		times(kh.over(one.minus(kh)).plus(a.plus(number(2).times(b)).over(one.plus(a).plus(b))))
	return p.own(w, expr{text: "ROUND(MAX(0," + whole.text + "),1)"})
}

// dewPoint is the temperature at which air is saturated, by Newton's steps on
// the saturation pressure of Hyland and Wexler (ASHRAE Handbook Fundamentals
// 2017, chapter 1, equations 5 and 6), each in a cell of its own: over ice below
// the triple point. It is not rounded here.
func (p *Printer) dewPoint(w evidence.Working, args []expr) expr {
	t := p.celsius(w.Args[0], args[0])
	rh := told{args[1].text, w.Args[1].Value.Float()}
	pressure := p.step("logarithm of the vapor pressure (Pa)",
		either(t.below(0.01), overIce(t), overWater(t)).plus(rh.over(number(100)).ln()))
	x := p.step("the same less that at 0 C", pressure.minus(number(6.4154)))
	dew := p.step("dew point, a first guess (C)", number(243.04).times(x).over(number(17.625).minus(x)))
	frost := pressure.below(6.416171714)
	for range 5 {
		miss := either(frost, pressure.minus(overIce(dew)).over(slopeOverIce(dew)),
			pressure.minus(overWater(dew)).over(slopeOverWater(dew)))
		dew = p.step("dew point, a closer guess (C)", dew.plus(miss))
	}
	if w.Unit != evidence.Celsius {
		dew.text = converted(dew.text, evidence.Celsius, w.Unit)
	}
	return p.own(w, expr{text: dew.text})
}

func kelvin(c told) told { return c.plus(number(273.15)) }

func overWater(c told) told {
	t := kelvin(c)
	rest := number(-0.048640239).plus(t.times(number(4.1764768e-5).minus(t.times(number(1.4452093e-8)))))
	return number(-5800.2206).over(t).plus(number(1.3914993)).plus(t.times(rest)).plus(number(6.5459673).times(t.ln()))
}

func slopeOverWater(c told) told {
	t := kelvin(c)
	rest := number(2 * 4.1764768e-5).minus(t.times(number(3 * 1.4452093e-8)))
	return number(5800.2206).over(t.times(t)).minus(number(0.048640239)).plus(t.times(rest)).plus(number(6.5459673).over(t))
}

func overIce(c told) told {
	t := kelvin(c)
	rest := number(6.2215701e-7).plus(t.times(number(2.0747825e-9).minus(t.times(number(9.484024e-13)))))
	rest = number(-9.677843e-3).plus(t.times(rest))
	return number(-5674.5359).over(t).plus(number(6.3925247)).plus(t.times(rest)).plus(number(4.1635019).times(t.ln()))
}

func slopeOverIce(c told) told {
	t := kelvin(c)
	rest := number(3 * 2.0747825e-9).minus(t.times(number(4 * 9.484024e-13)))
	rest = number(2 * 6.2215701e-7).plus(t.times(rest))
	return number(5674.5359).over(t.times(t)).minus(number(9.677843e-3)).plus(t.times(rest)).plus(number(4.1635019).over(t))
}

// celsius is a temperature in C, in a cell of its own.
func (p *Printer) celsius(w evidence.Working, e expr) told {
	c := told{e.text, evidence.Converted(w, evidence.Celsius).Value.Float()}
	if w.Unit != evidence.Celsius {
		c.text = converted(e.text, w.Unit, evidence.Celsius)
	} else if e.cell != nil {
		return c
	}
	return p.step("temperature of the air (C)", c)
}

// step gives a step of the physics a cell of its own.
func (p *Printer) step(what string, x told) told {
	if known, found := p.Figures.find(x.text); found {
		return told{known.text, x.value}
	}
	return told{p.Figures.add(what, Figure{x.text, x.value})[0].text, x.value}
}

// told is a step of the physics as a formula, with what it gives.
type told struct {
	text  string
	value float64
}

func number(x float64) told {
	s := strconv.FormatFloat(x, 'f', -1, 64)
	if x < 0 {
		s = "(" + s + ")"
	}
	return told{s, x}
}

func (a told) plus(b told) told { return told{"(" + a.text + "+" + b.text + ")", a.value + b.value} }

func (a told) minus(b told) told { return told{"(" + a.text + "-" + b.text + ")", a.value - b.value} }

func (a told) times(b told) told { return told{"(" + a.text + "*" + b.text + ")", a.value * b.value} }

func (a told) over(b told) told { return told{"(" + a.text + "/" + b.text + ")", a.value / b.value} }
func (a told) ln() told         { return told{"LN(" + a.text + ")", math.Log(a.value)} }

// below is a condition on a figure, its value 1 where it holds.
func (a told) below(x float64) told {
	c := told{text: a.text + "<" + number(x).text}
	if a.value < x {
		c.value = 1
	}
	return c
}

func either(condition, yes, no told) told {
	x := told{"IF(" + condition.text + "," + yes.text + "," + no.text + ")", no.value}
	if condition.value == 1 {
		x.value = yes.value
	}
	return x
}
