package report

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// readings tells what was changed in the tables since, or in their sealed
// copy.
func (v *verifier) readings() {
	switch differ := differences(v.Was.Tables, v.Now.Tables); {
	case v.nowWhole && v.wasWhole:
	case v.nowWhole:
		v.broken("sealed copy altered: the rows on the sheet Sealed are not those that were sealed")
		v.brokenAll("sealed copy altered", differences(v.Now.Tables, v.Was.Tables))
	case v.wasWhole && len(differ) == 0:
		v.broken("changed since: the tables do not stand as they were sealed")
	case v.wasWhole:
		v.brokenAll("changed since", differ)
	default:
		v.broken("changed since: neither the tables nor their copy on the sheet Sealed are those that were sealed")
		v.brokenAll("the two differ", differ)
	}
}

// base is the copy to judge again: the one that was sealed, where either is.
func (v *verifier) base() Copy {
	if _, fault := v.Now.Job(); v.wasWhole && (!v.nowWhole || fault != nil) {
		return v.Was
	}
	return v.Now
}

// judged are the decisions on the areas that the seal names.
func (v *verifier) judged(c Copy) (Job, []Decision, error) {
	j, err := c.Job()
	if err != nil {
		return j, nil, err
	}
	named := func(a Area) bool {
		return slices.ContainsFunc(v.Areas, func(s ShownArea) bool { return evidence.Same(s.ID, a.ID) })
	}
	j.Areas = slices.DeleteFunc(slices.Clone(j.Areas), func(a Area) bool { return !named(a) })
	return j, Judge(j), nil
}

// findings judges again and holds the findings against the sealed ones and
// against what the sheets show.
func (v *verifier) findings() {
	j, decisions, err := v.judged(v.base())
	if err != nil {
		v.broken("not judged again: %s", firstLine(err))
		return
	}
	v.decisions = decisions
	kind := "verdict altered"
	if !v.sameCatalog() || v.Parts.Tool != v.tool {
		kind = "this version judges otherwise"
	}
	if v.sameCatalog() && findingsSum(Answers(j, decisions, nil)) != v.Parts.Findings {
		v.broken("%s: judged again, the record does not give the findings that were sealed", kind)
	}
	var all []string
	if tally := Tally(decisions); len(v.Areas) > 0 && !slices.Contains(v.Head, tally) {
		all = append(all, "sheet Decision: does not say "+tally)
	}
	for _, id := range v.Strange {
		all = append(all, fmt.Sprintf("sheet Decision: shows an area %s, which was not judged", shortly(id)))
	}
	for _, shown := range v.Areas {
		at := slices.IndexFunc(decisions, func(d Decision) bool { return evidence.Same(d.Area.ID, shown.ID) })
		if at < 0 {
			all = append(all, fmt.Sprintf("area %s: the record does not list it", shortly(shown.ID)))
			continue
		}
		all = append(all, shown.differences(decisions[at])...)
	}
	v.brokenAll(kind, all)
}

// differences are where the sheets show something else than a decision says.
func (a ShownArea) differences(d Decision) []string {
	var all []string
	if len(a.Row) == 0 {
		all = append(all, "sheet Decision: does not show the area "+shortly(a.ID))
	}
	for _, row := range a.Row {
		if !d.reads(row.Verdict) {
			all = append(all, fmt.Sprintf("sheet Decision, area %s: says %s; judged again it is %s", a.ID, shortly(row.Verdict), d.Says()))
		}
		if day := d.GoodUntil.Written; !strings.HasPrefix(row.GoodUntil, day) || day == "" && strings.ContainsAny(row.GoodUntil, "0123456789") {
			all = append(all, fmt.Sprintf("sheet Decision, area %s: good until %s; judged again it is %s", a.ID, shortly(row.GoodUntil), shortly(day)))
		}
	}
	if a.Lacking {
		return append(all, fmt.Sprintf("sheet %s: is gone", a.Sheet))
	}
	if !slices.ContainsFunc(a.Head, d.reads) {
		all = append(all, fmt.Sprintf("sheet %s: does not say %s", a.Sheet, d.Says()))
	}
	for _, c := range d.Conditions {
		if !slices.Contains(a.Head, tidied(c)) {
			all = append(all, fmt.Sprintf("sheet %s: lacks the condition %q", a.Sheet, c))
		}
	}
	return append(all, a.findingDifferences(d)...)
}

// reads says whether a shown verdict is that of the decision. A waiver signed
// since changes its words only.
func (d Decision) reads(shown string) bool {
	plain := d
	plain.Waivers = nil
	return shown == d.Says() || shown == plain.Says()
}

// shownColumns are the headers of what an area's sheet shows of a finding, as
// its words.
func shownColumns() []string {
	return []string{"Outcome", "Counts as", "Value", "Limit", "Unit", "Reason", "Source", "Standing"}
}

func (a ShownArea) findingDifferences(d Decision) []string {
	var all []string
	left := slices.Clone(a.Findings)
	for _, f := range d.Findings {
		at := slices.IndexFunc(left, func(s ShownFinding) bool { return s["Check"] == f.ID })
		if at < 0 {
			all = append(all, fmt.Sprintf("sheet %s: does not show %s", a.Sheet, f.ID))
			continue
		}
		for i, want := range findingAnswer(f).words() {
			if column := shownColumns()[i]; !agrees(left[at][column], want) {
				all = append(all, fmt.Sprintf("sheet %s, %s, %s: says %s; judged again it is %s", a.Sheet, f.ID, column, shortly(left[at][column]), shortly(want)))
			}
		}
		left = slices.Delete(left, at, at+1)
	}
	for _, f := range left {
		all = append(all, fmt.Sprintf("sheet %s: shows %s, which was not asked", a.Sheet, shortly(f["Check"])))
	}
	return all
}

// agrees says whether a cell shows a word or a figure. A figure of two places
// or more may be a rounded mean, and the cell may hold more of it.
func agrees(shown, want string) bool {
	shown, want = loose(shown), tidied(want)
	if shown == loose(want) {
		return true
	}
	_, part, _ := strings.Cut(want, ".")
	a, errA := decimal.NewFromString(shown)
	b, errB := decimal.NewFromString(want)
	const rounded = 2
	if errA != nil || errB != nil || len(part) < rounded {
		return false
	}
	return !a.Sub(b).Abs().GreaterThan(decimal.New(5, int32(-len(part)-1)))
}

// asItStands judges the tables as they are now, where they are not as sealed,
// and tells the verdicts that come of it.
func (v *verifier) asItStands() {
	if v.nowWhole || !v.wasWhole {
		return
	}
	_, now, err := v.judged(v.Now)
	if err != nil {
		v.note("as the tables stand now they cannot be judged: %s", firstLine(err))
	}
	for _, d := range now {
		at := slices.IndexFunc(v.decisions, func(w Decision) bool { return evidence.Same(w.Area.ID, d.Area.ID) })
		if at >= 0 && v.decisions[at].Says() != d.Says() {
			v.note("as the tables stand now area %s is %s; as sealed it was %s", d.Area.ID, d.Says(), v.decisions[at].Says())
		}
	}
}

func firstLine(err error) string {
	line, rest, _ := strings.Cut(err.Error(), "\n")
	if rest != "" {
		line += "; and more"
	}
	return line
}

// signedSince lists the sign-offs that were added, and tells of those that were
// changed or taken away.
func (v *verifier) signedSince() {
	was, now := signOffs(v.Was.Tables), signOffs(v.Now.Tables)
	for _, r := range now {
		if !slices.ContainsFunc(was, r.alike) {
			v.note("signed since: %s (Sign-off row %d)", r, r.number)
		}
	}
	for _, r := range was {
		if !slices.ContainsFunc(now, r.alike) {
			v.broken("sign-off altered: %s (it stood in Sign-off row %d) is gone", r, r.number)
		}
	}
}

// alike says whether two rows hold the same, blanks at their ends aside.
func (r gridRow) alike(other gridRow) bool { return Line(r.cells) == Line(other.cells) }

func signOffs(tables []Table) []gridRow { return named(tables, "Sign-off").grid().rows }
