package acclimate

import (
	"fmt"
	"math"
)

// The range of the saturation equations, in C, and the triple point of water,
// where saturation passes from ice to water.
const (
	coldestAir  = -100.0
	hottestAir  = 200.0
	triplePoint = 0.01
	kelvin      = 273.15
)

// SaturationPressure gives the pressure of water vapor in saturated air, in
// Pa: over water from the triple point (0.01 C) up, over ice below it.
//
// Source: Hyland and Wexler 1983, as printed in ASHRAE Handbook Fundamentals
// 2017, chapter 1, equations 5 and 6. tempC is -100 to 200 C. The same
// handbook's table agrees within 0.02 % from -20 to 100 C. Out of range is an
// error.
func SaturationPressure(tempC float64) (pa float64, err error) {
	if !(tempC >= coldestAir && tempC <= hottestAir) {
		return 0, errRange(tempC)
	}
	return math.Exp(logSaturation(tempC)), nil
}

func logSaturation(tempC float64) float64 {
	t := tempC + kelvin
	if tempC < triplePoint {
		return -5674.5359/t + 6.3925247 + t*(-9.677843e-3+t*(6.2215701e-7+t*(2.0747825e-9-t*9.484024e-13))) +
			4.1635019*math.Log(t)
	}
	return -5800.2206/t + 1.3914993 + t*(-0.048640239+t*(4.1764768e-5-t*1.4452093e-8)) + 6.5459673*math.Log(t)
}

// slopeOfLog is the derivative of logSaturation by temperature, per C.
func slopeOfLog(tempC float64) float64 {
	t := tempC + kelvin
	if tempC < triplePoint {
		return 5674.5359/(t*t) - 9.677843e-3 + t*(2*6.2215701e-7+t*(3*2.0747825e-9-t*4*9.484024e-13)) + 4.1635019/t
	}
	return 5800.2206/(t*t) - 0.048640239 + t*(2*4.1764768e-5-t*3*1.4452093e-8) + 6.5459673/t
}

// DewPoint gives the temperature at which air is saturated, in C: the frost
// point where that lies below the triple point.
//
// It inverts SaturationPressure to 1e-9 C. tempC is -100 to 200 C, rhPct above
// 0 to 100 %. Out of range is an error, and so is air so dry that its frost
// point lies below -100 C.
func DewPoint(tempC, rhPct float64) (dewC float64, err error) {
	if !(rhPct > 0 && rhPct <= 100) {
		return 0, fmt.Errorf("relative humidity %.5g %% is outside 0 to 100 %%: dry air has no dew point", rhPct)
	}
	if !(tempC >= coldestAir && tempC <= hottestAir) {
		return 0, errRange(tempC)
	}
	return saturatedAt(logSaturation(tempC) + math.Log(rhPct/100))
}

func errRange(tempC float64) error {
	return fmt.Errorf("temperature %.5g C (%.5g F) is outside -100 to 200 C (-148 to 392 F), the range of the equation",
		tempC, tempC*1.8+32)
}

// saturatedAt inverts the logarithm of the saturation pressure by Newton's
// steps, which converge from either side because its slope only falls.
func saturatedAt(logPa float64) (float64, error) {
	if logPa < logSaturation(coldestAir) {
		return 0, fmt.Errorf("the air is too dry: its frost point lies below -100 C")
	}
	frost := logPa < logAtTriple
	guess := side(roughly(logPa), frost)
	for range 50 {
		step := (logPa - logSaturation(guess)) / slopeOfLog(guess)
		guess = side(guess+step, frost)
		if math.Abs(step) < 1e-10 {
			break
		}
	}
	return guess, nil
}

// logAtTriple is logSaturation at the triple point.
const logAtTriple = 6.416171714

// roughly is the dew point within some tenths of a degree, by the Magnus form
// (recalled): a first guess, of which nothing is left in the end.
func roughly(logPa float64) float64 {
	x := logPa - 6.4154
	return 243.04 * x / (17.625 - x)
}

// side keeps a guess on its side of the triple point.
func side(tempC float64, frost bool) float64 {
	if frost {
		return math.Max(coldestAir, math.Min(tempC, math.Nextafter(triplePoint, -1)))
	}
	return math.Min(hottestAir, math.Max(tempC, triplePoint))
}
