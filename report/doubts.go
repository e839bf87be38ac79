package report

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"firstboard/report/evidence"
)

// point is one reading as the search for oddities sees it.
type point struct {
	kind       string // "hole", "board"
	name       string
	area       string
	at         evidence.Time
	reading    evidence.Reading
	x, y       evidence.Reading
	instrument string
}

// points are the readings of holes and wood of the whole job, in the order of
// their names, so that the order of rows never matters.
func (j Job) points() []point {
	var all []point
	for _, h := range j.Holes {
		all = append(all, point{"hole", h.Hole, h.Area, h.ReadAt, h.RH, h.X, h.Y, h.Instrument})
	}
	for _, r := range j.Wood {
		all = append(all, point{r.Of, r.Piece, r.Area, r.ReadAt, r.Reading, r.X, r.Y, r.Instrument})
	}
	slices.SortStableFunc(all, func(a, b point) int {
		if c := strings.Compare(a.kind, b.kind); c != 0 {
			return c
		}
		if c := evidence.Order(a.name, b.name); c != 0 {
			return c
		}
		return a.at.First.Compare(b.at.First)
	})
	return all
}

// worthALook is what an honest record seldom shows. It advises and accuses
// nobody: there may be a good reason.
func (s Site) worthALook() []string {
	points := s.Job.points()
	mine := of(points, s.Area.ID, func(p point) string { return p.area })
	var looks []string
	looks = append(looks, s.copiedRows(points, mine)...)
	looks = append(looks, s.twoPlacesAtOnce(points, mine)...)
	looks = append(looks, sameDigits(mine)...)
	looks = append(looks, s.coordinates(mine)...)
	return looks
}

// fewest is how many readings make a likeness worth a word.
const fewest = 5

// copiedRows finds areas whose readings of one kind are this area's, one by
// one.
func (s Site) copiedRows(all, mine []point) []string {
	var looks []string
	for _, other := range s.Job.Areas {
		if evidence.Same(other.ID, s.Area.ID) {
			continue
		}
		theirs := of(all, other.ID, func(p point) string { return p.area })
		for _, kind := range []string{"flooring", "hole", "joist", "subfloor"} {
			a, b := series(mine, kind), series(theirs, kind)
			if len(a) >= fewest && slices.Equal(a, b) {
				looks = append(looks, fmt.Sprintf("all %d %s readings equal those of area %s, one by one", len(a), kind, other.ID))
			}
		}
	}
	return looks
}

func series(points []point, kind string) []string {
	var readings []string
	for _, p := range points {
		if p.kind == kind && p.reading.Shown() {
			readings = append(readings, p.reading.Value.String())
		}
	}
	return readings
}

// twoPlacesAtOnce finds an instrument that was read in another area in the
// same minute, and a probe that was read in two holes within 30 minutes.
func (s Site) twoPlacesAtOnce(all, mine []point) []string {
	var looks []string
	for _, p := range mine {
		for _, q := range all {
			apart := p.at.First.Sub(q.at.First).Abs()
			if apart >= 30*time.Minute || !p.at.Shown() || !q.at.Shown() || p.instrument == "" || !evidence.Same(p.instrument, q.instrument) {
				continue
			}
			elsewhere := !evidence.Same(p.area, q.area)
			otherHole := p.kind == "hole" && q.kind == "hole" && (elsewhere || !evidence.Same(p.name, q.name))
			if elsewhere && apart < time.Minute || otherHole {
				looks = append(looks, fmt.Sprintf("instrument %s was read at %s %s and at %s %s of area %s within %d min",
					p.instrument, p.kind, p.name, q.kind, q.name, q.area, int(apart.Minutes())))
			}
		}
	}
	return looks[:min(len(looks), fewest)]
}

// sameDigits finds readings of one kind that are all equal, or all end in one
// digit.
func sameDigits(mine []point) []string {
	var looks []string
	for _, kind := range []string{"flooring", "hole", "joist", "subfloor"} {
		values := series(mine, kind)
		last := map[byte]bool{}
		for _, v := range values {
			last[v[len(v)-1]] = true
		}
		same := len(values) >= fewest && len(slices.Compact(slices.Clone(values))) == 1
		switch {
		case same:
			looks = append(looks, fmt.Sprintf("all %d %s readings are %s", len(values), kind, values[0]))
		case len(values) >= 2*fewest && len(last) == 1:
			looks = append(looks, fmt.Sprintf("all %d %s readings end in one digit", len(values), kind))
		}
	}
	return looks
}

// coordinates finds places bunched in one corner, and a span that contradicts
// the size.
func (s Site) coordinates(mine []point) []string {
	var xs, ys []evidence.Exact
	for _, p := range mine {
		if p.x.Shown() && p.y.Shown() {
			xs, ys = append(xs, p.x.In(evidence.Foot)), append(ys, p.y.In(evidence.Foot))
		}
	}
	if len(xs) < 3 || !s.Area.Size.Shown() {
		return nil
	}
	wide, deep := reach(xs), reach(ys)
	box, size := wide.Mul(deep), s.Area.Size.In(evidence.SquareFoot)
	span := fmt.Sprintf("the %d places on the plan span %s ft by %s ft", len(xs), wide.Fixed(1), deep.Fixed(1))
	switch {
	case box.Mul(evidence.Whole(10)).Cmp(size) < 0:
		return []string{span + ", less than a tenth of " + s.Area.Size.String() + ": they are bunched"}
	case box.Cmp(size.Mul(evidence.Ratio(3, 2))) > 0:
		return []string{span + ", which contradicts a size of " + s.Area.Size.String()}
	}
	return nil
}

func reach(xs []evidence.Exact) evidence.Exact {
	return slices.MaxFunc(xs, evidence.Exact.Cmp).Sub(slices.MinFunc(xs, evidence.Exact.Cmp))
}
