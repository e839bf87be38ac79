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
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
)

// The laws of verdicts, on records made up for them: good ones of every
// situation, and the same spoiled in a few ways.

// Both verdicts are drawn often, or the laws would say little.
func TestDrawnRecordsGiveBothVerdicts(t *testing.T) {
	t.Parallel()
	seen := map[evidence.Verdict]int{}
	records := rapid.Custom(spoiled)
	for seed := range 60 {
		for _, d := range report.Judge(records.Example(seed)) {
			seen[d.Verdict]++
		}
	}
	if all := seen[evidence.Go] + seen[evidence.NoGo]; seen[evidence.Go]*5 < all || seen[evidence.NoGo]*5 < all {
		t.Errorf("the draws give %v", seen)
	}
}

// A good job must be able to reach GO, as read and guarded.
func TestGoodRecordsReachGo(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		for _, d := range report.Judge(made(t)) {
			if d.Verdict != evidence.Go {
				t.Fatalf("area %s, %s on %s: %s", d.Area.ID, d.Area.Flooring, d.Area.Substrate, strings.Join(reasons(d), "\n"))
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

// gained fails where a change turned an area from NO-GO to GO.
func gained(t *rapid.T, before []report.Decision, after report.Job, what string) {
	t.Helper()
	now := report.Judge(after)
	for i, d := range before {
		if d.Verdict == evidence.NoGo && now[i].Verdict == evidence.Go {
			t.Fatalf("%s turned area %s to GO, which was stopped by %q", what, d.Area.ID, reasons(d))
		}
	}
}

// Leaving out what was measured, when, with what, how deep and how far from
// which wall never helps: a blank is never good evidence.
func TestNoBlankReadingHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		before := report.Judge(j)
		cells := measured(&j)
		for range 4 {
			c := cells[pick(t, "blanked", len(cells))]
			blank := copied(j)
			empty(c.of(&blank))
			gained(t, before, blank, fmt.Sprintf("blanking %s of %v", c.field, tables(&j)[c.table].Index(c.row).Interface()))
		}
	})
}

// Nor does a blank cell of an instrument, but for Due on and Uncertainty.
func TestNoBlankInstrumentHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		before := report.Judge(j)
		for id, meter := range j.Instruments {
			meter.CalibratedOn = evidence.Date{}
			blank := j
			blank.Instruments = evidence.Instruments{}
			for other, m := range j.Instruments {
				blank.Instruments[other] = m
			}
			blank.Instruments[id] = meter
			gained(t, before, blank, "blanking the calibration of "+meter.ID)
		}
	})
}

// Nor a blank cell of an area or a product. Left out is what a blank stands
// for by the rules: the cells that have a default, the membrane, whose limits
// replace others, the zone, which adds sizes, the day the slab was covered,
// which makes later rows history, and limits that no product is asked for.
func TestNoBlankAreaOrProductHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		before := report.Judge(j)
		blank := copied(j)
		blank.Areas, blank.Products = slices.Clone(j.Areas), slices.Clone(j.Products)
		if pick(t, "of", 2) == 0 {
			names := []string{
				"Size", "Thickness", "SlabKind", "UnderSlab", "ExteriorWalls", "HeatOnSince", "HVAC", "Below", "GroundCover",
				"Installation", "Climate", "InstallOn", "EnclosedOn",
			}
			name := names[pick(t, "column", len(names))]
			reflect.ValueOf(&blank.Areas[pick(t, "area", len(j.Areas))]).Elem().FieldByName(name).SetZero()
			gained(t, before, blank, "blanking "+name)
			return
		}
		names := []string{"Species", "BelowGrade", "FaceWidth", "Thickness", "FlooringMin", "FlooringMax", "DataSheet"}
		name := names[pick(t, "column", len(names))]
		p := &blank.Products[pick(t, "product", len(j.Products))]
		reflect.ValueOf(p).Elem().FieldByName(name).SetZero()
		gained(t, before, blank, "blanking "+name+" of "+p.ID)
	})
}

// Leaving a whole kind of evidence out never helps where it is needed without
// being there: holes where they decide, surfaces where something is glued.
func TestNoMissingTableHelps(t *testing.T) {
	t.Parallel()
	names := []string{"Air", "Carbides", "Climates", "Dishes", "Holes", "PHs", "Scans", "Surfaces", "flooring", "subfloor", "joist"}
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		before := report.Judge(j)
		name := names[pick(t, "left out", len(names))]
		less := copied(j)
		switch name {
		case "flooring", "subfloor", "joist":
			less.Wood = slices.DeleteFunc(less.Wood, func(r woodRow) bool { return r.Of == name })
		case "Holes":
			less.Holes = slices.DeleteFunc(less.Holes, func(h hole) bool { return decidedByHoles(before, h.Area) })
		case "Surfaces":
			less.Surfaces = slices.DeleteFunc(less.Surfaces, func(s acclimate.Surface) bool { return asked(before, s.Area, "surface-dew") })
		case "Carbides":
			less.Carbides = slices.DeleteFunc(less.Carbides, func(c carbide) bool { return asked(before, c.Area, "slab-cm") })
		case "Climates":
			less.Climates = nil
		default:
			tables(&less)[name].SetLen(0)
		}
		gained(t, before, less, "leaving out the rows of "+name)
	})
}

func asked(all []report.Decision, area, id string) bool {
	for _, d := range all {
		if evidence.Same(d.Area.ID, area) {
			return finding(d, id).Outcome != evidence.NotNeeded
		}
	}
	return false
}

func finding(d report.Decision, id string) evidence.Finding {
	return d.Findings[slices.Index(report.Order(), id)]
}

// decidedByHoles says whether holes decide in an area even where none is
// recorded: a product states their limit, or no limit of the slab at all.
func decidedByHoles(all []report.Decision, area string) bool {
	for _, d := range all {
		if evidence.Same(d.Area.ID, area) {
			l, f := d.Site.Limits, finding(d, "slab-rh")
			return f.Deciding && (l.SlabRH.Most.Whose != "" || l.MVER.Most.Whose == "" && l.CM.Most.Whose == "")
		}
	}
	return false
}

// A wetter slab never helps: a hole that read 30 % or more, a carbide sample, a
// dish that gained.
func TestNoWetterSlabHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		before := report.Judge(j)
		by := rapid.SampledFrom([]float64{0.1, 3, 20}).Draw(t, "by")
		wetter := copied(j)
		for i, h := range wetter.Holes {
			rh := h.RH.Value.InexactFloat64()
			if pick(t, "hole", 2) == 1 && rh >= 30 && rh+by <= 100 {
				raise(&wetter.Holes[i].RH, num(by, "").Value)
			}
		}
		for i := range wetter.Carbides {
			raise(&wetter.Carbides[i].CM, num(by, "").Value)
		}
		for i, d := range wetter.Dishes {
			if d.End.Value.GreaterThan(d.Start.Value) {
				raise(&wetter.Dishes[i].End, num(by, "").Value)
			}
		}
		gained(t, before, wetter, "a wetter slab")
	})
}

// Nor does a wetter subfloor where its readings are over their limit.
func TestNoWetterSubfloorHelps(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		before := report.Judge(j)
		wetter := copied(j)
		by := rapid.SampledFrom([]float64{0.1, 1, 3, 10}).Draw(t, "by")
		for i, r := range wetter.Wood {
			for _, d := range before {
				if r.Of == "subfloor" && evidence.Same(d.Area.ID, r.Area) && finding(d, "subfloor-mc").Outcome == evidence.NotMet &&
					pick(t, "piece", 2) == 1 {
					raise(&wetter.Wood[i].Reading, num(by, "").Value)
				}
			}
		}
		gained(t, before, wetter, "a wetter subfloor")
	})
}

// Guarded acceptance lets nothing pass that simple acceptance stops.
func TestGuardedStopsMore(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		simple := spoiled(t)
		simple.Guarded = false
		guarded := simple
		guarded.Guarded = true
		gained(t, report.Judge(simple), guarded, "guarded acceptance")
	})
}

// exactly compares decisions without the subjects that were judged, numbers by
// value and zones by name.
func exactly() cmp.Options {
	return cmp.Options{
		cmpopts.IgnoreFields(report.Decision{}, "Site"), cmpopts.IgnoreFields(evidence.Finding{}, "Worked"),
		cmp.Comparer(func(a, b decimal.Decimal) bool { return a.Equal(b) }),
		cmp.Comparer(func(a, b *time.Location) bool { return a.String() == b.String() }),
	}
}

// judged is what an order of rows must not change in a decision, with places
// as sets. Where many rows say the same, the checks of long logs and of means
// name only some of them.
func judged(d report.Decision) report.Decision {
	some := []string{
		"air-range", "air-held", "air-usual", "flooring-target", "flooring-steady", "wood-difference", "calibration",
		"reading-age", "surface-dew",
	}
	d.Findings = slices.Clone(d.Findings)
	for i, f := range d.Findings {
		f.Evidence = slices.Clone(f.Evidence)
		if slices.Contains(some, f.ID) {
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

// The order of rows changes nothing, in no table, not a word of a reason; and
// an area is judged by its own rows and those of the whole site alone, but for
// a single-use probe that was used in another.
func TestOrderAndOtherAreasChangeNothing(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoiled(t)
		mixed := copied(j)
		dice := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		for _, name := range append(anyTable(), "Areas", "Products", "Climates", "Events") {
			rows := reflect.ValueOf(&mixed).Elem().FieldByName(name)
			rows.Set(reflect.AppendSlice(reflect.MakeSlice(rows.Type(), 0, rows.Len()), rows))
			dice.Shuffle(rows.Len(), reflect.Swapper(rows.Interface()))
		}
		again := map[string]report.Decision{}
		for _, d := range report.Judge(mixed) {
			again[d.Area.ID] = judged(d)
		}
		for _, want := range report.Judge(j) {
			if d := cmp.Diff(judged(want), again[want.Area.ID], exactly()); d != "" {
				t.Fatalf("area %s, rows in another order (+):\n%s", want.Area.ID, d)
			}
			if sharesProbe(j, want.Area.ID) {
				continue
			}
			alone := report.Judge(keepAreas(j, func(id string) bool { return id == want.Area.ID }))[0]
			if d := cmp.Diff(judged(want), judged(alone), exactly()); d != "" {
				t.Fatalf("area %s among others (-) and alone (+):\n%s", want.Area.ID, d)
			}
		}
	})
}
