package acclimate

import (
	"cmp"
	"fmt"
	"strings"

	"firstboard/report/evidence"
)

// summary is what the rows of a window come to: of each quantity the values
// that can be the worst, so that a long log costs no more than a short one.
type summary struct {
	gauges  []*gauge
	rows    map[*gauge]*extremes
	judged  int // rows
	broken  int // rows
	excused int // runs
	worst   outlier
}

// extremes are the lowest and the highest row of one quantity, in each unit,
// of those that break the limit and those that meet it, the first places of the
// broken, and the rows that cannot be compared.
type extremes struct {
	broken, good map[evidence.Unit]*reach
	some         []*Air // the first that break the limit
	lacking      []*Air // the first that cannot be compared
}

// reach is the lowest and the highest of a quantity's rows, or the first and the last.
type reach struct{ low, high *Air }

// outlier is a value out of range: how far, as a part of what may be excused.
type outlier struct {
	row *Air
	by  *gauge
	far evidence.Exact
}

// few is how many rows stand for many of a kind.
const few = 8

func (s *summary) judge(rows ...*Air) {
	for _, a := range rows {
		s.judged++
		var all mark
		for _, g := range s.gauges {
			m := g.mark(a)
			all |= m
			s.extremesOf(g).add(g, a, m)
		}
		if all&breaks != 0 {
			s.broken++
		}
	}
}

func (s *summary) extremesOf(g *gauge) *extremes {
	if s.rows[g] == nil {
		s.rows[g] = &extremes{broken: map[evidence.Unit]*reach{}, good: map[evidence.Unit]*reach{}}
	}
	return s.rows[g]
}

func (e *extremes) add(g *gauge, a *Air, m mark) {
	switch {
	case m&breaks != 0:
		widen(e.broken, g, a)
		if len(e.some) < few {
			e.some = append(e.some, a)
		}
	case m&lacking != 0:
		if len(e.lacking) < few {
			e.lacking = append(e.lacking, a)
		}
	default:
		widen(e.good, g, a)
	}
}

// widen takes a row in where it is lower than the lowest or higher than the
// highest; of equal ones the earliest stays, whatever the order of rows.
func widen(to map[evidence.Unit]*reach, g *gauge, a *Air) {
	r := to[g.read(a).Unit]
	if r == nil {
		to[g.read(a).Unit] = &reach{a, a}
		return
	}
	if less(g, a, r.low, -1) {
		r.low = a
	}
	if less(g, a, r.high, 1) {
		r.high = a
	}
}

// less says whether a comes before b: by its value on that side, then by time
// and by what was written. Instruments come in the order of their names.
func less(g *gauge, a, b *Air, side int) bool {
	if c := order(g.read(a).Value, g.read(b).Value); c != 0 {
		return c == side
	}
	return cmp.Or(earlier(a, b), strings.Compare(g.read(a).Written, g.read(b).Written)) < 0
}

// excuse keeps the worst value of a run that is excused.
func (s *summary) excuse(rows ...*Air) {
	s.excused++
	for _, a := range rows {
		for _, g := range s.gauges {
			if far := g.outside(a).Over(g.far); s.worst.row == nil || far.Cmp(s.worst.far) > 0 {
				s.worst = outlier{a, g, far}
			}
		}
	}
}

// outside is how far a row's value lies outside the limit as read, in the
// limit's unit; below zero it lies inside.
func (g *gauge) outside(a *Air) evidence.Exact {
	value, unit := g.read(a).In(g.limit.Unit()), g.limit.Unit()
	var far evidence.Exact
	if g.limit.Least.Shown() {
		far = g.limit.Least.Number.In(unit).Sub(value)
	}
	if g.limit.Most.Shown() {
		if over := value.Sub(g.limit.Most.Number.In(unit)); !g.limit.Least.Shown() || over.Cmp(far) > 0 {
			far = over
		}
	}
	return far
}

// items are the values that decide, as judged values.
func (s *summary) items() []evidence.Item {
	var items []evidence.Item
	for _, g := range s.gauges {
		e := s.extremesOf(g)
		seen := map[*Air]bool{}
		add := func(item func(*Air) evidence.Item, rows ...*Air) {
			for _, a := range rows {
				if !seen[a] {
					seen[a] = true
					items = append(items, item(a))
				}
			}
		}
		for _, values := range []map[evidence.Unit]*reach{e.broken, e.good} {
			for _, u := range []evidence.Unit{evidence.Fahrenheit, evidence.Celsius, evidence.RH} {
				if r := values[u]; r != nil {
					add(g.told, r.low, r.high)
				}
			}
		}
		add(g.told, e.some...)
		add(g.held, e.lacking...)
	}
	return items
}

// says tells how many rows were judged and how many runs excused, with the
// worst value in those.
func (s *summary) says(longest evidence.Reading) string {
	text := ", " + evidence.Count(s.judged, "row", "rows")
	if s.broken > 0 {
		text += fmt.Sprintf(", %d of them out of range", s.broken)
	}
	if s.excused == 0 {
		return text
	}
	text += fmt.Sprintf("; excused: %s of at most %s h, the worst value %s at %s",
		evidence.Count(s.excused, "excursion", "excursions"), longest.Written, s.worst.by.read(s.worst.row),
		s.worst.row.ReadAt.Written)
	if p := s.worst.row.Place; p != nil {
		text += " (" + evidence.RowOf(p) + ")"
	}
	return text
}
