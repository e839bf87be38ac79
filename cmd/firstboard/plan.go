package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/plan"
)

func planCommand() *cli.Command {
	return &cli.Command{
		Name:      "plan",
		Usage:     "say what is still to be measured, day by day, before the day of installing",
		ArgsUsage: toolName + " plan RECORD [-o FILE.xlsx|FOLDER] [--force]",
		UsageText: toolName + " plan testdata/jobs/millrace -o millrace-to-fill-in.xlsx",
		Description: "RECORD is a workbook (.xlsx) or a folder of CSV files. Where Install on is blank,\n" +
			"days count from day 1. Exit code: 0 the plan is made, 2 the command or the\n" +
			"record is unusable, 3 the output could not be written.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "output", Aliases: []string{"o"}, Usage: "write the record with the rows to fill in to `FILE.xlsx`, or to a new folder"},
			&cli.BoolFlag{Name: "force", Usage: "replace a workbook that exists"},
		},
		OnUsageError: usage,
		Action:       planned,
	}
}

func planned(c *cli.Context) error {
	rec, path, err := oneRecord(c, "output")
	if err != nil {
		return err
	}
	out := c.String("output")
	plans := plan.All(report.Judge(rec.Job))
	if out != "" {
		if err := writeRecord(c, path, rec, plan.WithPlans(rec.Tables, plans)); err != nil {
			return err
		}
	}
	printPlans(c.App.Writer, plans)
	if out != "" {
		fmt.Fprintln(c.App.Writer, "written: "+out)
	}
	return nil
}

// printPlans writes the cautions, where anything is to be done, and the plan of
// each area.
func printPlans(w io.Writer, plans []plan.Plan) {
	printCautions(w, plan.Cautions(plans))
	for _, p := range plans {
		printPlan(w, p)
	}
}

func printCautions(w io.Writer, cautions []report.Caution) {
	for _, c := range cautions {
		fmt.Fprintln(w, c.Heading)
		for _, sentence := range c.Sentences {
			say(w, sentence, "    ")
		}
	}
	if len(cautions) > 0 {
		fmt.Fprintln(w)
	}
}

// printPlan writes what an area waits for, day by day.
func printPlan(w io.Writer, p plan.Plan) {
	say(w, planHead(p), "")
	say := func(lead string, lines []string) {
		for _, line := range lines {
			say(w, lead+line, "    ")
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
		fmt.Fprint(w, item(columnsOf(w), s.Do))
	}
	say("look up in the data sheet of ", p.LookUp)
}

// item is a text with a dash before it.
func item(columns int, text string) string {
	return "    - " + strings.TrimLeft(wrapTo(columns, text, "      "), " ")
}

func planHead(p plan.Plan) string {
	head := p.Area.ID
	if p.Area.Name != "" {
		head += " " + p.Area.Name
	}
	switch {
	case p.Area.InstallOn.Shown():
		head += ", to be installed on " + p.Area.InstallOn.Written
	case len(p.Steps) > 0:
		head += ", to be installed on " + p.Laying() + " (Install on is blank)"
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
