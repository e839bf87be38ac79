package outlook

import (
	"math"
	"time"

	"firstboard/report/evidence"
)

// dayAxis is a time on the axis of the forecasts: days since 1970 in UTC.
func dayAxis(t time.Time) float64 { return float64(t.Unix()) / 86400 }

// dayOf is the day on which a point of the axis lies.
func dayOf(day float64) string { return evidence.Day(math.Floor(day)).String() }
