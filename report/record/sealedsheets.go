package record

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// sheets are the sheets of a workbook that are no tables of a record.
type sheets struct {
	workbook
	all []sheet
}

func (s *sheets) find(name string) *sheet {
	at := slices.IndexFunc(s.all, func(one sheet) bool { return evidence.Same(one.Name, name) })
	if at < 0 {
		return nil
	}
	return &s.all[at]
}

// gridRow is what a row of a sheet shows, from its first cell on, by the
// values that are stored.
type gridRow struct {
	number int
	texts  []string
}

// gridWidth is how many cells of a row are read: more than any sheet of a
// report has.
const gridWidth = 30

// grid is a sheet row by row, blank ones left out; without the sheet it is
// empty. Such a sheet has no header in row 1, so every column is given a blank
// one, and what row 1 holds stands there after the reading.
func (s *sheets) grid(name string) ([]gridRow, error) {
	at := s.find(name)
	if at == nil || s.partOf(*at) == "" {
		return nil, nil
	}
	src := &source{file: s.name, sheet: at.Name, left: &room{mostRows, mostCells}}
	src.Header = slices.Repeat([]string{" "}, gridWidth)
	if err := s.read(src, s.partOf(*at)); err != nil {
		return nil, err
	}
	var rows []gridRow
	if src.top == 1 {
		first := gridRow{number: 1}
		for _, text := range src.Header[:gridWidth] {
			first.texts = append(first.texts, strings.TrimSpace(text))
		}
		rows = append(rows, first)
	}
	for _, r := range src.Rows {
		row := gridRow{r.Number, make([]string, gridWidth)}
		for i, c := range r.Cells[:gridWidth] {
			row.texts[i] = shownText(c)
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// shownText is a stored value as its cell shows it.
func shownText(c report.Cell) string {
	switch c.Kind {
	case report.NumberCell:
		return padded(c.Text, c.Places)
	case percentCell:
		return c.Text + "%"
	case noResultCell: // a formula that gives the empty text stores nothing
		return ""
	}
	return c.Text
}

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
		if read[key] || len(read) > len(s.all) {
			return s.unsound(0, fmt.Errorf("two areas have the sheet %s, or more areas than sheets are listed", quote(to.Areas[i].Sheet)))
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
	g, err := s.grid("Decision")
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
	g, err := s.grid("Checks")
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
	g, err := s.grid(a.Sheet)
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
		at := slices.Index(r.texts, label)
		if at < 0 {
			continue
		}
		for _, text := range r.texts[at+1:] {
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
		for _, text := range r.texts {
			if text = evidence.Tidy(text); text != "" {
				all = append(all, text)
			}
		}
	}
	return all
}

// headed says whether a row is the header of a list that has two columns.
func headed(r gridRow, first, other string) bool {
	return evidence.Same(r.texts[0], first) && slices.ContainsFunc(r.texts, func(s string) bool { return evidence.Same(s, other) })
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
		if r.texts[0] == "" || r.number != g[at].number+1+i {
			break
		}
		row := map[string]string{}
		for column, name := range g[at].texts {
			if name = evidence.Tidy(name); name != "" {
				row[name] = evidence.Tidy(r.texts[column])
			}
		}
		all = append(all, row)
	}
	return all
}
