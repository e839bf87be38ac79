package record

import (
	"fmt"
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/record/sheet"
)

// sheets are the sheets of a decision workbook.
type sheets struct{ *sheet.Book }

// gridRow is what a row of a sheet shows.
type gridRow = sheet.GridRow

// shown reads what the sheets of the report show.
func (s *sheets) shown(to *report.Sealed) error {
	if err := s.decision(to); err != nil {
		return err
	}
	if err := s.checks(to); err != nil {
		return err
	}
	read := map[string]bool{}
	for i := range to.Areas {
		key := evidence.Key(to.Areas[i].Sheet)
		if read[key] || len(read) > len(s.Names()) {
			return s.Damaged(sealedSheet, 0, fmt.Errorf("two areas have the sheet %s, or more areas than sheets are listed", evidence.Quote(to.Areas[i].Sheet)))
		}
		read[key] = true
		if err := s.area(&to.Areas[i]); err != nil {
			return err
		}
	}
	return nil
}

// decision reads the rows of the sheet Decision, and the seal above them.
func (s *sheets) decision(to *report.Sealed) error {
	g, err := s.Grid("Decision")
	if err != nil {
		return err
	}
	to.Shown = after(g, "Seal")
	to.Head = above(g, "Area", "Verdict")
	for _, r := range list(g, "Area", "Verdict") {
		row := report.ShownDecision{Verdict: r["Verdict"], GoodUntil: r["Good until"]}
		at := slices.IndexFunc(to.Areas, func(a report.ShownArea) bool { return evidence.Same(a.ID, r["Area"]) })
		if at < 0 {
			to.Strange = append(to.Strange, r["Area"])
			continue
		}
		to.Areas[at].Row = append(to.Areas[at].Row, row)
	}
	return nil
}

// checks reads the catalog that the record was judged by.
func (s *sheets) checks(to *report.Sealed) error {
	g, err := s.Grid("Checks")
	for _, r := range list(g, "Check", "Asks") {
		to.Rules = append(to.Rules, report.Rule{
			ID: r["Check"], Asks: r["Asks"], Default: r["Default"], Deciding: r["Counts as"] == "deciding",
			Cite: evidence.Cite{Source: r["Source"], Standing: evidence.Standing(r["Standing"])},
		})
	}
	return err
}

// area reads the sheet of an area.
func (s *sheets) area(a *report.ShownArea) error {
	g, err := s.Grid(a.Sheet)
	if err != nil {
		return err
	}
	a.Lacking = len(g) == 0
	a.Head = above(g, "Check", "Outcome")
	for _, r := range list(g, "Check", "Outcome") {
		a.Findings = append(a.Findings, report.ShownFinding(r))
	}
	return nil
}

// after is the text to the right of a label.
func after(g []gridRow, label string) string {
	for _, r := range g {
		at := slices.Index(r.Texts, label)
		if at < 0 {
			continue
		}
		for _, text := range r.Texts[at+1:] {
			if text != "" {
				return evidence.Tidy(text)
			}
		}
	}
	return ""
}

// above is what a sheet says above the list under such a header.
func above(g []gridRow, first, other string) []string {
	var all []string
	for _, r := range g {
		if headed(r, first, other) {
			break
		}
		for _, text := range r.Texts {
			if text = evidence.Tidy(text); text != "" {
				all = append(all, text)
			}
		}
	}
	return all
}

// headed says whether a row is the header of a list that has two columns.
func headed(r gridRow, first, other string) bool {
	return evidence.Same(r.Texts[0], first) && slices.ContainsFunc(r.Texts, func(s string) bool { return evidence.Same(s, other) })
}

// list is the list under a header that has two columns, each row by the names
// of its columns, down to the first blank row.
func list(g []gridRow, first, other string) []map[string]string {
	at := slices.IndexFunc(g, func(r gridRow) bool { return headed(r, first, other) })
	if at < 0 {
		return nil
	}
	var all []map[string]string
	for i, r := range g[at+1:] {
		if r.Texts[0] == "" || r.Number != g[at].Number+1+i {
			break
		}
		row := map[string]string{}
		for column, name := range g[at].Texts {
			if name = evidence.Tidy(name); name != "" {
				row[name] = evidence.Tidy(r.Texts[column])
			}
		}
		all = append(all, row)
	}
	return all
}
