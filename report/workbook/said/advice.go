package said

import (
	"fmt"
	"strings"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Labelled are lines under one label.
type Labelled struct {
	Label string
	Lines []string
}

// Advised is what stands below the checks of an area and never decides.
func Advised(d report.Decision, advice ahead.Advice) []Labelled {
	return []Labelled{
		{"What is missing", lists.Each(advice.Missing, func(m ahead.Missing) string {
			return m.What + " (" + strings.Join(m.Checks, ", ") + ")"
		})},
		{"Moisture report (advice)", asked(d.Items)},
		{"Read, but not judged", Joined(lists.Each(d.Unused, func(u evidence.Unused) string {
			return fmt.Sprintf("%s: %s, %s", u.Table, evidence.Count(u.Rows, "row", "rows"), u.Why)
		}))},
		{"Meters, as corrected", lists.Each(d.Corrections, func(c report.Correction) string {
			return fmt.Sprintf("%s: %s %% MC (%s; %s, %s), %s", c.Piece, c.Corrected, c.How, c.Cite.Source,
				c.Cite.Standing, c.Place)
		})},
		{"Meters compared (advice)", d.Advice},
		{"A second look (advice)", d.Looks},
		{"Signatures", signed(d.Signatures)},
		{"When (advice)", expected(advice)},
		{"If installed now (advice)", advice.Outlook.IfInstalled()},
	}
}

// Joined are lines in one, none of none.
func Joined(lines []string) []string {
	if len(lines) == 0 {
		return nil
	}
	return []string{strings.Join(lines, "; ")}
}

// expected is when slab and boards will be ready, what next, and whether the
// verdict holds.
func expected(a ahead.Advice) []string {
	all := a.Outlook.When()
	for _, act := range a.Next.Acts {
		all = append(all, "next: "+act.Says())
	}
	if len(a.Next.Acts) > 0 {
		all = append(all, a.Next.SaysWhen())
	}
	return append(all, "does it hold? "+a.Outlook.Holds.Says())
}

func signed(all []report.Signature) []string {
	return lists.Each(all, func(s report.Signature) string {
		line := fmt.Sprintf("%s, %s, %s: %s", s.At.Written, s.Name, s.Role, s.Decision) +
			lists.If(len(s.Waives) > 0, " "+strings.Join(s.Waives, ", "), "")
		return strings.Join(append([]string{line}, s.Doubts...), "; ")
	})
}

// asked is what a moisture report should hold: what is held, then what is
// lacking.
func asked(items []report.ReportItem) []string {
	var held, lacking []string
	for _, i := range items {
		by := i.Asked + " (" + string(i.Standing) + ")"
		if i.Held {
			held = append(held, i.What)
		} else {
			lacking = append(lacking, i.What+", "+by+": "+i.Lacks)
		}
	}
	var all []string
	if len(held) > 0 {
		all = append(all, "held: "+strings.Join(held, "; "))
	}
	if len(lacking) > 0 {
		all = append(all, "lacking: "+strings.Join(lacking, "; "))
	}
	return all
}
