package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"firstboard/report"
	"firstboard/report/evidence"
)

const columns = 80

// wrap breaks text into lines of at most 80 columns, each after the indent.
func wrap(text, indent string) string {
	var b strings.Builder
	width := 0
	for _, word := range strings.Fields(text) {
		n := utf8.RuneCountInString(word)
		switch {
		case width == 0:
			b.WriteString(indent)
			width = len(indent)
		case width+1+n > columns:
			b.WriteString("\n" + indent)
			width = len(indent)
		default:
			b.WriteByte(' ')
			width++
		}
		b.WriteString(word)
		width += n
	}
	return b.String() + "\n"
}

// printDecisions writes a line an area with what stands in its way below it.
func printDecisions(w io.Writer, decisions []report.Decision, settings []report.Setting) {
	for _, d := range decisions {
		fmt.Fprint(w, wrap(headline(d), ""))
		for _, line := range details(d, settings) {
			fmt.Fprint(w, wrap(line, "    "))
		}
	}
}

// headline is an area's id, name and verdict with why, and what stands in its
// way or how long it stands.
func headline(d report.Decision) string {
	head := d.Area.ID + " " + d.Area.Name + ": " + d.Says()
	if d.Area.Name == "" {
		head = d.Area.ID + ": " + d.Says()
	}
	if d.GoodUntil.Shown() {
		return head + ", good until " + d.GoodUntil.Written
	}
	return head + ": " + strings.Join(d.Blocking(), ", ")
}

// details are what stands in an area's way: limits broken, then what is still
// missing in the order one would fetch it, then whatever else is not shown; and
// what its verdict rests on.
func details(d report.Decision, settings []report.Setting) []string {
	var lines []string
	if d.GoodUntil.Shown() {
		lines = append(lines, "to go on after that day read again: "+strings.Join(d.ReRead, ", "))
	}
	blocked := func(holds func(evidence.Finding) bool) {
		for _, f := range d.Findings {
			if f.Blocks() && holds(f) {
				lines = append(lines, f.ID+" "+f.Outcome.String()+": "+f.Reason)
			}
		}
	}
	blocked(func(f evidence.Finding) bool { return f.Outcome == evidence.NotMet })
	for _, m := range d.Missing {
		lines = append(lines, "still missing: "+m.What)
	}
	blocked(func(f evidence.Finding) bool { return f.Outcome != evidence.NotMet && !d.Awaits(f.ID) })
	for _, c := range d.Conditions {
		lines = append(lines, "condition: "+c)
	}
	for _, w := range d.Waivers {
		lines = append(lines, "waiver: "+w.Says())
	}
	for _, s := range settings {
		lines = append(lines, "setting: "+s.Item+" is "+s.Value.Written)
	}
	return lines
}
