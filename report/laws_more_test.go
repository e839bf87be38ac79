package report_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/evidence"
)

// Both verdicts are drawn often, or the laws would say little.
func TestDrawnRecordsGiveBothVerdicts(t *testing.T) {
	t.Parallel()
	seen := map[evidence.Verdict]int{}
	records := rapid.Custom(spoilt)
	for seed := range 60 {
		for _, d := range report.Judge(records.Example(seed)) {
			seen[d.Verdict]++
		}
	}
	if all := seen[evidence.Go] + seen[evidence.NoGo]; seen[evidence.Go]*4 < all || seen[evidence.NoGo]*4 < all {
		t.Errorf("the draws give %v", seen)
	}
}

// A good job must be able to reach GO: every made-up record that nothing
// spoilt does, as read and guarded.
func TestGoodRecordsReachGo(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range report.Judge(made(t)) {
			if d.Verdict != evidence.Go {
				t.Fatalf("area %s, %s on %s: %s", d.Area.ID, d.Area.Flooring, d.Area.Substrate, reasons(d))
			}
		}
	})
}

// reasons are why an area is stopped.
func reasons(d report.Decision) (all []string) {
	for _, f := range d.Findings {
		if f.Blocks() {
			all = append(all, f.ID+": "+f.Reason)
		}
	}
	return all
}

// stopped are the reasons why an area of that name is stopped.
func stopped(all []report.Decision, area string) []string {
	return reasons(all[slices.IndexFunc(all, func(d report.Decision) bool { return d.Area.ID == area })])
}

// Leaving out what was measured, when, with what and how deep never helps: a
// blank is never good evidence.
func TestNoBlankHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		before := report.Judge(j)
		cells := measured(&j)
		for range 4 {
			c := cells[pick(t, "blanked", len(cells))]
			blank := copied(j)
			empty(c.of(&blank))
			if area := gained(before, report.Judge(blank)); area != "" {
				t.Fatalf("blanking %s of %v turned area %s to GO, which was stopped by %q", c.field, row(j, c), area, stopped(before, area))
			}
		}
	})
}

func row(j report.Job, c cell) any { return tables(&j)[c.table].Index(c.row).Interface() }

// A wetter slab never helps: a hole, a carbide sample, a dish that gained. One
// that gained nothing is left out: it is not shown, and a gain would be news.
func TestNoWetterSlabHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		before := report.Judge(j)
		by := rapid.SampledFrom([]float64{0.1, 3, 20}).Draw(t, "by")
		wetter := copied(j)
		for i, h := range wetter.Holes {
			if pick(t, "hole", 2) == 1 && h.RH.Value.InexactFloat64()+by <= 100 {
				raise(&wetter.Holes[i].RH, num(by, "").Value)
			}
		}
		for i := range wetter.Carbides {
			if pick(t, "sample", 2) == 1 {
				raise(&wetter.Carbides[i].CM, num(by, "").Value)
			}
		}
		for i, d := range wetter.Dishes {
			if pick(t, "dish", 2) == 1 && d.End.Value.GreaterThan(d.Start.Value) {
				raise(&wetter.Dishes[i].End, num(by, "").Value)
			}
		}
		if area := gained(before, report.Judge(wetter)); area != "" {
			t.Fatalf("a wetter slab turned area %s to GO, which was stopped by %q", area, stopped(before, area))
		}
	})
}

// Nor does a wetter subfloor where its moisture stands in the way. Readings
// that say nothing, being under what the meter or a table can read, are left
// out: raised, they may say something good.
func TestNoWetterSubfloorHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		before := report.Judge(j)
		wetter := copied(j)
		by := rapid.SampledFrom([]float64{0.1, 1, 3, 10}).Draw(t, "by")
		for i, r := range wetter.Wood {
			if r.Of == "subfloor" && brokenIn(before, r.Area, "subfloor-mc") && pick(t, "piece", 2) == 1 {
				raise(&wetter.Wood[i].Reading, num(by, "").Value)
			}
		}
		if area := gained(before, report.Judge(wetter)); area != "" {
			t.Fatalf("a wetter subfloor turned area %s to GO, which was stopped by %q", area, stopped(before, area))
		}
	})
}

// brokenIn says whether a check is not met in an area.
func brokenIn(all []report.Decision, area, id string) bool {
	return slices.ContainsFunc(all, func(d report.Decision) bool {
		return evidence.Same(d.Area.ID, area) && d.Findings[slices.Index(report.Order(), id)].Outcome == evidence.NotMet
	})
}

// Guarded acceptance lets nothing pass that simple acceptance stops. Not asked
// about are gusts, which it may join to one, and holes out of use that were
// read by an instrument without an uncertainty.
func TestGuardedStopsMore(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		simple := spoilt(t)
		simple.Guarded = false
		guarded := simple
		guarded.Guarded = true
		before := report.Judge(simple)
		if area := gained(before, report.Judge(guarded)); area != "" {
			t.Fatalf("guarded acceptance turned area %s to GO, which was stopped by %q", area, stopped(before, area))
		}
	})
}
