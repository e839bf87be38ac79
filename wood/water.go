package wood

import (
	"fmt"

	"firstboard/report/evidence"
)

// Water gives the mass of water, in kg, that wood takes up between two
// moisture contents in % of its oven-dry mass: below zero it loses as much.
//
// It is area x thickness x the mass of oven-dry wood in that volume, 1000 kg/m3
// times the specific gravity (Wood Handbook chapter 4, the meaning of the two
// terms), x the change. areaM2 is in m2, thicknessMM in mm, both above 0;
// gravity is above 0 and at most 1.5; moisture contents are 0 to 200 %. Out of
// range is an error.
func Water(areaM2, thicknessMM, gravity, fromPct, toPct float64) (kg float64, err error) {
	const heaviest = 1.5 // the wood substance itself
	if !(areaM2 > 0 && thicknessMM > 0) {
		return 0, fmt.Errorf("no wood is %.6g m2 at %.6g mm", areaM2, thicknessMM)
	}
	if !(gravity > 0 && gravity <= heaviest) {
		return 0, fmt.Errorf("no wood has a specific gravity of %.6g", gravity)
	}
	if !(fromPct >= 0 && fromPct <= 200 && toPct >= 0 && toPct <= 200) {
		return 0, fmt.Errorf("from %.6g to %.6g %% MC leaves 0 to 200 %%", fromPct, toPct)
	}
	return areaM2 * thicknessMM * gravity * (toPct - fromPct) / 100, nil
}

// Gravity is the specific gravity of a wood or panel: its oven-dry mass over
// that of the water that its volume at 12 % MC would hold.
type Gravity struct {
	Name     string // of the row used
	Value    float64
	Standing evidence.Standing
}

// GravityOf finds the specific gravity of a species by any name FindSpecies
// takes, or of a panel. Where none is known, what stands in is that of a wood
// of middling weight: 0.6 (practice).
//
// Source: Wood Handbook Tables 5-3 and 5-5, from memory; of tropical woods the
// value of green volume stands in, which is up to a tenth lower. Panels:
// practice.
func GravityOf(name string) Gravity {
	switch evidence.Key(name) {
	case "plywood":
		return Gravity{"plywood", 0.50, evidence.Practice}
	case "osb":
		return Gravity{"OSB", 0.62, evidence.Practice}
	case "particleboard", "mdf":
		return Gravity{evidence.Key(name), 0.72, evidence.Practice}
	}
	if s, err := FindSpecies(name); err == nil {
		if value, known := gravities()[s.Common]; known {
			return Gravity{s.Common, value, evidence.Recalled}
		}
	}
	return Gravity{"wood of middling weight", 0.6, evidence.Practice}
}
