package settling

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// Visit is what the boards of a lot read on a day: their mean, the standard
// deviation among them, and how many they were.
type Visit struct {
	Day, MeanPct, SpreadPct float64
	Boards                  int
}

// usualSpread stands in for a spread that cannot be told, of one board or of
// boards that all read the same, in points (practice).
const usualSpread = 0.5

// sd is one standard deviation of the mean: the spread over the root of the
// number of boards.
func (v Visit) sd() float64 {
	spread := v.SpreadPct
	if v.Boards < 2 || spread == 0 {
		spread = usualSpread
	}
	return spread / math.Sqrt(float64(v.Boards))
}

// Lot is a delivery of flooring with its visits, and the air it lies in.
type Lot struct {
	Visits                  []Visit
	Air                     []evidence.AirState // the log, in any order; its mean goes on before and after it
	TargetPct, TolerancePct float64
}

// ErrNoAir is returned where the log of the air is empty.
var ErrNoAir = errors.New("no air was recorded that the boards lie in")

func (l Lot) check() error {
	switch {
	case !(l.TargetPct > 0 && l.TargetPct < 30 && l.TolerancePct > 0 && l.TolerancePct < 30):
		return fmt.Errorf("no target is %.6g %% MC within %.6g points", l.TargetPct, l.TolerancePct)
	case len(l.Air) == 0:
		return ErrNoAir
	}
	for _, v := range l.Visits {
		whole := v.MeanPct >= 0 && v.MeanPct <= 200 && v.SpreadPct >= 0 && v.SpreadPct <= 200
		if !whole || v.Boards < 1 || !(math.Abs(v.Day) < math.Inf(1)) {
			return fmt.Errorf("no visit reads %.6g %% MC with a spread of %.6g on %d boards on day %v",
				v.MeanPct, v.SpreadPct, v.Boards, v.Day)
		}
	}
	for _, a := range l.Air {
		if _, err := wood.EMC(a.TempC, a.RHPct); err != nil {
			return err
		}
		if !(math.Abs(a.Day) < math.Inf(1)) {
			return fmt.Errorf("the air was read on no day: %v", a.Day)
		}
	}
	return nil
}

// visits are those of the lot in order of time.
func (l Lot) visits() []Visit {
	return slices.SortedStableFunc(slices.Values(l.Visits), func(a, b Visit) int {
		switch {
		case a.Day < b.Day:
			return -1
		case a.Day > b.Day:
			return 1
		}
		return 0
	})
}

// Band gives the humidities of air, in % RH, in which wood comes to a moisture
// content within a tolerance, in points, at a temperature: the inverse of the
// EMC at either end, no less than 0 %. Out of range, as in wood.RHFor, is an error.
func Band(tempC, targetPct, tolerancePct float64) (lowPct, highPct float64, err error) {
	lowPct, err = wood.RHFor(tempC, max(targetPct-tolerancePct, 0))
	if err != nil {
		return 0, 0, err
	}
	highPct, err = wood.RHFor(tempC, targetPct+tolerancePct)
	return lowPct, highPct, err
}
