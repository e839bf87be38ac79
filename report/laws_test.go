package report_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/record"
)

// The laws of verdicts, on records of every situation that are first spoilt a
// little: numbers moved, cells blanked, rows repeated.

// bases are the records that the laws start from.
func bases(t *testing.T) []report.Job {
	t.Helper()
	folders, err := filepath.Glob("../testdata/script/base/*")
	if err != nil || len(folders) < 3 {
		t.Fatalf("only %d base records: %v", len(folders), err)
	}
	var jobs []report.Job
	for _, folder := range append(folders, "../testdata/jobs/millrace") {
		if info, err := os.Stat(folder); err != nil || !info.IsDir() {
			continue
		}
		rec, err := record.Read(folder)
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, thin(rec.Job))
	}
	return jobs
}

// thin keeps every sixth row of a long air log, and so the laws fast.
func thin(j report.Job) report.Job {
	if len(j.Air) < 200 {
		return j
	}
	air := j.Air[:0:0]
	for i, a := range j.Air {
		if i%6 == 0 || i == len(j.Air)-1 {
			air = append(air, a)
		}
	}
	j.Air = air
	return j
}

// tables are the slices of measured rows of a job, by name.
func tables(j *report.Job) map[string]reflect.Value {
	v := reflect.ValueOf(j).Elem()
	all := map[string]reflect.Value{}
	for _, name := range []string{"Air", "Carbides", "Checks", "Dishes", "Holes", "Others", "PHs", "Scans", "Surfaces", "Wood"} {
		all[name] = v.FieldByName(name)
	}
	return all
}

// copied is a job whose rows can be changed without changing the first.
func copied(j report.Job) report.Job {
	for _, rows := range tables(&j) {
		rows.Set(reflect.AppendSlice(reflect.MakeSlice(rows.Type(), 0, rows.Len()), rows))
	}
	return j
}

// cell is one field of one row.
type cell struct {
	table, field string
	row          int
}

func (c cell) of(j *report.Job) reflect.Value {
	return tables(j)[c.table].Index(c.row).FieldByName(c.field)
}

// measured are the cells that hold a measured value, a time, an instrument or
// a depth: all that a law lets nobody gain by blanking.
func measured(j *report.Job) []cell {
	var cells []cell
	all := tables(j)
	var names []string
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		rows := all[name]
		for i := range rows.Len() {
			for f := range rows.Type().Elem().NumField() {
				if field := rows.Type().Elem().Field(f); counts(name, field) {
					cells = append(cells, cell{name, field.Name, i})
				}
			}
		}
	}
	return cells
}

// counts leaves out what only loosens or corrects a reading: the temperature
// of the wood, a hole's own thickness, the bounds of a further test.
func counts(table string, field reflect.StructField) bool {
	switch {
	case field.Name == "WoodTemp" || field.Name == "Thickness":
		return false
	case table == "Others" && (field.Name == "AtLeast" || field.Name == "AtMost"):
		return false
	case table == "Others" && field.Name == "Instrument":
		return false // calibration counts only where an instrument is named
	}
	return field.Type == reflect.TypeFor[evidence.Reading]() || field.Type == reflect.TypeFor[evidence.Time]() || field.Name == "Instrument" && table != "Checks"
}

// spoil changes some cells of a job at random.
func spoil(t *rapid.T, j report.Job) report.Job {
	j = copied(j)
	cells := measured(&j)
	for range rapid.IntRange(0, 4).Draw(t, "changes") {
		c := cells[rapid.IntRange(0, len(cells)-1).Draw(t, "cell")]
		v := c.of(&j)
		switch x := v.Interface().(type) {
		case evidence.Reading:
			if x.Shown() {
				v.Set(reflect.ValueOf(moved(t, x)))
			}
		case evidence.Time:
			if x.Shown() {
				v.Set(reflect.ValueOf(shifted(t, x)))
			}
		default:
			v.SetZero()
		}
	}
	j.Guarded = rapid.Bool().Draw(t, "guarded")
	return j
}

func moved(t *rapid.T, r evidence.Reading) evidence.Reading {
	by := decimal.New(int64(rapid.SampledFrom([]int{0, 5, 8, 9, 10, 11, 12, 15}).Draw(t, "by")), -1)
	if by.IsZero() {
		return evidence.Reading{Unit: r.Unit, Place: r.Place}
	}
	r.Value = r.Value.Mul(by).Round(2)
	r.Written = r.Value.String()
	return r
}

func shifted(t *rapid.T, at evidence.Time) evidence.Time {
	by := time.Duration(rapid.SampledFrom([]int{-2000, -100, -24, -1, 1, 24, 100, 2000}).Draw(t, "hours")) * time.Hour
	at.First, at.Last = at.First.Add(by), at.Last.Add(by)
	at.Written = at.First.Format("2006-01-02 15:04")
	return at
}

func drawJob(t *rapid.T, from []report.Job) report.Job {
	return spoil(t, from[rapid.IntRange(0, len(from)-1).Draw(t, "base")])
}

func verdicts(all []report.Decision) map[string]evidence.Verdict {
	v := map[string]evidence.Verdict{}
	for _, d := range all {
		v[d.Area.ID] = d.Verdict
	}
	return v
}

// gained names an area that a change turned from NO-GO to GO.
func gained(before, after []report.Decision) string {
	now := verdicts(after)
	for area, was := range verdicts(before) {
		if was == evidence.NoGo && now[area] == evidence.Go {
			return area
		}
	}
	return ""
}

// Both verdicts occur, or the laws below would hold of nothing.
func TestLawsSeeBothVerdicts(t *testing.T) {
	t.Parallel()
	seen := map[evidence.Verdict]int{}
	for _, j := range bases(t) {
		for _, d := range report.Judge(j) {
			seen[d.Verdict]++
		}
	}
	if seen[evidence.Go] < 3 || seen[evidence.NoGo] < 2 {
		t.Errorf("the bases give %v", seen)
	}
}

// Nobody gains by leaving out what was measured.
func TestBlankingNeverHelps(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		before := report.Judge(j)
		cells := measured(&j)
		c := cells[rapid.IntRange(0, len(cells)-1).Draw(t, "blanked")]
		blank := copied(j)
		empty(c.of(&blank))
		if area := gained(before, report.Judge(blank)); area != "" {
			t.Fatalf("blanking %v turned area %s to GO", c, area)
		}
	})
}

func empty(v reflect.Value) {
	switch x := v.Interface().(type) {
	case evidence.Reading:
		v.Set(reflect.ValueOf(evidence.Reading{Unit: x.Unit, Place: x.Place}))
	case evidence.Time:
		v.Set(reflect.ValueOf(evidence.Time{Place: x.Place}))
	default:
		v.SetZero()
	}
}

// A wetter slab never helps, nor a wetter sample, nor a dish that gained more.
func TestWetterSlabNeverHelps(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		wet := copied(j)
		up := decimal.New(int64(rapid.IntRange(1, 300).Draw(t, "tenths")), -1)
		for i := range wet.Holes {
			if rapid.Bool().Draw(t, "hole") {
				raise(&wet.Holes[i].RH, up)
			}
		}
		for i := range wet.Carbides {
			raise(&wet.Carbides[i].CM, up)
		}
		for i, d := range wet.Dishes {
			if d.End.Value.GreaterThan(d.Start.Value) {
				raise(&wet.Dishes[i].End, up)
			}
		}
		if area := gained(report.Judge(j), report.Judge(wet)); area != "" {
			t.Fatalf("a wetter slab turned area %s to GO", area)
		}
	})
}

func raise(r *evidence.Reading, by decimal.Decimal) {
	if r.Shown() {
		r.Value = r.Value.Add(by)
		r.Written = r.Value.String()
	}
}

// Nor does a wetter subfloor where its readings stand in the way.
func TestWetterSubfloorNeverHelps(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		before := report.Judge(j)
		wet := copied(j)
		for i, r := range wet.Wood {
			if r.Of == "subfloor" && slices.ContainsFunc(before, func(d report.Decision) bool {
				return evidence.Same(d.Area.ID, r.Area) && slices.Contains(d.Blocking(), "subfloor-mc")
			}) {
				raise(&wet.Wood[i].Reading, decimal.New(int64(rapid.IntRange(1, 50).Draw(t, "tenths")), -1))
			}
		}
		if area := gained(before, report.Judge(wet)); area != "" {
			t.Fatalf("a wetter subfloor turned area %s to GO", area)
		}
	})
}

// Areas are judged each by itself.
func TestAnAreaNeverChangesAnother(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		alone := copied(j)
		keep := rapid.IntRange(0, len(j.Areas)-1).Draw(t, "area")
		alone.Areas = j.Areas[keep : keep+1]
		want, got := report.Judge(j)[keep], report.Judge(alone)[0]
		if d := cmp.Diff(summary(want), summary(got)); d != "" {
			t.Fatalf("area %s alone (+) and among others (-):\n%s", want.Area.ID, d)
		}
	})
}

// summary is a decision in words. Places are left out: they name rows.
func summary(d report.Decision) []string {
	lines := []string{fmt.Sprint(d.Area.ID, d.Verdict, d.Why, d.Conditions, d.GoodUntil.Written, d.Target != nil)}
	for _, f := range d.Findings {
		lines = append(lines, fmt.Sprint(f.ID, " ", f.Outcome, " ", f.Deciding, " ", f.Value, " ", f.Limit, " ", f.Unit, " ", f.Cite))
	}
	return lines
}

// The order of rows never matters.
func TestOrderOfRowsNeverMatters(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		mixed := copied(j)
		dice := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		for _, rows := range tables(&mixed) {
			dice.Shuffle(rows.Len(), reflect.Swapper(rows.Interface()))
		}
		got := report.Judge(mixed)
		for i, want := range report.Judge(j) {
			if d := cmp.Diff(summary(want), summary(got[i])); d != "" {
				t.Fatalf("rows in another order (+):\n%s", d)
			}
		}
	})
}

// A verdict is what its findings say, every check answers, in order, and no
// signature changes anything.
func TestVerdictIsTheFoldOfItsFindings(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		signed := copied(j)
		for _, a := range j.Areas {
			for _, word := range []string{"accept", "waive", "refuse"} {
				signed.SignOffs = append(signed.SignOffs, report.SignOff{Area: a.ID, Role: "owner", Name: "Owner", Decision: word, Waives: report.Order()})
			}
		}
		under := report.Judge(signed)
		for i, d := range report.Judge(j) {
			var ids []string
			met, stops := false, false
			for _, f := range d.Findings {
				ids = append(ids, f.ID)
				met = met || f.Deciding && f.Outcome == evidence.Met
				stops = stops || f.Deciding && (f.Outcome == evidence.NotMet || f.Outcome == evidence.NotShown)
			}
			if !slices.Equal(ids, report.Order()) {
				t.Fatalf("findings %v", ids)
			}
			if want := met && !stops; (d.Verdict == evidence.Go) != want {
				t.Fatalf("verdict %s of area %s", d.Verdict, d.Area.ID)
			}
			if diff := cmp.Diff(summary(d), summary(under[i])); diff != "" {
				t.Fatalf("signatures changed the decision:\n%s", diff)
			}
		}
	})
}

// Guarded acceptance never lets pass what simple acceptance refuses.
func TestGuardedIsNeverLooser(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		simple := drawJob(t, from)
		simple.Guarded = false
		guarded := simple
		guarded.Guarded = true
		if area := gained(report.Judge(simple), report.Judge(guarded)); area != "" {
			t.Fatalf("guarded acceptance turned area %s to GO", area)
		}
	})
}

// Judging gives the same twice and changes nothing of the job.
func TestJudgingIsPure(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		kept := copied(j)
		first, second := report.Judge(j), report.Judge(j)
		for i := range first {
			if !reflect.DeepEqual(first[i], second[i]) {
				t.Fatalf("two judgings differ:\n%s", cmp.Diff(summary(first[i]), summary(second[i])))
			}
		}
		if !reflect.DeepEqual(kept, j) {
			t.Fatal("judging changed the job")
		}
	})
}

// The last day is a day on which the readings are still young enough, and the
// day after it is not.
func TestGoodUntilIsTheLastDay(t *testing.T) {
	t.Parallel()
	from := bases(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, from)
		for i, d := range report.Judge(j) {
			if d.Verdict != evidence.Go {
				continue
			}
			for days, want := range map[int]bool{0: true, 1: false} {
				later := copied(j)
				later.Areas = slices.Clone(j.Areas)
				day := d.GoodUntil.Day + evidence.Day(days)
				later.Areas[i].InstallOn = evidence.Date{Written: day.String(), Day: day}
				later.Air = slices.DeleteFunc(later.Air, func(a acclimate.Air) bool { return a.ReadAt.Shown() && a.ReadAt.Day() > d.Area.InstallOn.Day })
				age := report.Judge(later)[i].Findings[slices.Index(report.Order(), "reading-age")]
				if (age.Outcome == evidence.Met) != want {
					t.Fatalf("area %s good until %s, and installed on %s: reading-age %s, %s", d.Area.ID, d.GoodUntil.Written, day, age.Outcome, age.Reason)
				}
			}
		}
	})
}
