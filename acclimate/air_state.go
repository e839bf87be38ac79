package acclimate

import (
	"fmt"
	"math"
)

// StandardPressure is the pressure of the standard atmosphere at sea level, Pa.
const StandardPressure = 101325.0

// gasRatio is the ratio of the molar masses of water and dry air (ASHRAE
// Handbook Fundamentals 2017, chapter 1, equation 20).
const gasRatio = 0.621945

// VaporPressure gives the pressure of water vapor in air, Pa, from its
// temperature, -100 to 200 C, and relative humidity, 0 to 100 %.
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 22.
func VaporPressure(tempC, rhPct float64) (pa float64, err error) {
	if !(rhPct >= 0 && rhPct <= 100) {
		return 0, fmt.Errorf("relative humidity %.5g %% is outside 0 to 100 %%", rhPct)
	}
	saturation, err := SaturationPressure(tempC)
	return saturation * rhPct / 100, err
}

// HumidityRatio gives the mass of water vapor in a mass of dry air, kg/kg,
// from the vapor's pressure and the air's, Pa.
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 20. The
// vapor's pressure is at least 0 and below the air's.
func HumidityRatio(vaporPa, airPa float64) (kgPerKg float64, err error) {
	if !(vaporPa >= 0 && vaporPa < airPa) {
		return 0, fmt.Errorf("a vapor pressure of %.5g Pa cannot be in air at %.6g Pa", vaporPa, airPa)
	}
	return gasRatio * vaporPa / (airPa - vaporPa), nil
}

// GrainsPerPound restates a humidity ratio in kg/kg as grains per pound: 7000
// grains to the pound.
func GrainsPerPound(kgPerKg float64) float64 { return kgPerKg * 7000 }

// AbsoluteHumidity gives the mass of water vapor in a volume of air, g/m3,
// from the vapor's pressure, Pa, and the temperature, C: the ideal gas law
// with 461.523 J/(kg K) for water vapor.
func AbsoluteHumidity(vaporPa, tempC float64) float64 {
	const vaporGas = 461.523
	return 1000 * vaporPa / (vaporGas * (tempC + kelvin))
}

// Enthalpy gives the enthalpy of moist air in kJ per kg of dry air, from the
// temperature, C, and the humidity ratio, kg/kg.
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 30.
func Enthalpy(tempC, kgPerKg float64) float64 {
	return 1.006*tempC + kgPerKg*(2501+1.86*tempC)
}

// PressureAt gives the pressure of the standard atmosphere at an elevation in
// m, Pa.
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 3. The
// elevation is -5000 to 11000 m; out of range is an error.
func PressureAt(elevationM float64) (pa float64, err error) {
	if !(elevationM >= -5000 && elevationM <= 11000) {
		return 0, fmt.Errorf("elevation %.6g m (%.6g ft) is outside -5000 to 11000 m (-16404 to 36089 ft)", elevationM,
			elevationM/0.3048)
	}
	return StandardPressure * math.Pow(1-2.25577e-5*elevationM, 5.2559), nil
}

// WetBulb gives the thermodynamic wet-bulb temperature of air, C.
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 33 and 35
// (over ice below 0 C), solved to 1e-9 C. Where a wet bulb and an iced one both
// solve them, just about 0 C, it is the iced one. tempC is -100 to 200 C, rhPct 0 to
// 100 %, airPa the air's pressure. Out of range is an error.
func WetBulb(tempC, rhPct, airPa float64) (wetC float64, err error) {
	vapor, err := VaporPressure(tempC, rhPct)
	if err != nil {
		return 0, err
	}
	ratio, err := HumidityRatio(vapor, airPa)
	if err != nil {
		return 0, err
	}
	if rhPct == 100 {
		return tempC, nil
	}
	over := func(wet float64) float64 { return ratioAtWetBulb(tempC, wet, airPa) - ratio }
	if ice := math.Nextafter(0, -1); tempC < 0 || over(ice) >= 0 {
		return halved(coldestAir, math.Min(tempC, ice), over), nil
	}
	return halved(0, tempC, over), nil
}

// ratioAtWetBulb is the humidity ratio of air with that wet bulb.
func ratioAtWetBulb(tempC, wetC, airPa float64) float64 {
	saturation := math.Exp(logSaturation(wetC))
	saturated := gasRatio * saturation / (airPa - saturation)
	if wetC >= 0 {
		return ((2501-2.326*wetC)*saturated - 1.006*(tempC-wetC)) / (2501 + 1.86*tempC - 4.186*wetC)
	}
	return ((2830-0.24*wetC)*saturated - 1.006*(tempC-wetC)) / (2830 + 1.86*tempC - 2.1*wetC)
}

// halved finds where a rising function crosses zero, by halving what is left:
// 300 C sixty times is far under 1e-9 C.
func halved(low, high float64, f func(float64) float64) float64 {
	for range 60 {
		if middle := low + (high-low)/2; f(middle) < 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// SurfaceMargin gives how far a surface lies above the dew point of the air,
// in C: below zero it is wet already, above it is how far it may still cool.
func SurfaceMargin(tempC, rhPct, surfaceC float64) (float64, error) {
	dew, err := DewPoint(tempC, rhPct)
	return surfaceC - dew, err
}
