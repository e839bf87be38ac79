package report_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstboard/report"
)

func text(s string) report.Cell   { return report.Cell{Kind: report.TextCell, Text: s} }
func number(s string) report.Cell { return report.Cell{Kind: report.NumberCell, Text: s} }

// holes is a small table.
func holes(cells ...report.Cell) report.Table {
	t := report.Table{Name: "Slab RH", Header: []string{"Hole", "", "RH (%)", "Note"}}
	for i := 0; i+1 < len(cells); i += 2 {
		row := report.TableRow{Number: 2 + i/2, Cells: []report.Cell{cells[i], {}, cells[i+1], {}}}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func sealOf(t report.Table) string {
	return report.SealOf("tool 1", nil, []report.Table{t}, report.Answer{}).Tables
}

func TestTheCanonicalFormOfATable(t *testing.T) {
	table := holes(text("  H1 \n a "), number("84.70"), text(`H|2\`), report.Cell{})
	want := []string{"row|Hole|RH (%)|Note", "2|H1 a|84.7", `3|H\|2\\`}
	if got := slices.Collect(table.Lines()); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// What a spreadsheet may change by saving plays no part in a seal; what
// somebody may have meant does.
func TestWhatASealKnows(t *testing.T) {
	was := sealOf(holes(text("H1"), number("84.7")))
	for name, same := range map[string]report.Table{
		"zeros":        holes(text("H1"), number("084.700")),
		"spaces":       holes(text(" H1\t"), number("84.7")),
		"a bad letter": holes(text("H\x01\ufffd1"), number("84.7")),
	} {
		if sealOf(same) != was {
			t.Errorf("%s break the seal", name)
		}
	}
	blank := holes(text("H1"), number("84.7"))
	blank.Header = []string{"Hole", "", "RH (%)", "Note", ""}
	if sealOf(blank) != was {
		t.Error("a column without a name breaks the seal")
	}
	moved, renamed := holes(text("H1"), number("84.7")), holes(text("H1"), number("84.7"))
	moved.Rows[0].Number, renamed.Header[2] = 3, "RH (C)"
	for name, other := range map[string]report.Table{
		"a digit":   holes(text("H1"), number("84.71")),
		"a sign":    holes(text("H1"), number("-84.7")),
		"a blank":   holes(text("H1"), report.Cell{}),
		"zero":      holes(text("H1"), number("0")),
		"a name":    holes(text("H 1"), number("84.7")),
		"a row":     holes(text("H1"), number("84.7"), text("H2"), number("84.7")),
		"a number":  moved,
		"a heading": renamed,
	} {
		if sealOf(other) == was {
			t.Errorf("%s is not sealed", name)
		}
	}
}

func TestFieldsAreThoseOfTheLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fields := rapid.SliceOfN(rapid.StringOf(rapid.SampledFrom([]rune(`a|\ `))), 1, 6).Draw(t, "fields")
		fields = append(fields, "end")
		if got := report.Fields(report.Line(fields)); !slices.Equal(got, fields) {
			t.Fatalf("%q came back as %q", fields, got)
		}
	})
}

// The seal of the answers leaves out what a sign-off changes and where the
// evidence stands, and no other word of a finding.
func TestWhatOfTheFindingsIsSealed(t *testing.T) {
	answer := func(change func(*report.AreaAnswer)) string {
		a := report.AreaAnswer{
			ID: "A1", Verdict: "NO-GO", Conditions: []string{"provided it is dry"},
			Findings: []report.FindingAnswer{{ID: "slab-rh", Outcome: "not met", Value: "84.70", Limit: "75", Reason: "hole H1 read 84.70 % RH"}},
		}
		change(&a)
		return report.SealOf("tool 1", nil, nil, report.Answer{Areas: []report.AreaAnswer{a}}).Findings
	}
	was := answer(func(*report.AreaAnswer) {})
	for name, change := range map[string]func(*report.AreaAnswer){
		"a waiver": func(a *report.AreaAnswer) { a.Waivers = []report.WaiverAnswer{{Check: "slab-rh"}} },
		"a place":  func(a *report.AreaAnswer) { a.Findings[0].Evidence = []string{"slab-rh.csv row 2"} },
		"zeros": func(a *report.AreaAnswer) {
			a.Findings[0].Value, a.Findings[0].Reason = "84.7", "hole H1 read 084.7 % RH"
		},
	} {
		if answer(change) != was {
			t.Errorf("%s breaks the seal", name)
		}
	}
	for name, change := range map[string]func(*report.AreaAnswer){
		"the verdict":   func(a *report.AreaAnswer) { a.Verdict = "GO" },
		"a day":         func(a *report.AreaAnswer) { a.GoodUntil = "2026-03-06" },
		"the target":    func(a *report.AreaAnswer) { a.Target = &report.TargetAnswer{Low: "6", High: "9", Mid: "7.5"} },
		"a condition":   func(a *report.AreaAnswer) { a.Conditions = nil },
		"what is not":   func(a *report.AreaAnswer) { a.Findings = nil },
		"an outcome":    func(a *report.AreaAnswer) { a.Findings[0].Outcome = "met" },
		"how it counts": func(a *report.AreaAnswer) { a.Findings[0].Deciding = true },
		"a limit":       func(a *report.AreaAnswer) { a.Findings[0].Limit = "85" },
		"a reason":      func(a *report.AreaAnswer) { a.Findings[0].Reason = "hole H2 read 84.7 % RH" },
		"a standing":    func(a *report.AreaAnswer) { a.Findings[0].Standing = "manufacturer" },
	} {
		if answer(change) == was {
			t.Errorf("%s is not sealed", name)
		}
	}
}

// sealedTables are tables sealed without an area, as they stand now.
func sealedTables(was, now report.Table) report.Sealed {
	none := func() (report.Job, error) { return report.Job{}, nil }
	s := report.Sealed{Parts: report.SealOf("tool 1", report.Rules(), []report.Table{was}, report.Answers(report.Job{}, nil, nil)), Rules: report.Rules()}
	s.Written, s.Shown = s.Parts.String(), s.Parts.String()
	s.Was = report.Copy{Tables: []report.Table{was}, Job: none}
	s.Now = report.Copy{Tables: []report.Table{now}, Job: none}
	return s
}

func TestWhichCellsChanged(t *testing.T) {
	h := func(id, rh string) []report.Cell { return []report.Cell{text(id), number(rh)} }
	was := holes(slices.Concat(h("H1", "70"), h("H2", "71"), h("H3", "72"), h("H4", "73"))...)
	moved, swapped, wider := holes(), holes(), holes()
	moved.Rows, swapped.Rows, wider.Rows = slices.Clone(was.Rows), was.Rows, was.Rows
	moved.Rows[3].Number = 9
	swapped.Header = []string{"RH (%)", "", "Hole", "Note"}
	wider.Header = append(slices.Clone(was.Header), "By")
	for name, c := range map[string]struct {
		now  report.Table
		want []string
	}{
		"as it was":  {was, nil},
		"two cells":  {holes(slices.Concat(h("H1", "70"), h("H5", "71"), h("H3", "72.5"), h("H4", "73"))...), []string{`Slab RH row 3 "Hole": from H2 to H5`, `Slab RH row 4 "RH (%)": from 72 to 72.5`}},
		"a row out":  {holes(slices.Concat(h("H1", "70"), h("H3", "72"), h("H4", "73"))...), []string{"Slab RH row 3: is gone: H2, 71"}},
		"a row in":   {holes(slices.Concat(h("H1", "70"), h("H2", "71"), h("H9", "60"), h("H3", "72"), h("H4", "73"))...), []string{"Slab RH row 4: was added: H9, 60"}},
		"the last":   {holes(slices.Concat(h("H1", "70"), h("H2", "71"), h("H3", "72"))...), []string{"Slab RH row 5: is gone: H4, 73"}},
		"all":        {holes(), []string{"Slab RH: the table is gone, with 4 rows"}},
		"moved":      {moved, []string{"Slab RH row 5: stands in row 9 now, and rows below it may have moved too"}},
		"a new head": {wider, []string{`Slab RH: the column "By" was added`}},
		"swapped": {swapped, []string{
			"Slab RH: its columns stand in another order",
			`Slab RH row 2 "Hole": from H1 to 70`, `Slab RH row 2 "RH (%)": from 70 to H1`,
			`Slab RH row 3 "Hole": from H2 to 71`, `Slab RH row 3 "RH (%)": from 71 to H2`,
			`Slab RH row 4 "Hole": from H3 to 72`, `Slab RH row 4 "RH (%)": from 72 to H3`,
			`Slab RH row 5 "Hole": from H4 to 73`, `Slab RH row 5 "RH (%)": from 73 to H4`,
		}},
	} {
		v, err := report.Verify(sealedTables(was, c.now), "", "tool 1", report.Rules())
		for i := range c.want {
			c.want[i] = "changed since: " + c.want[i]
		}
		if err != nil || !slices.Equal(v.Broken, c.want) {
			t.Errorf("%s: %q (%v), want %q", name, v.Broken, err, c.want)
		}
	}
}

func TestTwentyChangesAreToldAndTheRestCounted(t *testing.T) {
	var old, cur []report.Cell
	for range 50 {
		old, cur = append(old, text("H"), number("70")), append(cur, text("H"), number("71"))
	}
	v, err := report.Verify(sealedTables(holes(old...), holes(cur...)), "", "tool 1", report.Rules())
	if err != nil || len(v.Broken) != 21 || v.Broken[20] != "changed since: and 30 more" {
		t.Errorf("%q (%v)", v.Broken, err)
	}
}

func TestAnotherVersionOfTheCatalogIsTold(t *testing.T) {
	was := holes(text("H1"), number("70"))
	ours := report.Rules()
	at := slices.IndexFunc(ours, func(r report.Rule) bool { return r.ID == "slab-rh" })
	ours[at].Default = "80 % RH"
	ours[0].ID = "air-new"
	v, err := report.Verify(sealedTables(was, was), "", "tool 2", ours)
	want := []string{
		"judged by another version of the catalog, with tool 1; this is tool 2",
		"catalog: air-new: the workbook does not list it",
		"catalog: slab-rh, default: the workbook says 75 % RH, and this version 80 % RH",
		"catalog: air-range: this version does not ask it",
	}
	if err != nil || !slices.Equal(v.Broken, want) {
		t.Errorf("%q (%v), want %q", v.Broken, err, want)
	}
}

// What another version finds otherwise is no alteration.
func TestAnotherVersionMayJudgeOtherwise(t *testing.T) {
	was := holes(text("H1"), number("70"))
	for version, want := range map[string]string{"tool 1": "verdict altered: ", "tool 2": "this version judges otherwise: "} {
		s := sealedTables(was, was)
		s.Parts.Findings = "0"
		s.Written, s.Shown = s.Parts.String(), s.Parts.String()
		v, err := report.Verify(s, "", version, report.Rules())
		if err != nil || len(v.Broken) != 1 || !strings.HasPrefix(v.Broken[0], want) {
			t.Errorf("%s: %q (%v), want %q", version, v.Broken, err, want)
		}
	}
}

// A later version with the same catalog that finds the same is told, and no
// more.
func TestALaterVersionHolds(t *testing.T) {
	was := holes(text("H1"), number("70"))
	v, err := report.Verify(sealedTables(was, was), "", "tool 2", report.Rules())
	if err != nil || len(v.Broken) > 0 || !strings.Contains(v.Notes[0], "judged with tool 1; this is tool 2") {
		t.Errorf("%q, %q (%v)", v.Broken, v.Notes, err)
	}
}
