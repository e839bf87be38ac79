package plan_test

import (
	"fmt"
	"maps"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/plan"
	"firstboard/report/record"
	"firstboard/slab"
	"firstboard/wood"
)

// bases are the records that the laws start from.
func bases(t *testing.T) []report.Job {
	t.Helper()
	var jobs []report.Job
	for _, folder := range []string{
		"heated-slab", "slab-glue-down-wood", "slab-resilient", "wood-crawl", "wood-over-slab",
	} {
		rec, err := record.Read("../../testdata/script/base/" + folder)
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, rec.Job)
	}
	return jobs
}

// copied is a job whose rows can be changed without changing the first.
func copied(j report.Job) report.Job {
	j.Holes, j.Wood, j.Dishes, j.PHs = slices.Clone(j.Holes), slices.Clone(j.Wood), slices.Clone(j.Dishes), slices.Clone(j.PHs)
	j.Carbides, j.Air, j.Surfaces = slices.Clone(j.Carbides), slices.Clone(j.Air), slices.Clone(j.Surfaces)
	j.Areas, j.Events, j.Checks = slices.Clone(j.Areas), slices.Clone(j.Events), slices.Clone(j.Checks)
	j.Climates, j.Products, j.Instruments = slices.Clone(j.Climates), slices.Clone(j.Products), maps.Clone(j.Instruments)
	return j
}

// sparse is a base of which rows were lost, on an area of any size, installed on any
// day from its own on, with water or without.
func sparse(t *rapid.T, from []report.Job) report.Job {
	j := copied(from[rapid.IntRange(0, len(from)-1).Draw(t, "base")])
	j.Areas = slices.Clone(j.Areas)
	for i := range j.Areas {
		unit := rapid.SampledFrom([]evidence.Unit{evidence.SquareFoot, evidence.SquareM}).Draw(t, "unit")
		j.Areas[i].Size = evidence.Typed(fmt.Sprint(rapid.IntRange(1, 400).Draw(t, "size")), unit)
		day := j.Areas[i].InstallOn.Day + evidence.Day(rapid.SampledFrom([]int{0, 0, 1, 5, 60}).Draw(t, "later"))
		j.Areas[i].InstallOn = evidence.Date{Written: day.String(), Day: day}
		j.Areas[i].CoveredOn = evidence.Date{}
	}
	lost := func(int) bool { return rapid.Bool().Draw(t, "lost") }
	j.Holes = slices.DeleteFunc(j.Holes, func(slab.Hole) bool { return lost(0) })
	j.Wood = slices.DeleteFunc(j.Wood, func(wood.Row) bool { return lost(0) })
	for i := range j.Holes {
		if lost(i) {
			empty2(&j.Holes[i].RH)
		}
		if rapid.IntRange(0, 4).Draw(t, "deep") == 0 {
			j.Holes[i].Depth = evidence.Typed("3", evidence.Inch)
		}
	}
	for i := range j.Wood {
		if rapid.IntRange(0, 4).Draw(t, "blank") == 0 {
			empty2(&j.Wood[i].Reading)
		}
	}
	if rapid.IntRange(0, 3).Draw(t, "wet") == 0 {
		j.Events = append(slices.Clone(j.Events), report.Event{What: "water", At: clockTime(j.Zone, "2026-03-03 12:00")})
	}
	return j
}

func empty2(r *evidence.Reading) { *r = evidence.Reading{Unit: r.Unit, Place: r.Place} }

func clockTime(zone *time.Location, written string) evidence.Time {
	at, err := time.ParseInLocation("2006-01-02 15:04", written, zone)
	if err != nil {
		panic(err)
	}
	return evidence.Time{Written: written, First: at, Last: at}
}

// An area that is GO waits for nothing, every act is an order, and each check
// that stops an area is served by one.
func TestEveryCheckThatStopsIsServed(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := sparse(t, from)
		for _, d := range report.Judge(j) {
			p := plan.Of(d, ahead.Outlook{})
			if p.Decision.Verdict == evidence.Go && len(p.Acts) > 0 {
				t.Fatalf("area %s may be installed, and %q is left", p.Area.ID, p.Acts[0].Short)
			}
			for _, a := range p.Acts {
				if a.Short == "" || a.Who == "" || a.Day > 0 || a.Things == 0 {
					t.Fatalf("area %s: act %+v", p.Area.ID, a)
				}
			}
			advice := ahead.Advice{Missing: p.Missing()}
			for _, id := range p.Decision.Blocking() {
				if !advice.Awaits(id) {
					t.Fatalf("area %s: nothing is done for %s", p.Area.ID, id)
				}
			}
		}
	})
}
