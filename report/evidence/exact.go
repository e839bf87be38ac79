package evidence

import (
	"cmp"
	"math"
	"math/big"

	"github.com/shopspring/decimal"
)

// Exact is a number without rounding: a typed decimal, a converted one, or a
// mean. Its zero value is zero. It is never changed in place.
//
// What people read on a meter is a ratio of two small whole numbers, and is kept
// as such; a number that is none is a big.Rat.
type Exact struct {
	num, den int32 // in lowest terms; a den of 0 stands for 1
	big      *big.Rat
}

// Whole is n exactly.
func Whole(n int) Exact { return Ratio(int64(n), 1) }

// Ratio is a over b exactly; b is not zero.
func Ratio(a, b int64) Exact {
	if a == math.MinInt64 || b == math.MinInt64 {
		return Exact{big: big.NewRat(a, b)}
	}
	if b < 0 {
		a, b = -a, -b
	}
	d := divisor(max(a, -a), b)
	a, b = a/d, b/d
	if max(a, -a, b) > math.MaxInt32 {
		return Exact{big: big.NewRat(a, b)}
	}
	return Exact{num: int32(a), den: int32(b)}
}

// divisor is the greatest common divisor of a and b.
func divisor(a, b int64) int64 {
	if b == 0 {
		return a
	}
	return divisor(b, a%b)
}

// Of is the decimal exactly.
func Of(d decimal.Decimal) Exact {
	if places := -d.Exponent(); places >= 0 && places <= mostScaled && d.NumDigits() <= mostScaled {
		return Ratio(d.CoefficientInt64(), tenTo(int(places)))
	}
	return ofRat(d.Rat())
}

// ofRat is a rational number, kept small where it is.
func ofRat(r *big.Rat) Exact {
	if r.Num().IsInt64() && r.Denom().IsInt64() {
		return Ratio(r.Num().Int64(), r.Denom().Int64())
	}
	return Exact{big: r}
}

func (e Exact) rat() *big.Rat {
	if e.big != nil {
		return e.big
	}
	num, den := e.small()
	return big.NewRat(num, den)
}

// small are the two whole numbers of a ratio that is kept so.
func (e Exact) small() (num, den int64) { return int64(e.num), max(int64(e.den), 1) }

// with computes from two numbers: of the four whole numbers where both are kept
// so, whose products fit 64 bits, else of two rational ones.
func (e Exact) with(f Exact, whole func(a, b, c, d int64) Exact, op func(z, x, y *big.Rat) *big.Rat) Exact {
	if e.big != nil || f.big != nil {
		return ofRat(op(new(big.Rat), e.rat(), f.rat()))
	}
	a, b := e.small()
	c, d := f.small()
	return whole(a, b, c, d)
}

// Add is e + f.
func (e Exact) Add(f Exact) Exact {
	return e.with(f, func(a, b, c, d int64) Exact { return Ratio(a*d+c*b, b*d) }, (*big.Rat).Add)
}

// Sub is e - f.
func (e Exact) Sub(f Exact) Exact {
	return e.with(f, func(a, b, c, d int64) Exact { return Ratio(a*d-c*b, b*d) }, (*big.Rat).Sub)
}

// Mul is e x f.
func (e Exact) Mul(f Exact) Exact {
	return e.with(f, func(a, b, c, d int64) Exact { return Ratio(a*c, b*d) }, (*big.Rat).Mul)
}

// Over is e / f; f is not zero.
func (e Exact) Over(f Exact) Exact {
	return e.with(f, func(a, b, c, d int64) Exact { return Ratio(a*d, b*c) }, (*big.Rat).Quo)
}

// Abs is e without its sign.
func (e Exact) Abs() Exact {
	if e.Sign() < 0 {
		return Exact{}.Sub(e)
	}
	return e
}

// Cmp is -1, 0 or 1 as e is below, at or above f.
func (e Exact) Cmp(f Exact) int {
	if e.big != nil || f.big != nil {
		return e.rat().Cmp(f.rat())
	}
	a, b := e.small()
	c, d := f.small()
	return cmp.Compare(a*d, c*b)
}

// Equal says whether e and f are one number.
func (e Exact) Equal(f Exact) bool { return e.Cmp(f) == 0 }

// Sign is -1, 0 or 1 as e is below, at or above zero.
func (e Exact) Sign() int {
	if e.big != nil {
		return e.big.Sign()
	}
	return cmp.Compare(e.num, 0)
}

// Decimal is e as a decimal, for a number that ends, as half the sum of two
// typed numbers does; any other is cut at 20 places.
func (e Exact) Decimal() decimal.Decimal {
	if q, ok := e.scaled(shownPlaces); ok && Ratio(q, tenTo(shownPlaces)).Equal(e) {
		return decimal.New(q, -shownPlaces)
	}
	return decimal.NewFromBigRat(e.rat(), 20)
}

// Float is the nearest float64, for physics and charts.
func (e Exact) Float() float64 {
	if e.big == nil {
		num, den := e.small()
		return float64(num) / float64(den) // both without rounding, so rounded once
	}
	f, _ := e.big.Float64()
	return f
}

// Ceil is the smallest whole number not below e, within 31 bits.
func (e Exact) Ceil() int { return -Exact{}.Sub(e).floor() }

// floor is the greatest whole number not above e, within 31 bits.
func (e Exact) floor() int {
	if e.big == nil {
		num, den := e.small()
		q, _ := floored(num, den)
		return int(q)
	}
	q := new(big.Int).Div(e.big.Num(), e.big.Denom())
	if q.BitLen() > 31 { // more than anybody counts
		return math.MaxInt32 * q.Sign()
	}
	return int(q.Int64())
}

// floored divides a by b, which is above zero, so that 0 <= rest < b.
func floored(a, b int64) (q, rest int64) {
	q, rest = a/b, a%b
	if rest < 0 {
		q, rest = q-1, rest+b
	}
	return q, rest
}

// shownPlaces are the places within which a number that ends is written in full.
const shownPlaces = 6

// mostScaled is how many places a small number can be scaled by in 64 bits.
const mostScaled = 9

// scaled is e times ten to so many places, rounded half to even; ok is false for
// what does not fit.
func (e Exact) scaled(places int) (q int64, ok bool) {
	if e.big != nil || places > mostScaled {
		return 0, false
	}
	num, den := e.small()
	q, rest := floored(num*tenTo(places), den)
	if twice := 2 * rest; twice > den || twice == den && q%2 != 0 {
		q++
	}
	return q, true
}

func tenTo(places int) int64 {
	n := int64(1)
	for range places {
		n *= 10
	}
	return n
}

// Round is e to so many places, half to even.
func (e Exact) Round(places int) Exact {
	if q, ok := e.scaled(places); ok {
		return Ratio(q, tenTo(places))
	}
	scale := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
	x := new(big.Rat).Mul(e.rat(), scale)
	q, m := new(big.Int).DivMod(x.Num(), x.Denom(), new(big.Int))
	if twice := m.Lsh(m, 1).Cmp(x.Denom()); twice > 0 || twice == 0 && q.Bit(0) == 1 {
		q.Add(q, big.NewInt(1))
	}
	return ofRat(new(big.Rat).Quo(new(big.Rat).SetInt(q), scale))
}

// Mean is the exact mean of at least one number.
func Mean(xs []Exact) Exact {
	var sum Exact
	for _, x := range xs {
		sum = sum.Add(x)
	}
	return sum.Over(Whole(len(xs)))
}
