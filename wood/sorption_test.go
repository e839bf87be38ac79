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
