package instruments

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstboard/report/evidence"
	"firstboard/slab"
)

type line int

func (l line) String() string { return fmt.Sprint("row ", int(l)) }

// at is so many minutes into a log; below zero it is blank.
func at(minutes int) evidence.Time {
	if minutes < 0 {
		return evidence.Time{}
	}
	t := time.Date(2026, time.March, 1, 0, 0, 0, 0, time.UTC).Add(time.Duration(minutes) * time.Minute)
	return evidence.Time{Written: t.Format("2006-01-02 15:04"), First: t, Last: t}
}

const day = 24 * 60 // min

// drawnComparisons are some of one probe, few of them alike in their times.
func drawnComparisons(t *rapid.T) []Comparison {
	one := rapid.Custom(func(t *rapid.T) Comparison {
		near := rapid.SampledFrom([]int{-1, 0, 1, day - 1, day, day + 1, 20 * day, 31*day - 1, 31 * day, 31*day + 1, 70 * day})
		c := Comparison{Instrument: "RP1", CheckedAt: at(near.Draw(t, "minutes"))}
		c.Expected = evidence.Typed("75", evidence.RH)
		if read := rapid.SampledFrom([]string{"", "75", "77", "77.1"}).Draw(t, "read"); read != "" {
			c.Read = evidence.Typed(read, evidence.RH)
		}
		return c
	})
	all := rapid.SliceOfN(one, 0, 12).Draw(t, "comparisons")
	for i := range all {
		all[i].Place = line(i)
	}
	return all
}

// speaks is the rule in as many words: of a probe for single use every check; of
// another those without a time, the last before the reading with those of the 24 h up
// to it, and each one at the reading or within 30 days after.
func speaks(c Comparison, all []Comparison, read time.Time, single bool) bool {
	t := c.CheckedAt.First
	if single || !c.CheckedAt.Shown() {
		return true
	}
	var last time.Time
	for _, other := range all {
		if o := other.CheckedAt.First; other.CheckedAt.Shown() && o.Before(read) && o.After(last) {
			last = o
		}
	}
	return !last.IsZero() && t.Before(read) && last.Sub(t) <= 24*time.Hour ||
		!t.Before(read) && t.Sub(read) <= 30*24*time.Hour
}

// What is looked up by time is what the rule says of each check by itself, in the
// order of the record, and no check speaks twice.
func TestChecksThatSpeakOfAProbe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := drawnComparisons(t)
		single := rapid.Bool().Draw(t, "single-use")
		kind := evidence.Probe
		if single {
			kind = evidence.SingleUse
		}
		rs := Readings{Compared: ComparisonsOf(all)}
		rs.Slab.Instruments = evidence.Instruments{"rp1": {ID: "RP1", Kinds: []string{kind}}}
		told, known := Told{}, map[string]bool{}
		for _, minutes := range rapid.SliceOfN(rapid.SampledFrom([]int{0, 1, day, day + 1, 40 * day}), 1, 4).Draw(t, "readings") {
			hole := slab.Hole{Hole: "H1", Instrument: "rp1", ReadAt: at(minutes)}
			var want, got []string
			off := false
			for _, c := range all {
				if !speaks(c, all, hole.ReadAt.First, single) {
					continue
				}
				if c.CheckedAt.Shown() || single {
					off = off || c.Read.Written == "77.1"
				}
				if !known[c.Place.String()] {
					known[c.Place.String()] = true
					want = append(want, c.Place.String())
				}
			}
			for _, it := range rs.ProbeChecks(hole, told) {
				got = append(got, it.Place.String())
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Fatalf("a reading at %s (- rule, + looked up):\n%s", hole.ReadAt.Written, diff)
			}
			if rs.Disagrees(hole) != off {
				t.Fatalf("a reading at %s: a check is off: %v", hole.ReadAt.Written, off)
			}
		}
	})
}

// The last check before a reading is the first of those that were made at one time.
func TestLastCheckBefore(t *testing.T) {
	made := func(minutes int, name string) Comparison {
		c := Comparison{Instrument: "RP1", CheckedAt: at(minutes)}
		c.CheckedAt.Place = evidence.Place(line(len(name)))
		return c
	}
	cs := comparisons([]Comparison{made(50, "a"), made(-1, "bb"), made(20, "ccc"), made(20, "dddd")})
	for _, c := range []struct {
		before int
		want   evidence.Place
	}{{20, nil}, {21, line(3)}, {50, line(3)}, {51, line(1)}} {
		if got := cs.lastBefore(at(c.before).First); got.Shown() != (c.want != nil) || got.Shown() && got.Place != c.want {
			t.Errorf("before minute %d: %+v, want the one in %v", c.before, got, c.want)
		}
	}
	if got := cs.Last(); got.Place != line(1) {
		t.Errorf("the latest: %+v", got)
	}
	if (Comparisons{}).Last().Shown() || comparisons([]Comparison{made(-1, "a")}).Last().Shown() {
		t.Error("none has a time")
	}
}

// A row stands ready for a check where it has neither its time nor what was read.
func TestACheckThatIsBegun(t *testing.T) {
	read := evidence.Typed("75", evidence.RH)
	for _, c := range []struct {
		row  Comparison
		want bool
	}{{Comparison{}, true}, {Comparison{Read: read}, false}, {Comparison{CheckedAt: at(0)}, false}} {
		if got := comparisons([]Comparison{{CheckedAt: at(5), Read: read}, c.row}).Begun(); got != c.want {
			t.Errorf("%+v: %v", c.row, got)
		}
	}
}

// A check of a meter on its block counts for a week, to the minute, and only where
// it agrees.
func TestOnItsBlock(t *testing.T) {
	const week = 7 * day
	block := func(minutes int, read string) Comparison {
		return Comparison{
			Instrument: "PM1", CheckedAt: at(minutes), Expected: evidence.Typed("12", evidence.MC), Read: evidence.Typed(read, evidence.MC),
			Place: line(minutes),
		}
	}
	for _, c := range []struct {
		name   string
		checks []Comparison
		read   int
		want   bool
	}{
		{"a week before", []Comparison{block(0, "12")}, week, true},
		{"a minute more", []Comparison{block(0, "12")}, week + 1, false},
		{"at the reading", []Comparison{block(0, "12")}, 0, false},
		{"off by the tolerance", []Comparison{block(0, "13")}, 9, true},
		{"off by more", []Comparison{block(0, "13.1")}, 9, false},
		{"one of two that agrees", []Comparison{block(0, "14"), block(5, "12")}, 9, true},
		{"one without a time", []Comparison{block(-1, "12")}, 9, false},
		{"none", nil, 9, false},
	} {
		rs := Readings{Compared: ComparisonsOf(c.checks)}
		use := &meterUse{meter: evidence.Instrument{ID: "PM1", Kinds: []string{evidence.PinMeter}}, as: evidence.PinMeter}
		items, shown := rs.onItsBlock(use, Row{What: "board B1", At: at(c.read), From: at(c.read)})
		met := !slices.ContainsFunc(items, func(it evidence.Item) bool { return !it.Meets(evidence.Acceptance{}) })
		if shown != c.want || shown && (len(items) != 2 || !met) {
			t.Errorf("%s: %v with %d items, all met: %v", c.name, shown, len(items), met)
		}
	}
}
