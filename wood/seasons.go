package wood

import "fmt"

// Installed is a floor of boards as it would move: Width of a board and
// Across, the run of them from wall to wall, in one unit; Coefficient and
// Shrinkage as in Movement. Across is 0 where it was not measured.
type Installed struct{ Width, Across, Coefficient, Shrinkage float64 }

// Seasons is how boards move between the day they are installed and the driest
// and the wettest time of a year, in the unit of their width. Shrinks is what a
// board is narrower by at the driest, and the gap at each joint if all boards
// shrink alike; below zero it is wider even then. Grows is what it is wider by
// at the wettest; below zero it is narrower even then. The two across are those
// of the whole run. Linear says whether all of it lies from 6 to 14 %, where
// the coefficient was measured.
type Seasons struct {
	Shrinks, Grows             float64
	AcrossShrinks, AcrossGrows float64
	Linear                     bool
}

// Through gives the movement of a floor installed at a moisture content that
// lives between two others, in %: free movement by Movement, without a
// discount. Errors and range are Movement's.
func (f Installed) Through(nowPct, lowPct, highPct float64) (Seasons, error) {
	s := Seasons{Linear: Linear(nowPct, lowPct) && Linear(nowPct, highPct)}
	driest, err := Movement(f.Width, f.Coefficient, f.Shrinkage, nowPct, lowPct)
	if err != nil {
		return Seasons{}, err
	}
	wettest, err := Movement(f.Width, f.Coefficient, f.Shrinkage, nowPct, highPct)
	if err != nil {
		return Seasons{}, err
	}
	if !(f.Across >= 0) {
		return Seasons{}, fmt.Errorf("a width across of %.6g is below 0", f.Across)
	}
	boards := f.Across / f.Width
	s.Shrinks, s.Grows = -driest, wettest
	s.AcrossShrinks, s.AcrossGrows = boards*s.Shrinks, boards*s.Grows
	return s, nil
}
