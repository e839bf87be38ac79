package evidence_test

import (
	"testing"

	"firstboard/report/evidence"
)

// A finding takes limit and unit of what it is held against, and whose it is and
// its source where neither is known yet: of both ends the highest.
func TestFindingsSayWhoseLimitDecides(t *testing.T) {
	rule, sheet := evidence.Cite{Source: "the rule"}, evidence.Cite{Source: "the sheet"}
	low := evidence.Bound{Number: evidence.Typed("6", evidence.MC), Whose: "OAK", Cite: rule}
	high := evidence.Bound{Number: evidence.Typed("9", evidence.MC), Whose: "GLUE", Cite: sheet}
	bare := evidence.Bound{Number: evidence.Typed("9", evidence.MC)}
	both := evidence.Limit{Least: low, Most: high}
	for name, c := range map[string]struct {
		before evidence.Finding
		limit  evidence.Limit
		whose  string
		cite   evidence.Cite
	}{
		"nothing known":        {evidence.Finding{}, both, "GLUE", sheet},
		"a lowest alone":       {evidence.Finding{}, evidence.AtLeast(low), "OAK", rule},
		"a source known":       {evidence.Finding{Cite: rule}, both, "", rule},
		"an owner known":       {evidence.Finding{Whose: "TILE"}, both, "TILE", evidence.Cite{}},
		"an end of no product": {evidence.Finding{}, evidence.AtMost(bare), "", evidence.Cite{}},
	} {
		f := c.before.Against(c.limit)
		if f.Whose != c.whose || f.Cite != c.cite || f.Limit != c.limit.Figures() || f.Unit != evidence.MC {
			t.Errorf("%s: %+v", name, f)
		}
	}
}

// The end that decides names its owner, and its source where it has one.
func TestTheDecidingEndIsNamed(t *testing.T) {
	sheet := evidence.Cite{Source: "the sheet"}
	low := evidence.Bound{Number: evidence.Typed("6", evidence.MC), Whose: "OAK"}
	high := evidence.Bound{Number: evidence.Typed("9", evidence.MC), Whose: "GLUE", Cite: sheet}
	for n, want := range map[string]evidence.Finding{
		"5": {Whose: "OAK"}, "10": {Whose: "GLUE", Cite: sheet},
		"7.5": {Whose: "GLUE", Cite: sheet},
	} {
		it := evidence.Measure("board B1", read(n, evidence.MC, "x"), evidence.Limit{Least: low, Most: high})
		f := evidence.Weigh([]evidence.Item{it}, evidence.Acceptance{}, "")
		if f.Whose != want.Whose || f.Cite != want.Cite {
			t.Errorf("%s is decided by %q (%v), want %q (%v)", n, f.Whose, f.Cite, want.Whose, want.Cite)
		}
	}
}

// Of several findings the worst stands, with the least room that any leaves and
// all that is unusable in any.
func TestTheWorstFindingKeepsTheLeastRoom(t *testing.T) {
	room := func(n, unusable int) evidence.Worked {
		return evidence.Worked{Room: evidence.Stated("room", evidence.Whole(n), evidence.MC), Unusable: unusable}
	}
	met, broken := evidence.Finding{Outcome: evidence.Met, Worked: room(3, 1)},
		evidence.Finding{Outcome: evidence.NotMet, Worked: room(-2, 2)}
	bare := evidence.Finding{Reason: "nothing was read"}
	for name, c := range map[string]struct {
		findings []evidence.Finding
		outcome  evidence.Outcome
		room     string
		unusable int
	}{
		"one broken":       {[]evidence.Finding{met, broken}, evidence.NotMet, "-2", 3},
		"one without room": {[]evidence.Finding{met, bare}, evidence.NotShown, "3", 2},
		"all without room": {[]evidence.Finding{bare, bare}, evidence.NotShown, "", 2},
		"all met":          {[]evidence.Finding{met, {Outcome: evidence.NotNeeded}}, evidence.Met, "3", 1},
	} {
		f := evidence.Worst(c.findings...)
		got := ""
		if f.Worked.Room.Shown() {
			got = f.Worked.Room.Value.Text()
		}
		if f.Outcome != c.outcome || got != c.room || f.Worked.Unusable != c.unusable {
			t.Errorf("%s: %s with room %q and %d unusable, want %s, %q, %d", name, f.Outcome, got, f.Worked.Unusable, c.outcome, c.room,
				c.unusable)
		}
	}
}
