package instruments

import (
	"fmt"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// WrongSalts finds checks of this area's probes and air instruments whose
// standard names a saturated salt ("NaCl at 23 C") and whose expected value is
// not what that gives, by more than 1 % RH (Greenspan 1977).
func (rs Readings) WrongSalts() []string {
	var looks []string
	seen := map[string]bool{}
	for _, e := range rs.Rows {
		if key := evidence.Key(e.Instrument); !seen[key] {
			seen[key] = true
			for _, c := range rs.Compared[key].typed {
				if rh, known := c.saltRH(); known && c.Expected.Shown() &&
					c.Expected.Exact().Sub(rh).Abs().Cmp(evidence.Whole(1)) > 0 {
					looks = append(looks, fmt.Sprintf("%s: %s gives %s %% RH, and %s was expected", c.title(),
						c.Standard, rh.Short(), c.Expected.Written))
				}
			}
		}
	}
	return looks
}

// saltRH is the fixed point of the salt that the standard names, rounded to
// 0.01.
func (c Comparison) saltRH() (rh evidence.Exact, known bool) {
	salt, at, found := strings.Cut(evidence.Tidy(c.Standard), " at ")
	var degrees float64
	var unit string
	if n, _ := fmt.Sscanf(strings.ReplaceAll(at, "°", ""), "%g%s", &degrees, &unit); !found || n != 2 {
		return rh, false
	}
	switch {
	case strings.EqualFold(unit, string(evidence.Fahrenheit)):
		degrees = (degrees - 32) / 1.8
	case !strings.EqualFold(unit, string(evidence.Celsius)):
		return rh, false
	}
	pct, err := slab.SaltRH(salt, degrees)
	if err != nil {
		return rh, false
	}
	return evidence.Typed(strconv.FormatFloat(pct, 'f', 2, 64), evidence.RH).Exact(), true
}
