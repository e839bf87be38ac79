package evidence

import (
	"math"
	"math/big"
	"strings"

	"github.com/shopspring/decimal"
)

// Exact is a number without rounding: a typed decimal, a converted one, or a
// mean. Its zero value is zero. It is never changed in place.
type Exact struct{ r *big.Rat }

// Whole is n exactly.
func Whole(n int) Exact { return Exact{new(big.Rat).SetInt64(int64(n))} }

// Ratio is a over b exactly; b is not zero.
func Ratio(a, b int64) Exact { return Exact{big.NewRat(a, b)} }

// Of is the decimal exactly.
func Of(d decimal.Decimal) Exact { return Exact{d.Rat()} }

func (e Exact) rat() *big.Rat {
	if e.r == nil {
		return new(big.Rat)
	}
	return e.r
}

// Add is e + f.
func (e Exact) Add(f Exact) Exact { return Exact{new(big.Rat).Add(e.rat(), f.rat())} }

// Sub is e - f.
func (e Exact) Sub(f Exact) Exact { return Exact{new(big.Rat).Sub(e.rat(), f.rat())} }

// Mul is e x f.
func (e Exact) Mul(f Exact) Exact { return Exact{new(big.Rat).Mul(e.rat(), f.rat())} }

// Over is e / f; f is not zero.
func (e Exact) Over(f Exact) Exact { return Exact{new(big.Rat).Quo(e.rat(), f.rat())} }

// Abs is e without its sign.
func (e Exact) Abs() Exact { return Exact{new(big.Rat).Abs(e.rat())} }

// Cmp is -1, 0 or 1 as e is below, at or above f.
func (e Exact) Cmp(f Exact) int { return e.rat().Cmp(f.rat()) }

// Equal says whether e and f are one number.
func (e Exact) Equal(f Exact) bool { return e.Cmp(f) == 0 }

// Sign is -1, 0 or 1 as e is below, at or above zero.
func (e Exact) Sign() int { return e.rat().Sign() }

// Decimal is e as a decimal, for a number that ends, as half the sum of two
// typed numbers does; any other is cut at 20 places.
func (e Exact) Decimal() decimal.Decimal {
	return decimal.NewFromBigRat(e.rat(), 20)
}

// Float is the nearest float64, for physics and charts.
func (e Exact) Float() float64 { f, _ := e.rat().Float64(); return f }

// Ceil is the smallest whole number not below e, within 31 bits.
func (e Exact) Ceil() int {
	q, m := new(big.Int).DivMod(e.rat().Num(), e.rat().Denom(), new(big.Int))
	if m.Sign() != 0 {
		q.Add(q, big.NewInt(1))
	}
	if q.BitLen() > 31 { // more than anybody counts
		return math.MaxInt32 * q.Sign()
	}
	return int(q.Int64())
}

// floor is the greatest whole number not above e, within 31 bits.
func (e Exact) floor() int { return -Exact{new(big.Rat).Neg(e.rat())}.Ceil() }

// Round is e to so many places, half to even.
func (e Exact) Round(places int) Exact {
	scale := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
	x := new(big.Rat).Mul(e.rat(), scale)
	q, m := new(big.Int).DivMod(x.Num(), x.Denom(), new(big.Int))
	switch twice := m.Lsh(m, 1).Cmp(x.Denom()); {
	case twice > 0, twice == 0 && q.Bit(0) == 1:
		q.Add(q, big.NewInt(1))
	}
	return Exact{new(big.Rat).Quo(new(big.Rat).SetInt(q), scale)}
}

// Fixed writes e with exactly so many places, half to even.
func (e Exact) Fixed(places int) string { return e.Round(places).rat().FloatString(places) }

// Text writes e in full when it ends within 6 places, else with 2 places or
// as many more as keep it on its own side of every limit given.
func (e Exact) Text(limits ...Exact) string {
	if e.Round(6).Cmp(e) == 0 {
		return trim(e.Fixed(6))
	}
	places := 2
	for places < 40 && !e.keepsSide(e.Round(places), limits) {
		places++
	}
	return e.Fixed(places)
}

// Short writes e for people: in full where it ends within 2 places, else with
// 2 places or as many more as keep it on its own side of every limit given.
func (e Exact) Short(limits ...Exact) string {
	places := 2
	for places < 40 && !e.keepsSide(e.Round(places), limits) {
		places++
	}
	return trim(e.Fixed(places))
}

func (e Exact) keepsSide(rounded Exact, limits []Exact) bool {
	for _, l := range limits {
		if e.Cmp(l) != rounded.Cmp(l) {
			return false
		}
	}
	return true
}

func trim(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// Mean is the exact mean of at least one number.
func Mean(xs []Exact) Exact {
	var sum Exact
	for _, x := range xs {
		sum = sum.Add(x)
	}
	return sum.Over(Whole(len(xs)))
}
