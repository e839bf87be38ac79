package page_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/page"
	"firstboard/report/record"
)

func written(t *testing.T, path string, change func(*report.Job)) (string, []report.Decision) {
	t.Helper()
	rec, err := record.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&rec.Job)
	}
	decisions := report.Judge(rec.Job)
	var out bytes.Buffer
	p := page.Page{Statement: report.Statement{
		Job: rec.Job, Record: rec.Name, SHA256: rec.SHA256, Tool: "test", Seal: strings.Repeat("ab", 32), Decisions: decisions,
		Rules: report.Rules(), Limits: report.LimitLines(decisions), Cautions: report.Cautions(),
		Advice: make([]ahead.Advice, len(decisions)),
	}}
	if err := page.Write(&out, p); err != nil {
		t.Fatal(err)
	}
	return out.String(), decisions
}

const demo = "../../testdata/jobs/millrace"

// Every verdict and every finding of the decisions stands on the page.
func TestPageSaysWhatWasDecided(t *testing.T) {
	html, decisions := written(t, demo, nil)
	text := visible(t, html)
	for _, d := range decisions {
		if want := strings.TrimSpace(d.Area.ID+" "+d.Area.Name) + ": " + d.Says(); strings.Count(text, want) < 2 {
			t.Errorf("the page does not say %q at its top and at its area", want)
		}
		for _, f := range d.Findings {
			if !strings.Contains(text, f.Reason) {
				t.Errorf("%s, %s: the page lacks %q", d.Area.ID, f.ID, f.Reason)
			}
		}
		for _, c := range d.Conditions {
			if !strings.Contains(text, c) {
				t.Errorf("%s: the page lacks the condition %q", d.Area.ID, c)
			}
		}
	}
}

// Nothing on the page asks for anything outside it, and nothing runs.
func TestPageNeedsNothingElse(t *testing.T) {
	html, _ := written(t, demo, nil)
	for _, no := range []string{"<script", "http://", "https://", "@import", "url(", "onload", "javascript:"} {
		at := strings.Index(strings.ReplaceAll(html, `xmlns="http://www.w3.org/2000/svg"`, ""), no)
		if at >= 0 {
			t.Errorf("the page holds %q", no)
		}
	}
}

// A text of the record never becomes a part of the page.
func TestPageEscapesTheRecord(t *testing.T) {
	const bad = `<script>alert("x")</script>`
	html, _ := written(t, demo, func(j *report.Job) {
		j.Name, j.Site, j.PreparedBy, j.Company, j.GeneralContractor = bad, bad, bad, bad, bad
		for i := range j.Areas {
			j.Areas[i].Name = bad
		}
		for i := range j.Products {
			j.Products[i].Description, j.Products[i].DataSheet, j.Products[i].Species = bad, bad, bad
		}
		for key, m := range j.Instruments {
			m.Model, m.Serial, m.Certificate = bad, bad, bad
			j.Instruments[key] = m
		}
		for i := range j.Holes {
			j.Holes[i].Hole, j.Holes[i].By, j.Holes[i].Note = bad, bad, bad
		}
		for i := range j.Wood {
			j.Wood[i].Piece, j.Wood[i].Lot, j.Wood[i].Scale = bad, bad, bad
		}
		for i := range j.SignOffs {
			j.SignOffs[i].Name, j.SignOffs[i].Remarks = bad, bad
		}
		for i := range j.Climates {
			j.Climates[i].Name, j.Climates[i].From = bad, bad
		}
	})
	if strings.Contains(html, "<script") {
		t.Error("a text of the record became a script")
	}
	visible(t, html)
}

// visible is the text of a page, which has to be well formed but for its
// doctype and empty elements.
func visible(t *testing.T, html string) string {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(html))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var b strings.Builder
	for {
		token, err := d.Token()
		if err == io.EOF {
			return b.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		if text, ok := token.(xml.CharData); ok {
			b.Write(text)
		}
	}
}
