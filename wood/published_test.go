package wood_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"firstboard/report/evidence"
	"firstboard/testdata/published"
	"firstboard/wood"
)

// Wood Handbook Table 4-2: the equation stays within 0.06 of the printed
// values, as the table's head says.
func TestEMCAgainstWoodHandbookTable42(t *testing.T) {
	for _, row := range published.Rows(t, "wood-emc.csv") {
		t.Run(row[0]+"F "+row[1]+"%", func(t *testing.T) {
			got, err := wood.EMC((published.Number(t, row[0])-32)/1.8, published.Number(t, row[1]))
			if err != nil {
				t.Fatal(err)
			}
			if want := published.Number(t, row[2]); math.Abs(got-want) > 0.06 {
				t.Errorf("EMC = %.3f, printed %.1f", got, want)
			}
		})
	}
}

func TestEMCOutOfRangeIsAnError(t *testing.T) {
	for _, at := range [][2]float64{{-20, 50}, {140, 50}, {20, -1}, {20, 101}, {math.NaN(), 50}, {20, math.NaN()}, {math.Inf(1), 50}} {
		if emc, err := wood.EMC(at[0], at[1]); err == nil {
			t.Errorf("EMC(%v, %v) = %v, want an error", at[0], at[1], emc)
		}
	}
}

// FPL-GTR-6, Figure 5: the digitised points, and nothing off the grid.
func TestTemperatureCorrectionOnTheGrid(t *testing.T) {
	for _, row := range published.Rows(t, "pin-temperature.csv") {
		t.Run(row[1]+"% at "+row[0]+"C", func(t *testing.T) {
			temp, shown, add := evidence.Typed(row[0], ""), evidence.Typed(row[1], ""), evidence.Typed(row[2], "")
			got, ok := wood.ForTemperature(shown.Exact(), temp.Exact())
			if want := shown.Exact().Add(add.Exact()); !ok || got.Cmp(want) != 0 {
				t.Errorf("got %s, want %s", got.Text(), want.Text())
			}
		})
	}
	for _, off := range [][2]string{{"-20.1", "12"}, {"50.1", "12"}, {"20", "5.9"}, {"20", "25.1"}} {
		if got, ok := wood.ForTemperature(evidence.Typed(off[1], "").Exact(), evidence.Typed(off[0], "").Exact()); ok {
			t.Errorf("%s %% at %s C is off the grid, got %s", off[1], off[0], got.Text())
		}
	}
}

// The worked example printed with the figure (James 1988): 18 % shown at 120 F
// is 14 % true. The digitised grid gives 14.0.
func ExampleForTemperature() {
	at := evidence.Typed("120", evidence.Fahrenheit)
	mc, _ := wood.ForTemperature(evidence.Whole(18), at.In(evidence.Celsius))
	fmt.Println(mc.Fixed(0), "%")
	// Output: 14 %
}

// Every row of the resistance table, at the resistances it was fitted to: the
// correction from Douglas-fir must give that row's own moisture content. The
// poor fits that the table's head names are refused.
func TestSpeciesCorrectionAgainstTheTable(t *testing.T) {
	table := map[string][2]float64{}
	for _, row := range published.Rows(t, "pin-species.csv") {
		if a := published.Number(t, row[1]); a > 0 && !strings.Contains(row[0], "scale") {
			table[row[0]] = [2]float64{a, published.Number(t, row[2])}
		}
	}
	fir := table["Douglas-fir (coast)"]
	for species, row := range table {
		t.Run(species, func(t *testing.T) {
			for shown := 8.0; shown <= 24; shown += 4 {
				logR := (math.Log10(shown) - fir[0]) / fir[1]
				want := math.Pow(10, row[0]+row[1]*logR)
				got, ok := wood.ForSpecies(shown, "Douglas-fir", species)
				switch poor := species == "Oak, white" || species == "Ash, black"; {
				case poor && ok:
					t.Errorf("a poor fit must be refused, got %.2f", got)
				case !poor && (!ok || math.Abs(got-want) > 1e-9):
					t.Errorf("at %.0f %%: got %.4f, want %.4f", shown, got, want)
				}
			}
		})
	}
	if _, ok := wood.ForSpecies(12, "Douglas-fir", "hickory"); ok {
		t.Error("the table knows no hickory")
	}
}
