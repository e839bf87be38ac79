package evidence_test

import (
	"strings"
	"testing"

	"firstboard/report/evidence"
)

// cell is where a figure stands.
type cell string

func (c cell) String() string { return string(c) }

func read(n string, u evidence.Unit, place string) evidence.Reading {
	if n == "" {
		return evidence.Reading{Unit: u, Place: cell(place)}
	}
	r := evidence.Typed(n, u)
	r.Place = cell(place)
	return r
}

func TestNamesThatFollowEachOtherAreOne(t *testing.T) {
	for _, c := range [][2]string{
		{"H1", "H1"},
		{"H1 H2", "H1 and H2"},
		{"H1 H2 H3", "H1 to H3"},
		{"B1 B2 B3 C1 C2", "B1 to B3, C1 and C2"},
		{"H9 H10 H11", "H9 to H11"},
		{"B1 C5 B3", "B1, C5 and B3"},
		{"H01 H02 H03", "H01, H02 and H03"},
		{"A B C D E F", "A, B, C, D, E and F"},
		{"A B C D E F G H", "A, B, C, D, E and 3 more"},
	} {
		if got := evidence.List(strings.Fields(c[0])); got != c[1] {
			t.Errorf("%s are %q, want %q", c[0], got, c[1])
		}
	}
	if got := evidence.List([]string{"hole H1", "hole H2", "hole H3"}); got != "holes H1 to H3" {
		t.Error(got)
	}
	boards := []string{"board B1 of lot L1", "board B2 of lot L1", "board B3 of lot L1", "board B4 of lot L2"}
	if got := evidence.List(boards); got != "boards B1 to B3 of lot L1 and board B4 of lot L2" {
		t.Error(got)
	}
}

// A reason says the value first, and rounds it to its side of the limit.
func TestReasonsSayTheValueFirst(t *testing.T) {
	most := evidence.AtMost(evidence.Bound{Number: evidence.Typed("85", evidence.RH), Whose: "GLUE-W"})
	span := evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed("6", evidence.MC)},
		Most:  evidence.Bound{Number: evidence.Typed("9", evidence.MC)},
	}
	third := evidence.Item{Name: "lot K1", Limit: span}.By(evidence.DividedBy(
		evidence.Stated("sum", evidence.Ratio(2700001, 100000), evidence.MC), evidence.Stated("boards", evidence.Whole(3), evidence.None),
		evidence.MC))
	hole := func(name, n string) evidence.Item {
		return evidence.Measure("hole "+name, read(n, evidence.RH, "Slab RH!J"+name), most)
	}
	board := func(name, n string) evidence.Item {
		return evidence.Measure("board "+name, read(n, evidence.MC, "Wood!J"+name), span)
	}
	unsure := hole("H1", "84")
	unsure.U = evidence.Within(evidence.Whole(2))
	guarded := evidence.Acceptance{Guarded: true}
	for _, c := range []struct {
		items []evidence.Item
		acc   evidence.Acceptance
		want  string
	}{
		{
			[]evidence.Item{hole("H1", "80"), hole("H4", "87.9"), hole("H2", "85.1")},
			evidence.Acceptance{},
			"highest of 3 holes: H4, 87.9 % RH (limit 85 %, GLUE-W); also over: H2",
		},
		{[]evidence.Item{hole("H1", "85.0")}, evidence.Acceptance{}, "hole H1, 85.0 % RH (limit 85 %, GLUE-W)"},
		{[]evidence.Item{board("B1", "6.4"), board("B2", "7")}, evidence.Acceptance{}, "lowest of 2 boards: B1, 6.4 % MC (limit 6 to 9 %)"},
		{
			[]evidence.Item{board("B1", "5.9"), board("B2", "9.05")},
			evidence.Acceptance{},
			"lowest of 2 boards: B1, 5.9 % MC (limit 6 to 9 %); also outside: B2",
		},
		{[]evidence.Item{third}, evidence.Acceptance{}, "lot K1, 9.000003 % MC (limit 6 to 9 %)"},
		{[]evidence.Item{unsure}, guarded, "hole H1, 84 % RH (limit 85 %, GLUE-W), its uncertainty of 2 % RH counted against it"},
		{
			[]evidence.Item{unsure},
			evidence.Acceptance{},
			"hole H1, 84 % RH (limit 85 %, GLUE-W); close: within its uncertainty of 2 % RH, accepted as read, and nobody is named who agreed to that",
		},
		{
			[]evidence.Item{hole("H1", ""), hole("H2", ""), hole("H3", ""), hole("H4", "80")},
			evidence.Acceptance{},
			"holes H1 to H3: no reading",
		},
	} {
		if f := evidence.Weigh(c.items, c.acc, "nothing"); f.Reason != c.want {
			t.Errorf("got  %s\nwant %s", f.Reason, c.want)
		}
	}
}

// At its uncertainty a reading is not close, just nearer it is; of a lowest
// limit what is beyond lies under it; two owners are both named.
func TestReasonsAtTheirEdges(t *testing.T) {
	least := evidence.AtLeast(evidence.Bound{Number: evidence.Typed("60", evidence.Hour), Whose: "GLUE"})
	both := evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed("7", evidence.PH), Whose: "GLUE"},
		Most:  evidence.Bound{Number: evidence.Typed("10", evidence.PH), Whose: "TILE"},
	}
	one := both
	one.Most.Whose = "glue"
	dish := func(name, n string) evidence.Item {
		return evidence.Measure("dish "+name, read(n, evidence.Hour, "D"+name), least)
	}
	unsure := func(n string) evidence.Item {
		it := dish("D1", n)
		it.U = evidence.Within(evidence.Whole(2))
		return it
	}
	for _, c := range []struct {
		items []evidence.Item
		want  string
	}{
		{[]evidence.Item{unsure("62")}, "dish D1, 62 h (limit at least 60 h, GLUE)"},
		{[]evidence.Item{unsure("61.9")}, "dish D1, 61.9 h (limit at least 60 h, GLUE); close: within its uncertainty of 2 h, accepted as read, and nobody is named who agreed to that"},
		{[]evidence.Item{unsure("60")}, "dish D1, 60 h (limit at least 60 h, GLUE); close: within its uncertainty of 2 h, accepted as read, and nobody is named who agreed to that"},
		{[]evidence.Item{unsure("59.9")}, "dish D1, 59.9 h (limit at least 60 h, GLUE)"},
		{
			[]evidence.Item{dish("D1", "58"), dish("D2", "59"), dish("D3", "61")},
			"lowest of 3 dishes: D1, 58 h (limit at least 60 h, GLUE); also under: D2",
		},
		{
			[]evidence.Item{
				evidence.Measure("pH spot P1", read("7", evidence.PH, "P1"), both),
				evidence.Measure("pH spot P2", read("8", evidence.PH, "P2"), both),
			},
			"lowest of 2 pH spots: P1, 7 (limit 7 to 10, GLUE and TILE)",
		},
		{
			[]evidence.Item{evidence.Measure("pH spot P1", read("8", evidence.PH, "P1"), one)},
			"pH spot P1, 8 (limit 7 to 10, glue)",
		},
		{
			[]evidence.Item{dish("D1", "70"), evidence.Measure("hole H1", read("74.5", evidence.RH, "H1"),
				evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)}))},
			"closest of 2 values: hole H1, 74.5 % RH (limit 75 %)",
		},
		{
			[]evidence.Item{dish("D1", "60"), evidence.Measure("hole H1", read("74.5", evidence.RH, "H1"),
				evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)}))},
			"closest of 2 values: dish D1, 60 h (limit at least 60 h, GLUE)",
		},
		{
			[]evidence.Item{dish("D1", "50"), evidence.Measure("hole H1", read("74.5", evidence.RH, "H1"),
				evidence.AtMost(evidence.Bound{Number: evidence.Typed("75", evidence.RH)}))},
			"worst of 2 values: dish D1, 50 h (limit at least 60 h, GLUE)",
		},
	} {
		if f := evidence.Weigh(c.items, evidence.Acceptance{}, "nothing"); f.Reason != c.want {
			t.Errorf("got  %s\nwant %s", f.Reason, c.want)
		}
	}
	agreed := evidence.Weigh([]evidence.Item{unsure("61")}, evidence.Acceptance{Agreed: "the owner on 2026-03-01"}, "nothing")
	if !strings.HasSuffix(agreed.Reason, "accepted as read, as agreed by the owner on 2026-03-01") {
		t.Error(agreed.Reason)
	}
	var lacking []evidence.Item
	for _, why := range []string{"a", "b", "c", "d", "e", "f"} {
		lacking = append(lacking, evidence.Item{Name: "hole " + why, Lack: "no " + why})
	}
	if f := evidence.Weigh(lacking, evidence.Acceptance{},
		"nothing"); f.Reason != "hole a: no a; hole b: no b; hole c: no c; hole d: no d; 2 more reasons" {
		t.Error(f.Reason)
	}
	if f := evidence.Weigh(lacking[:4], evidence.Acceptance{},
		"nothing"); f.Reason != "hole a: no a; hole b: no b; hole c: no c; hole d: no d" {
		t.Error(f.Reason)
	}
}

// The words of a finding lead from its cells to its outcome.
func TestAFindingExplainsItself(t *testing.T) {
	most := evidence.AtMost(evidence.Bound{Number: read("75", evidence.RH, "Products!E2"), Whose: "TILE"})
	f := evidence.Weigh([]evidence.Item{
		evidence.Measure("hole H1", read("74", evidence.RH, "Slab RH!J5"), most),
		evidence.Measure("hole H2", read("78.4", evidence.RH, "Slab RH!J9"), most),
	}, evidence.Acceptance{}, "nothing")
	f.ID, f.Asks = "slab-rh", "does every hole meet the limit?"
	text := strings.Join(f.Explain(), "\n")
	for _, want := range []string{
		"value = 78.4 % RH, the highest", "  hole H2: 78.4 % RH, Slab RH!J9", "highest allowed = 75 % RH, Products!E2",
		"room to the limit = -3.4 % RH, the first less the second", "the limit is broken", "outcome: not met",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	if got := f.Worked.String(); got != "highest(hole H2 78.4 % RH [Slab RH!J9]; hole H1 74 % RH [Slab RH!J5]) = 78.4 % RH; at most the limit of TILE 75 % RH [Products!E2]" {
		t.Error(got)
	}
}
