package gather

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// A blank is null to a program, a figure a number of the digits typed, and a time
// what every reader of JSON lines takes for one.
func TestValuesAsJSON(t *testing.T) {
	for _, c := range []struct {
		value any
		want  string
	}{
		{Text(""), "null"},
		{Text(`a "b" <c> & d`), `"a \"b\" <c> & d"`},
		{figure("87.90"), "87.90"},
		{figure("007"), "7"},
		{figure("-0.5"), "-0.5"},
		{figure("00.5"), "0.5"},
		{figure("60 to 80"), "null"},
		{figure("+5"), "null"},
		{figure(".5"), "null"},
		{figure("1e3"), "null"},
		{figure("0"), "0"},
		{Moment("2026-03-04 17:10"), `"2026-03-04T17:10:00"`},
		{Moment("2026-03-04 17:10:09"), `"2026-03-04T17:10:09"`},
		{Moment(""), "null"},
		{Moment("soon"), "null"},
	} {
		got, err := c.value.(json.Marshaler).MarshalJSON()
		if err != nil || string(got) != c.want || !json.Valid(got) {
			t.Errorf("%#v is %s (%v), want %s", c.value, got, err, c.want)
		}
	}
}

// Every line has the same fields, the same kind of value in each or null, and no
// object inside it.
func TestLinesAreFlatAndOfOneShape(t *testing.T) {
	var blank map[string]any
	line, err := json.Marshal(Row{Blocking: []Text{}})
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(line, &blank); err != nil {
		t.Fatal(err)
	}
	for name, value := range blank {
		if _, object := value.(map[string]any); object || strings.ToLower(name[:1]) != name[:1] {
			t.Errorf("%s holds %v", name, value)
		}
		if value == "" {
			t.Errorf("%s is an empty text, not null", name)
		}
	}
}

// part is a record with one area of each name, decided alike wherever it stands.
func part(record, sum, seal, origin string, areas ...Text) Part {
	p := Part{From: From{record, sum, seal, origin}}
	for _, a := range areas {
		p.Rows = append(p.Rows, Row{
			Record: Text(record), Area: a, Verdict: "GO", InstallOn: "2026-03-05", LastReading: "2026-03-04 08:00",
		})
		p.Due = append(p.Due, Due{On: "2026-03-06", What: dueAgain, Record: Text(record), Areas: []Text{a}})
	}
	return p
}

func rowsOf(g Gathered) []string {
	var all []string
	for _, r := range g.Rows {
		all = append(all, string(r.Record+" "+r.Area))
	}
	return all
}

func TestWhatStandsTwiceCountsOnce(t *testing.T) {
	whole := part("job", "f", "s", "", "A1", "A2")
	twin := part("twin.xlsx", "t", "s", "", "A1", "A2")
	decision := part("decision.xlsx", "d", "s", "f", "A1", "A2")
	single := part("areas/A1.xlsx", "p", "q", "f", "A1")
	other := part("other", "o", "r", "", "A1", "A2")

	signed := part("decision.xlsx", "d", "s", "f", "A1", "A2")
	signed.Rows[1].signed = 1
	changed := part("areas/A1.xlsx", "p", "q", "f", "A1")
	changed.Rows[0].Verdict, changed.Rows[0].Why = "NO-GO", "over a limit"

	single1, single2 := part("areas/A1.xlsx", "p", "q", "f", "A1"), part("areas/A2.xlsx", "v", "w", "f", "A2")
	single1.Rows[0].signed, single2.Rows[0].signed = 1, 1

	for _, c := range []struct {
		name  string
		parts []Part
		rows  []string
		again []string
	}{
		{"alone", []Part{whole}, []string{"job A1", "job A2"}, nil},
		{"two jobs with areas of one name", []Part{whole, other}, []string{"job A1", "job A2", "other A1", "other A2"}, nil},
		{
			"a record and its twin",
			[]Part{twin, whole},
			[]string{"job A1", "job A2"},
			[]string{"twin.xlsx: its areas A1 and A2 stand in job"},
		},
		{
			"the decision comes first by name",
			[]Part{decision, whole},
			[]string{"job A1", "job A2"},
			[]string{"decision.xlsx: its areas A1 and A2 stand in job"},
		},
		{"the decision alone", []Part{decision}, []string{"decision.xlsx A1", "decision.xlsx A2"}, nil},
		{"one area of it", []Part{single, whole}, []string{"job A1", "job A2"}, []string{"areas/A1.xlsx: its area A1 stands in job"}},
		{
			"a link found late",
			[]Part{single, twin, whole},
			[]string{"job A1", "job A2"},
			[]string{"areas/A1.xlsx: its area A1 stands in job", "twin.xlsx: its areas A1 and A2 stand in job"},
		},
		{
			"one area was signed later",
			[]Part{whole, signed},
			[]string{"decision.xlsx A2", "job A1"},
			[]string{"decision.xlsx: its area A1 stands in job", "job: its area A2 stands in decision.xlsx"},
		},
		{
			"two areas were signed in two files",
			[]Part{whole, single1, single2},
			[]string{"areas/A1.xlsx A1", "areas/A2.xlsx A2"},
			[]string{"job: its area A1 stands in areas/A1.xlsx", "job: its area A2 stands in areas/A2.xlsx"},
		},
		{"decided otherwise since", []Part{whole, changed}, []string{"areas/A1.xlsx A1", "job A1", "job A2"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := Join(c.parts, nil)
			var again []string
			for _, u := range g.Unread {
				if u.What != Again {
					t.Errorf("%s: %s", u.Record, u.What)
				}
				again = append(again, u.Record+": "+u.Why)
			}
			if diff := cmp.Diff(c.rows, rowsOf(g)); diff != "" {
				t.Error("rows", diff)
			}
			if diff := cmp.Diff(c.again, again, cmpopts.EquateEmpty()); diff != "" {
				t.Error("again", diff)
			}
			if len(g.Due) != len(g.Rows) {
				t.Errorf("%d things fall due of %d areas", len(g.Due), len(g.Rows))
			}
			backward := append([]Part{}, c.parts...)
			for i, j := 0, len(backward)-1; i < j; i, j = i+1, j-1 {
				backward[i], backward[j] = backward[j], backward[i]
			}
			if diff := cmp.Diff(g, Join(backward, nil), cmp.AllowUnexported(Row{}, Unread{})); diff != "" {
				t.Error("in another order", diff)
			}
		})
	}
}

// A job that was copied and read again stands in two records: nobody can tell
// here which of them holds, so it is said.
func TestTwins(t *testing.T) {
	g := Gathered{Rows: []Row{
		{Record: "a", Job: "Mill", Site: "East", Area: "A1"},
		{Record: "a", Job: "Mill", Site: "East", Area: "A2"},
		{Record: "b", Job: "mill ", Site: "East", Area: "a1"},
		{Record: "c", Job: "Mill", Site: "West", Area: "A1"},
	}}
	want := []Twin{{"Mill", "A1", []Text{"a", "b"}}}
	if diff := cmp.Diff(want, g.Twins()); diff != "" {
		t.Fatal(diff)
	}
	if got, want := g.Twins()[0].Says(), "A1 of Mill: a, b"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// The summary counts each verdict once, each check in each area that it stops,
// and days in their order with the missing one last.
func TestSummary(t *testing.T) {
	over := Row{Verdict: "NO-GO", Why: "over a limit", InstallOn: "2026-04-01"}
	over.Blocking, over.Over = []Text{"slab-rh", "probe-check"}, []Text{"slab-rh"}
	waived := over
	waived.Blocking, waived.Waived, waived.UnderWaiver = []Text{"slab-rh"}, []Text{"slab-rh"}, true
	unproven := Row{Verdict: "NO-GO", Why: "not proven", Blocking: []Text{"probe-check"}}
	good, late := Row{Verdict: "GO", InstallOn: "2026-03-05"}, Row{Verdict: "GO", InstallOn: "2026-04-01"}
	g := Gathered{Rows: []Row{over, good, waived, unproven, late}}
	if diff := cmp.Diff(Verdicts{Areas: 5, Go: 2, Over: 2, Unproven: 1, Waived: 1}, g.Total()); diff != "" {
		t.Error(diff)
	}
	reasons := g.Reasons()
	for i := range reasons {
		reasons[i].Asks = ""
	}
	if diff := cmp.Diff([]Reason{{"slab-rh", "", 2, 2, 1}, {"probe-check", "", 2, 0, 0}}, reasons); diff != "" {
		t.Error(diff)
	}
	want := []InstallDay{
		{"2026-03-05", Verdicts{Areas: 1, Go: 1}},
		{"2026-04-01", Verdicts{Areas: 3, Go: 1, Over: 2, Waived: 1}},
		{"", Verdicts{Areas: 1, Unproven: 1}},
	}
	if diff := cmp.Diff(want, g.Days()); diff != "" {
		t.Error(diff)
	}
	if got, want := g.Says(), "0 records, 5 areas: 2 GO, 3 NO-GO (2 over a limit, 1 not proven; 1 under waiver)"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// What falls due on one day and is of one kind is told together, the first three
// by name.
func TestFallsDue(t *testing.T) {
	probe := func(name, record Text) Due {
		return Due{On: "2026-04-01", What: dueProbe, Of: name, Record: record, Areas: []Text{"A1", "A2"}}
	}
	p := Part{Due: []Due{
		{On: "2026-04-02", What: dueGo, Record: "b", Areas: []Text{"A1"}},
		probe("P1", "b"), probe("P2", "b"), probe("P3", "b"), probe("P4", "b"),
	}}
	want := []Falls{
		{"2026-04-01", dueProbe, 4, 2, "P1 (b A1 and A2); P2 (b A1 and A2); P3 (b A1 and A2); and 1 more"},
		{"2026-04-02", dueGo, 1, 1, "b A1"},
	}
	if diff := cmp.Diff(want, Join([]Part{p}, nil).FallsDue()); diff != "" {
		t.Error(diff)
	}
}
