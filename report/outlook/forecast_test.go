package outlook_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/outlook"
	"firstboard/slab/drying"
	"firstboard/wood"
)

// read is a hole's reading so many days before the base's own of 2026-03-03,
// sealed long before.
type read struct {
	hole string
	days int
	rh   string
}

// holes puts readings in place of those of a base.
func holes(t *testing.T, reads ...read) report.Job {
	t.Helper()
	j := copied(bases(t, "slab-glue-down-wood")[0])
	pattern := j.Holes[0]
	j.Holes = nil
	for _, r := range reads {
		h := pattern
		h.Hole = r.hole
		h.SealedAt = at(t, &j, "2025-10-01 08:00")
		when := pattern.ReadAt.First.AddDate(0, 0, -r.days)
		h.ReadAt = evidence.Time{Written: when.Format("2006-01-02 15:04"), First: when, Last: when}
		reread(&h.RH, r.rh)
		j.Holes = append(j.Holes, h)
	}
	j.Areas[0].EnclosedOn = evidence.Date{Written: "2025-10-15", Day: evidence.DayOf(at(t, &j, "2025-10-15 08:00").First)}
	return j
}

func only(t *testing.T, j report.Job) ahead.Outlook {
	t.Helper()
	return outlook.Of(report.Judge(j)[0])
}

// The limit of the base is 80 % RH. Of several holes the worst status stands,
// those at the limit left out; the slowest of those that dry.
func TestStatusOfTheSlab(t *testing.T) {
	t.Parallel()
	falls := []read{{"H1", 40, "90"}, {"H1", 20, "87.5"}, {"H1", 0, "85.5"}}
	slower := []read{{"H2", 40, "93"}, {"H2", 20, "90.5"}, {"H2", 0, "88.5"}}
	rises := []read{{"H3", 40, "84"}, {"H3", 20, "86"}, {"H3", 0, "88"}}
	few := []read{{"H4", 5, "88"}, {"H4", 3, "87"}, {"H4", 0, "86"}}
	met := []read{{"H5", 30, "84"}, {"H5", 0, "80"}}
	for _, c := range []struct {
		name, hole string
		reads      [][]read
		status     evidence.Prospect
	}{
		{"at the limit", "H5", [][]read{met}, evidence.Reached},
		{"falling", "H1", [][]read{falls}, evidence.Losing},
		{"one at the limit is left out", "H1", [][]read{met, falls}, evidence.Losing},
		{"the slower of two", "H2", [][]read{falls, slower}, evidence.Losing},
		{"rising", "H3", [][]read{falls, rises}, evidence.Stalled},
		{"three readings in five days", "H4", [][]read{falls, rises, few}, evidence.Unread},
	} {
		var all []read
		for _, r := range c.reads {
			all = append(all, r...)
		}
		s := only(t, holes(t, all...)).Slab
		if s.Status != c.status || s.Hole != c.hole || s.LimitPct != "80" || s.Standing != evidence.Derived || s.Why == "" {
			t.Errorf("%s: hole %s %s: %s", c.name, s.Hole, s.Status, s.Why)
		}
		if dated := s.Ready != "" && s.From != "" && s.To != ""; dated != (c.status == evidence.Losing) {
			t.Errorf("%s: ready %q, from %q to %q", c.name, s.Ready, s.From, s.To)
		}
	}
}

// A reading from before water, of a hole that was discarded, or taken too soon
// after sealing is no part of a hole's history.
func TestWhatIsNoHistory(t *testing.T) {
	t.Parallel()
	falls := []read{{"H1", 40, "90"}, {"H1", 20, "87.5"}, {"H1", 0, "85.5"}}
	wet := holes(t, falls...)
	wet.Events = append(wet.Events, report.Event{Area: "A1", At: at(t, &wet, "2026-02-01 08:00"), What: "water"})
	if s := only(t, wet).Slab; s.Status != evidence.Unread {
		t.Errorf("read before water: %+v", s)
	}
	early := holes(t, falls...)
	early.Holes[0].SealedAt = early.Holes[0].ReadAt
	if s := only(t, early).Slab; s.Status != evidence.Unread {
		t.Errorf("read as it was sealed: %+v", s)
	}
	out := holes(t, append(falls, read{"H2", 0, "75"})...)
	out.Holes[2].Discarded = "crack"
	if s := only(t, out).Slab; s.Hole != "H2" || s.Status != evidence.Reached {
		t.Errorf("a discarded hole: %+v", s)
	}
	none := holes(t)
	if s := only(t, none).Slab; s.Status != evidence.Unread || s.Why != "no hole was read" {
		t.Errorf("no hole: %+v", s)
	}
	wet.Events[0].At = at(t, &wet, "2026-03-03 12:00")
	for _, j := range []report.Job{wet, holes(t, read{"H1", 0, "20"})} {
		if s := only(t, j).Slab; !strings.HasPrefix(s.Why, "none of its readings tells of the slab today") {
			t.Errorf("a hole without a history: %+v", s)
		}
	}
	blank := holes(t, falls...)
	blank.Areas[0].Thickness = evidence.Reading{}
	if s := only(t, blank).Slab; s.Status != evidence.Unread || !strings.HasPrefix(s.Why, "the thickness") {
		t.Errorf("no thickness: %+v", s)
	}
	blank = holes(t, read{"H1", 0, "80"})
	blank.Areas[0].Thickness = evidence.Reading{}
	if s := only(t, blank).Slab; s.Status != evidence.Reached || s.Why == "" {
		t.Errorf("at the limit, no thickness: %+v", s)
	}
	if s := only(t, copied(bases(t, "wood-over-slab")[0])).Slab; s.Status == "" {
		t.Errorf("another base: %+v", s)
	}
}

// Of two readings at one time the one over the limit is the latest, in whatever
// order they stand.
func TestTheWorseOfTwoAtOneTimeIsTheLatest(t *testing.T) {
	t.Parallel()
	for _, last := range [][]read{
		{{"H1", 0, "79"}, {"H1", 0, "81"}},
		{{"H1", 0, "81"}, {"H1", 0, "79"}},
	} {
		j := holes(t, append([]read{{"H1", 40, "90"}, {"H1", 20, "85"}}, last...)...)
		if s := only(t, j).Slab; s.Status != evidence.Losing {
			t.Errorf("%v: %+v", last, s)
		}
	}
}

// What the latest row of a hole says of its depth is its depth.
func TestTheLatestDepthIsTheDepth(t *testing.T) {
	t.Parallel()
	falls := []read{{"H1", 40, "90"}, {"H1", 20, "87.5"}, {"H1", 0, "85.5"}}
	all, mended, blank := holes(t, falls...), holes(t, falls...), holes(t, falls...)
	mended.Holes[0].Depth = evidence.Typed("1", evidence.Inch)
	mended.Holes[1].Depth = evidence.Typed("2", evidence.Inch)
	blank.Holes[2].Depth = evidence.Reading{Unit: evidence.Inch}
	want := only(t, all).Slab
	for name, j := range map[string]report.Job{"mended": mended, "blank in the latest": blank} {
		if diff := cmp.Diff(want, only(t, j).Slab); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// The days of a forecast are those of the record's clock: none lies before the
// day of the latest reading, early in the morning far east of Greenwich.
func TestDaysAreOfTheRecordsClock(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]string{"Pacific/Auckland": "2026-03-03", "Pacific/Honolulu": "2026-03-03"} {
		zone, err := time.LoadLocation(name)
		if err != nil {
			t.Fatal(err)
		}
		when := map[string]string{"Pacific/Auckland": " 06:00", "Pacific/Honolulu": " 16:00"}[name]
		j := boards(t, map[int]string{10: "14", 5: "11", 0: "9.71"})
		j.Zone = zone
		for i, w := range j.Wood {
			j.Wood[i].ReadAt = at(t, &j, w.ReadAt.Written[:10]+when)
		}
		for i, a := range j.Air {
			j.Air[i].ReadAt = at(t, &j, a.ReadAt.Written)
		}
		if b := only(t, j).Boards; len(b) != 1 || b[0].From != want || b[0].Ready != want {
			t.Errorf("%s: %+v", name, b)
		}
	}
}

// The forecast of an area is that of its hole, in millimeters, with half the
// probe's uncertainty (2 % RH where its row states none) as deviation, from the
// day the building was enclosed on.
func TestForecastOfTheHole(t *testing.T) {
	t.Parallel()
	j := holes(t, read{"H1", 40, "90"}, read{"H1", 20, "87.5"}, read{"H1", 0, "85.5"})
	start := float64(at(t, &j, "2025-10-15 00:00").First.Unix()) / 86400
	h := drying.Hole{ThicknessMM: 101.6, DepthMM: 40.64, Faces: 1, StartDay: start, LimitPct: 80}
	for _, r := range j.Holes {
		h.Samples = append(h.Samples, drying.Sample{
			Day: float64(r.ReadAt.First.Unix()) / 86400, RHPct: r.RH.Exact().Float(), SDPct: 1,
		})
	}
	for _, a := range j.Air {
		h.Air = append(h.Air, evidence.AirState{
			Day: float64(a.ReadAt.First.Unix()) / 86400, TempC: (a.Temp.Exact().Float() - 32) / 1.8,
			RHPct: a.RH.Exact().Float(),
		})
	}
	want, err := drying.Forecast(h)
	if err != nil {
		t.Fatal(err)
	}
	day := func(x float64) string { return time.Unix(int64(math.Floor(x))*86400, 0).UTC().Format(time.DateOnly) }
	s := only(t, j).Slab
	got := [4]string{s.Ready, s.From, s.To, s.CoveredPct}
	if got != [4]string{day(want.Ready), day(want.From), day(want.To), fmt.Sprintf("%.1f", want.CoveredPct)} {
		t.Errorf("%v is not %+v", got, want)
	}
	if len(s.Course) != len(want.Expected) {
		t.Errorf("%d days of the course, not %d", len(s.Course), len(want.Expected))
	}
}

// boards puts visits in place of those of a base: day and reading of each board.
func boards(t *testing.T, visits map[int]string) report.Job {
	t.Helper()
	j := copied(bases(t, "slab-glue-down-wood")[0])
	pattern := j.Wood[0]
	j.Wood = nil
	last := at(t, &j, "2026-03-03 08:00").First
	for days, mc := range visits {
		for n := range 4 {
			w := pattern
			w.Piece = fmt.Sprint("B", n)
			when := last.AddDate(0, 0, -days)
			w.ReadAt = evidence.Time{Written: when.Format("2006-01-02 15:04"), First: when, Last: when}
			w.Method, w.Scale = wood.OvenDry, "" // a pin meter says nothing under 6 %
			reread(&w.Reading, mc)
			j.Wood = append(j.Wood, w)
		}
	}
	return j
}

// A lot whose last visit took three days is not there before these are over.
func TestAVisitOfDaysEndsBeforeTheLotIsReady(t *testing.T) {
	t.Parallel()
	j := boards(t, map[int]string{9: "16", 8: "15.5", 7: "15", 2: "10", 1: "9.9", 0: "9.71"})
	for i := range j.Wood {
		j.Wood[i].Piece = fmt.Sprint(j.Wood[i].Piece, j.Wood[i].ReadAt.Written[:10]) // each day other boards
	}
	if b := only(t, j).Boards; len(b) != 1 || b[0].From != "2026-03-03" || b[0].Ready < b[0].From {
		t.Errorf("%+v", b)
	}
}

// The air of the base is at 70 F and 40 % RH, for 7.7 % MC; the target of its
// climate, 70 F at 30 and 50 % RH, is midway between 6.2 and 9.2 %: 7.7 %, 2
// points either side (Wood Handbook Table 4-2).
func TestStatusOfTheBoards(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		visits map[int]string
		status evidence.Prospect
	}{
		{"within 2 points", map[int]string{0: "9.7"}, evidence.Reached},
		{"one visit", map[int]string{0: "12"}, evidence.Unread},
		{"two visits two days apart", map[int]string{2: "13", 0: "12"}, evidence.Unread},
		{"falling", map[int]string{8: "13", 0: "11"}, evidence.Losing},
		{"rising", map[int]string{8: "4", 0: "5"}, evidence.Gaining},
		{"nothing moves", map[int]string{40: "12", 20: "12", 0: "12"}, evidence.Stalled},
	} {
		b := only(t, boards(t, c.visits)).Boards
		if len(b) != 1 || b[0].Status != c.status || b[0].Lot != "L1" || b[0].EndPct != "7.7" || b[0].Why == "" {
			t.Errorf("%s: %+v", c.name, b)
			continue
		}
		if moves := c.status == evidence.Losing || c.status == evidence.Gaining; (b[0].Ready != "") != moves {
			t.Errorf("%s: ready %q", c.name, b[0].Ready)
		}
	}
}

// Red oak, plainsawn, 5 in wide: Wood Handbook Table 13-5 gives 0.00369, and
// equation 13-2 the change of width; from 8.0 % to the yearly 6.2 and 9.2 %.
// Water by hand: 75 ft2 of 3/4 in at a specific gravity of 0.63, 0.3 points.
func TestMovementAndAir(t *testing.T) {
	t.Parallel()
	j := boards(t, map[int]string{0: "8.0"})
	j.Areas[0].AcrossBoards = evidence.Typed("15", evidence.Foot)
	j.Products[0].Thickness = evidence.Typed("0.75", evidence.Inch)
	o := only(t, j)
	want := ahead.Movement{
		Lot: "L1", NowPct: "8", LowPct: "6.2", HighPct: "9.2", Coefficient: "0.00369", BoardIn: "5",
		ShrinkIn: "0.0332", GrowIn: "0.0221", AcrossShrinkIn: "1.20", AcrossGrowIn: "0.80",
	}
	if diff := cmp.Diff([]ahead.Movement{want}, o.Movement); diff != "" {
		t.Error(diff)
	}
	kg := 75 * 0.09290304 * 19.05 * 0.63 * (7.7 - 8) / 100
	if o.Air == nil || o.Air.TempF != "70" || o.Air.WaterKG != fmt.Sprintf("%.1f", kg) ||
		o.Air.WaterLb != fmt.Sprintf("%.1f", kg/0.45359237) {
		t.Fatalf("%+v, not %.2f kg", o.Air, kg)
	}
	low, high := number(t, o.Air.RHLowPct), number(t, o.Air.RHHighPct)
	for _, end := range []struct {
		rh     float64
		within bool
	}{{low - 1, false}, {low, true}, {high, true}, {high + 1, false}} {
		mc, err := wood.EMC((70-32)/1.8, end.rh)
		if err != nil || (math.Abs(mc-7.7) <= 2) != end.within {
			t.Errorf("air at %v %% RH brings boards to %.2f %%: %v", end.rh, mc, err)
		}
	}
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// What no check judges moves forecasts and never a verdict or a finding; and
// giving advice leaves the decisions as they are.
func TestAForecastNeverChangesAVerdict(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		end := strconv.Itoa(rapid.IntRange(70, 95).Draw(r, "latest"))
		reads := []read{{"H1", 0, end}, {"H2", 0, "74"}, {"H3", 0, "73"}}
		before := holes(t, reads...)
		for n := range rapid.IntRange(0, 5).Draw(r, "history") {
			rh := strconv.Itoa(rapid.IntRange(60, 99).Draw(r, "reading"))
			reads = append(reads, read{"H1", 3 + 9*n, rh})
		}
		after := holes(t, reads...)
		day := rapid.IntRange(0, 200).Draw(r, "enclosed")
		enclosed := evidence.DayOf(at(t, &after, "2025-07-01 08:00").First) + evidence.Day(day)
		after.Areas[0].EnclosedOn = evidence.Date{Written: enclosed.String(), Day: enclosed}
		after.Areas[0].AcrossBoards = evidence.Typed(strconv.Itoa(rapid.IntRange(1, 90).Draw(r, "across")), evidence.Foot)
		first, second := report.Judge(before), report.Judge(after)
		outlook.Advice(second)
		for i, d := range second {
			if d.Verdict != first[i].Verdict || d.Why != first[i].Why {
				r.Fatalf("%s was %s", d.Says(), first[i].Says())
			}
			for n, f := range d.Findings {
				if was := first[i].Findings[n]; f.Outcome != was.Outcome || f.Value != was.Value {
					r.Errorf("%s: %v %s was %v %s", f.ID, f.Outcome, f.Value, was.Outcome, was.Value)
				}
			}
		}
	})
}
