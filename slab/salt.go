package slab

import (
	"fmt"

	"firstboard/report/evidence"
)

// SaltRH gives the relative humidity over a saturated solution of a salt, in
// %: a fixed point for checking probes.
//
// Source: Greenspan 1977, J. Res. NBS 81A, 89-96; the polynomials reproduce
// the printed table to its last digit (0.01). KNO3's is fitted here to that
// table. tempC is 5 to 40 C. Printed uncertainty at 25 C (from memory): LiCl
// 0.27, MgCl2 0.16, NaCl 0.12, KCl 0.26, K2SO4 0.45. Out of range, and a salt
// that is not in the table, are errors.
func SaltRH(salt string, tempC float64) (float64, error) {
	terms := saltTerms(salt)
	if terms == nil {
		return 0, fmt.Errorf("%s is no salt of the table; it holds LiCl, MgCl2, K2CO3, NaCl, KCl, KNO3 and K2SO4", salt)
	}
	if !(tempC >= 5 && tempC <= 40) {
		return 0, fmt.Errorf("temperature %.4g C is outside 5 to 40 C, the range of the table", tempC)
	}
	rh, power := 0.0, 1.0
	for _, term := range terms {
		rh += term * power
		power *= tempC
	}
	return rh, nil
}

func saltTerms(salt string) []float64 {
	switch evidence.Key(salt) {
	case "licl":
		return []float64{11.2323, 0.824245e-2, -0.214890e-3}
	case "mgcl2":
		return []float64{33.6686, -0.797397e-2, -0.108988e-2}
	case "k2co3":
		return []float64{43.1315, 0.147523e-2}
	case "nacl":
		return []float64{75.5164, 0.398321e-1, -0.265459e-2, 0.284800e-4}
	case "kcl":
		return []float64{88.6190, -0.193340, 0.899706e-3}
	case "kno3":
		return []float64{96.3319, 0.116779e-1, -0.485626e-2}
	case "k2so4":
		return []float64{98.7792, -0.590502e-1}
	}
	return nil
}
