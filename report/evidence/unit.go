package evidence

// Unit is a unit of measure as firstboard writes it.
type Unit string

// The units a record may carry.
const (
	Fahrenheit Unit = "F"
	Celsius    Unit = "C"
	Inch       Unit = "in"
	Foot       Unit = "ft"
	Millimeter Unit = "mm"
	Centimeter Unit = "cm"
	Meter      Unit = "m"
	SquareFoot Unit = "ft2"
	SquareInch Unit = "in2"
	SquareCM   Unit = "cm2"
	SquareM    Unit = "m2"
	Gram       Unit = "g"
	Percent    Unit = "%"
	RH         Unit = "% RH"
	MC         Unit = "% MC"
	CM         Unit = "% CM"
	Points     Unit = "points"
	PH         Unit = "pH"
	Hour       Unit = "h"
	DayUnit    Unit = "days"
	Pieces     Unit = "pieces"
	Holes      Unit = "holes"
	Dishes     Unit = "dishes"
	Walls      Unit = "walls"
	Pounds     Unit = "lb/1000 ft2/24 h"
	Grams      Unit = "g/m2/24 h"
	None       Unit = ""
)

// scale gives the exact factor and offset that take a number of this unit to
// the base of its quantity: F for temperature, mm for length, m2 for size,
// lb/1000 ft2/24 h for emission. Every other unit is its own base.
func (u Unit) scale() (factor, offset Exact) {
	switch u {
	case Celsius:
		return Ratio(9, 5), Ratio(32, 1)
	case Inch:
		return Ratio(254, 10), Exact{}
	case Foot:
		return Ratio(3048, 10), Exact{}
	case Centimeter:
		return Ratio(10, 1), Exact{}
	case Meter:
		return Ratio(1000, 1), Exact{}
	case SquareFoot:
		return Ratio(9290304, 100000000), Exact{}
	case SquareInch:
		return Ratio(64516, 100000000), Exact{}
	case SquareCM:
		return Ratio(1, 10000), Exact{}
	case Grams: // 92.90304 m2 and 453.59237 g
		return Ratio(9290304, 45359237), Exact{}
	}
	return Ratio(1, 1), Exact{}
}
