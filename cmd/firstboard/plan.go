package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/lists"
	"firstboard/report/outlook"
	"firstboard/report/plan"
)

func planCommand() *cli.Command {
	return &cli.Command{
		Name:      "plan",
		Usage:     "say what is still to be measured, day by day, before the day of installing",
		ArgsUsage: toolName + " plan RECORD [-o FILE.xlsx|FOLDER] [--force]",
		UsageText: toolName + " plan testdata/jobs/millrace -o millrace-to-fill-in.xlsx",
		Description: "RECORD is a workbook (.xlsx) or a folder of CSV files. Where Install on is blank, days count from day 1. " +
			"FILE.xlsx begins with field sheets to print and to write on by hand, one for each person on each day. " +
			"Exit code: 0 the plan is made, 2 the command or the record is unusable, 3 the output could not be written.",
		Flags: []cli.Flag{
			outputFlag("write the record with the rows to fill in to `FILE.xlsx`, or to a new folder"),
			forceFlag("replace a workbook that exists"),
		},
		Action: planned,
	}
}

func planned(c *cli.Context) error {
	rec, path, err := oneRecord(c, "output")
	if err != nil {
		return err
	}
	out := c.String("output")
	plans := lists.Each(report.Judge(rec.Job), func(d report.Decision) plan.Plan {
		return plan.Of(d, outlook.Ahead(d))
	})
	if out != "" {
		if err := writeRecord(c, path, rec, plan.WithPlans(rec.Tables, plans),
			plan.FieldSheets(rec.Tables, plans)...); err != nil {
			return err
		}
	}
	printCautions(c.App.Writer, plan.Cautions(plans))
	for _, p := range plans {
		printPlan(c.App.Writer, p)
	}
	if out != "" {
		fmt.Fprintln(c.App.Writer, "written: "+out)
	}
	return nil
}
