package gather

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// once leaves out the areas that stand in the parts twice: a record and its
// twin have one seal, and a decision workbook, of the whole or of one area, names
// the record it was judged by. Two areas of one origin that were decided alike
// are one; the row with more signatures stays, then that of a record before that
// of a decision on it, that of the larger one, and the first. What is left out comes as not gathered. An area that was
// decided otherwise stays: nobody can tell here which of the two is right.
func once(parts []Part) ([]Part, []Unread) {
	best := map[string][2]int{} // part and row, by what was decided of which area
	origin := origins(parts)
	for i, p := range parts {
		for k, r := range p.Rows {
			key := fmt.Sprint(origin(i)) + "\x00" + r.decided()
			was, known := best[key]
			if !known || better(parts, was, [2]int{i, k}) {
				best[key] = [2]int{i, k}
			}
		}
	}
	var all []Part
	var again []Unread
	for i, p := range parts {
		var rows []Row
		for _, r := range p.Rows {
			stays := best[fmt.Sprint(origin(i))+"\x00"+r.decided()]
			if stays[0] == i {
				rows = append(rows, r)
				continue
			}
			again = leftOut(again, p.Record, parts[stays[0]].Record, string(r.Area))
		}
		if len(rows) < len(p.Rows) {
			p.Due = lists.Where(p.Due, func(d Due) bool {
				return slices.ContainsFunc(rows, func(r Row) bool { return slices.Contains(d.Areas, r.Area) })
			})
		}
		p.Rows = rows
		all = append(all, p)
	}
	for i, u := range again {
		form := lists.If(len(u.areas) == 1, "its area %s stands in %s", "its areas %s stand in %s")
		again[i].Why = fmt.Sprintf(form, evidence.List(u.areas), u.in)
	}
	return all, again
}

// leftOut adds an area of a record that stands in another one. Those of one
// record come together.
func leftOut(all []Unread, record, in, area string) []Unread {
	for i := len(all) - 1; i >= 0 && all[i].Record == record; i-- {
		if all[i].in == in {
			all[i].areas = append(all[i].areas, area)
			return all
		}
	}
	return append(all, Unread{Record: record, What: Again, in: in, areas: []string{area}})
}

// better says whether the second of two rows that say the same is to stay.
func better(parts []Part, was, now [2]int) bool {
	a, b := parts[was[0]], parts[now[0]]
	if x, y := a.Rows[was[1]].signed, b.Rows[now[1]].signed; x != y {
		return y > x
	}
	if (a.Origin == "") != (b.Origin == "") {
		return b.Origin == ""
	}
	return len(b.Rows) > len(a.Rows)
}

// decided is what was decided of an area, without what its signatures change
// and without words that name places.
func (r Row) decided() string {
	all := []string{
		evidence.Key(string(r.Area)), string(r.Job), string(r.Site), string(r.Name), string(r.SizeFt2),
		string(r.Acceptance),
		string(r.Verdict), string(r.Why), fmt.Sprint(r.Blocking, r.Over, r.ReRead, r.Lots),
		string(r.InstallOn), string(r.GoodUntil), string(r.Flooring), string(r.Adhesive), string(r.Membrane),
		string(r.TargetPct), string(r.SlabRHPct), string(r.MVER), string(r.SubfloorMCPct), string(r.FlooringMeanPct),
		string(r.WoodDifference),
	}
	return strings.Join(all, "\x00")
}

// origins gives the same number to parts that come from one record: those
// that share a SHA-256, a seal, or the origin that one of them names.
func origins(parts []Part) func(i int) int {
	leads := make([]int, len(parts))
	lead := func(i int) int {
		for leads[i] != i {
			i = leads[i]
		}
		return i
	}
	first := map[string]int{}
	for i, p := range parts {
		leads[i] = i
		for _, name := range []string{p.SHA256, p.Seal, p.Origin} {
			if name == "" {
				continue
			}
			if j, known := first[name]; known {
				a, b := lead(i), lead(j)
				leads[max(a, b)] = min(a, b)
			}
			first[name] = i
		}
	}
	return lead
}

// Twin is one area of a job that stands in several records, each of them counted:
// which of them holds is for a person to say.
type Twin struct {
	Job, Area Text
	Records   []Text
}

// Twins are the areas whose job, site and name stand in several records.
func (g Gathered) Twins() []Twin {
	at := map[string]int{}
	var all []Twin
	for _, r := range g.Rows {
		key := evidence.Key(string(r.Job)) + "\x00" + evidence.Key(string(r.Site)) + "\x00" +
			evidence.Key(string(r.Area))
		i, known := at[key]
		if !known {
			i = len(all)
			at[key], all = i, append(all, Twin{Job: r.Job, Area: r.Area})
		}
		all[i].Records = append(all[i].Records, r.Record)
	}
	return slices.DeleteFunc(all, func(t Twin) bool { return len(t.Records) < 2 })
}

// Says is where the area stands, in words.
func (t Twin) Says() string {
	const named = 4
	where := strings.Join(plain(t.Records[:min(named, len(t.Records))]), ", ")
	if more := len(t.Records) - named; more > 0 {
		where += fmt.Sprintf(" and %d more", more)
	}
	return fmt.Sprintf("%s of %s: %s", t.Area, t.Job, where)
}
