package seal

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"maps"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/slab"
)

// Of is the seal of a record and what was decided on it: the SHA-256 in hex of
// a text that holds the tables and the findings in one form, whatever file they
// stand in. A folder, its workbook and the decision workbook have one seal.
// Sign-offs, which may be added later, are left out, and so are reasons and
// where the evidence stands, for files name their places differently.
func Of(tool string, tables []grid.Table, a report.Answer) string {
	h := sha256.New()
	write(h, []string{"firstboard seal", "2", tool})
	for _, t := range tables {
		if len(t.Rows) == 0 || evidence.Same(t.Name, "Sign-off") {
			continue
		}
		write(h, []string{"table", t.Name})
		for l := range lines(t) {
			h.Write(append(l, '\n'))
		}
	}
	j := a.Job
	write(h, []string{"job", j.Name, j.Site, j.Acceptance})
	for _, item := range slices.Sorted(maps.Keys(j.Settings)) {
		write(h, []string{"setting", item, j.Settings[item]})
	}
	for _, d := range a.Areas {
		for _, l := range decided(d) {
			write(h, l)
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

// OfTables is the SHA-256 in hex of tables in their canonical form, whatever their
// order.
func OfTables(tables []grid.Table) string {
	h := sha256.New()
	byName := func(a, b grid.Table) int { return strings.Compare(a.Name, b.Name) }
	for _, t := range slices.SortedFunc(slices.Values(tables), byName) {
		write(h, []string{"table", t.Name})
		for l := range lines(t) {
			_, _ = io.WriteString(h, loose(string(l))+"\n")
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

func write(w io.Writer, fields []string) {
	for i := range fields {
		fields[i] = loose(fields[i])
	}
	_, _ = w.Write(append(line(nil, fields), '\n'))
}

func decided(d report.AreaAnswer) [][]string {
	all := [][]string{
		{"area", d.ID, d.Name, d.Verdict, d.Why, d.Size, d.InstallOn, d.GoodUntil},
		append([]string{"read again"}, d.ReRead...),
		append([]string{"conditions"}, d.Conditions...),
		append([]string{"discarded"}, d.Discarded...),
	}
	if t := d.Target; t != nil {
		all = append(all, []string{"target", t.Low, t.High, t.Mid})
	}
	for _, f := range d.Findings {
		counts := lists.If(f.Deciding, "deciding", "advice")
		all = append(all, []string{"finding", f.ID, f.Outcome, counts, f.Value, f.Limit, f.Unit, f.Source, f.Standing})
	}
	return all
}

// StandsAlone says whether an area is judged the same from its own rows alone.
// One whose single-use probe was used in another area too is not, nor one that
// shares a zone.
func StandsAlone(j report.Job, d report.Decision) bool {
	whole := Of("", nil, report.Decided(j, []report.Decision{d}))
	j.Areas = []report.Area{d.Area}
	j.Holes = slices.DeleteFunc(slices.Clone(j.Holes),
		func(h slab.Hole) bool { return !evidence.Same(h.Area, d.Area.ID) })
	return Of("", nil, report.Decided(j, report.Judge(j))) == whole
}

// Typed are the rows that somebody typed into a workbook since it was written:
// neither the copy of what was judged holds them nor the tables that are to take
// its place.
func Typed(was, now, kept []grid.Table) []string {
	var all []string
	for _, t := range now {
		known := map[string]bool{}
		for _, o := range slices.Concat(was, kept) {
			if o.Name != t.Name {
				continue
			}
			for l := range lines(o) {
				known[string(l)] = true
			}
		}
		for l := range lines(t) {
			if number, _, _ := strings.Cut(string(l), "|"); !known[string(l)] && number != "row" {
				all = append(all, t.Name+" row "+number)
			}
		}
	}
	return all
}
