package evidence_test

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

func figures(n int) []evidence.Working {
	var all []evidence.Working
	for i := range n {
		all = append(all, evidence.Stated("", evidence.Whole(i+1), evidence.MC))
	}
	return all
}

// Every kind of step says what it does.
func TestStepsSayWhatTheyDo(t *testing.T) {
	at := func(hour int) evidence.Time {
		x := time.Date(2026, 3, 1, hour, 0, 0, 0, time.UTC)
		return evidence.Time{Written: "x", First: x, Last: x, Place: cell("T")}
	}
	a, b := evidence.Stated("a", evidence.Whole(7), evidence.MC), evidence.Stated("b", evidence.Whole(2), evidence.MC)
	day := evidence.Date{Written: "2026-03-04", Day: evidence.DayOf(time.Date(2026, 3, 4, 0, 0, 0, 0, time.UTC)), Place: cell("D")}
	for _, c := range []struct {
		w    evidence.Working
		want string
	}{
		{evidence.Total(a, b), "value = 9 % MC, the sum"},
		{evidence.Less(b, a), "value = -5 % MC, the first less the second"},
		{evidence.Unsigned(evidence.Less(b, a)), "value = 5 % MC, without its sign"},
		{evidence.Times(a, b, evidence.MC), "value = 14 % MC, the first times the second"},
		{evidence.DividedBy(a, b, evidence.MC), "value = 3.5 % MC, the first over the second"},
		{evidence.Rounded(evidence.DividedBy(a, b, evidence.MC), 0), "value = 4 % MC, rounded to 0 places, half to even"},
		{evidence.RoundedUp(evidence.DividedBy(a, b, evidence.MC)), "value = 4 % MC, up to the next whole number"},
		{evidence.Highest(a, b), "value = 7 % MC, the highest"},
		{evidence.Lowest(a, b), "value = 2 % MC, the lowest"},
		{evidence.MeanOf(a, b), "value = 4.5 % MC, the mean"},
		{evidence.CountOf(evidence.Pieces, a, b), "value = 2 pieces, how many there are"},
		{evidence.Inside(evidence.Pieces, b, a, a, b), "value = 2 pieces, how many from the third on lie from the first to the second"},
		{evidence.HoursBetween(at(8), at(20), evidence.Passed), "value = 12 h, hours from the first to the second"},
		{
			evidence.DaysBetween(evidence.Moment("read", at(8)), evidence.OnDay("to", day)),
			"value = 3 days, days of the calendar from the first to the second",
		},
		{evidence.Moment("read", evidence.Time{First: at(8).First}), "value = 2026-03-01 08:00"},
		{evidence.Converted(evidence.Stated("t", evidence.Whole(20), evidence.Celsius), evidence.Fahrenheit), "value = 68 F, in F"},
		{
			evidence.Physics(evidence.OpEMC, evidence.Whole(8), evidence.MC, a, b),
			"value = 8 % MC, the EMC by Wood Handbook equation 4-5 (published)",
		},
	} {
		lines := evidence.Finding{Worked: evidence.Worked{Value: c.w}}.Explain()
		if lines[2] != c.want {
			t.Errorf("got %q, want %q", lines[2], c.want)
		}
	}
	lines := evidence.Finding{Worked: evidence.Worked{Value: evidence.DaysBetween(evidence.Moment("read", at(8)),
		evidence.OnDay("to", day))}}.Explain()
	if lines[3] != "  read: 2026-03-01 08:00, T" || lines[4] != "  to: 2026-03-04, D" {
		t.Errorf("moments are told as %q", lines[3:5])
	}
}

// A step that was told is not told again, and the highest or lowest of such steps is not taken
// apart.
func TestExplainTellsAStepOnce(t *testing.T) {
	t.Parallel()
	mean := evidence.MeanOf(figures(2)...).Called("mean")
	over := evidence.Less(evidence.Stated("most", evidence.Whole(9), evidence.MC), mean)
	under := evidence.Less(mean, figures(1)[0])
	f := evidence.Finding{ID: "x", Worked: evidence.Worked{
		Value: mean, Least: evidence.Total(over, under), Room: evidence.Lowest(over, under),
	}}
	want := []string{
		"value = 1.5 % MC, the mean",
		"  1 % MC",
		"  2 % MC",
		"lowest allowed = 8 % MC, the sum",
		"  7.5 % MC, the first less the second",
		"    most: 9 % MC",
		"    mean: 1.5 % MC, the mean, as above",
		"  0.5 % MC, the first less the second",
		"    mean: 1.5 % MC, the mean, as above",
		"    1 % MC",
		"room to the limit = 0.5 % MC, the lowest of those above",
		"the room is 0 or more: the limit is met",
		"outcome: not shown", "",
	}
	if d := cmp.Diff(want, f.Explain()[2:]); d != "" {
		t.Error(d)
	}
}

// A finding whose figures have no tree, as those of the air's windows, tells them and their cells.
func TestExplainWithoutATree(t *testing.T) {
	t.Parallel()
	f := evidence.Finding{
		Value: "46.7", Limit: "32 to 50", Unit: evidence.RH,
		Evidence: []evidence.Place{cell("Air!D279"), cell("Air!C291")},
	}
	got := f.Explain()[2:]
	want := []string{"value = 46.7 % RH", "limit = 32 to 50 % RH", "cells: Air!D279, Air!C291", "outcome: not shown", ""}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	f = evidence.Finding{Limit: "72", Unit: evidence.Hour}
	if got := f.Explain()[2:4]; got[0] != "limit = 72 h" || got[1] != "nothing to compare" {
		t.Errorf("without a value it tells %q", got)
	}
}

// The one of several values that decides brings its own unit, or that of its room.
func TestTheNearestValueBringsItsUnit(t *testing.T) {
	t.Parallel()
	days := evidence.Stated("", evidence.Whole(9), evidence.DayUnit)
	if w := evidence.Lowest(days, figures(1)[0]); w.Unit != evidence.MC {
		t.Errorf("the lowest is in %s", w.Unit)
	}
	bare := evidence.Stated("", evidence.Whole(1), evidence.None)
	item := func(w evidence.Working, most int, u evidence.Unit) evidence.Item {
		limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed(strconv.Itoa(most), u)})
		return evidence.Item{Name: "x", Limit: limit}.By(w)
	}
	items := []evidence.Item{item(days, 30, evidence.DayUnit), item(bare, 2, evidence.RH)}
	f := evidence.Weigh(items, evidence.Acceptance{}, "")
	if got := f.Worked.Value.Unit; got != evidence.RH {
		t.Errorf("the nearest is in %s", got)
	}
}

// The answer is told at zero and just beside it, and what cannot be used.
func TestExplainTellsTheAnswer(t *testing.T) {
	room := func(n int) evidence.Working { return evidence.Stated("room", evidence.Whole(n), evidence.MC) }
	for _, c := range []struct {
		w    evidence.Worked
		want string
	}{
		{evidence.Worked{Room: room(0)}, "the room is 0 or more: the limit is met"},
		{evidence.Worked{Room: room(1)}, "the room is 0 or more: the limit is met"},
		{evidence.Worked{Room: room(-1)}, "the room is under 0: the limit is broken"},
		{evidence.Worked{}, "nothing to compare"},
		{evidence.Worked{Room: room(1), Unusable: 1}, "1 value cannot be used"},
		{evidence.Worked{Room: room(1), Unusable: 3}, "3 values cannot be used"},
	} {
		text := strings.Join(evidence.Finding{Worked: c.w}.Explain(), "\n")
		if !strings.Contains(text, c.want) || c.w.Unusable == 0 && strings.Contains(text, "cannot be used") {
			t.Errorf("%q is missing in\n%s", c.want, text)
		}
	}
	for unusable, want := range map[int]string{0: "1 % MC", 1: "1 % MC; 1 value unusable", 2: "1 % MC; 2 values unusable"} {
		if got := (evidence.Worked{Value: figures(1)[0], Unusable: unusable}).String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	if got := (evidence.Worked{Unusable: 2}).String(); got != "" {
		t.Errorf("without a value it says %q", got)
	}
}

// Of many figures the first are told, and how many more there are.
func TestLongStepsAreCut(t *testing.T) {
	for n, want := range map[int]string{60: "    60 % MC", 61: "    1 more", 75: "    15 more"} {
		deep := evidence.Finding{Worked: evidence.Worked{Value: evidence.Unsigned(evidence.Total(figures(n)...))}}
		lines := deep.Explain()
		if last := lines[len(lines)-4]; last != want {
			t.Errorf("of %d the last line is %q, want %q", n, last, want)
		}
	}
	for n, want := range map[int]string{
		6: "sum(1 % MC; 2 % MC; 3 % MC; 4 % MC; 5 % MC; 6 % MC) = 21 % MC",
		8: "sum(1 % MC; 2 % MC; 3 % MC; 4 % MC; 5 % MC; 6 % MC; 2 more) = 36 % MC",
	} {
		if got := (evidence.Worked{Value: evidence.Total(figures(n)...)}).String(); got != want {
			t.Errorf("of %d: %q, want %q", n, got, want)
		}
	}
}

// above75 is above 75 by 1 in the last of so many places.
func above75(places int32) evidence.Exact {
	return evidence.Of(decimal.New(1, -places)).Add(evidence.Whole(75))
}

// Numbers for people are short, and on their side of the limit.
func TestShortNumbers(t *testing.T) {
	for _, c := range []struct {
		x    evidence.Exact
		side []evidence.Exact
		want string
	}{
		{evidence.Ratio(7647826086957, 1000000000000), nil, "7.65"},
		{evidence.Whole(8), nil, "8"},
		{evidence.Ratio(17, 2), nil, "8.5"},
		{evidence.Ratio(75004, 1000), []evidence.Exact{evidence.Whole(75)}, "75.004"},
		{evidence.Ratio(74996, 1000), []evidence.Exact{evidence.Whole(75)}, "74.996"},
		{evidence.Ratio(75000, 1000), []evidence.Exact{evidence.Whole(75)}, "75"},
		{evidence.Ratio(-1, 3), []evidence.Exact{evidence.Whole(0)}, "-0.33"},
		{evidence.Ratio(-1, 1000), nil, "0"},
		{above75(40), []evidence.Exact{evidence.Whole(75)}, "75." + strings.Repeat("0", 39) + "1"},
		{above75(41), []evidence.Exact{evidence.Whole(75)}, "75"}, // 40 places at most
	} {
		if got := c.x.Short(c.side...); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
}
