package slab

import (
	"slices"

	"firstboard/report/evidence"
)

// sorted are the rows of a floor, by table and thing.
type sorted struct {
	holes, discarded gathered[Hole]
	dishes           gathered[Dish]
	phs              gathered[PH]
	carbides         gathered[Carbide]
}

// Sorted is the floor with its rows sorted once for all checks. Nothing of it
// may be changed after that.
func (f Floor) Sorted() Floor {
	s := f.sort()
	f.sorted = &s
	return f
}

func (f Floor) rows() sorted {
	if f.sorted != nil {
		return *f.sorted
	}
	return f.sort()
}

// sort parts the holes out of use from the others: water does not undo what
// they read.
func (f Floor) sort() sorted {
	in, out := make([]Hole, 0, len(f.Holes)), []Hole(nil)
	discarded := map[[2]string]bool{}
	for _, h := range f.Holes {
		if h.Discarded != "" {
			discarded[holeKey(h)] = true
		}
	}
	for _, h := range f.Holes {
		if discarded[holeKey(h)] {
			out = append(out, h)
		} else {
			in = append(in, h)
		}
	}
	return sorted{
		holes:     gather(f, in, holeTable(), f.water()),
		discarded: gather(f, out, holeTable(), reset{}),
		dishes:    gather(f, f.Dishes, dishTable(), f.water()),
		phs:       gather(f, f.PHs, phTable(), f.surface()),
		carbides:  gather(f, f.Carbides, carbideTable(), f.water()),
	}
}

func holeKey(h Hole) [2]string { return [2]string{evidence.Key(h.Area), evidence.Key(h.Hole)} }

// JudgedHoles are the holes that count, with their judged rows.
func (f Floor) JudgedHoles() []evidence.Judged[Hole] { return f.rows().holes.judged() }

// DiscardedHoles are the holes out of use, with their latest rows.
func (f Floor) DiscardedHoles() []evidence.Judged[Hole] { return f.rows().discarded.judged() }

// Discard is a hole out of use: why, and its highest readings with those that
// do not say what was read.
type Discard struct {
	Name    string
	Words   []string
	Highest []Hole
}

// Discards are the holes out of use, in their order.
func (f Floor) Discards() []Discard {
	var all []Discard
	for _, hole := range f.rows().discarded.groups {
		out := Discard{Name: hole.Name, Highest: highestOf(hole)}
		for _, h := range hole.all() {
			if h.Discarded != "" && !slices.Contains(out.Words, h.Discarded) {
				out.Words = append(out.Words, h.Discarded)
			}
		}
		slices.Sort(out.Words)
		all = append(all, out)
	}
	return all
}

// NameOf is the name of a row's hole, with its area where that is another.
func (f Floor) NameOf(h Hole) string {
	return group[Hole]{own: evidence.Same(h.Area, f.Area)}.called(h.Hole, h.Area)
}

// JudgedDishes are the dishes that count, with their judged rows.
func (f Floor) JudgedDishes() []evidence.Judged[Dish] { return f.rows().dishes.judged() }

// JudgedPH are the pH spots that count, with their judged rows.
func (f Floor) JudgedPH() []evidence.Judged[PH] { return f.rows().phs.judged() }

// JudgedCarbides are the carbide spots that count, with their judged rows.
func (f Floor) JudgedCarbides() []evidence.Judged[Carbide] { return f.rows().carbides.judged() }
