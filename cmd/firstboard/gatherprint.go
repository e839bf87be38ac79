package main

import (
	"fmt"
	_ "image/png"
	"io"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/gather"
	"firstboard/report/lists"
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
	sayMost(w, unreadTold, "in several records, each counted (keep the one that holds):",
		lists.Each(g.Twins(), gather.Twin.Says))
	g.printUnread(w, "cannot be read:", gather.Faulty)
	g.printUnread(w, "no record:", gather.Another)
	g.printUnread(w, "gathered already:", gather.Again)
	printTargets(w, g.targets(), "no table written; add -o FILE.xlsx or --jsonl FILE for one")
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
	next := lists.Where(g.FallsDue(), func(f gather.Falls) bool { return f.On >= g.Latest })
	sayMost(w, dueTold, "falls due from "+string(g.Latest)+" on, the day of the latest reading:",
		lists.Each(next, func(f gather.Falls) string { return fmt.Sprintf("%s: %s: %s", f.On, f.What, f.Where) }))
}

// printUnread lists what was not gathered for one reason.
func (g gathering) printUnread(w io.Writer, head string, kind gather.Kind) {
	sayMost(w, unreadTold, head, lists.Each(g.unread(kind), func(u gather.Unread) string {
		more := lists.If(u.More > 0, " (and "+evidence.Count(u.More, "more fault", "more faults")+")", "")
		return u.Record + ": " + u.Why + more
	}))
}
