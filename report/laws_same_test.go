package report_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/evidence"
)

// judged is what an order of rows must not change in a decision, with places
// as sets. Where many rows say the same, the checks of long logs and of means
// name only some of them: their places are left out. So is what a check that is
// not shown says, which begins with the first thing that it lacks.
func judged(d report.Decision) report.Decision {
	d.Findings = slices.Clone(d.Findings)
	for i, f := range d.Findings {
		f.Evidence = slices.Clone(f.Evidence)
		if slices.Contains(someOf(), f.ID) {
			f.Evidence = nil
		}
		if f.Outcome == evidence.NotShown {
			f.Reason = ""
		}
		slices.SortFunc(f.Evidence, func(a, b evidence.Place) int { return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
		d.Findings[i] = f
	}
	d.Looks, d.Corrections, d.Advice = nil, nil, nil
	return d
}

// someOf are the checks that name some of the rows they judged.
func someOf() []string {
	return []string{
		"air-range", "air-held", "air-usual", "flooring-target", "flooring-steady", "wood-difference", "calibration", "reading-age",
	}
}

// exactly compares numbers by value, zones by name, and subjects by what was
// found of them.
func exactly() cmp.Options {
	return cmp.Options{
		cmp.Comparer(func(a, b report.Site) bool { return true }),
		cmp.Comparer(func(a, b decimal.Decimal) bool { return a.Equal(b) }),
		cmp.Comparer(func(a, b *time.Location) bool { return a.String() == b.String() }),
	}
}

// An area is judged by its own rows and those of the whole site: the rest of
// the record, other areas and all their rows, changes nothing. A single-use
// probe that was used in both is left out: it was used twice.
func TestOtherAreasChangeNothing(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		for _, want := range report.Judge(j) {
			if sharesProbe(j, want.Area.ID) {
				continue
			}
			got := report.Judge(keepAreas(j, func(id string) bool { return id == want.Area.ID }))
			if d := cmp.Diff(judged(want), judged(got[0]), exactly()); d != "" {
				t.Fatalf("area %s among others (-) and alone (+):\n%s", want.Area.ID, d)
			}
		}
	})
}

func sharesProbe(j report.Job, area string) bool {
	for _, h := range j.Holes {
		for _, o := range j.Holes {
			if h.Area == area && o.Area != area && evidence.Same(h.Instrument, o.Instrument) && j.Instruments[evidence.Key(h.Instrument)].Has(evidence.SingleUse) {
				return true
			}
		}
	}
	return false
}

// The order of rows changes nothing, in no table, not a word of a reason.
func TestOrderChangesNothing(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		mixed := copied(j)
		dice := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		for _, name := range anyTable() {
			rows := tables(&mixed)[name]
			dice.Shuffle(rows.Len(), reflect.Swapper(rows.Interface()))
		}
		for _, name := range []string{"Areas", "Products", "Climates", "Events"} {
			rows := reflect.ValueOf(&mixed).Elem().FieldByName(name)
			rows.Set(reflect.AppendSlice(reflect.MakeSlice(rows.Type(), 0, rows.Len()), rows))
			dice.Shuffle(rows.Len(), reflect.Swapper(rows.Interface()))
		}
		got := map[string]report.Decision{}
		for _, d := range report.Judge(mixed) {
			got[d.Area.ID] = judged(d)
		}
		for _, want := range report.Judge(j) {
			if d := cmp.Diff(judged(want), got[want.Area.ID], exactly()); d != "" {
				t.Fatalf("area %s, rows in another order (+):\n%s", want.Area.ID, d)
			}
		}
	})
}

// A verdict is GO exactly when every deciding finding is met or not needed and
// one at least is met; every check answers, in order; advice stops nothing.
func TestVerdictFollowsFindings(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range report.Judge(spoilt(t)) {
			var ids, stops []string
			met, over := false, false
			for _, f := range d.Findings {
				ids = append(ids, f.ID)
				if !f.Deciding {
					continue
				}
				met = met || f.Outcome == evidence.Met
				over = over || f.Outcome == evidence.NotMet
				if f.Outcome == evidence.NotMet || f.Outcome == evidence.NotShown {
					stops = append(stops, f.ID)
				}
			}
			want := evidence.Verdict("NO-GO")
			why := map[bool]string{true: "over a limit", false: "not proven"}[over]
			if met && len(stops) == 0 {
				want, why = "GO", ""
			}
			if !slices.Equal(ids, report.Order()) {
				t.Fatalf("the checks of area %s answer in the order %v", d.Area.ID, ids)
			}
			if d.Verdict != want || d.Why != why || d.GoodUntil.Shown() != (want == "GO") || !slices.Equal(d.Blocking(), append([]string{}, stops...)) {
				t.Fatalf("area %s is %s, %s, good until %q, stopped by %v; its findings say %s, %s", d.Area.ID, d.Verdict, d.Why, d.GoodUntil.Written, d.Blocking(), want, why)
			}
		}
	})
}

// A signature changes no verdict and no finding, whoever signs what.
func TestSignaturesChangeNothing(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		signed := j
		signed.SignOffs = nil
		for _, a := range j.Areas {
			signed.SignOffs = append(signed.SignOffs, report.SignOff{
				Area: a.ID, Name: "Somebody", At: since(100), Waives: report.Order(),
				Role:     rapid.SampledFrom([]string{"installer", "owner", "flooring manufacturer", "adhesive manufacturer", "membrane manufacturer"}).Draw(t, "role"),
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
		j := spoilt(t)
		kept := deepCopy(reflect.ValueOf(j)).Interface().(report.Job)
		first, second := report.Judge(j), report.Judge(j)
		if d := cmp.Diff(first, second, exactly()); d != "" {
			t.Fatalf("two judgings differ:\n%s", d)
		}
		if d := cmp.Diff(kept, j, exactly()); d != "" {
			t.Fatalf("judging changed the record:\n%s", d)
		}
	})
}

// deepCopy shares no row, no list and no instrument with what it copies.
func deepCopy(v reflect.Value) reflect.Value {
	c := reflect.New(v.Type()).Elem()
	c.Set(v)
	switch v.Kind() {
	case reflect.Slice:
		if !v.IsNil() {
			c.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		}
		for i := range v.Len() {
			c.Index(i).Set(deepCopy(v.Index(i)))
		}
	case reflect.Map:
		c.Set(reflect.MakeMap(v.Type()))
		for _, k := range v.MapKeys() {
			c.SetMapIndex(k, deepCopy(v.MapIndex(k)))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				c.Field(i).Set(deepCopy(v.Field(i)))
			}
		}
	}
	return c
}
