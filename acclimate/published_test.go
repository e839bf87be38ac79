package acclimate_test

import (
	"math"
	"testing"

	"firstboard/acclimate"
	"firstboard/testdata/published"
)

// ASHRAE Handbook Fundamentals 2017, chapter 1, table 3.
func TestSaturationPressureAgainstASHRAE(t *testing.T) {
	for _, row := range published.Rows(t, "psat-check.csv") {
		t.Run(row[0]+"C", func(t *testing.T) {
			got, err := acclimate.SaturationPressure(published.Number(t, row[0]))
			if err != nil {
				t.Fatal(err)
			}
			want := published.Number(t, row[1])
			if tolerance := math.Max(want*0.00021, 0.005); math.Abs(got-want) > tolerance {
				t.Errorf("saturation pressure = %.3f Pa, printed %.3f", got, want)
			}
		})
	}
}

// The grid of the reference library: saturation pressure and dew point.
func TestMoistAirAgainstReferenceLibrary(t *testing.T) {
	for _, row := range published.Rows(t, "moist-air.csv") {
		t.Run(row[0]+"C "+row[1]+"%", func(t *testing.T) {
			pws, err := acclimate.SaturationPressure(published.Number(t, row[0]))
			if err != nil {
				t.Fatal(err)
			}
			if want := published.Number(t, row[3]); math.Abs(pws-want) > want*1e-4 {
				t.Errorf("saturation pressure = %.4f Pa, want %.4f", pws, want)
			}
			dew, err := acclimate.DewPoint(published.Number(t, row[0]), published.Number(t, row[1]))
			if err != nil {
				t.Fatal(err)
			}
			if want := published.Number(t, row[5]); math.Abs(dew-want) > 0.001 {
				t.Errorf("dew point = %.4f C, want %.4f", dew, want)
			}
		})
	}
}

func TestDewPointCheckpoints(t *testing.T) {
	for _, row := range published.Rows(t, "dewpoint-checkpoints.csv") {
		t.Run(row[0]+"C "+row[1]+"%", func(t *testing.T) {
			dew, err := acclimate.DewPoint(published.Number(t, row[0]), published.Number(t, row[1]))
			if err != nil {
				t.Fatal(err)
			}
			if want := published.Number(t, row[4]); math.Abs(dew-want) > 0.002 {
				t.Errorf("dew point = %.4f C, want %.3f", dew, want)
			}
		})
	}
}

func TestDewPointInvertsSaturation(t *testing.T) {
	for temp := -60.0; temp <= 90; temp += 1.7 {
		for _, rh := range []float64{1, 20, 55, 99.9, 100} {
			dew, err := acclimate.DewPoint(temp, rh)
			if err != nil {
				t.Fatalf("DewPoint(%v, %v): %v", temp, rh, err)
			}
			air, _ := acclimate.SaturationPressure(temp)
			back, _ := acclimate.SaturationPressure(dew)
			if want := air * rh / 100; math.Abs(back-want) > want*1e-8 {
				t.Errorf("air at %v C and %v %% has %v Pa, its dew point %v C holds %v Pa", temp, rh, want, dew, back)
			}
		}
	}
}

func TestMoistAirOutOfRangeIsAnError(t *testing.T) {
	for _, at := range [][2]float64{{20, 0}, {20, -5}, {20, 100.1}, {-101, 50}, {201, 50}, {math.NaN(), 50}, {20, math.NaN()}, {-90, 0.001}} {
		if dew, err := acclimate.DewPoint(at[0], at[1]); err == nil {
			t.Errorf("DewPoint(%v, %v) = %v, want an error", at[0], at[1], dew)
		}
	}
}
