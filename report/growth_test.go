package report_test

import (
	"fmt"
	"testing"

	"firstboard/report"
	"firstboard/report/evidence"
)

// many is a record so many times as long: of areas, of holes of one area, of
// its boards, of its surfaces, or of checks of its probe.
func many(of string, n int) report.Job {
	j := small()
	switch of {
	case "areas":
		a, h, w := j.Areas[0], j.Holes[0], j.Wood[0]
		for i := range n {
			a.ID = fmt.Sprint("A", i+2)
			h.Area, w.Area = a.ID, a.ID
			j.Areas, j.Holes, j.Wood = append(j.Areas, a), append(j.Holes, h), append(j.Wood, w)
		}
	case "holes":
		h := j.Holes[0]
		for i := range n {
			h.Hole, h.X, h.Y = fmt.Sprint("H", i+2), num(float64(i%100), evidence.Foot), num(float64(i/100), evidence.Foot)
			j.Holes = append(j.Holes, h)
		}
	case "boards":
		w := j.Wood[0]
		for i := range n {
			w.Piece = fmt.Sprint("B", i+2)
			j.Wood = append(j.Wood, w)
		}
	case "surfaces":
		s := j.Surfaces[0]
		for i := range n {
			s.Spot = fmt.Sprint("S", i+2)
			j.Surfaces = append(j.Surfaces, s)
		}
	case "checks":
		for i := range n {
			j.Checks = append(j.Checks, check("RP1", -60-float64(i), 75, 75), check("PM1", -60-float64(i), 12, 12))
		}
	}
	return j
}

// Judging takes n and 4 n of each kind of row: 4 n takes under 6 times n.
func BenchmarkJudge(b *testing.B) {
	for _, of := range []string{"areas", "holes", "boards", "surfaces", "checks"} {
		for _, n := range []int{500, 2000} {
			j := many(of, n)
			b.Run(fmt.Sprintf("%s/%d", of, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					report.Judge(j)
				}
			})
		}
	}
}
