package wood_test

import (
	"fmt"
	"math"
	"testing"

	"firstboard/testdata/published"
	"firstboard/wood"
)

// Printed worked examples: mesquite 5 in, 6 to 9 %, 0.00129: 0.019 in; red oak
// and white oak 5 in, 3 points: 0.055 in; red alder 8 in, 6 points, 0.0026:
// 0.1248 in; the handbook's own 232 mm board becomes 233.7 mm.
func ExampleMovement() {
	for _, board := range []struct {
		what                         string
		width, coefficient, from, to float64
	}{
		{"mesquite, in", 5, 0.00129, 6, 9},
		{"red oak, in", 5, 0.00369, 6, 9},
		{"white oak, in", 5, 0.00365, 6, 9},
		{"red alder, in", 8, 0.0026, 6, 12},
		{"Douglas-fir, mm", 232, 0.00245, 8, 11},
	} {
		change, _ := wood.Movement(board.width, board.coefficient, 0, board.from, board.to)
		fmt.Printf("%s: %.3f\n", board.what, change)
	}
	// Output:
	// mesquite, in: 0.019
	// red oak, in: 0.055
	// white oak, in: 0.055
	// red alder, in: 0.125
	// Douglas-fir, mm: 1.705
}

// Every row of the table of coefficients is found by its name and carries the
// printed values.
func TestCoefficientsAgainstTable135(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range published.Rows(t, "wood-dimensional-change.csv") {
		if seen[row[0]] {
			continue
		}
		seen[row[0]] = true
		t.Run(row[0], func(t *testing.T) {
			s, err := wood.FindSpecies(row[0])
			if err != nil {
				t.Fatal(err)
			}
			for cut, cell := range map[string]string{"quartersawn": row[2], "plainsawn": row[3]} {
				got, _, err := s.Across(cut)
				switch {
				case cell == "" && err == nil:
					t.Errorf("%s: %v, nothing is printed", cut, got)
				case cell != "" && (err != nil || math.Abs(got-published.Number(t, cell)) > 1e-9):
					t.Errorf("%s: %v (%v), printed %v", cut, got, err, cell)
				}
			}
			standings := map[string]string{"read": "published", "memory": "recalled", "derived": "derived"}
			if string(s.Standing) != standings[row[4]] {
				t.Errorf("standing %s, the table says %s", s.Standing, row[4])
			}
		})
	}
}

// The coefficient is the shrinkage form worked at 10 %: C = (S/3000)/(1 -
// S/150). Printed coefficients follow printed shrinkages to their last digit
// (0.00001) and half the last digit of the shrinkage (0.05 %, 0.00002), save
// the rows named here: the coefficient's table carries a group's or another
// source's values there, and both stand as they were printed.
func TestCoefficientsAgainstShrinkage(t *testing.T) {
	disagree := map[string]bool{
		"Ash, green": true, "Birch, sweet": true, "Cedar, western redcedar": true, "Elm, cedar": true,
		"Iroko": true, "Maple, black": true, "Redwood, old-growth": true, "Teak": true,
	}
	compared := 0
	for _, s := range wood.SpeciesTable() {
		for _, pair := range [][2]float64{{s.Radial, s.RadialShrinkage}, {s.Tangential, s.TangentShrinkage}} {
			if pair[0] == 0 || pair[1] == 0 || disagree[s.Common] {
				continue
			}
			compared++
			if want := pair[1] / 3000 / (1 - pair[1]/150); math.Abs(pair[0]-want) > 0.00003 {
				t.Errorf("%s: coefficient %.5f in print, %.5f from its shrinkage of %.1f %%", s.Common, pair[0], want, pair[1])
			}
		}
	}
	if compared < 100 {
		t.Errorf("only %d coefficients were compared", compared)
	}
}

// Where both forms hold they agree at 10 %, and without a printed shrinkage
// the wide form follows from the coefficient.
func TestMovementFormsMeet(t *testing.T) {
	const c = 0.00369
	near, _ := wood.Movement(100, c, 0, 10, 10.001)
	wide, _ := wood.Movement(100, c, 0, 10, 20)
	if rate := near / 0.001; math.Abs(rate-100*c) > 1e-9 {
		t.Errorf("the linear form moves %v a point, want %v", rate, 100*c)
	}
	if math.Abs(wide-10*100*c) > 1e-9 {
		t.Errorf("the wide form from 10 %% moves %v in 10 points, want %v", wide, 10*100*c)
	}
}

func TestMovementOutOfRangeIsAnError(t *testing.T) {
	nan := math.NaN()
	for _, c := range [][4]float64{
		{0, 0.003, 6, 9},
		{5, 0, 6, 9},
		{5, 0.5, 6, 9},
		{5, 0.003, -1, 9},
		{5, 0.003, 6, 31},
		{nan, 0.003, 6, 9},
		{5, nan, 6, 9},
		{5, 0.003, nan, 9},
	} {
		if change, err := wood.Movement(c[0], c[1], 0, c[2], c[3]); err == nil {
			t.Errorf("Movement(%v) = %v, want an error", c, change)
		}
	}
	if _, err := wood.FindSpecies("cardboard"); err == nil {
		t.Error("cardboard is no species")
	}
}

// What lies at an end of a range is in it.
func TestMovementAtTheEndsOfItsRange(t *testing.T) {
	for _, c := range [][4]float64{{5, 0.0199999, 6, 9}, {0.25, 0.003, 6, 9}, {5, 0.003, 0, 30}, {5, 0.003, 30, 0}} {
		if change, err := wood.Movement(c[0], c[1], 0, c[2], c[3]); err != nil || change == 0 {
			t.Errorf("Movement(%v) = %v (%v)", c, change, err)
		}
	}
	if change, err := wood.Movement(5, 0.02, 0, 6, 9); err == nil {
		t.Errorf("a coefficient of 0.02 moves %v, want an error", change)
	}
}

// A printed shrinkage is, by its meaning (Wood Handbook, chapter 4), what wood loses
// of its green width from 30 % to oven dry.
func TestMovementByAPrintedShrinkage(t *testing.T) {
	for _, shrinkage := range []float64{4, 8.6, 12.7} {
		dried, err := wood.Movement(100, 0.003, shrinkage, 30, 0)
		if err != nil || math.Abs(dried+shrinkage) > 1e-9 {
			t.Errorf("of 100 green %v are lost (%v), want %v", -dried, err, shrinkage)
		}
	}
}

// Real parquet, oven-dried at 20 C: 9.9 to 10.7 % at 54 % RH and 11.6 to 12.3 %
// at 65 % RH. The handbook's equation is the mean of drying and wetting, so
// wood that dried from above lies up to 1 point over it.
func TestEMCBesideRealParquet(t *testing.T) {
	for _, c := range [][3]float64{{54, 9.9, 10.7}, {65, 11.6, 12.3}} {
		emc, err := wood.EMC(20, c[0])
		if err != nil {
			t.Fatal(err)
		}
		if emc > c[2] || emc < c[1]-1 {
			t.Errorf("EMC at %v %% RH is %.2f, real parquet holds %v to %v", c[0], emc, c[1], c[2])
		}
	}
}

func TestRHForInvertsEMC(t *testing.T) {
	for temp := -1.0; temp <= 130; temp += 7 {
		for rh := 0.5; rh < 100; rh += 9 {
			emc, err := wood.EMC(temp, rh)
			if err != nil {
				t.Fatal(err)
			}
			back, err := wood.RHFor(temp, emc)
			if err != nil || math.Abs(back-rh) > 1e-7 {
				t.Errorf("RHFor(%v, %v) = %v (%v), want %v", temp, emc, back, err, rh)
			}
		}
	}
	for _, at := range [][2]float64{{20, -1}, {20, 60}, {200, 8}, {20, math.NaN()}} {
		if rh, err := wood.RHFor(at[0], at[1]); err == nil {
			t.Errorf("RHFor(%v) = %v, want an error", at, rh)
		}
	}
}

func BenchmarkEMC(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := wood.EMC(float64(i%40), float64(i%90+5)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRHFor(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := wood.RHFor(float64(i%40), float64(i%20)+1); err != nil {
			b.Fatal(err)
		}
	}
}

// Every printed shrinkage of a species that the table of coefficients names
// the same way.
func TestShrinkageAgainstTables43And44(t *testing.T) {
	printed := map[string][]string{}
	for _, row := range published.Rows(t, "wood-shrinkage.csv") {
		printed[row[0]] = row
	}
	compared := 0
	for _, s := range wood.SpeciesTable() {
		row, named := printed[s.Common]
		if !named {
			continue
		}
		t.Run(s.Common, func(t *testing.T) {
			for cell, got := range map[string]float64{row[1]: s.RadialShrinkage, row[2]: s.TangentShrinkage} {
				if cell != "" && math.Abs(got-published.Number(t, cell)) > 1e-9 {
					t.Errorf("shrinkage %v, printed %s", got, cell)
				}
			}
		})
		compared++
	}
	if compared < 50 {
		t.Errorf("only %d species were compared", compared)
	}
}
