package said

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Waivers say who signed what away, and what is wrong with that.
func Waivers(d report.Decision) []string {
	return lists.Each(d.Waivers, report.Waiver.Says)
}

// Changes are the settings that differ from their defaults.
func Changes(s report.Settings) []string {
	defaults := report.DefaultSettings()
	usual := map[string]string{}
	for _, item := range defaults.Items() {
		usual[item.Item] = item.Value.String()
	}
	return lists.Each(s.Changed(), func(c report.Setting) string {
		return fmt.Sprintf("%s is set to %s; the default is %s", c.Item, c.Value, usual[c.Item])
	})
}

// GoodUntil is the day up to which a verdict holds, empty where it is none.
func GoodUntil(d report.Decision) string {
	return lists.If(d.GoodUntil.Shown(), d.GoodUntil.Day.String(), "")
}

// Tested counts what was measured, and tells what was put aside, with values.
func Tested(d report.Decision) string {
	var counted, all []string
	if h := d.Holes; h != (report.HoleCount{}) {
		counted = append(counted, fmt.Sprintf("%d of %s", h.Judged, evidence.Count(h.Asked, "hole", "holes")))
	}
	if n := boardsJudged(d); n > 0 {
		counted = append(counted, evidence.Count(n, "board", "boards"))
	}
	if len(counted) > 0 {
		all = append(all, strings.Join(counted, ", "))
	}
	if out := outOfUse(d); len(out) > 0 {
		all = append(all, "discarded: "+strings.Join(out, ", "))
	}
	if d.SetAside > 0 {
		all = append(all, fmt.Sprintf("set aside: %d%s", d.SetAside, values(aside(d))))
	}
	return strings.Join(all, ";\n")
}

func boardsJudged(d report.Decision) int {
	n := 0
	if d.Site.Wood.NoFlooring == "" {
		for _, lot := range d.Site.Wood.Lots() {
			n += len(lot.Boards)
		}
	}
	return n
}

// outOfUse are the discarded holes with what they last read.
func outOfUse(d report.Decision) []string {
	var all []string
	for _, hole := range d.Site.Slab.DiscardedHoles() {
		var read []string
		for _, h := range hole.Rows {
			if h.RH.Shown() {
				read = append(read, h.RH.Written)
			}
		}
		slices.Sort(read)
		all = append(all, hole.Name+values(read))
	}
	return all
}

// aside are the readings of the boards that were set aside.
func aside(d report.Decision) []string {
	rows := map[evidence.Place]bool{}
	for _, lot := range d.Site.Wood.Lots() {
		for _, p := range lot.Aside {
			rows[p] = true
		}
	}
	var read []string
	for _, r := range d.Site.Wood.Rows {
		if rows[r.Place] && r.Reading.Shown() {
			read = append(read, r.Reading.Written)
		}
	}
	return read
}

// values are the first of some readings, in brackets.
func values(read []string) string {
	const most = 4
	switch n := len(read); {
	case n == 0:
		return ""
	case n > most:
		return fmt.Sprintf(" (%s, %d more)", strings.Join(read[:most], ", "), n-most)
	}
	return " (" + strings.Join(read, ", ") + ")"
}

// Signers are who has signed for an area, and what.
func Signers(d report.Decision) string {
	return strings.Join(lists.Each(d.Signatures, func(s report.Signature) string {
		return s.Role + lists.If(s.Decision == "accept", "", " ("+s.Decision+")")
	}), ", ")
}

// Named is what a person calls an area, its size and its day.
func Named(a report.Area) string {
	day := lists.If(a.InstallOn.Shown(), a.InstallOn.Written, "no day")
	return strings.TrimSpace(a.ID+" "+a.Name) + "\n" + cmp.Or(a.Size.String(), "no size") + ", " + day
}

// Target is the moisture that the flooring should have.
func Target(t *report.Target) string {
	if t == nil {
		return "none: the flooring is not wood, or its climate does not say enough"
	}
	return fmt.Sprintf("%s %% MC, midway between lowest %s and highest %s %% MC", t.Mid, t.Low, t.High)
}
