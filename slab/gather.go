package slab

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// table is what gathering needs to know of the rows of one table.
type table[T any] struct {
	title      string // of the table in the record
	area, name func(T) string
	began, at  func(T) evidence.Time // a dish begins when it is set
	recounts   bool                  // rows of the 24 h before the judged one count as well
}

// reset is what leaves the rows before it unjudged: water, or a leveler.
type reset struct {
	at           time.Time
	unused, gone string
}

// group is one thing of a table: the rows that are judged, those of the 24 h
// before which count as well, and the rest.
type group[T any] struct {
	evidence.Judged[T]
	area        string // as it is compared
	own         bool
	recent, old []T
}

// gathered are the rows of one table, by thing.
type gathered[T any] struct {
	groups          []group[T]
	before, covered int // rows before the reset, and after the slab was covered
	reset           reset
}

// gather sorts rows into things and says which are judged. A thing keeps its
// name where the reset left it without a row; one whose every row came after
// the slab was covered is none.
func gather[T any](f Floor, rows []T, t table[T], since reset) gathered[T] {
	g := gathered[T]{reset: since}
	index, own := map[[2]string]int{}, evidence.Key(f.Area)
	for _, r := range rows {
		if f.Covered.Shown() && t.at(r).Shown() && t.at(r).Day() > f.Covered.Day {
			g.covered++
			continue
		}
		area := evidence.Key(t.area(r))
		key := [2]string{area, evidence.Key(t.name(r))}
		i, known := index[key]
		if !known {
			i = len(g.groups)
			index[key] = i
			g.groups = append(g.groups, group[T]{area: area, own: area == own})
			g.groups[i].Name = g.groups[i].called(t.name(r), t.area(r))
		}
		g.groups[i].Name = min(g.groups[i].Name, g.groups[i].called(t.name(r), t.area(r)))
		if t.at(r).Shown() && t.began(r).First.Before(since.at) {
			g.before++
			continue
		}
		g.groups[i].Rows = append(g.groups[i].Rows, r)
	}
	for i := range g.groups {
		g.groups[i].part(t)
	}
	slices.SortFunc(g.groups, func(a, b group[T]) int {
		if a.own == b.own {
			return evidence.Order(a.Name, b.Name)
		}
		if a.own {
			return -1
		}
		return 1
	})
	return g
}

// called is the name of a thing, with its area where that is another.
func (g group[T]) called(name, area string) string {
	if g.own {
		return evidence.Tidy(name)
	}
	return evidence.Tidy(name) + " of " + evidence.Tidy(area)
}

// part parts the rows of a thing: the latest, all that tie with it and all
// without a time, which may be the latest; then those of the 24 h before.
func (g *group[T]) part(t table[T]) {
	all, last := g.Rows, evidence.Last(g.Rows, t.at)
	g.Rows = nil
	for _, r := range all {
		switch at := t.at(r); {
		case !at.Shown() || !at.First.Before(last.First):
			g.Rows = append(g.Rows, r)
		case t.recounts && last.First.Sub(at.First) <= evidence.Again:
			g.recent = append(g.recent, r)
		default:
			g.old = append(g.old, r)
		}
	}
}

// all are the rows of a thing that are not cut off by a reset.
func (g group[T]) all() []T { return slices.Concat(g.Rows, g.recent, g.old) }

// judged are the things with the rows that every check judges.
func (g gathered[T]) judged() []evidence.Judged[T] {
	things := make([]evidence.Judged[T], len(g.groups))
	for i, thing := range g.groups {
		things[i] = thing.Judged
	}
	return things
}

// items are the judged values of things, unusable where a reset left a thing
// without a row.
func (g gathered[T]) items(t table[T], measure func(name string, row T) evidence.Item) []evidence.Item {
	items := evidence.Items(g.judged(), t.at, measure)
	for i := range items {
		if items[i].Lack == evidence.WetSince {
			items[i].Lack = g.reset.gone
		}
	}
	return items
}

// recents are the values of the rows of the 24 h before the judged ones.
func (g gathered[T]) recents(t table[T], measure func(name string, row T) evidence.Item) []evidence.Item {
	var items []evidence.Item
	for _, thing := range g.groups {
		for _, r := range thing.recent {
			items = append(items, measure(thing.Name+" at "+t.at(r).Written, r))
		}
	}
	return items
}

// water is the latest wetting.
func (f Floor) water() reset { return reset{f.Wet, "before water", evidence.WetSince} }

// surface is the latest wetting or the latest leveler, whichever came last.
func (f Floor) surface() reset {
	if f.Leveled.After(f.Wet) {
		return reset{f.Leveled, "before a leveler was placed", "not read again since a leveler was placed"}
	}
	return f.water()
}

func holeTable() table[Hole] {
	return table[Hole]{
		title: "Slab RH", recounts: true,
		area: func(h Hole) string { return h.Area }, name: func(h Hole) string { return h.Hole },
		began: holeTime, at: holeTime,
	}
}

func dishTable() table[Dish] {
	return table[Dish]{
		title: "Slab MVER",
		area:  func(d Dish) string { return d.Area }, name: func(d Dish) string { return d.Dish },
		began: dishBegan, at: dishTime,
	}
}

func phTable() table[PH] {
	return table[PH]{
		title: "Slab pH", recounts: true,
		area: func(r PH) string { return r.Area }, name: func(r PH) string { return r.Spot },
		began: phTime, at: phTime,
	}
}

func carbideTable() table[Carbide] {
	return table[Carbide]{
		title: "Slab CM", recounts: true,
		area: func(r Carbide) string { return r.Area }, name: func(r Carbide) string { return r.Spot },
		began: carbideTime, at: carbideTime,
	}
}

func holeTime(h Hole) evidence.Time       { return h.ReadAt }
func phTime(r PH) evidence.Time           { return r.ReadAt }
func carbideTime(r Carbide) evidence.Time { return r.ReadAt }
func dishTime(d Dish) evidence.Time       { return d.RetrievedAt }

// dishBegan is when a dish was set, or where that is blank, retrieved: one that
// lay on the slab when water came counts as read before it.
func dishBegan(d Dish) evidence.Time {
	if d.SetAt.Shown() {
		return d.SetAt
	}
	return d.RetrievedAt
}
