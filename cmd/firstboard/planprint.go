package main

import (
	"fmt"
	_ "image/png"
	"io"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/plan"
)

func printCautions(w io.Writer, cautions []report.Caution) {
	for _, c := range cautions {
		fmt.Fprintln(w, c.Heading)
		sayEach(w, c.Sentences, "    ")
	}
	if len(cautions) > 0 {
		fmt.Fprintln(w)
	}
}

// printPlan writes what an area waits for: what is over a limit first, then day
// by day and person by person what there is to do.
func printPlan(w io.Writer, p plan.Plan) {
	fmt.Fprint(w, wrapTo(columnsOf(w), planHead(p), ""))
	if len(p.There) > 0 {
		say(w, "there already: "+strings.Join(p.There, "; "), "    ")
	}
	for _, f := range p.Over() {
		say(w, "over a limit, and must change first: "+f.ID+": "+f.Reason, "    ")
	}
	if len(p.Acts) == 0 {
		say(w, "nothing is left to do", "    ")
	}
	days := planDays(p)
	for _, day := range days {
		printDay(w, p, day)
	}
	if len(days) > 0 && days[len(days)-1] < -1 {
		say(w, "the day between is left free: what fails can be done again", "    ")
	}
	for _, line := range p.LookUp {
		say(w, "look up in the data sheet of "+line, "    ")
	}
}

// planDays are the days of a plan on which there is anything to do, in order.
func planDays(p plan.Plan) []int {
	days := lists.Each(p.Acts, func(a plan.Act) int { return a.Day })
	slices.Sort(days)
	return slices.Compact(days)
}

// printDay writes the acts of a day, those of a person together.
func printDay(w io.Writer, p plan.Plan, day int) {
	acts := lists.Where(p.Acts, func(a plan.Act) bool { return a.Day == day })
	fmt.Fprintln(w, "  "+p.When(acts[0]))
	for _, theirs := range lists.Groups(acts, func(a plan.Act) string { return a.Who }) {
		fmt.Fprintln(w, "    "+theirs[0].Who)
		for _, a := range theirs {
			say(w, "- "+a.Order(), "      ")
		}
	}
}

func planHead(p plan.Plan) string {
	head := strings.TrimSpace(p.Area.ID + " " + p.Area.Name)
	switch {
	case p.Moved:
		head += ", to be installed on " + p.Area.InstallOn.Written + ": that cannot be kept; GO is possible on " +
			p.Earliest.Written + " at the earliest"
	case p.Area.InstallOn.Shown():
		head += ", to be installed on " + p.Area.InstallOn.Written
	case len(p.Acts) > 0:
		head += ", to be installed on " + p.Laying() + " (Install on is blank)"
	}
	if p.Decision.Verdict == evidence.NoGo && p.Earliest.Shown() && !p.Moved {
		head += "; GO is possible on " + p.Earliest.Written + " at the earliest"
	}
	return head
}
