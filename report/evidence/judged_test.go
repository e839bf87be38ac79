package evidence_test

import (
	"slices"
	"testing"
	"time"

	"firstboard/report/evidence"
)

type visitRow struct {
	name string
	at   evidence.Time
}

func after(d time.Duration) evidence.Time {
	t := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC).Add(d)
	return evidence.Time{Written: t.Format(time.DateTime), First: t, Last: t}
}

// 24 h exactly count, a minute more does not; the latest row alone is judged
// by every other check.
func TestRowsReadAgainWithinADayCount(t *testing.T) {
	rows := []visitRow{
		{"H1", after(0)},
		{"H1", after(-evidence.Again)},
		{"H1", after(-evidence.Again - time.Minute)},
		{"H1", evidence.Time{}},
	}
	name := func(r visitRow) string { return r.name }
	at := func(r visitRow) evidence.Time { return r.at }
	if got := evidence.Recent(rows, time.Time{}, evidence.Again, name, at); len(got) != 1 || len(got[0].Rows) != 3 {
		t.Errorf("within a day are %v", got)
	}
	if got := evidence.Latest(rows, time.Time{}, name, at); len(got[0].Rows) != 2 {
		t.Errorf("the latest are %v", got)
	}
	if evidence.Again != 24*time.Hour {
		t.Errorf("again is %s", evidence.Again)
	}
}

// The tree behind a count gives the same answer as the count.
func TestCountsAnswerAsTheirTrees(t *testing.T) {
	size := evidence.Typed("100", evidence.SquareFoot)
	for _, c := range []struct {
		usable, unusable int
		needed           evidence.Working
		want             evidence.Outcome
	}{
		{3, 0, evidence.Stated("needed", evidence.Whole(3), evidence.Pieces), evidence.Met},
		{3, 9, evidence.Stated("needed", evidence.Whole(3), evidence.Pieces), evidence.Met},
		{2, 0, evidence.Stated("needed", evidence.Whole(3), evidence.Pieces), evidence.NotMet},
		{2, 1, evidence.Stated("needed", evidence.Whole(3), evidence.Pieces), evidence.NotShown},
		{1, 1, evidence.Stated("needed", evidence.Whole(3), evidence.Pieces), evidence.NotMet},
		{0, 0, evidence.Stated("needed", evidence.Whole(3), evidence.Pieces), evidence.NotShown},
		{5, 0, evidence.Working{}, evidence.NotShown},
	} {
		tally := evidence.Tally{Unusable: c.unusable, Needed: c.needed, Unit: evidence.Pieces, One: "piece", Many: "pieces"}
		for range c.usable {
			tally.Counted = append(tally.Counted, evidence.Stated("piece", evidence.Whole(8), evidence.MC))
		}
		f := tally.Find(size)
		if f.Outcome != c.want || f.Worked.Outcome() != c.want {
			t.Errorf("%d and %d unusable: %s, by its tree %s, want %s", c.usable, c.unusable, f.Outcome, f.Worked.Outcome(), c.want)
		}
		counted := slices.ContainsFunc(f.Worked.Room.Args, func(w evidence.Working) bool { return w.Op == evidence.OpSum })
		if counted != (c.unusable > 0 && c.usable < 3) {
			t.Errorf("%d and %d unusable: that the unusable are added is %v", c.usable, c.unusable, counted)
		}
	}
}

// Of several parts the worst stands, and the tree says the same.
func TestTheWorstOfSeveralPartsAnswersAsItsTree(t *testing.T) {
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("12", evidence.MC)})
	part := func(readings ...string) evidence.Finding {
		var items []evidence.Item
		for _, n := range readings {
			items = append(items, evidence.Measure("piece", evidence.Reading{}, limit))
			if n != "" {
				items[len(items)-1] = evidence.Measure("piece", evidence.Typed(n, evidence.MC), limit)
			}
		}
		return evidence.Weigh(items, evidence.Acceptance{}, "nothing")
	}
	for _, c := range []struct {
		parts []evidence.Finding
		want  evidence.Outcome
	}{
		{[]evidence.Finding{part("9"), part("12")}, evidence.Met},
		{[]evidence.Finding{part("9"), part("12.1")}, evidence.NotMet},
		{[]evidence.Finding{part("9", ""), part("12.1")}, evidence.NotMet},
		{[]evidence.Finding{part("9"), part("")}, evidence.NotShown},
		{[]evidence.Finding{part("9"), part()}, evidence.NotShown},
		{[]evidence.Finding{part(), part("9")}, evidence.NotShown},
	} {
		f := evidence.Worst(c.parts...)
		if f.Outcome != c.want || f.Worked.Outcome() != c.want {
			t.Errorf("%s, by its tree %s, want %s", f.Outcome, f.Worked.Outcome(), c.want)
		}
	}
}

// A thing counts by its first row where every judged row of it is usable, and
// counts as unusable where one is not, or none is left.
func TestThingsAreTallied(t *testing.T) {
	things := []evidence.Judged[int]{{"H1", []int{3, 4}}, {"H2", []int{5, 0}}, {"H3", nil}, {"H4", []int{7}}}
	counted, unusable := evidence.TallyOf(things, func(n int) bool { return n > 0 },
		func(n int) evidence.Working { return evidence.Stated("", evidence.Whole(n), evidence.Inch) })
	if unusable != 2 || len(counted) != 2 || counted[0].Label != "H1" || counted[0].Value.Ceil() != 3 || counted[1].Label != "H4" {
		t.Errorf("counted are %v, unusable %d", counted, unusable)
	}
}

// Every judged row is an item; one without a time lacks it, and a thing that
// water left without a row is one that lacks its reading.
func TestItemsOfThings(t *testing.T) {
	wet := evidence.Judged[visitRow]{Name: "H3"}
	things := []evidence.Judged[visitRow]{{"H1", []visitRow{{"a", after(0)}, {"b", evidence.Time{}}}}, wet}
	measure := func(name string, r visitRow) evidence.Item {
		return evidence.Item{Name: name, Written: r.name, Place: cell("x")}
	}
	items := evidence.Items(things, func(r visitRow) evidence.Time { return r.at }, measure)
	if len(items) != 3 {
		t.Fatalf("items are %v", items)
	}
	for i, want := range []evidence.Item{
		{Name: "H1", Written: "a"},
		{Name: "H1", Written: "b", Lack: evidence.NoTime},
		{Name: "H3", Lack: evidence.WetSince},
	} {
		if it := items[i]; it.Name != want.Name || it.Written != want.Written || it.Lack != want.Lack ||
			(it.Place == nil) != (want.Lack == evidence.WetSince) {
			t.Errorf("item %d is %+v, want %+v", i, it, want)
		}
	}
	if n := evidence.RowCount(things); n != 2 {
		t.Errorf("%d rows", n)
	}
}

// Any part of a limit shows it; one without an end has no words.
func TestLimitsThatAreShown(t *testing.T) {
	end := evidence.Bound{Number: evidence.Typed("75", evidence.RH)}
	for _, c := range []struct {
		limit evidence.Limit
		shown bool
		words string
	}{
		{evidence.Limit{}, false, ""},
		{evidence.Limit{Lack: "no limit is stated"}, true, ""},
		{evidence.AtMost(end), true, "75 % RH"},
		{evidence.AtLeast(end), true, "at least 75 % RH"},
	} {
		if c.limit.Shown() != c.shown || c.limit.String() != c.words {
			t.Errorf("%+v is shown %v as %q", c.limit, c.limit.Shown(), c.limit)
		}
	}
}

// An item meets its limit where it can be compared and does not break it.
func TestItemsThatMeet(t *testing.T) {
	most := evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)})
	unknown := evidence.Measure("hole", evidence.Typed("75", evidence.RH), evidence.Limit{Lack: "no limit is stated"})
	for n, want := range map[string]bool{"75": true, "75.1": false, "": false} {
		if got := evidence.Measure("hole", read(n, evidence.RH, "x"), most).Meets(evidence.Acceptance{}); got != want {
			t.Errorf("%q meets 75: %v", n, got)
		}
	}
	if unknown.Meets(evidence.Acceptance{}) {
		t.Error("a limit that nobody states is met")
	}
}

// Of two equally near values the first by name is told, then by what was written,
// then the first of the record.
func TestEquallyNearValues(t *testing.T) {
	most := evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)})
	hole := func(name, n string) evidence.Item {
		return evidence.Measure("hole "+name, read(n, evidence.RH, name+n), most)
	}
	for _, items := range [][]evidence.Item{
		{hole("H10", "70"), hole("H2", "70")},
		{hole("H2", "70"), hole("H10", "70")},
		{hole("H2", "70"), hole("H2", "70.0")},
		{hole("H2", "70.0"), hole("H2", "70")},
	} {
		if f := evidence.Weigh(items, evidence.Acceptance{}, ""); f.Value != "70" || f.Evidence[0].String() != "H270" {
			t.Errorf("told is %s of %v", f.Value, f.Evidence)
		}
	}
	twice := []evidence.Item{
		evidence.Measure("hole H2", read("70", evidence.RH, "row 4"), most),
		evidence.Measure("hole H2", read("70", evidence.RH, "row 5"), most),
	}
	if f := evidence.Weigh(twice, evidence.Acceptance{}, ""); f.Evidence[0].String() != "row 4" {
		t.Errorf("of two alike %v is told first", f.Evidence)
	}
}

// What all names begin with is what they are, as far as it is no name.
func TestNounsOfValues(t *testing.T) {
	most := evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)})
	for _, c := range [][3]string{
		{"board A 1", "board A 2", "highest of 2 boards: A 1, 70 % RH (limit 75 %)"},
		{"board 3 x", "board 3 y", "highest of 2 boards: 3 x, 70 % RH (limit 75 %)"},
		{"spot b2 x", "spot b2 y", "highest of 2 spots: b2 x, 70 % RH (limit 75 %)"},
		{"board x 1", "board x", "highest of 2 boards: x, 70 % RH (limit 75 %)"},
		{"hole H1", "hole H2 b", "highest of 2 holes: H1, 70 % RH (limit 75 %)"},
		{"hole", "dish", "highest of 2 values: dish, 70 % RH (limit 75 %)"},
	} {
		items := []evidence.Item{
			evidence.Measure(c[0], read("70", evidence.RH, "a"), most),
			evidence.Measure(c[1], read("70", evidence.RH, "b"), most),
		}
		if f := evidence.Weigh(items, evidence.Acceptance{}, ""); f.Reason != c[2] {
			t.Errorf("got  %s\nwant %s", f.Reason, c[2])
		}
	}
}

// Rows are found by their name without case and extra spaces. Rows of one name are
// shared, and what is put after them is no part of the record.
func TestRowsByKey(t *testing.T) {
	name := func(s string) string { return s }
	groups := evidence.ByKey([]string{"H1", "H2", "h1 ", "H2", "", "H1"}, name)
	for key, want := range map[string][]string{"h1": {"H1", "h1 ", "H1"}, "h2": {"H2", "H2"}, "": {""}} {
		if !slices.Equal(groups[key], want) || len(groups) != 3 {
			t.Errorf("of %q are %q, want %q", key, groups[key], want)
		}
	}
	if two := evidence.ByKey([]string{"H1", "H2"}, name); len(two) != 2 {
		t.Errorf("rows of two names are %q", two)
	}
	rows := []string{"H1", "h1", "not theirs"}
	one := evidence.ByKey(rows[:2], name)["h1"]
	if &one[0] != &rows[0] {
		t.Error("rows of one name are copied")
	}
	if one = append(one, "another"); rows[2] != "not theirs" {
		t.Errorf("%q are written over by %q", rows, one)
	}
	if none := evidence.ByKey(nil, name); len(none) != 0 {
		t.Errorf("no rows are %q", none)
	}
}
