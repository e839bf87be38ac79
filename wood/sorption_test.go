package wood_test

import (
	"math"
	"testing"

	"firstboard/wood"
)

// The ends of the equation's range, and the inverse at the ends of its own.
func TestEMCAtTheEndsOfItsRange(t *testing.T) {
	for _, c := range []struct {
		tempC, rhPct float64
		ok           bool
	}{
		{-1.2, 50, true},
		{-1.21, 50, false},
		{132.3, 50, true},
		{132.31, 50, false},
		{21, 0, true},
		{21, -0.01, false},
		{21, 100, true},
		{21, 100.01, false},
	} {
		if emc, err := wood.EMC(c.tempC, c.rhPct); (err == nil) != c.ok || emc < 0 {
			t.Errorf("EMC at %v C and %v %% is %v, %v", c.tempC, c.rhPct, emc, err)
		}
	}
	if dry, _ := wood.EMC(21, 0); dry != 0 {
		t.Errorf("in dry air wood holds %v %%", dry)
	}
	wet, _ := wood.EMC(21, 100)
	for _, c := range []struct {
		emc, want float64
		ok        bool
	}{{0, 0, true}, {-0.001, 0, false}, {wet, 100, true}, {wet + 0.001, 0, false}} {
		rh, err := wood.RHFor(21, c.emc)
		if (err == nil) != c.ok || math.Abs(rh-c.want) > 1e-6 {
			t.Errorf("wood at %v %% needs air of %v %%, %v; want %v", c.emc, rh, err, c.want)
		}
	}
	if _, err := wood.RHFor(-20, 8); err == nil {
		t.Error("the inverse has the range of the equation")
	}
}

// The slope is that of the equation, one-sided at either end of its range.
func TestEMCSlope(t *testing.T) {
	for _, rh := range []float64{0, 0.001, 5, 40, 80, 99.999, 100} {
		low, high := math.Max(rh-0.001, 0), math.Min(rh+0.001, 100)
		below, _ := wood.EMC(21, low)
		above, _ := wood.EMC(21, high)
		want := (above - below) / (high - low)
		if got, err := wood.EMCSlope(21, rh); err != nil || math.Abs(got-want) > 0.005*want {
			t.Errorf("at %v %% RH the slope is %v (%v), want %v", rh, got, err, want)
		}
	}
	for _, at := range [][2]float64{{-20, 40}, {21, -1}, {21, 102}} {
		if slope, err := wood.EMCSlope(at[0], at[1]); err == nil {
			t.Errorf("at %v it is %v", at, slope)
		}
	}
}
