package evidence_test

import (
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"firstboard/report/evidence"
)

// The trap of floats: 8.3 - 4.3 is above 4.0 in float64.
func TestDifferencesStayExact(t *testing.T) {
	a, b := evidence.Typed("8.3", evidence.MC).Exact(), evidence.Typed("4.3", evidence.MC).Exact()
	if a.Sub(b).Cmp(evidence.Whole(4)) != 0 {
		t.Errorf("8.3 - 4.3 = %s", a.Sub(b).Text())
	}
}

func TestExactText(t *testing.T) {
	third := evidence.Ratio(1, 3)
	for _, c := range []struct {
		x    evidence.Exact
		side []evidence.Exact
		want string
	}{
		{evidence.Whole(8), nil, "8"},
		{evidence.Ratio(1, 8), nil, "0.125"},
		{evidence.Ratio(123456, 1000000), nil, "0.123456"}, // 6 places are written in full
		{evidence.Ratio(1234567, 10000000), nil, "0.12"},
		{evidence.Ratio(-1, 2), nil, "-0.5"},
		{third, nil, "0.33"},
		{evidence.Whole(4).Add(evidence.Ratio(1, 3000000)), []evidence.Exact{evidence.Whole(4)}, "4.0000003"},
		{evidence.Ratio(11999999, 3000000), []evidence.Exact{evidence.Whole(4)}, "3.9999997"},
	} {
		if got := c.x.Text(c.side...); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
}

func TestRoundHalfToEven(t *testing.T) {
	for _, c := range [][2]string{
		{"0.25", "0.2"},
		{"0.35", "0.4"},
		{"0.45", "0.4"},
		{"-0.25", "-0.2"},
		{"-0.35", "-0.4"},
		{"0.26", "0.3"},
	} {
		if got := evidence.Typed(c[0], evidence.None).Exact().Fixed(1); got != c[1] {
			t.Errorf("%s rounds to %s, want %s", c[0], got, c[1])
		}
	}
}

func TestConversionsAreExact(t *testing.T) {
	for _, c := range []struct {
		n        string
		from, to evidence.Unit
		want     string
	}{
		{"20", evidence.Celsius, evidence.Fahrenheit, "68"},
		{"-40", evidence.Fahrenheit, evidence.Celsius, "-40"},
		{"3", evidence.Foot, evidence.Meter, "0.9144"},
		{"0.125", evidence.Inch, evidence.Millimeter, "3.175"},
		{"2.54", evidence.Centimeter, evidence.Inch, "1"},
		{"1000", evidence.SquareFoot, evidence.SquareM, "92.90304"},
		{"144", evidence.SquareInch, evidence.SquareFoot, "1"},
		{"10000", evidence.SquareCM, evidence.SquareM, "1"},
		{"45359237", evidence.Grams, evidence.Pounds, "9290304"},
	} {
		if got := evidence.Typed(c.n, c.from).In(c.to).Text(); got != c.want {
			t.Errorf("%s %s is %s %s, want %s", c.n, c.from, got, c.to, c.want)
		}
	}
}

func TestNamesStandAsAPersonListsThem(t *testing.T) {
	names := []string{"H10", "h2", "H1", "A 1", "H2b"}
	slices.SortFunc(names, evidence.Order)
	if got := strings.Join(names, " "); got != "A 1 H1 h2 H2b H10" {
		t.Errorf("order is %s", got)
	}
	if !evidence.Same(" H  1", "h 1") || evidence.Same("H1", "H 1") {
		t.Error("identifiers are compared trimmed, inner spaces folded, without case")
	}
}

// An answer that was forgotten is never a pass.
func TestZeroFindingIsNotShown(t *testing.T) {
	var forgotten evidence.Finding
	forgotten.Deciding = true
	if v, why := evidence.Fold([]evidence.Finding{{Deciding: true, Outcome: evidence.Met}, forgotten}); v != evidence.NoGo ||
		why != evidence.NotProven {
		t.Errorf("a forgotten answer gives %s, %s", v, why)
	}
	if v, _ := evidence.Fold(nil); v != evidence.NoGo {
		t.Error("no finding at all is no GO")
	}
	if v, _ := evidence.Fold([]evidence.Finding{{Deciding: true, Outcome: evidence.NotNeeded}}); v != evidence.NoGo {
		t.Error("nothing needed is no GO")
	}
	advice := evidence.Finding{Outcome: evidence.NotMet}
	if v, why := evidence.Fold([]evidence.Finding{advice, {Deciding: true, Outcome: evidence.Met}}); v != evidence.Go || why != "" {
		t.Errorf("advice stopped an area: %s, %s", v, why)
	}
	if v, _ := evidence.Fold([]evidence.Finding{{Outcome: evidence.Met}}); v != evidence.NoGo {
		t.Error("advice that is met is no GO")
	}
	over := evidence.Finding{Deciding: true, Outcome: evidence.NotMet}
	if v, why := evidence.Fold([]evidence.Finding{advice, forgotten, over}); v != evidence.NoGo || why != evidence.OverLimit {
		t.Errorf("a limit that is broken gives %s, %s", v, why)
	}
	if _, why := evidence.Fold([]evidence.Finding{advice, forgotten}); why != evidence.NotProven {
		t.Errorf("advice that is not met gives %s", why)
	}
}

func TestWeighOrderOfAnswers(t *testing.T) {
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)})
	read := func(n string) evidence.Item {
		return evidence.Measure("hole", evidence.Typed(n, evidence.RH), limit)
	}
	blank := evidence.Measure("hole", evidence.Reading{}, limit)
	unsure := read("74")
	unsure.U = &evidence.Uncertainty{}
	within := func(n string, u int) evidence.Item {
		it := read(n)
		it.U = evidence.Within(evidence.Whole(u))
		return it
	}
	guarded := evidence.Acceptance{Guarded: true}
	for _, c := range []struct {
		items []evidence.Item
		acc   evidence.Acceptance
		want  evidence.Outcome
		value string
	}{
		{nil, evidence.Acceptance{}, evidence.NotShown, ""},
		{[]evidence.Item{read("75")}, evidence.Acceptance{}, evidence.Met, "75"},
		{[]evidence.Item{read("75"), blank}, evidence.Acceptance{}, evidence.NotShown, "75"},
		{[]evidence.Item{blank}, evidence.Acceptance{}, evidence.NotShown, ""},
		{[]evidence.Item{blank, read("75.1")}, evidence.Acceptance{}, evidence.NotMet, "75.1"},
		{[]evidence.Item{unsure}, evidence.Acceptance{}, evidence.Met, "74"},
		{[]evidence.Item{unsure}, guarded, evidence.NotShown, ""},
		{[]evidence.Item{read("75")}, guarded, evidence.Met, "75"},
		{[]evidence.Item{within("73", 2)}, guarded, evidence.Met, "73"},
		{[]evidence.Item{within("73.1", 2)}, guarded, evidence.NotMet, "73.1"},
		{[]evidence.Item{within("73.1", 2)}, evidence.Acceptance{}, evidence.Met, "73.1"},
	} {
		f := evidence.Weigh(c.items, c.acc, "nothing")
		if f.Outcome != c.want || f.Value != c.value || f.Reason == "" {
			t.Errorf("got %s, %q (%s), want %s, %q", f.Outcome, f.Value, f.Reason, c.want, c.value)
		}
	}
}

// A row without a time may be the latest: it stands beside the latest timed
// one. Water drops rows, never the thing.
func TestLatestKeepsWhatMayBeLatest(t *testing.T) {
	type row struct {
		name string
		at   evidence.Time
	}
	on := func(day int) evidence.Time {
		at := time.Date(2026, 3, day, 8, 0, 0, 0, time.UTC)
		return evidence.Time{Written: at.Format(time.DateOnly), First: at, Last: at}
	}
	rows := []row{{"H1", on(1)}, {"h1", on(3)}, {"H1", evidence.Time{}}, {"H2", on(1)}, {"H1", on(3)}}
	things := evidence.Latest(rows, on(2).First, func(r row) string { return r.name }, func(r row) evidence.Time { return r.at })
	if len(things) != 2 || len(things[0].Rows) != 3 || len(things[1].Rows) != 0 {
		t.Errorf("judged are %v", things)
	}
}

// Where clocks skip midnight the day begins when they do, not an hour before;
// where midnight comes twice, at its first coming.
func TestDayBeginsWhereClocksMove(t *testing.T) {
	for _, c := range []struct{ zone, day, begins string }{
		{"UTC", "2026-09-06", "2026-09-06T00:00:00Z"},
		{"America/Santiago", "2026-09-06", "2026-09-06T04:00:00Z"},
		{"America/Havana", "2026-03-08", "2026-03-08T05:00:00Z"},
		{"America/Havana", "2026-11-01", "2026-11-01T04:00:00Z"},
		{"America/Chicago", "2026-03-08", "2026-03-08T06:00:00Z"},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		day, _ := time.Parse(time.DateOnly, c.day)
		if got := evidence.DayOf(day).Begins(zone).UTC().Format(time.RFC3339Nano); got != c.begins {
			t.Errorf("%s begins in %s at %s, want %s", c.day, c.zone, got, c.begins)
		}
	}
}

// A count is held within 31 bits, as every system has them.
func TestCeilNeverWraps(t *testing.T) {
	const most = 1<<31 - 1
	for typed, want := range map[string]int{
		"18446744073709551616000": most, "-18446744073709551616000": -most, "2147483648": most, "-2147483648": -most,
		"2147483647": most, "2147483646.5000000001": most, "1073741823.0000000001": 1 << 30, "-0.0000000001": 0,
	} {
		if n := evidence.Typed(typed, evidence.None).Exact().Ceil(); n != want {
			t.Errorf("%s counts as %d, want %d", typed, n, want)
		}
	}
}
