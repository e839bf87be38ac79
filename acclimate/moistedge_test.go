package acclimate

import (
	"math"
	"strings"
	"testing"
)

// Every range of the equations of moist air ends where its comment says, both
// ends included.
func TestMoistAirEndsOfRange(t *testing.T) {
	below := func(x float64) float64 { return math.Nextafter(x, -1e9) }
	above := func(x float64) float64 { return math.Nextafter(x, 1e9) }
	pressure := func(c float64) error { _, err := SaturationPressure(c); return err }
	dew := func(c, rh float64) error { _, err := DewPoint(c, rh); return err }
	vapor := func(rh float64) error { _, err := VaporPressure(20, rh); return err }
	ratio := func(vapor, air float64) error { _, err := HumidityRatio(vapor, air); return err }
	height := func(m float64) error { _, err := PressureAt(m); return err }
	for name, c := range map[string]struct {
		err  error
		good bool
	}{
		"pressure at -100 C": {pressure(-100), true}, "pressure under it": {pressure(below(-100)), false},
		"pressure at 200 C": {pressure(200), true}, "pressure over it": {pressure(above(200)), false},
		"dew point at -100 C": {dew(-100, 100), true}, "dew point under it": {dew(below(-100), 100), false},
		"dew point at 200 C": {dew(200, 50), true}, "dew point over it": {dew(above(200), 50), false},
		"dew point at 0 %": {dew(20, 0), false}, "dew point just over 0 %": {dew(20, 0.01), true},
		"dew point at 100 %": {dew(20, 100), true}, "dew point over 100 %": {dew(20, above(100)), false},
		"vapor at 0 %": {vapor(0), true}, "vapor under it": {vapor(below(0)), false},
		"vapor at 100 %": {vapor(100), true}, "vapor over it": {vapor(above(100)), false},
		"ratio of no vapor": {ratio(0, 1), true}, "ratio of less": {ratio(below(0), 1), false},
		"ratio of all vapor": {ratio(1, 1), false}, "ratio of almost all": {ratio(below(1), 1), true},
		"ratio in no air": {ratio(0, 0), false},
		"5000 m down":     {height(-5000), true}, "more": {height(below(-5000)), false},
		"11000 m up": {height(11000), true}, "further": {height(above(11000)), false},
	} {
		if (c.err == nil) != c.good {
			t.Errorf("%s: %v", name, c.err)
		}
	}
	if err := dew(20, 0); err == nil || !strings.Contains(err.Error(), "dry air has no dew point") {
		t.Errorf("dry air is refused as %v", err)
	}
}

// The slope that the search for a dew point steps by is that of the equation,
// over water and over ice; from the triple point up it is that over water.
func TestSlopeOfLog(t *testing.T) {
	for _, c := range []float64{-80, -20, -1, 0, 0.02, 1, 20, 90} {
		const h = 1e-4
		want := (logSaturation(c+h) - logSaturation(c-h)) / (2 * h)
		if got := slopeOfLog(c); math.Abs(got-want) > 1e-7 {
			t.Errorf("at %v C the slope is %v, want %v", c, got, want)
		}
	}
	water, ice := logSaturation(triplePoint), logSaturation(math.Nextafter(triplePoint, -1))
	if water == ice || slopeOfLog(triplePoint) > slopeOfLog(math.Nextafter(triplePoint, -1)) {
		t.Error("the triple point is counted as ice")
	}
}

// The first guess lies within half a degree, and on its side.
func TestRoughGuess(t *testing.T) {
	for _, c := range []float64{-20, -5, 0.5, 10, 20, 40} {
		if got := roughly(logSaturation(c)); math.Abs(got-c) > 2.5 {
			t.Errorf("at %v C the guess is %v", c, got)
		}
	}
	for _, c := range []struct {
		temp  float64
		frost bool
		want  float64
	}{
		{5, true, math.Nextafter(triplePoint, -1)},
		{-5, true, -5},
		{-200, true, -100},
		{-5, false, triplePoint},
		{5, false, 5},
		{300, false, 200},
	} {
		if got := side(c.temp, c.frost); got != c.want {
			t.Errorf("%v C (frost: %v) becomes %v, want %v", c.temp, c.frost, got, c.want)
		}
	}
}

// Where a wet bulb and an iced one both solve the equations the iced one is given,
// and else the one that does, just above 0 C too.
func TestWetBulbAboutFreezing(t *testing.T) {
	const air = StandardPressure
	ice := math.Nextafter(0, -1)
	for _, c := range []float64{0.2, 0.5, 2, 5, 9} {
		atIce, atWater := ratioAtWetBulb(c, ice, air), ratioAtWetBulb(c, 0, air)
		for share, iced := range map[float64]bool{-1: false, -0.01: false, 0.01: true, 0.5: true, 0.99: true, 1.01: true} {
			ratio := atIce - share*(atIce-atWater)
			vapor := ratio * air / (gasRatio + ratio)
			rh := 100 * vapor / math.Exp(logSaturation(c))
			if rh > 100 {
				continue
			}
			wet, err := WetBulb(c, rh, air)
			if err != nil || wet < 0 != iced || math.Abs(ratioAtWetBulb(c, wet, air)-ratio) > 1e-12 {
				t.Errorf("at %v C and %v %% RH the wet bulb is %v (%v), want it iced: %v", c, rh, wet, err, iced)
			}
		}
	}
}

// A wet bulb balances heat: air and what evaporates into it hold together what the
// saturated air holds. Enthalpies in kJ/kg, those of ASHRAE Handbook Fundamentals 2017,
// chapter 1, from memory: of dry air 1.006 t, of vapor 2501 + 1.86 t, of water 4.186 t,
// of ice -329 + 2.1 t.
func TestWetBulbBalancesHeat(t *testing.T) {
	const air = StandardPressure
	moist := func(c, ratio float64) float64 { return 1.006*c + ratio*(2501+1.86*c) }
	for _, c := range []float64{-40, -15, -3, 4, 12, 25, 40} {
		for _, rh := range []float64{1, 20, 55, 95} {
			wet, err := WetBulb(c, rh, air)
			added := 4.186 * wet
			if wet < 0 {
				added = -329 + 2.1*wet
			}
			ratioOf := func(vapor float64) float64 { return 0.621945 * vapor / (air - vapor) }
			before := ratioOf(math.Exp(logSaturation(c)) * rh / 100)
			after := ratioOf(math.Exp(logSaturation(wet)))
			if off := moist(c, before) + (after-before)*added - moist(wet, after); err != nil || math.Abs(off) > 1e-7 {
				t.Errorf("at %v C, %v %% RH and a wet bulb of %v C %v kJ/kg are lost (%v)", c, rh, wet, off, err)
			}
		}
	}
}

// Saturated air is as warm as its wet bulb.
func TestWetBulbOfSaturatedAir(t *testing.T) {
	for _, c := range []float64{-40, -0.001, 0, 0.0001, 0.005, 1, 20, 35.7, 60} {
		if wet, err := WetBulb(c, 100, StandardPressure); err != nil || wet != c {
			t.Errorf("at %v C it is %v (%v)", c, wet, err)
		}
	}
}
