package plan_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report"
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
	j.Holes, j.Wood = slices.Clone(j.Holes), slices.Clone(j.Wood)
	j.Areas, j.Events = slices.Clone(j.Areas), slices.Clone(j.Events)
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

// obeyed is a job with every planned row filled in with good values, on the
// day its step names, and every row that stood open.
func obeyed(j report.Job, plans []plan.Plan) report.Job {
	j = copied(j)
	for _, p := range plans {
		day := func(n int) evidence.Time {
			return clockTime(j.Zone, (p.Area.InstallOn.Day+evidence.Day(n)).String()+" 07:00")
		}
		for _, s := range p.Steps {
			for _, r := range s.Rows {
				switch r.Table {
				case "Slab RH":
					j.Holes = append(j.Holes, slab.Hole{Area: p.Area.ID, Hole: r.Cells["Hole"], SealedAt: day(-9), ReadAt: day(-1), RH: evidence.Typed("60", evidence.RH), Depth: deep(p.Area)})
				case "Wood":
					j.Wood = append(j.Wood, wood.Row{Area: p.Area.ID, Of: r.Cells["Of"], Piece: r.Cells["Piece"], Lot: r.Cells["Lot"], ReadAt: day(s.Day), Method: wood.OvenDry, Reading: evidence.Typed("8", evidence.MC)})
				}
			}
		}
		for i, h := range j.Holes {
			if evidence.Same(h.Area, p.Area.ID) && !h.RH.Shown() {
				j.Holes[i].RH = evidence.Typed("60", evidence.RH)
			}
			if evidence.Same(h.Area, p.Area.ID) && slices.ContainsFunc(p.Steps, func(s plan.Step) bool { return strings.Contains(s.Do, "Discarded of hole "+h.Hole+" ") }) {
				j.Holes[i].Discarded = "wrong depth"
			}
		}
		for i, r := range j.Wood {
			if evidence.Same(r.Area, p.Area.ID) && !r.Reading.Shown() {
				j.Wood[i].Reading = evidence.Typed("8", evidence.MC)
			}
		}
	}
	return j
}

// deep is 40 % of a slab's thickness, or 20 % where it dries at two faces.
func deep(a report.Area) evidence.Reading {
	share := decimal.New(4, -1)
	if a.DryingFaces.Written == "2" {
		share = decimal.New(2, -1)
	}
	return evidence.Computed(a.Thickness.Value.Mul(share), evidence.Inch)
}

// What a plan asks for is enough: where its rows are filled in with good
// values, holes, boards, subfloor pieces and joists are enough.
func TestFollowingThePlanMeetsTheCounts(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := sparse(t, from)
		plans := plan.All(report.Judge(j))
		for i, d := range report.Judge(obeyed(j, plans)) {
			for _, f := range d.Findings {
				counts := []string{"slab-holes", "slab-depth", "subfloor-count", "flooring-count"}
				if slices.Contains(counts, f.ID) && f.Outcome != evidence.Met && f.Outcome != evidence.NotNeeded {
					t.Fatalf("area %s: %s %s: %s; the plan: %+v", d.Area.ID, f.ID, f.Outcome, f.Reason, plans[i].Steps)
				}
			}
		}
	})
}

// An area that waits for nothing is judged: every check that stops it and is
// not shown is told, by what it waits for or by its own reason.
func TestNothingIsLeftWhereAnAreaIsGO(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := sparse(t, from)
		for _, p := range plan.All(report.Judge(j)) {
			if p.Decision.Verdict == evidence.Go && len(p.Steps) > 0 {
				t.Fatalf("area %s may be installed, and %q is left", p.Area.ID, p.Steps[0].Do)
			}
			for _, s := range p.Steps {
				if s.Do == "" || s.Day > 0 {
					t.Fatalf("area %s: step %+v", p.Area.ID, s)
				}
			}
		}
	})
}
