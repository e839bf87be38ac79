package pictures

import (
	"strconv"
	"time"

	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Expecting is a picture with the course that a hole is expected to take, and
// the ends of the interval that holds it nine times in ten: on the picture of
// how holes dried, and nowhere else.
func (p Picture) Expecting(s ahead.Slab) Picture {
	if p.Shows != DryingHistory || len(s.Course) < 2 {
		return p
	}
	p.Series = append([]Series{}, p.Series...)
	p.with("expected of "+s.Hole, Expected, course(s.Course, func(c ahead.Course) float64 { return c.RHPct }))
	p.with("9 in 10: lowest", ExpectedEnd, course(s.Course, func(c ahead.Course) float64 { return c.LowPct }))
	p.with("9 in 10: highest", ExpectedEnd, course(s.Course, func(c ahead.Course) float64 { return c.TopPct }))
	return p
}

func course(days []ahead.Course, pct func(ahead.Course) float64) []Point {
	return lists.Each(days, func(c ahead.Course) Point {
		t := time.Unix(int64(c.Day)*86400, 0).UTC()
		return Point{
			At: evidence.Time{Written: c.Day.String(), First: t, Last: t},
			Y:  evidence.Typed(strconv.FormatFloat(pct(c), 'f', 1, 64), evidence.RH),
		}
	})
}
