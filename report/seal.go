package report

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"maps"
	"slices"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// Seal is what a decision is sealed by. It speaks for the record but its
// sign-offs, which may be added later, and for verdicts and findings, whatever
// file they stand in: a folder, its workbook and the decision workbook have one
// seal.
type Seal struct {
	Tool     string // name and version of the program that judged
	Catalog  string // SHA-256 in hex of the catalog, as are the next two
	Tables   string // of the record's tables
	Findings string // of settings, verdicts and findings
}

// SealOf is the seal of tables and what was answered of them.
func SealOf(tool string, rules []Rule, tables []Table, a Answer) Seal {
	return Seal{Tool: tool, Catalog: CatalogSum(rules), Tables: tablesSum(tables), Findings: findingsSum(a)}
}

// String is the seal itself: the SHA-256 in hex of a text that names its parts.
func (s Seal) String() string {
	return sumOf([][]string{
		{"firstboard seal", "1"},
		{"tool", s.Tool},
		{"catalog", s.Catalog},
		{"tables", s.Tables},
		{"findings", s.Findings},
	})
}

// CatalogSum is the version of a catalog: the SHA-256 in hex of its checks
// as the outputs list them.
func CatalogSum(rules []Rule) string {
	var lines [][]string
	for _, r := range rules {
		lines = append(lines, append([]string{r.ID}, r.words()...))
	}
	return sumOf(lines)
}

func (r Rule) words() []string {
	return []string{r.Asks, r.Default, r.Cite.Source, string(r.Cite.Standing), counts(r.Deciding)}
}

func counts(deciding bool) string {
	if deciding {
		return "deciding"
	}
	return "advice"
}

func tablesSum(tables []Table) string {
	h := sha256.New()
	for _, t := range tables {
		if !t.sealed() {
			continue
		}
		writeLine(h, Line([]string{"table", t.Name}))
		for line := range t.Lines() {
			writeLine(h, line)
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

// sealed says whether a table plays a part in the seal: an empty one says
// nothing.
func (t Table) sealed() bool { return len(t.Rows) > 0 && !t.isSignOff() }

func (t Table) isSignOff() bool { return evidence.Same(t.Name, "Sign-off") }

// findingsSum leaves out what sign-offs change, and where the evidence stands:
// a folder and a workbook name their places differently.
func findingsSum(a Answer) string {
	j := a.Job
	lines := [][]string{{"job", j.Name, j.Site, j.Acceptance}}
	for _, item := range slices.Sorted(maps.Keys(j.Settings)) {
		lines = append(lines, []string{"setting", item, j.Settings[item]})
	}
	for _, d := range a.Areas {
		lines = append(lines, d.sealed()...)
	}
	return sumOf(lines)
}

func (d AreaAnswer) sealed() [][]string {
	lines := [][]string{
		{"area", d.ID, d.Name, d.Verdict, d.Why, d.Size, d.InstallOn, d.GoodUntil},
		append([]string{"read again"}, d.ReRead...),
		append([]string{"conditions"}, d.Conditions...),
		append([]string{"discarded"}, d.Discarded...),
	}
	if t := d.Target; t != nil {
		lines = append(lines, []string{"target", t.Low, t.High, t.Mid})
	}
	for _, f := range d.Findings {
		lines = append(lines, append([]string{"finding", f.ID}, f.words()...))
	}
	for _, line := range lines {
		for i := range line {
			line[i] = loose(line[i])
		}
	}
	return lines
}

func (f FindingAnswer) words() []string {
	return []string{f.Outcome, counts(f.Deciding), f.Value, f.Limit, f.Unit, f.Reason, f.Source, f.Standing}
}

func sumOf(lines [][]string) string {
	h := sha256.New()
	for _, fields := range lines {
		writeLine(h, Line(fields))
	}
	return hex.EncodeToString(h.Sum(nil))
}

func writeLine(w io.Writer, line string) { _, _ = io.WriteString(w, line+"\n") }

// StandsAlone says whether an area is judged the same from its own rows alone.
// One whose single-use probe was used in another area too is not.
func (j Job) StandsAlone(d Decision) bool {
	whole := findingsSum(Answers(j, []Decision{d}, nil))
	j.Areas = []Area{d.Area}
	j.Holes = of(j.Holes, d.Area.ID, func(h slab.Hole) string { return h.Area })
	return findingsSum(Answers(j, Judge(j), nil)) == whole
}
