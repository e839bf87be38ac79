package slab

import "firstboard/report/evidence"

// Unused are the rows that were read and not judged, by table and reason.
func (f Floor) Unused() []evidence.Unused {
	s, all := f.rows(), evidence.LeftOut{}
	left(&all, s.holes, holeTable(), "history of a hole", f.NoHoles)
	for _, out := range s.discarded.groups {
		all.Add("Slab RH", "of a discarded hole", len(out.all()))
	}
	all.Add("Slab RH", afterCovered, s.discarded.covered)
	if f.NoHoles == "" {
		for _, hole := range s.holes.groups {
			for _, h := range hole.recent {
				if !f.MayHaveWaited(h) {
					all.Add("Slab RH", "history of a hole", 1)
				}
			}
		}
	}
	left(&all, s.dishes, dishTable(), "history of a dish", f.NoDishes)
	left(&all, s.phs, phTable(), "history of a spot", f.NoPH)
	left(&all, s.carbides, carbideTable(), "history of a spot", f.NoCM)
	f.unusedOthers(&all)
	f.unusedScans(&all)
	return all.All()
}

const (
	afterCovered = "after the day the slab was covered"
	unasked      = "no check asks for them"
)

// left counts the rows of a table that no check judges, all of them where the
// test is not needed.
func left[T any](all *evidence.LeftOut, g gathered[T], t table[T], earlier, unneeded string) {
	for _, thing := range g.groups {
		if unneeded != "" {
			all.Add(t.title, unasked, len(thing.all()))
			continue
		}
		all.Add(t.title, earlier, len(thing.old))
	}
	all.Add(t.title, g.reset.unused, g.before)
	all.Add(t.title, afterCovered, g.covered)
}

func (f Floor) unusedOthers(all *evidence.LeftOut) {
	judged := 0
	for _, test := range f.JudgedOthers() {
		judged += len(test.Rows)
	}
	all.Add("Other tests", "history of a spot", len(f.Others)-judged)
}

func (f Floor) unusedScans(all *evidence.LeftOut) {
	for _, r := range f.Scans {
		switch {
		case f.NoScan != "":
			all.Add("Scan", unasked, 1)
		case !r.Bare():
			all.Add("Scan", "over the flooring in place", 1)
		case r.ReadAt.Shown() && r.ReadAt.First.Before(f.Wet):
			all.Add("Scan", "before water", 1)
		}
	}
}
