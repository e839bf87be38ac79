package wood_test

import (
	"fmt"
	"math"
	"testing"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// Printed worked examples (Wood Handbook equation 13-2 and trade texts): white
// fir 232 mm, 8 to 11 %: 1.705 mm; red oak 5 in plainsawn, 6 to 9 %: 0.0554 in;
// sugar maple 5 in, 6 to 9 %: 0.0530 in. One place more is shown here.
func ExampleInstalled_Through() {
	for _, board := range []struct {
		species, unit   string
		width, now, wet float64
	}{
		{"white fir", "mm", 232, 8, 11}, {"red oak", "in", 5, 6, 9}, {"sugar maple", "in", 5, 6, 9},
	} {
		s, _ := wood.FindSpecies(board.species)
		coefficient, shrinkage, _ := s.Across("plainsawn")
		floor := wood.Installed{Width: board.width, Coefficient: coefficient, Shrinkage: shrinkage}
		m, _ := floor.Through(board.now, board.now, board.wet)
		fmt.Printf("%s grows %.5f %s\n", board.species, m.Grows, board.unit)
	}
	// Output:
	// white fir grows 1.70520 mm
	// red oak grows 0.05535 in
	// sugar maple grows 0.05295 in
}

// Red oak 3 1/4 in wide over 15 ft, installed at 7.8 %, living between 6.1 and
// 9.0 %: worked by hand from width x 0.00369 x change.
func TestThroughTheSeasons(t *testing.T) {
	floor := wood.Installed{Width: 3.25, Across: 180, Coefficient: 0.00369}
	m, err := floor.Through(7.8, 6.1, 9.0)
	if err != nil || !m.Linear {
		t.Fatal(m, err)
	}
	for _, c := range [][2]float64{
		{m.Shrinks, 0.0204}, {m.Grows, 0.0144}, {m.AcrossShrinks, 1.1291}, {m.AcrossGrows, 0.7970},
	} {
		if math.Abs(c[0]-c[1]) > 0.00005 {
			t.Errorf("%.5f, want %.4f", c[0], c[1])
		}
	}
	if low, err := floor.Through(5.5, 6.1, 9.0); err != nil || low.Shrinks >= 0 || low.Linear {
		t.Errorf("installed below its driest it is wider even then: %+v (%v)", low, err)
	}
	if dry, err := floor.Through(7.8, 5.9, 9); err != nil || dry.Linear || !(dry.Shrinks > 3.25*0.00369*1.9) {
		t.Errorf("under 6 %% the wide form moves more: %+v (%v)", dry, err)
	}
	floor.Across = 0
	if m, err := floor.Through(7.8, 6.1, 9.0); err != nil || m.AcrossShrinks != 0 || m.AcrossGrows != 0 || m.Grows == 0 {
		t.Errorf("a width across that was not measured does not move: %+v (%v)", m, err)
	}
}

func TestThroughWhatCannotBeIsAnError(t *testing.T) {
	good := wood.Installed{Width: 3.25, Across: 180, Coefficient: 0.00369}
	for _, c := range []struct {
		floor          wood.Installed
		now, low, high float64
	}{
		{wood.Installed{Across: 180, Coefficient: 0.00369}, 8, 6, 9},
		{wood.Installed{Width: 3.25, Across: -1, Coefficient: 0.00369}, 8, 6, 9},
		{wood.Installed{Width: 3.25}, 8, 6, 9},
		{good, 31, 6, 9},
		{good, 8, -1, 9},
		{good, 8, 6, math.NaN()},
	} {
		if m, err := c.floor.Through(c.now, c.low, c.high); err == nil {
			t.Errorf("%+v: %+v, want an error", c, m)
		}
	}
}

// Weights at 12 % MC as the trade tells them, in lb/ft3 (from memory): red oak
// 44, white oak 47, sugar maple 44, black walnut 38, black cherry 35, white ash
// 42, coast Douglas-fir 34. A cubic foot of water weighs 62.4 lb.
func TestGravityBesideKnownWeights(t *testing.T) {
	for name, pounds := range map[string]float64{
		"red oak": 44, "white oak": 47, "hard maple": 44, "walnut": 38, "cherry": 35, "white ash": 42, "douglas-fir": 34,
	} {
		g := wood.GravityOf(name)
		if got := g.Value * 1.12 * 62.4; math.Abs(got-pounds) > 1 || g.Standing != evidence.Recalled {
			t.Errorf("%s by %s weighs %.1f lb/ft3 (%s), told %v", name, g.Name, got, g.Standing, pounds)
		}
	}
	for name, want := range map[string]float64{"OSB": 0.62, "plywood": 0.5, "mdf": 0.72, "": 0.6, "cardboard": 0.6} {
		if g := wood.GravityOf(name); g.Value != want || g.Standing != evidence.Practice {
			t.Errorf("%q has %v, %s", name, g.Value, g.Standing)
		}
	}
}

// Every gravity is that of a species in the table of dimensional change.
func TestGravitiesAreOfKnownSpecies(t *testing.T) {
	found := 0
	for _, s := range wood.SpeciesTable() {
		if g := wood.GravityOf(s.Common); g.Standing == evidence.Recalled {
			found++
			if g.Value < 0.3 || g.Value > 1 {
				t.Errorf("%s: %v", s.Common, g.Value)
			}
		}
	}
	if found < 75 {
		t.Errorf("only %d species have a gravity", found)
	}
}

// Worked by hand: 100 m2 of red oak (0.63) 19 mm thick hold 1197 kg of dry
// wood; from 9 to 7.8 % they lose 1.2 % of it, 14.364 kg.
func TestWater(t *testing.T) {
	if kg, err := wood.Water(100, 19, 0.63, 9, 7.8); err != nil || math.Abs(kg+14.364) > 1e-9 {
		t.Errorf("%v kg (%v), want -14.364", kg, err)
	}
	for _, c := range [][5]float64{
		{100, 19, 1.5, 9, 8}, {100, 19, 0.6, 0, 200}, {100, 19, 0.6, 200, 0}, {0.1, 19, 0.6, 9, 8}, {100, 0.1, 0.6, 9, 8}, {100, 19, 0.1, 9, 8},
	} {
		if _, err := wood.Water(c[0], c[1], c[2], c[3], c[4]); err != nil {
			t.Errorf("%v, at the ends of the ranges: %v", c, err)
		}
	}
	for _, c := range [][5]float64{
		{0, 19, 0.6, 9, 8},
		{100, 0, 0.6, 9, 8},
		{100, 19, 0, 9, 8},
		{100, 19, 1.501, 9, 8},
		{100, 19, 0.6, -0.1, 8},
		{100, 19, 0.6, 9, -0.1},
		{100, 19, 0.6, 200.1, 8},
		{100, 19, 0.6, 9, 200.1},
		{math.NaN(), 19, 0.6, 9, 8},
		{100, 19, 0.6, 9, math.NaN()},
	} {
		if kg, err := wood.Water(c[0], c[1], c[2], c[3], c[4]); err == nil {
			t.Errorf("%v: %v kg, want an error", c, kg)
		}
	}
}

func TestWhereTheCoefficientHolds(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		want     bool
	}{
		{6, 14, true}, {14, 6, true}, {5.999, 14, false}, {14, 5.999, false}, {6, 14.001, false}, {14.001, 6, false},
	} {
		if got := wood.Linear(c.from, c.to); got != c.want {
			t.Errorf("from %v to %v %%: %v", c.from, c.to, got)
		}
	}
}
