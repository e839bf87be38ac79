package hints

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
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

// Points is what the search for oddities looks up: the points of each area in
// the order of their names, areas whose readings of one kind are the same, and
// each instrument's points by the minute and, of holes, in the order of time.
type Points struct {
	points  map[string][]point
	alike   map[string][]string
	minutes map[string][]point
	probed  map[string][]point
}

// PointsOf are the points of a record, given the names of its areas.
func PointsOf(holes []slab.Hole, pieces []wood.Row, areas []string) Points {
	all := slices.Concat(lists.Each(holes, func(h slab.Hole) point {
		return point{"hole", h.Hole, h.Area, h.ReadAt, h.RH, h.X, h.Y, h.Instrument}
	}), lists.Each(pieces, func(r wood.Row) point {
		return point{r.Of, r.Piece, r.Area, r.ReadAt, r.Reading, r.X, r.Y, r.Instrument}
	}))
	slices.SortStableFunc(all, func(a, b point) int {
		return cmp.Or(strings.Compare(a.kind, b.kind), evidence.Order(a.name, b.name), a.at.First.Compare(b.at.First))
	})
	d := Points{points: evidence.ByKey(all, func(p point) string { return p.area }), alike: map[string][]string{}}
	for _, id := range areas {
		for _, kind := range kindsOfPoints() {
			if s := series(d.points[evidence.Key(id)], kind); len(s) >= fewest {
				key := likeness(kind, s)
				d.alike[key] = append(d.alike[key], id)
			}
		}
	}
	timed := slices.DeleteFunc(all, func(p point) bool { return !p.at.Shown() || p.instrument == "" })
	slices.SortStableFunc(timed, func(a, b point) int { return a.at.First.Compare(b.at.First) })
	d.minutes = evidence.ByKey(firstOfAreas(timed), point.minute)
	d.probed = evidence.ByKey(lists.Where(timed, func(p point) bool { return p.kind == "hole" }),
		func(p point) string { return p.instrument })
	return d
}

// firstOfAreas are the first points of each instrument, minute and area.
func firstOfAreas(timed []point) []point {
	seen := map[string]bool{}
	return lists.Where(timed, func(p point) bool {
		key := p.minute() + "\x00" + p.area
		known := seen[key]
		seen[key] = true
		return !known
	})
}

func kindsOfPoints() []string { return []string{"flooring", "hole", "joist", "subfloor"} }

func likeness(kind string, readings []string) string { return kind + " " + strings.Join(readings, " ") }

// minute is the instrument of a point and the minute it was read in.
func (p point) minute() string {
	return p.instrument + " " + p.at.First.Truncate(time.Minute).UTC().Format(time.RFC3339)
}

// Looks are what an honest record seldom shows. It advises and accuses
// nobody: there may be a good reason.
func (a Area) Looks() []string {
	mine := a.Points.points[evidence.Key(a.ID)]
	return slices.Concat(a.copiedRows(mine), a.twoPlacesAtOnce(mine), sameDigits(mine), a.coordinates(mine), a.WrongSalts())
}

// fewest is how many readings make a likeness worth a word.
const fewest = 5

// copiedRows finds areas whose readings of one kind are this area's, one by
// one.
func (a Area) copiedRows(mine []point) []string {
	var looks []string
	for _, kind := range kindsOfPoints() {
		readings := series(mine, kind)
		for _, other := range a.Points.alike[likeness(kind, readings)] {
			if !evidence.Same(other, a.ID) {
				looks = append(looks, fmt.Sprintf("all %d %s readings equal those of area %s, one by one",
					len(readings), kind, other))
			}
		}
	}
	return looks
}

func series(points []point, kind string) []string {
	read := lists.Where(points, func(p point) bool { return p.kind == kind && p.reading.Shown() })
	return lists.Each(read, func(p point) string { return p.reading.Value.String() })
}

// twoPlacesAtOnce finds an instrument that was read in another area in the
// same minute, and a probe that was read in two holes within 30 minutes.
func (a Area) twoPlacesAtOnce(mine []point) []string {
	var looks []string
	tell := func(p, q point) {
		looks = append(looks, fmt.Sprintf("instrument %s was read at %s %s and at %s %s of area %s within %d min",
			p.instrument, p.kind, p.name, q.kind, q.name, q.area, int(q.at.First.Sub(p.at.First).Abs().Minutes())))
	}
	for _, p := range mine {
		if len(looks) >= fewest {
			break
		}
		if !p.at.Shown() || p.instrument == "" {
			continue
		}
		together := a.Points.minutes[evidence.Key(p.minute())]
		if i := slices.IndexFunc(together, func(q point) bool { return !evidence.Same(q.area, p.area) }); i >= 0 {
			tell(p, together[i])
		} else if q, found := a.neighbor(p); found {
			tell(p, q)
		}
	}
	return looks
}

// neighbor is the hole that a probe was read in just before or after another,
// less than 30 minutes away.
func (a Area) neighbor(p point) (q point, found bool) {
	if p.kind != "hole" {
		return q, false
	}
	all := a.Points.probed[evidence.Key(p.instrument)]
	at, _ := slices.BinarySearchFunc(all, p, func(a, b point) int { return a.at.First.Compare(b.at.First) })
	for _, q := range all[max(0, at-1):min(len(all), at+2)] {
		other := !evidence.Same(q.area, p.area) || !evidence.Same(q.name, p.name)
		if other && q.at.First.Sub(p.at.First).Abs() < 30*time.Minute {
			return q, true
		}
	}
	return q, false
}

// sameDigits finds readings of one kind that are all equal, or all end in one
// digit.
func sameDigits(mine []point) []string {
	var looks []string
	for _, kind := range kindsOfPoints() {
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
func (a Area) coordinates(mine []point) []string {
	var xs, ys []evidence.Exact
	for _, p := range mine {
		if p.x.Shown() && p.y.Shown() {
			xs, ys = append(xs, p.x.In(evidence.Foot)), append(ys, p.y.In(evidence.Foot))
		}
	}
	if len(xs) < 3 || !a.Size.Shown() {
		return nil
	}
	wide, deep := reach(xs), reach(ys)
	box, size := wide.Mul(deep), a.Size.In(evidence.SquareFoot)
	span := fmt.Sprintf("the %d places on the plan span %s ft by %s ft", len(xs), wide.Fixed(1), deep.Fixed(1))
	switch {
	case box.Mul(evidence.Whole(10)).Cmp(size) < 0:
		return []string{span + ", less than a tenth of " + a.Size.String() + ": they are bunched"}
	case box.Cmp(size.Mul(evidence.Ratio(3, 2))) > 0:
		return []string{span + ", which contradicts a size of " + a.Size.String()}
	}
	return nil
}

func reach(xs []evidence.Exact) evidence.Exact {
	return slices.MaxFunc(xs, evidence.Exact.Cmp).Sub(slices.MinFunc(xs, evidence.Exact.Cmp))
}
