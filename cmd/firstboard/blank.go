package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/record"
	"firstboard/report/workbook"
)

func blankCommand() *cli.Command {
	return &cli.Command{
		Name:  "blank",
		Usage: "write an empty record to fill in",
		UsageText: toolName + " blank FILE.xlsx|DIR [--units imperial|metric] [--force]\n\nexample:\n   " +
			toolName + " blank job.xlsx --units metric",
		Description: "A workbook offers lists, checks what is typed and has a note on every header; a folder\n" +
			"holds one CSV file a table. Either way, columns that a job does not need may stay empty.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "units", Value: "imperial", Usage: "headers in `UNITS`: imperial or metric"},
			&cli.BoolFlag{Name: "force", Usage: "replace a workbook that exists"},
		},
		OnUsageError: usage,
		Action:       blank,
	}
}

func blank(c *cli.Context) error {
	if c.NArg() != 1 || c.Args().First() == "" {
		return fmt.Errorf("blank: one record is written at a time, and %d were named; name FILE.xlsx or a new folder", c.NArg())
	}
	units, known := map[string]record.Units{"imperial": record.Imperial, "metric": record.Metric}[c.String("units")]
	if !known {
		return fmt.Errorf("blank: --units %q is no set of units; write imperial or metric", c.String("units"))
	}
	out, layouts := c.Args().First(), record.Layouts(units)
	if err := writeBlank(c, out, layouts); err != nil {
		return err
	}
	fmt.Fprintln(c.App.Writer, "written: "+out)
	for _, line := range report.StartHere() {
		fmt.Fprint(c.App.Writer, wrap(line, "    "))
	}
	return nil
}

func writeBlank(c *cli.Context, out string, layouts []report.Layout) error {
	if strings.EqualFold(filepath.Ext(out), ".xlsx") {
		targets := []target{{out, func(w io.Writer) error { return workbook.WriteBlank(w, toolName+" "+version, layouts) }}}
		if err := free(targets, "", c.Bool("force")); err != nil {
			return err
		}
		return save(targets)
	}
	var tables []report.Table
	for _, l := range layouts {
		tables = append(tables, l.Empty())
	}
	return saveFolder(out, "", tables)
}
