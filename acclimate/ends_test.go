package acclimate

import (
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report/evidence"
)

// A number lies within the ends where it does as an exact ratio, whether it is
// compared by millionths or not.
func TestEndsHoldWhatLiesWithin(t *testing.T) {
	bound := func(n string) evidence.Bound { return evidence.Bound{Number: evidence.Typed(n, evidence.Fahrenheit)} }
	for _, c := range []struct {
		value, least, most string
		want               bool
	}{
		{"60", "60", "80", true},
		{"59.9", "60", "80", false},
		{"59.999999", "60", "80", false},
		{"59.9999999", "60", "80", false},
		{"80", "60", "80", true},
		{"80.1", "60", "80", false},
		{"80.000001", "60", "80", false},
		{"80.0000001", "60", "80", false},
		{"70", "60", "80", true},
		{"-40", "-40", "0", true},
		{"-40.1", "-40", "0", false},
		{"0", "-40", "0", true},
		{"1", "", "", true},
		{"12345678901", "0", "80", false},
		{"123456789012", "0", "80", false},
		{"-123456789012", "0", "80", false},
		{"5000", "0", "5000", true},
		{"5000.1", "0", "5000", false},
		{"4999.9", "5000", "6000", false},
		{"5000", "5000", "6000", true},
		{"6000", "5000", "6000", true},
		{"2000", "2000", "2000", true},
		{"1999.999999", "2000", "2000", false},
		{"2000.000001", "2000", "2000", false},
		{"60.0000003", "60.0000004", "80", false},
		{"60.0000004", "60.0000004", "80", true},
		{"60.000001", "60.0000004", "80", true},
		{"60", "60.0000004", "80", false},
		{"80", "60", "80.0000004", true},
		{"80.000001", "60", "80.0000004", false},
		{"-60.000001", "-60.0000004", "0", false},
		{"-60", "-60.0000004", "0", true},
	} {
		var l evidence.Limit
		if c.least != "" {
			l = evidence.Limit{Least: bound(c.least), Most: bound(c.most)}
		}
		if got := endsOf(l, evidence.Fahrenheit, evidence.Exact{}).hold(decimal.RequireFromString(c.value)); got != c.want {
			t.Errorf("%s in %s to %s: %v", c.value, c.least, c.most, got)
		}
	}
}

func TestEndsAgreeWithRatios(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(label string) decimal.Decimal {
			return decimal.New(rapid.Int64Range(-9_000_000, 9_000_000).Draw(t, label), rapid.Int32Range(-8, 1).Draw(t, label+" places"))
		}
		value, end := number("value"), number("end")
		b := evidence.Bound{Number: evidence.Computed(end, evidence.Fahrenheit)}
		celsius := new(big.Rat).Add(new(big.Rat).Mul(value.Rat(), big.NewRat(9, 5)), big.NewRat(32, 1))
		if got, want := endsOf(evidence.AtMost(b), evidence.Celsius, evidence.Exact{}).hold(value),
			celsius.Cmp(end.Rat()) <= 0; got != want {
			t.Fatalf("%v C at most %v F: %v", value, end, got)
		}
		if got, want := endsOf(evidence.AtLeast(b), evidence.Celsius, evidence.Exact{}).hold(value),
			celsius.Cmp(end.Rat()) >= 0; got != want {
			t.Fatalf("%v C at least %v F: %v", value, end, got)
		}
		if got, want := order(value, end), value.Cmp(end); got != want {
			t.Fatalf("%v beside %v: %d", value, end, got)
		}
	})
}

// What is compared by millionths is what has no finer part and few digits.
func TestMillionths(t *testing.T) {
	for _, c := range []struct {
		d    decimal.Decimal
		m    int64
		fine bool
	}{
		{decimal.New(70, 0), 70_000_000, true},
		{decimal.New(705, -1), 70_500_000, true},
		{decimal.New(-705, -1), -70_500_000, true},
		{decimal.New(7, -6), 7, true},
		{decimal.New(7, -7), 0, false},
		{decimal.New(7, 1), 0, false},
		{decimal.New(12345678901, 0), 12345678901000000, true},
		{decimal.New(123456789012, 0), 0, false},
	} {
		if m, fine := millionths(c.d); m != c.m || fine != c.fine {
			t.Errorf("%s is %d (%v)", c.d, m, fine)
		}
	}
	for n, fine := range map[int]bool{2000: true, 2001: false, -2000: true, -2001: false} {
		if endOf(evidence.Whole(n)).fine != fine {
			t.Errorf("an end at %d: %v", n, !fine)
		}
	}
}

// Ends are wider by what is added, and narrower by what is taken off.
func TestEndsWiden(t *testing.T) {
	l := evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed("60", evidence.Fahrenheit)},
		Most:  evidence.Bound{Number: evidence.Typed("80", evidence.Fahrenheit)},
	}
	for value, want := range map[int64][2]bool{
		49: {false, false}, 50: {true, false}, 69: {true, false}, 70: {true, true},
		71: {true, false}, 90: {true, false}, 91: {false, false},
	} {
		wide := endsOf(l, evidence.Fahrenheit, evidence.Whole(10)).hold(decimal.New(value, 0))
		narrow := endsOf(l, evidence.Fahrenheit, evidence.Whole(-10)).hold(decimal.New(value, 0))
		if wide != want[0] || narrow != want[1] {
			t.Errorf("%d: %v, %v", value, wide, narrow)
		}
	}
}
