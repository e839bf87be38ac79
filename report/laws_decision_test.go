package report_test

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/slab"
	"firstboard/wood"
)

type (
	hole    = slab.Hole
	carbide = slab.Carbide
	woodRow = wood.Row
)

// A verdict is GO exactly when every deciding finding is met or not needed and
// one at least is met; every check answers, in order; advice stops nothing.
func TestVerdictFollowsFindings(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range report.Judge(spoiled(t)) {
			stops := []string{}
			var ids []string
			met, over := false, false
			for _, f := range d.Findings {
				ids = append(ids, f.ID)
				met = met || f.Deciding && f.Outcome == evidence.Met
				over = over || f.Deciding && f.Outcome == evidence.NotMet
				if f.Deciding && (f.Outcome == evidence.NotMet || f.Outcome == evidence.NotShown) {
					stops = append(stops, f.ID)
				}
			}
			want, why := evidence.Verdict("NO-GO"), map[bool]string{true: "over a limit", false: "not proven"}[over]
			if met && len(stops) == 0 {
				want, why = "GO", ""
			}
			if !slices.Equal(ids, report.Order()) {
				t.Fatalf("the checks of area %s answer in the order %v", d.Area.ID, ids)
			}
			if d.Verdict != want || d.Why != why || d.GoodUntil.Shown() != (want == "GO") || !slices.Equal(d.Blocking(), stops) {
				t.Fatalf("area %s is %s, %s, stopped by %v; its findings say %s, %s", d.Area.ID, d.Verdict, d.Why, d.Blocking(), want, why)
			}
		}
	})
}

// Where a finding has a tree, the tree gives its outcome: the workbook's
// formulas are printed from it.
func TestTreesAnswerAsTheirFindings(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range report.Judge(spoiled(t)) {
			for _, id := range []string{
				"slab-rh", "slab-depth", "slab-wait", "mver-rate", "slab-ph", "slab-cm", "subfloor-mc", "flooring-mc", "flooring-target",
				"flooring-spread", "wood-difference", "slab-holes", "mver-dishes", "subfloor-count", "flooring-count", "reading-age",
				"calibration", "probe-check",
			} {
				f := finding(d, id)
				if got := f.Worked.Outcome(); f.Outcome != evidence.NotNeeded && got != f.Outcome {
					t.Fatalf("%s of area %s is %s (%s), and its tree says %s", id, d.Area.ID, f.Outcome, f.Reason, got)
				}
			}
		}
	})
}

// What is not needed has no value, no limit and no evidence, and says what
// would make it needed.
func TestWhatIsNotNeededIsEmpty(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range report.Judge(spoiled(t)) {
			for _, f := range d.Findings {
				if f.Reason == "" || f.Outcome == evidence.NotNeeded &&
					(f.Value != "" || f.Limit != "" || f.Unit != "" || len(f.Evidence) > 0) {
					t.Fatalf("%s is %s: value %q, limit %q %s, reason %q", f.ID, f.Outcome, f.Value, f.Limit, f.Unit, f.Reason)
				}
			}
		}
	})
}

// A signature changes no verdict and no finding, whoever signs what.
func TestSignaturesChangeNothing(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		signed := j
		signed.SignOffs = nil
		for _, a := range j.Areas {
			signed.SignOffs = append(signed.SignOffs, report.SignOff{
				Area: a.ID, Name: "Somebody", At: since(100), Waives: report.Order(),
				Role: rapid.SampledFrom([]string{"installer", "owner", "flooring manufacturer", "membrane manufacturer"}).Draw(t,
					"role"),
				Decision: rapid.SampledFrom([]string{"accept", "refuse", "waive"}).Draw(t, "decision"),
			})
		}
		unsigned := func(d report.Decision) report.Decision {
			d.Waivers, d.Signatures, d.Items = nil, nil, nil
			return d
		}
		after := report.Judge(signed)
		for i, d := range report.Judge(j) {
			if diff := cmp.Diff(unsigned(d), unsigned(after[i]), exactly()); diff != "" {
				t.Fatalf("signatures changed area %s:\n%s", d.Area.ID, diff)
			}
		}
	})
}

// Judging gives the same twice, and leaves the record as it was, down to the
// order of its rows.
func TestJudgingTwiceIsJudgingOnce(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		kept := fmt.Sprint(j)
		first, second := report.Judge(j), report.Judge(j)
		if d := cmp.Diff(first, second, exactly()); d != "" {
			t.Fatalf("two judgings differ:\n%s", d)
		}
		if fmt.Sprint(j) != kept {
			t.Fatal("judging changed the record")
		}
	})
}

// On the last day that a GO is good for it is still a GO; it is no day before
// installing; on the day after, the readings are too old. What came after the
// day of installing is left out, or it would be news.
func TestGoodUntilHolds(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		for i, d := range report.Judge(j) {
			if d.Verdict != evidence.Go {
				continue
			}
			if d.GoodUntil.Day < d.Area.InstallOn.Day {
				t.Fatalf("area %s may be installed on %s and is good until %s", d.Area.ID, d.Area.InstallOn.Written, d.GoodUntil.Written)
			}
			if on := report.Judge(installedOn(j, i, d.GoodUntil.Day))[i]; on.Verdict != evidence.Go || on.GoodUntil.Day != d.GoodUntil.Day {
				t.Fatalf("area %s, good until %s, is on that day %s, good until %s: %q", d.Area.ID, d.GoodUntil.Written, on.Verdict,
					on.GoodUntil.Written, reasons(on))
			}
			if after := finding(report.Judge(installedOn(j, i, d.GoodUntil.Day+1))[i], "reading-age"); after.Outcome != evidence.NotMet {
				t.Fatalf("area %s, good until %s: the day after, reading-age is %s, %s", d.Area.ID, d.GoodUntil.Written, after.Outcome,
					after.Reason)
			}
		}
	})
}

// installedOn is the record with another day of installing for one area,
// without the air, the surfaces and the events of after the day it had.
func installedOn(j report.Job, area int, on evidence.Day) report.Job {
	was := j.Areas[area].InstallOn.Day
	news := func(at evidence.Time) bool { return at.Shown() && at.Day() > was }
	j.Air = slices.DeleteFunc(slices.Clone(j.Air), func(a acclimate.Air) bool { return news(a.ReadAt) })
	j.Surfaces = slices.DeleteFunc(slices.Clone(j.Surfaces), func(s acclimate.Surface) bool { return news(s.ReadAt) })
	j.Events = slices.DeleteFunc(slices.Clone(j.Events), func(e report.Event) bool { return news(e.At) })
	j.Areas = slices.Clone(j.Areas)
	j.Areas[area].InstallOn = day(on)
	return j
}

// keepAreas is a record with some of its areas alone, all their rows, and those
// of the whole site.
func keepAreas(j report.Job, keep func(area string) bool) report.Job {
	j = copied(j)
	for _, rows := range tables(&j) {
		if rows.Type() != reflect.TypeFor[[]instruments.Comparison]() {
			filter(rows, func(i int) bool {
				area := rows.Index(i).FieldByName("Area").String()
				return area == "" || keep(area)
			})
		}
	}
	j.Areas = slices.DeleteFunc(slices.Clone(j.Areas), func(a report.Area) bool { return !keep(a.ID) })
	j.Events = slices.DeleteFunc(slices.Clone(j.Events), func(e report.Event) bool { return e.Area != "" && !keep(e.Area) })
	j.SignOffs = slices.DeleteFunc(slices.Clone(j.SignOffs), func(o report.SignOff) bool { return !keep(o.Area) })
	return j
}

// sharesProbe says whether a single-use probe was used in an area and another.
func sharesProbe(j report.Job, area string) bool {
	in := map[string]bool{}
	for _, h := range j.Holes {
		if h.Area == area {
			in[evidence.Key(h.Instrument)] = true
		}
	}
	return slices.ContainsFunc(j.Holes, func(h slab.Hole) bool {
		key := evidence.Key(h.Instrument)
		return h.Area != area && in[key] && j.Instruments[key].Has(evidence.SingleUse)
	})
}
