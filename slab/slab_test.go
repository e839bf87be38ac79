package slab_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/testdata/published"
)

// Worked with the rounded factor of ASTM F1869 (recalled): 4.0 g gained on
// 0.449 ft2 in 66 h is 7.14 lb per 1000 ft2 in 24 h.
func ExampleRate() {
	grams, ft2 := evidence.Typed("4.0", evidence.Gram), evidence.Typed("0.449", evidence.SquareFoot)
	fmt.Println(slab.Rate(grams.Exact(), ft2.Exact(), evidence.Whole(66)).Fixed(2))
	// Output: 7.14
}

// 1 lb per 1000 ft2 in 24 h is 4.88243 g per m2 in 24 h, from the exact pound
// and foot.
func TestEmissionUnits(t *testing.T) {
	grams := evidence.Convert(evidence.Whole(1), evidence.Pounds, evidence.Grams)
	if got := grams.Fixed(5); got != "4.88243" {
		t.Errorf("1 lb per 1000 ft2 is %s g per m2, want 4.88243", got)
	}
}

// ASTM F2170: 40 % of the thickness with one drying face, 20 % with two.
func TestDepth(t *testing.T) {
	for _, c := range []struct {
		thickness, want string
		twoFaces        bool
	}{{"4", "1.6", false}, {"4", "0.8", true}, {"6", "2.4", false}, {"150", "60", false}} {
		if got := slab.Depth(decimal.RequireFromString(c.thickness), c.twoFaces); got.String() != c.want {
			t.Errorf("Depth(%s, %v) = %s, want %s", c.thickness, c.twoFaces, got, c.want)
		}
	}
}

// ASTM F2170 and AS 1884: 3 for the first 1000 ft2 or 100 m2, 1 for each
// further one or part; the recorded unit decides.
func TestHolesNeeded(t *testing.T) {
	for _, c := range []struct {
		size string
		unit evidence.Unit
		want int
	}{
		{"1", evidence.SquareFoot, 3},
		{"999.9", evidence.SquareFoot, 3},
		{"1000", evidence.SquareFoot, 3},
		{"1000.1", evidence.SquareFoot, 4},
		{"2000", evidence.SquareFoot, 4},
		{"2000.01", evidence.SquareFoot, 5},
		{"95", evidence.SquareM, 3},
		{"100", evidence.SquareM, 3},
		{"100.1", evidence.SquareM, 4},
		{"1023", evidence.SquareFoot, 4},
	} {
		if got := slab.HolesNeeded(evidence.Typed(c.size, c.unit)); !got.Shown() || got.Value.Ceil() != c.want {
			t.Errorf("%s %s asks for %s holes, want %d", c.size, c.unit, got.Value.Text(), c.want)
		}
	}
	if slab.HolesNeeded(evidence.Reading{}).Shown() {
		t.Error("a blank size tells no number of holes")
	}
}

// Greenspan 1977: every printed point of every salt, to the last digit.
func TestSaltRHAgainstGreenspan(t *testing.T) {
	salts := []string{"LiCl", "MgCl2", "K2CO3", "NaCl", "KCl", "KNO3", "K2SO4"}
	for _, row := range published.Rows(t, "greenspan-1977.csv") {
		t.Run(row[0]+"C", func(t *testing.T) {
			for i, salt := range salts {
				got, err := slab.SaltRH(salt, published.Number(t, row[0]))
				if err != nil {
					t.Fatal(err)
				}
				if want := published.Number(t, row[i+1]); math.Abs(got-want) > 0.006 {
					t.Errorf("%s: %.3f %%, printed %.2f", salt, got, want)
				}
			}
		})
	}
	for _, bad := range []struct {
		salt string
		at   float64
	}{{"NaCl", 4.9}, {"NaCl", 40.1}, {"sugar", 20}, {"NaCl", math.NaN()}} {
		if got, err := slab.SaltRH(bad.salt, bad.at); err == nil {
			t.Errorf("SaltRH(%s, %v) = %v, want an error", bad.salt, bad.at, got)
		}
	}
}
