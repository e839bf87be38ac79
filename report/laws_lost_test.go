package report_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/evidence"
)

// losses are ways to leave a whole kind of evidence out, by which nobody
// gains. By the rules themselves one does gain by leaving out events (water
// makes what was read before it history), the word that discards a hole, the
// mark that sets a board aside, and other tests, which are asked for only where
// there are rows. Holes stay where their checks are not needed without them or
// only advise.
func losses() map[string]func(*report.Job) {
	all := map[string]func(*report.Job){"climate": func(j *report.Job) { j.Climates = nil }}
	for _, name := range []string{"Air", "Carbides", "Checks", "Dishes", "PHs", "Scans", "Surfaces"} {
		all[name] = func(j *report.Job) { filter(tables(j)[name], func(int) bool { return false }) }
	}
	for _, of := range []string{"flooring", "subfloor", "joist"} {
		all[of] = func(j *report.Job) { filter(tables(j)["Wood"], func(i int) bool { return j.Wood[i].Of != of }) }
	}
	all["Holes"] = func(j *report.Job) {
		filter(tables(j)["Holes"], func(i int) bool { return !decidedByHoles(*j, j.Holes[i].Area) })
	}
	return all
}

// decidedByHoles says whether holes decide in an area even where none is
// recorded: a product states their limit, or no limit of the slab at all.
func decidedByHoles(j report.Job, area string) bool {
	rh, other, sealed := false, false, false
	for _, a := range j.Areas {
		for _, p := range j.Products {
			if named := evidence.Same(a.ID, area) && (p.ID == a.Flooring || p.ID == a.Adhesive || p.ID == a.Membrane); named {
				rh = rh || p.SlabRH.Number.Shown()
				other = other || p.MVER.Number.Shown() || p.CM.Number.Shown()
				sealed = sealed || p.Kind == "membrane" && p.SlabRH.None
			}
		}
	}
	return !sealed && (rh || !other)
}

// Leaving a whole kind of evidence out never helps.
func TestNoMissingTableHelps(t *testing.T) {
	t.Parallel()
	var names []string
	for name := range losses() {
		names = append(names, name)
	}
	slices.Sort(names)
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		before := report.Judge(j)
		for range 3 {
			name := rapid.SampledFrom(names).Draw(t, "left out")
			less := copied(j)
			losses()[name](&less)
			if area := gained(before, report.Judge(less)); area != "" {
				t.Fatalf("leaving out the rows of %s turned area %s to GO, which was stopped by %q", name, area, stopped(before, area))
			}
		}
	})
}
