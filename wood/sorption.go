package wood

import (
	"fmt"
	"math"
)

// The range of temperatures of the printed table, in C (30 to 270 F).
const (
	minEMCTemp = -1.2
	maxEMCTemp = 132.3
)

// EMC gives the equilibrium moisture content of wood in air, in % of oven-dry
// mass.
//
// Source: USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-282),
// equation 4-5 in SI form. tempC is the air's temperature, -1.1 to 132.2 C
// (30 to 270 F); rhPct its relative humidity, 0 to 100 %. The handbook prints
// its table to 0.1; from 30 to 100 F and 5 to 95 % RH the equation stays within
// 0.06 of it. Real wood differs by species and by 1 to 4 points between drying
// and wetting. Out of range is an error.
func EMC(tempC, rhPct float64) (float64, error) {
	if !(tempC >= minEMCTemp && tempC <= maxEMCTemp) {
		return 0, fmt.Errorf("temperature %.4g C (%.4g F) is outside -1.1 to 132.2 C (30 to 270 F), the range of the equation",
			tempC, tempC*1.8+32)
	}
	if !(rhPct >= 0 && rhPct <= 100) {
		return 0, fmt.Errorf("relative humidity %.4g %% is outside 0 to 100 %%", rhPct)
	}
	t, h := tempC, rhPct/100
	w := 349 + 1.29*t + 0.0135*t*t
	kh := (0.805 + 0.000736*t - 0.00000273*t*t) * h
	k1 := 6.27 - 0.00938*t - 0.000303*t*t
	k2 := 1.91 + 0.0407*t - 0.000293*t*t
	a, b := k1*kh, k1*k2*kh*kh
	return math.Max(0, 1800/w*(kh/(1-kh)+(a+2*b)/(1+a+b))), nil
}

// RHFor gives the relative humidity of air, in %, in which wood comes to a
// wanted moisture content: the inverse of EMC, to 1e-9 %.
//
// tempC is -1.1 to 132.2 C; emcPct is 0 to the EMC of saturated air at that
// temperature. Out of range is an error.
func RHFor(tempC, emcPct float64) (float64, error) {
	most, err := EMC(tempC, 100)
	if err != nil {
		return 0, err
	}
	if !(emcPct >= 0 && emcPct <= most) {
		return 0, fmt.Errorf("no air at %.4g C brings wood to %.4g %%: it reaches 0 to %.3g %%", tempC, emcPct, most)
	}
	low, high := 0.0, 100.0
	for range 40 { // 100 % over 2^40 is 1e-10 %
		middle := (low + high) / 2
		if emc, _ := EMC(tempC, middle); emc < emcPct {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2, nil
}
