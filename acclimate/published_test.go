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
	for _, at := range [][2]float64{
		{20, 0},
		{20, -5},
		{20, 100.1},
		{-101, 50},
		{201, 50},
		{math.NaN(), 50},
		{20, math.NaN()},
		{-90, 0.001},
	} {
		if dew, err := acclimate.DewPoint(at[0], at[1]); err == nil {
			t.Errorf("DewPoint(%v, %v) = %v, want an error", at[0], at[1], dew)
		}
	}
}

// The grid of the reference library: humidity ratio, wet bulb and enthalpy.
// Tolerances: half the last printed digit, and 0.001 C for the wet bulb, which
// the library itself solves to 0.001 C.
func TestMoistAirStateAgainstReferenceLibrary(t *testing.T) {
	for _, row := range published.Rows(t, "moist-air.csv") {
		t.Run(row[0]+"C "+row[1]+"% "+row[2]+"Pa", func(t *testing.T) {
			temp, rh, pa := published.Number(t, row[0]), published.Number(t, row[1]), published.Number(t, row[2])
			vapor, err := acclimate.VaporPressure(temp, rh)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "vapor pressure", vapor, published.Number(t, row[4]), published.Number(t, row[4])*1e-4)
			ratio, err := acclimate.HumidityRatio(vapor, pa)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "humidity ratio", ratio, published.Number(t, row[6]), 1e-8)
			wet, err := acclimate.WetBulb(temp, rh, pa)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "wet bulb", wet, published.Number(t, row[7]), 0.0015)
			near(t, "enthalpy", acclimate.Enthalpy(temp, ratio)*1000, published.Number(t, row[8]), 0.05)
		})
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tolerance)
	}
}

func TestHumidityCheckpoints(t *testing.T) {
	for _, row := range published.Rows(t, "dewpoint-checkpoints.csv") {
		t.Run(row[0]+"C "+row[1]+"%", func(t *testing.T) {
			temp, rh := published.Number(t, row[0]), published.Number(t, row[1])
			vapor, err := acclimate.VaporPressure(temp, rh)
			if err != nil {
				t.Fatal(err)
			}
			ratio, err := acclimate.HumidityRatio(vapor, acclimate.StandardPressure)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "humidity ratio", ratio, published.Number(t, row[5]), 1e-6)
			near(t, "absolute humidity", acclimate.AbsoluteHumidity(vapor, temp), published.Number(t, row[6]), 0.001)
		})
	}
}

// The standard atmosphere: 101325 Pa at the sea; 83436 Pa at 1609 m and 79495
// Pa at 2000 m, from ASHRAE's table (from memory, to 0.05 %).
func TestPressureAt(t *testing.T) {
	for _, c := range [][2]float64{{0, 101325}, {1609.344, 83436}, {2000, 79495}} {
		pa, err := acclimate.PressureAt(c[0])
		if err != nil {
			t.Fatal(err)
		}
		near(t, "pressure", pa, c[1], c[1]*5e-4)
	}
	if pa, err := acclimate.PressureAt(math.NaN()); err == nil {
		t.Errorf("PressureAt(NaN) = %v, want an error", pa)
	}
}

// A surface 1 C under the dew point has a margin of -1 C.
func TestSurfaceMargin(t *testing.T) {
	dew, err := acclimate.DewPoint(21, 45)
	if err != nil {
		t.Fatal(err)
	}
	margin, err := acclimate.SurfaceMargin(21, 45, dew-1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "margin 1 C below it", margin, -1, 1e-9)
}

func TestWetBulbOutOfRangeIsAnError(t *testing.T) {
	for _, at := range [][3]float64{
		{20, 101, 101325},
		{20, 50, 0},
		{20, 50, math.NaN()},
		{99.9, 100, 90000},
		{201, 50, 101325},
		{math.NaN(), 50, 101325},
	} {
		if wet, err := acclimate.WetBulb(at[0], at[1], at[2]); err == nil {
			t.Errorf("WetBulb(%v) = %v, want an error", at, wet)
		}
	}
}

func BenchmarkDewPoint(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := acclimate.DewPoint(float64(i%60-20), float64(i%90+10)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWetBulb(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := acclimate.WetBulb(float64(i%60-20), float64(i%90+10), acclimate.StandardPressure); err != nil {
			b.Fatal(err)
		}
	}
}
