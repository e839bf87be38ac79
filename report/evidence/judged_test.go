package evidence_test

import (
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
	rows := []visitRow{{"H1", after(0)}, {"H1", after(-evidence.Again)}, {"H1", after(-evidence.Again - time.Minute)}, {"H1", evidence.Time{}}}
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
		if f := tally.Find(size); f.Outcome != c.want || f.Worked.Outcome() != c.want {
			t.Errorf("%d and %d unusable: %s, by its tree %s, want %s", c.usable, c.unusable, f.Outcome, f.Worked.Outcome(), c.want)
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
