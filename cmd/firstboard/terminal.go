package main

import (
	"fmt"
	"io"
	"strings"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
)

// printDecisions writes a line an area with what is over or missing below it,
// and the settings that differ once after them.
func printDecisions(w io.Writer, decisions []report.Decision, advice []ahead.Advice, settings []report.Setting) {
	for i, d := range decisions {
		head := wrapHung(columnsOf(w), headline(d), "", hanging)
		verdict := string(d.Verdict)
		fmt.Fprint(w, strings.Replace(head, verdict, tinted(w, verdict, d.Verdict == evidence.Go), 1))
		for _, line := range details(d, advice[i]) {
			say(w, line, "    ")
		}
	}
	for _, s := range settings {
		say(w, "setting: "+s.Item+" is "+s.Value.Written, "")
	}
}

// headline is an area's id, name and verdict with why and how long it holds.
// Why names only the checks that are over a limit, where any is.
func headline(d report.Decision) string {
	head := strings.TrimSpace(d.Area.ID+" "+d.Area.Name) + ": " + d.Says()
	if d.GoodUntil.Shown() {
		return head + ", good until " + d.GoodUntil.Written
	}
	if over := d.Over(); len(over) > 0 {
		return head + ": " + strings.Join(over, ", ")
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
	if d.GoodUntil.Shown() {
		lines = append(lines, "to install later, read again: "+strings.Join(d.ReRead, ", "))
	}
	for _, q := range d.Questions {
		lines = append(lines, "question: "+q)
	}
	for _, f := range d.Findings {
		if f.Blocks() && f.Outcome == evidence.NotMet {
			lines = append(lines, "over: "+f.ID+": "+f.Reason)
		}
	}
	for _, m := range a.Missing {
		lines = append(lines, "missing: "+m.What)
	}
	for _, f := range d.Findings {
		if f.Blocks() && f.Outcome != evidence.NotMet && !a.Awaits(f.ID) {
			lines = append(lines, "missing: "+f.ID+": "+f.Reason)
		}
	}
	if when := a.Outlook.Brief(); when != "" && !d.GoodUntil.Shown() {
		lines = append(lines, "when: "+when)
	}
	lines = append(lines, "next: "+a.Next.Says(actsTold), "holds: "+a.Outlook.Holds.Says())
	for _, c := range d.Conditions {
		lines = append(lines, "condition: "+c)
	}
	for _, w := range d.Waivers {
		lines = append(lines, "waiver: "+w.Says())
	}
	return lines
}
