package outlook

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// kind is a kind of thing that is measured.
type kind int

// The kinds, in the order of the checks.
const (
	aHole kind = iota
	aDish
	aPH
	aCM
	aPiece
	aBoard
)

// words are what one and several of a kind are called.
func (k kind) words() (one, many string) {
	w := [...][2]string{
		aHole: {"hole", "holes"}, aDish: {"dish", "dishes"}, aPH: {"pH spot", "pH spots"},
		aCM: {"carbide spot", "carbide spots"}, aPiece: {"subfloor piece", "subfloor pieces"}, aBoard: {"board", "boards"},
	}[k]
	return w[0], w[1]
}

// id names a thing: the keys of its area, lot and name.
type id struct {
	kind            kind
	area, lot, name string
}

func idOf(k kind, area, lot, name string) id {
	return id{k, evidence.Key(area), evidence.Key(lot), evidence.Key(name)}
}

// measured is one hole, dish, spot, piece or board: what it is called, when it was
// read, and the rows of it that have a place.
type measured struct {
	id
	lotName, name string
	first, last   time.Time // of its judged rows, and of all
	places        []evidence.Place
	alike         string // the same for things that are judged alike as parts of a mean
}

// allMeasured are the things of an area that were measured and not discarded,
// kind by kind, in the order a person lists them.
func allMeasured(s report.Site) []measured {
	all := slices.Concat(
		grouped(s.Slab.Holes, holeRow), grouped(s.Slab.Dishes, dishRow),
		grouped(s.Slab.PHs, func(r slab.PH) seen {
			return seen{idOf(aPH, r.Area, "", r.Spot), "", r.Spot, r.ReadAt, r.ReadAt, r.Place}
		}),
		grouped(s.Slab.Carbides, func(r slab.Carbide) seen {
			return seen{idOf(aCM, r.Area, "", r.Spot), "", r.Spot, r.ReadAt, r.ReadAt, r.Place}
		}),
		grouped(s.Wood.Of(wood.OfSubfloor), woodRow), grouped(s.Wood.Of(wood.OfFlooring), woodRow),
	)
	gone := map[id]bool{}
	for _, h := range s.Slab.Holes {
		if h.Discarded != "" {
			gone[holeRow(h).of] = true
		}
	}
	all = slices.DeleteFunc(all, func(m measured) bool { return gone[m.id] })
	began, alike := beginnings(s), likenesses(s.Wood)
	for i, m := range all {
		all[i].first, all[i].alike = began[m.id], alike[m.id]
	}
	return all
}

// seen is one row of a thing.
type seen struct {
	of        id
	lot, name string
	from, at  evidence.Time
	place     evidence.Place
}

func holeRow(h slab.Hole) seen {
	return seen{idOf(aHole, h.Area, "", h.Hole), "", h.Hole, h.ReadAt, h.ReadAt, h.Place}
}

func dishRow(d slab.Dish) seen {
	return seen{idOf(aDish, d.Area, "", d.Dish), "", d.Dish, d.SetAt, d.RetrievedAt, d.Place}
}

func woodRow(r wood.Row) seen {
	s := seen{ofWood(r), "", r.Piece, r.ReadAt, r.ReadAt, r.Place}
	if s.of.kind == aBoard {
		s.lot = r.Lot
	}
	return s
}

// grouped gathers rows into things.
func grouped[T any](rows []T, see func(T) seen) []measured {
	things := lists.Groups(lists.Each(rows, see), func(row seen) id { return row.of })
	all := lists.Each(things, func(rows []seen) measured {
		m := measured{id: rows[0].of, lotName: evidence.Tidy(rows[0].lot), name: evidence.Tidy(rows[0].name)}
		for _, row := range rows {
			if row.at.Shown() && row.at.Last.After(m.last) {
				m.last = row.at.Last
			}
			if row.place != nil {
				m.places = append(m.places, row.place)
			}
		}
		return m
	})
	slices.SortStableFunc(all, func(a, b measured) int {
		return cmp.Or(evidence.Order(a.lotName, b.lotName), evidence.Order(a.name, b.name))
	})
	return all
}

// beginnings are when the judged rows of things began.
func beginnings(s report.Site) map[id]time.Time {
	all := map[id]time.Time{}
	see := func(row seen) {
		if was, known := all[row.of]; row.from.Shown() && (!known || row.from.First.Before(was)) {
			all[row.of] = row.from.First
		}
	}
	eachRow(s.Slab.JudgedHoles(), func(h slab.Hole) { see(holeRow(h)) })
	eachRow(s.Slab.JudgedDishes(), func(d slab.Dish) { see(dishRow(d)) })
	eachRow(s.Wood.Pieces(wood.OfSubfloor), func(r wood.Row) { see(woodRow(r)) })
	for _, lot := range s.Wood.Lots() {
		eachRow(lot.Boards, func(r wood.Row) { see(woodRow(r)) })
	}
	return all
}

func eachRow[T any](things []evidence.Judged[T], see func(T)) {
	for _, thing := range things {
		for _, r := range thing.Rows {
			see(r)
		}
	}
}

// likenesses tell pieces and boards whose judged values are the same apart from
// others: a mean cannot tell them apart either.
func likenesses(f wood.Floor) map[id]string {
	all := map[id]string{}
	see := func(r wood.Row) {
		row := woodRow(r)
		all[row.of] += fmt.Sprintf("%d %q %s %s %q;", row.of.kind, row.of.lot, r.Moisture().Value().Text(), r.Method,
			evidence.Key(r.Instrument))
	}
	eachRow(f.Pieces(wood.OfSubfloor), see)
	for _, lot := range f.Lots() {
		eachRow(lot.Boards, see)
	}
	return all
}

// census is how many things of each kind there are, and of each kind and lot the
// first and the last time of reading with the number of things that share it.
type census struct {
	count       map[kind]int
	first, last map[id]extreme
}

// extreme is a time, and how many things have it.
type extreme struct {
	at time.Time
	n  int
}

func (e *extreme) take(t time.Time, before bool) {
	switch {
	case e.n == 0 || t.Before(e.at) == before && !t.Equal(e.at):
		*e = extreme{t, 1}
	case t.Equal(e.at):
		e.n++
	}
}

func censusOf(all []measured) census {
	c := census{map[kind]int{}, map[id]extreme{}, map[id]extreme{}}
	for _, m := range all {
		c.count[m.kind]++
		of := m.ofLot()
		first, last := c.first[of], c.last[of]
		first.take(m.first, true)
		last.take(m.last, false)
		c.first[of], c.last[of] = first, last
	}
	return c
}

// ofLot names the kind and the lot of a thing alone.
func (m measured) ofLot() id { return id{kind: m.kind, lot: m.lot} }

// spares says whether a thing is left out in turn: another of its kind stays. Of
// spots of pH and carbide two are asked for together with their limit.
func (c census) spares(m measured) bool { return m.kind != aPH && m.kind != aCM && c.count[m.kind] > 1 }

// isEdge says whether a thing by itself was read first or last of its kind and
// lot.
func (c census) isEdge(m measured) bool {
	first, last := c.first[m.ofLot()], c.last[m.ofLot()]
	return first.n == 1 && m.first.Equal(first.at) || last.n == 1 && m.last.Equal(last.at)
}
