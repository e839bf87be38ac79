package main

import (
	"fmt"
	"io"
	"strings"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// printDecisions writes a line an area with what is over or missing below it,
// and the settings that differ once after them.
func printDecisions(w io.Writer, decisions []report.Decision, advice []ahead.Advice, settings []report.Setting) {
	for i, d := range decisions {
		head := wrapHung(columnsOf(w), headline(d), "", hanging)
		verdict := string(d.Verdict)
		fmt.Fprint(w, strings.Replace(head, verdict, tinted(w, verdict, d.Verdict == evidence.Go), 1))
		sayEach(w, details(d, advice[i]), "    ")
	}
	for _, s := range settings {
		say(w, "setting: "+s.Item+" is "+s.Value.Written, "")
	}
}

// headline is an area's id, name and verdict with why and how long it holds.
// Why names only the checks that are over a limit, where any is.
func headline(d report.Decision) string {
	head, over := strings.TrimSpace(d.Area.ID+" "+d.Area.Name)+": "+d.Says(), d.Over()
	switch {
	case d.GoodUntil.Shown():
		head += ", good until " + d.GoodUntil.Written
	case len(over) > 0:
		head += ": " + strings.Join(over, ", ")
	}
	return head
}

// actsTold is how many acts the line of what comes next names.
const actsTold = 3

// details are what to ask first, then what is over a limit, then what is missing,
// the act that serves most checks first, then whatever else is not shown, when,
// what comes next, whether the verdict holds, and what it rests on.
func details(d report.Decision, a ahead.Advice) []string {
	var lines []string
	tell := func(head string, texts ...string) {
		for _, text := range texts {
			lines = append(lines, head+": "+text)
		}
	}
	blocking := lists.Where(d.Findings, evidence.Finding.Blocks)
	reasons := func(told func(evidence.Finding) bool) []string {
		return lists.Each(lists.Where(blocking, told), func(f evidence.Finding) string { return f.ID + ": " + f.Reason })
	}
	if d.GoodUntil.Shown() {
		tell("to install later, read again", strings.Join(d.ReRead, ", "))
	}
	tell("question", d.Questions...)
	tell("over", reasons(func(f evidence.Finding) bool { return f.Outcome == evidence.NotMet })...)
	tell("missing", lists.Each(a.Missing, func(m ahead.Missing) string { return m.What })...)
	tell("missing", reasons(func(f evidence.Finding) bool {
		return f.Outcome != evidence.NotMet && !a.Awaits(f.ID)
	})...)
	if when := a.Outlook.Brief(); when != "" && !d.GoodUntil.Shown() {
		tell("when", when)
	}
	tell("next", a.Next.Says(actsTold))
	tell("holds", a.Outlook.Holds.Says())
	tell("condition", d.Conditions...)
	tell("waiver", lists.Each(d.Waivers, report.Waiver.Says)...)
	return lines
}

// tooLate tells of the rows of air and surfaces that were read after the day of installing, those
// of several areas together: somebody wrote that day down wrong, or reads on in a floor that lies.
func tooLate(decisions []report.Decision) []string {
	type late struct{ rows, area string }
	var all []late
	for _, d := range decisions {
		for _, u := range d.Unused {
			if u.Why == acclimate.TooLate {
				rows := evidence.Count(u.Rows, "row of ", "rows of ") + u.Table + " " + u.Why
				all = append(all, late{rows, d.Area.ID})
			}
		}
	}
	return lists.Each(lists.Groups(all, func(l late) string { return l.rows }), func(alike []late) string {
		areas := lists.Each(alike, func(l late) string { return l.area })
		return "not used: " + alike[0].rows + " (" + evidence.List(areas) + ")"
	})
}

// explain prints how one finding came about.
func (j judged) explain(w io.Writer, asked string) error {
	at := strings.LastIndex(asked, ":")
	if at < 0 {
		return fmt.Errorf("check: --explain %s: write an area and a check with a colon between them, such as %s:slab-rh", asked,
			j.decisions[0].Area.ID)
	}
	area, check := asked[:at], asked[at+1:]
	d, known := lists.First(j.decisions, func(d report.Decision) bool { return evidence.Same(d.Area.ID, area) })
	if !known {
		ids := lists.Each(j.decisions, func(d report.Decision) string { return d.Area.ID })
		return fmt.Errorf("check: --explain: no area %q; %s", area, meant(area, ids))
	}
	f, known := lists.First(d.Findings, func(f evidence.Finding) bool { return evidence.Same(f.ID, check) })
	if !known {
		return fmt.Errorf("check: --explain: no check %q; %s", check, meant(check, report.Order()))
	}
	fmt.Fprintln(w, d.Area.ID+":"+f.ID)
	for _, line := range f.Explain() {
		indent := line[:len(line)-len(strings.TrimLeft(line, " "))]
		say(w, line, "    "+indent)
	}
	sayEach(w, corrected(d, f), "    ")
	return nil
}

// corrected are the sources of the corrections of the readings that a finding cites.
func corrected(d report.Decision, f evidence.Finding) []string {
	cited := map[string]bool{}
	for _, p := range f.Evidence {
		cited[p.String()] = true
	}
	used := lists.Where(d.Corrections, func(c report.Correction) bool { return c.Place != nil && cited[c.Place.String()] })
	bySource := lists.Groups(used, func(c report.Correction) string { return c.Cite.String() })
	return lists.Each(bySource, func(alike []report.Correction) string {
		pieces := lists.Each(alike, func(c report.Correction) string { return c.Piece })
		return "correction of " + evidence.List(pieces) + ": " + alike[0].Cite.String()
	})
}
