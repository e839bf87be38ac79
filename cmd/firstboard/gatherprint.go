package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/gather"
)

// How much of each list the terminal shows; the workbook has all of it.
const (
	dueTold    = 8
	unreadTold = 20
)

// print writes the summary, or the lines of JSON alone where they go to
// standard output.
func (g gathering) print() error {
	w := g.c.App.Writer
	if g.c.String("jsonl") == "-" {
		return g.writeLines(w)
	}
	say(w, g.Says(), "")
	printReasons(w, g.Reasons())
	g.printDue(w)
	printTwins(w, g.Twins())
	g.printUnread(w, "cannot be read", gather.Faulty)
	g.printUnread(w, "no record", gather.Another)
	g.printUnread(w, "gathered already", gather.Again)
	targets := g.targets()
	for _, t := range targets {
		if _, err := fmt.Fprintln(w, "written: "+t.path); err != nil {
			return errors.New("standard output: cannot be written")
		}
	}
	if len(targets) == 0 {
		say(w, "no table written; add -o FILE.xlsx or --jsonl FILE for one", "")
	}
	return nil
}

func printReasons(w io.Writer, reasons []gather.Reason) {
	if len(reasons) > 0 {
		fmt.Fprintln(w, "what stops them:")
	}
	for _, r := range reasons {
		var counts []string
		count := func(n int, what string) {
			if n > 0 {
				counts = append(counts, fmt.Sprint(n, " ", what))
			}
		}
		count(r.Over, "over a limit")
		count(r.Areas-r.Over, "not shown")
		count(r.Waived, "waived")
		say(w, r.Check+": "+strings.Join(counts, ", "), "    ")
	}
}

// printDue tells what falls due first after the latest reading of all.
func (g gathering) printDue(w io.Writer) {
	var next []gather.Falls
	for _, f := range g.FallsDue() {
		if f.On >= g.Latest {
			next = append(next, f)
		}
	}
	if len(next) == 0 {
		return
	}
	say(w, "falls due from "+string(g.Latest)+" on, the day of the latest reading:", "")
	for _, f := range next[:min(dueTold, len(next))] {
		say(w, fmt.Sprintf("%s: %s: %s", f.On, f.What, f.Where), "    ")
	}
	if more := len(next) - dueTold; more > 0 {
		say(w, fmt.Sprintf("and %d more", more), "    ")
	}
}

// printTwins lists the areas that stand in several records.
func printTwins(w io.Writer, twins []gather.Twin) {
	if len(twins) > 0 {
		say(w, "in several records, each counted (keep the one that holds):", "")
	}
	for _, t := range twins[:min(unreadTold, len(twins))] {
		say(w, t.Says(), "    ")
	}
	if more := len(twins) - unreadTold; more > 0 {
		say(w, fmt.Sprintf("and %d more", more), "    ")
	}
}

// printUnread lists what was not gathered for one reason.
func (g gathering) printUnread(w io.Writer, head string, kind gather.Kind) {
	unread := g.unread(kind)
	if len(unread) == 0 {
		return
	}
	fmt.Fprintf(w, "%s:\n", head)
	for _, u := range unread[:min(unreadTold, len(unread))] {
		text := u.Record + ": " + u.Why
		if u.More > 0 {
			text += fmt.Sprintf(" (and %s)", evidence.Count(u.More, "more fault", "more faults"))
		}
		say(w, text, "    ")
	}
	if more := len(unread) - unreadTold; more > 0 {
		say(w, fmt.Sprintf("and %d more", more), "    ")
	}
}
