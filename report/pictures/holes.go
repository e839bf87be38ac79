package pictures

import (
	"slices"
	"strconv"
	"time"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
)

// holesOf is the reading of each hole beside the limit.
func holesOf(s report.Site) Picture {
	p := Picture{
		Shows: HoleReadings, Title: "Relative humidity of each hole against its limit (% RH)",
		X: "hole", Y: "relative humidity (%)", Unit: evidence.RH,
	}
	if s.Slab.NoHoles != "" {
		return p
	}
	judged, lacking := holePoints(s.Slab.JudgedHoles())
	out, unread := holePoints(s.Slab.DiscardedHoles())
	p.with("judged", Judged, judged)
	p.with("discarded", Discarded, out)
	p.ends("", s.Slab.RH, evidence.RH)
	p.leftOut(append(lacking, unread...))
	if s.Slab.Isolated {
		p.Notes = append(p.Notes, "the membrane's manufacturer asks for no limit: the holes are advice")
	}
	if s.Slab.Acceptance.Guarded {
		p.Notes = append(p.Notes, "acceptance is guarded: the uncertainty of the probe counts on top of the reading")
	}
	return p
}

// holePoints are the judged readings of holes, and what has none.
func holePoints(holes []evidence.Judged[slab.Hole]) (points []Point, lacking []string) {
	for _, hole := range holes {
		if len(hole.Rows) == 0 {
			lacking = append(lacking, hole.Name+" ("+evidence.WetSince+")")
		}
		var read []Point
		for _, h := range hole.Rows {
			switch {
			case !h.RH.Shown():
				lacking = append(lacking, hole.Name+" (no reading)")
			case !h.ReadAt.Shown():
				lacking = append(lacking, hole.Name+" ("+evidence.NoTime+")")
			default:
				read = append(read, Point{Name: hole.Name, At: h.ReadAt, Y: h.RH})
			}
		}
		slices.SortStableFunc(read, inTime)
		points = append(points, read...)
	}
	return points, lacking
}

// mostLines is how many lines of one picture can be told apart.
const mostLines = 9

// dryingOf is how each hole dried, where any was read more than once.
func dryingOf(s report.Site) Picture {
	p := Picture{
		Shows: DryingHistory, Title: "Relative humidity of each hole over time (% RH)",
		X: "read at", Y: "relative humidity (%)", Unit: evidence.RH,
	}
	if s.Slab.NoHoles != "" {
		return p
	}
	out := map[string]bool{}
	for _, hole := range s.Slab.DiscardedHoles() {
		out[evidence.Key(hole.Name)] = true
	}
	all := linesOf(s.Slab.Holes, s.Slab.NameOf, func(h slab.Hole) Point {
		return Point{At: h.ReadAt, Y: h.RH}
	})
	if !slices.ContainsFunc(all, func(s Series) bool { return len(s.Points) > 1 }) {
		return p
	}
	for _, line := range told(all, mostLines, "hole") {
		if out[evidence.Key(line.Name)] && line.Role == Judged {
			line.Role, line.Name = Discarded, line.Name+" (discarded)"
		}
		p.with(line.Name, line.Role, line.Points)
	}
	if n := len(p.Series); n > 0 && p.Series[n-1].Role == Others {
		p.Notes = append(p.Notes, "named are the holes that read highest last")
	}
	p.ends("", s.Slab.RH, evidence.RH)
	return p
}

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
