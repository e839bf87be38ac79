package evidence_test

import (
	"math"
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report/evidence"
)

// ends are whole numbers about which a number stops being a small one.
func ends() []int64 {
	var all []int64
	for _, n := range []int64{0, 1, math.MaxInt32, math.MaxInt64} {
		for _, by := range []int64{-1, 0, 1} {
			all = append(all, n+by, -(n + by))
		}
	}
	return all
}

// drawn is a number and the same one as the standard library holds it.
func drawn(t *rapid.T, name string) (evidence.Exact, *big.Rat) {
	any := rapid.OneOf(rapid.SampledFrom(ends()), rapid.Int64Range(-5000, 5000), rapid.Int64())
	a, b := any.Draw(t, name), any.Filter(func(n int64) bool { return n != 0 }).Draw(t, name+" over")
	return evidence.Ratio(a, b), new(big.Rat).SetFrac(big.NewInt(a), big.NewInt(b))
}

// The standard library's rational numbers say what every step gives, of small
// numbers and of others.
func TestExactIsRational(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, x := drawn(t, "a")
		f, y := drawn(t, "b")
		for name, pair := range map[string]struct {
			got  evidence.Exact
			want *big.Rat
		}{
			"a":     {e, x},
			"a + b": {e.Add(f), new(big.Rat).Add(x, y)},
			"a - b": {e.Sub(f), new(big.Rat).Sub(x, y)},
			"a x b": {e.Mul(f), new(big.Rat).Mul(x, y)},
			"|a|":   {e.Abs(), new(big.Rat).Abs(x)},
		} {
			if got := pair.got.Fixed(12); got != halfEven(pair.want, 12) {
				t.Fatalf("%s = %s, want %s", name, got, halfEven(pair.want, 12))
			}
		}
		if y.Sign() != 0 {
			if got, want := e.Over(f).Fixed(12), halfEven(new(big.Rat).Quo(x, y), 12); got != want {
				t.Fatalf("a / b = %s, want %s", got, want)
			}
		}
		if e.Cmp(f) != x.Cmp(y) || e.Sign() != x.Sign() || e.Equal(f) != (x.Cmp(y) == 0) {
			t.Fatalf("%v against %v: %d, sign %d", x, y, e.Cmp(f), e.Sign())
		}
		if want, _ := x.Float64(); e.Float() != want {
			t.Fatalf("%v as a float is %v, want %v", x, e.Float(), want)
		}
	})
}

// Rounding and writing, at places on both sides of what small numbers can do.
func TestExactIsRoundedHalfToEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, x := drawn(t, "a")
		if rapid.Bool().Draw(t, "halves") {
			n := rapid.Int64Range(-99999, 99999).Draw(t, "n")
			e, x = evidence.Ratio(n, 2000), big.NewRat(n, 2000)
		}
		places := rapid.IntRange(0, 12).Draw(t, "places")
		want := halfEven(x, places)
		if got := e.Fixed(places); got != want {
			t.Fatalf("%v to %d places is %s, want %s", x, places, got, want)
		}
		if got := e.Round(places).Fixed(places); got != want {
			t.Fatalf("%v rounded to %d places is %s, want %s", x, places, got, want)
		}
		up := new(big.Int).Neg(new(big.Int).Div(new(big.Int).Neg(x.Num()), x.Denom()))
		most := big.NewInt(math.MaxInt32) // more than anybody counts
		if up.CmpAbs(most) > 0 {
			up = new(big.Int).Mul(most, big.NewInt(int64(up.Sign())))
		}
		if int64(e.Ceil()) != up.Int64() {
			t.Fatalf("%v rounded up is %d, want %v", x, e.Ceil(), up)
		}
	})
}

// halfEven is x with so many places as the decimal library rounds it.
func halfEven(x *big.Rat, places int) string {
	num, den := decimal.NewFromBigInt(x.Num(), 0), decimal.NewFromBigInt(x.Denom(), 0)
	whole, rest := num.QuoRem(den, int32(places))
	twice, step := rest.Abs().Mul(decimal.NewFromInt(2)), den.Shift(int32(-places))
	last := whole.Shift(int32(places)).BigInt()
	if c := twice.Cmp(step); c > 0 || c == 0 && last.Bit(0) == 1 {
		whole = whole.Add(decimal.New(int64(x.Sign()), int32(-places)))
	}
	return whole.StringFixed(int32(places))
}

// A decimal is taken as typed, however long.
func TestExactOfDecimals(t *testing.T) {
	for _, typed := range []string{
		"71.8", "-0.5", "2147483647", "2147483648", "0.000000001", "0.0000000001", "123456789", "1234567890",
		"1e3", "99999999999999999999.5", "1e-20",
	} {
		d := decimal.RequireFromString(typed)
		if got := evidence.Of(d).Decimal(); !got.Equal(d) {
			t.Errorf("%s is kept as %s", typed, got)
		}
	}
}

// A decimal that does not end is cut at 20 places.
func TestExactIsCutAt20Places(t *testing.T) {
	if got, want := evidence.Ratio(1, 3).Decimal().String(), "0.33333333333333333333"; got != want {
		t.Errorf("a third is %s, want %s", got, want)
	}
}

// Halves go to the even number, whether the number is small or not.
func TestHalvesGoToTheEvenNumber(t *testing.T) {
	for _, n := range []int64{0, 1 << 40, -1 << 40} {
		for half, want := range map[int64]int64{1: 0, 3: 2, 5: 2, 7: 4, -1: 0, -3: -2} {
			e := evidence.Whole(int(n)).Add(evidence.Ratio(half, 2)).Round(0)
			if !e.Equal(evidence.Whole(int(n + want))) {
				t.Errorf("%d and %d halves are rounded to %s", n, half, e.Text())
			}
		}
	}
	if most := evidence.Whole(math.MaxInt32); !most.Round(10).Equal(most) {
		t.Errorf("%s to 10 places is %s", most.Text(), most.Round(10).Text())
	}
}

// What fits 31 bits in lowest terms is kept small, and nothing else, whatever
// step it came from.
func TestSmallNumbersAreKeptSmall(t *testing.T) {
	const most = math.MaxInt32
	half := evidence.Ratio(most+1, 2)
	for name, c := range map[string]struct {
		e     evidence.Exact
		small bool
	}{
		"most":                 {evidence.Ratio(most, 1), true},
		"one more":             {evidence.Ratio(most+1, 1), false},
		"least":                {evidence.Ratio(-most, 1), true},
		"one less":             {evidence.Ratio(-most-1, 1), false},
		"over most":            {evidence.Ratio(1, most), true},
		"over one more":        {evidence.Ratio(1, most+1), false},
		"in lowest terms":      {evidence.Ratio(4*most, -4), true},
		"halves":               {half, true},
		"a sum that is big":    {half.Add(half), false},
		"and small again":      {half.Add(half).Sub(half), true},
		"9 digits":             {evidence.Of(decimal.RequireFromString("123456789")), true},
		"9 places":             {evidence.Of(decimal.RequireFromString("0.000000001")), true},
		"10 places":            {evidence.Of(decimal.RequireFromString("0.0000000001")), false},
		"a decimal of 1e3":     {evidence.Of(decimal.RequireFromString("1e3")), true},
		"a decimal of 20 nils": {evidence.Of(decimal.RequireFromString("1.00000000000000000000")), true},
	} {
		if c.e.Small() != c.small {
			t.Errorf("%s is kept small: %v", name, c.e.Small())
		}
	}
	if a, b := evidence.Ratio(6, -4), evidence.Ratio(-3, 2); a != b {
		t.Errorf("6 over -4 is kept as %v, not as %v", a, b)
	}
}
