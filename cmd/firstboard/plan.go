package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/record"
)

func planCommand() *cli.Command {
	return &cli.Command{
		Name:      "plan",
		Usage:     "say what is still to be measured, day by day, before the day of laying",
		UsageText: toolName + " plan RECORD\n\nexample:\n   " + toolName + " plan testdata/jobs/millrace",
		Description: "RECORD is a workbook (.xlsx) or a folder of CSV files. Lay on may be blank: days then\n" +
			"count from day 1. Exit code: 0 the plan is made, 2 the command or the record is\nunusable, 3 the output could not be written.",
		OnUsageError: usage,
		Action:       plan,
	}
}

func plan(c *cli.Context) error {
	if c.NArg() != 1 {
		return fmt.Errorf("plan: one record is planned at a time, and %d were given", c.NArg())
	}
	rec, err := record.Read(c.Args().First())
	if err != nil {
		return exit{exitUnusable, err}
	}
	printPlans(c.App.Writer, report.Plans(rec.Job))
	return nil
}

// printPlans writes the cautions, where anything is to be done, and the plan of
// each area.
func printPlans(w io.Writer, plans []report.Plan) {
	for _, p := range plans {
		if len(p.Steps) > 0 {
			printCautions(w)
			break
		}
	}
	for _, p := range plans {
		printPlan(w, p)
	}
}

func printCautions(w io.Writer) {
	for _, c := range report.PlanCautions() {
		fmt.Fprintln(w, c.Heading)
		for _, sentence := range c.Sentences {
			fmt.Fprint(w, wrap(sentence, "    "))
		}
	}
	fmt.Fprintln(w)
}

// printPlan writes what an area waits for, day by day.
func printPlan(w io.Writer, p report.Plan) {
	fmt.Fprint(w, wrap(planHead(p), ""))
	say := func(lead string, lines []string) {
		for _, line := range lines {
			fmt.Fprint(w, wrap(lead+line, "    "))
		}
	}
	if len(p.There) > 0 {
		say("there already: ", []string{strings.Join(p.There, "; ")})
	}
	if len(p.Steps) == 0 {
		say("", []string{"nothing is left to measure"})
	}
	say("too late: ", p.Late)
	day := ""
	for _, s := range p.Steps {
		if when := p.When(s); when != day {
			day = when
			fmt.Fprintln(w, "  "+day)
		}
		fmt.Fprint(w, item(s.Do))
	}
	say("look up in the data sheet of ", p.LookUp)
}

// item is a text with a dash before it.
func item(text string) string {
	return "    - " + strings.TrimLeft(wrap(text, "      "), " ")
}

func planHead(p report.Plan) string {
	head := p.Area.ID
	if p.Area.Name != "" {
		head += " " + p.Area.Name
	}
	switch {
	case p.Area.LayOn.Shown():
		head += ", to be laid on " + p.Area.LayOn.Written
	case len(p.Steps) > 0:
		head += ", to be laid on " + p.Laying() + " (Lay on is blank)"
	}
	if p.Decision.Verdict == evidence.NoGo && p.Decision.Why == evidence.OverLimit {
		var over []string
		for _, f := range p.Decision.Findings {
			if f.Deciding && f.Outcome == evidence.NotMet {
				over = append(over, f.ID)
			}
		}
		head += "; over a limit as it stands: " + strings.Join(over, ", ")
	}
	return head
}
