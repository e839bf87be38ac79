package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record/forms"
	"firstboard/report/workbook/fill"
)

func blankCommand() *cli.Command {
	return &cli.Command{
		Name:      "blank",
		Usage:     "write an empty record to fill in",
		ArgsUsage: toolName + " blank FILE.xlsx|DIR [--units imperial|metric] [--force]",
		UsageText: toolName + " blank gallery.xlsx --units imperial",
		Description: "FILE.xlsx becomes a workbook with a sheet for each table, drop-down lists and\n" +
			"input checks; DIR becomes a new folder with a CSV file for each table. The first\n" +
			"sheet, or " + readMe + ", says which tables a small job needs. Imperial columns\n" +
			"ask for F, in, ft, ft2 and lb, metric ones for C, mm, m, m2 and g.",
		Flags: []cli.Flag{
			usualFlag("units", "imperial", "columns in these `UNITS`: imperial or metric"),
			forceFlag("replace a file that exists, never a folder"),
		},
		Action: blank,
	}
}

func blank(c *cli.Context) error {
	if c.NArg() != 1 || c.Args().First() == "" {
		return errors.New("blank: name one workbook (.xlsx) or one folder to write")
	}
	path := c.Args().First()
	system, err := systemOf(c.String("units"))
	if err != nil {
		return err
	}
	b := fill.Blank{Tool: toolName + " " + version, Steps: forms.FirstSteps(), Forms: forms.Empty(system)}
	switch ext := otherExt(path); {
	case strings.EqualFold(filepath.Ext(path), ".xlsx"):
		err = saveBook(path, b.Write, "", untouched(), c.Bool("force"))
	case ext != "":
		err = fmt.Errorf("blank %s: an empty record is an .xlsx workbook or a folder; name it with .xlsx, or without %s", path, ext)
	default:
		err = saveFolder(path, blankTables(b))
	}
	if err != nil {
		return err
	}
	fmt.Fprintln(c.App.Writer, "written: "+path)
	return nil
}

func systemOf(units string) (forms.System, error) {
	system, known := map[string]forms.System{"imperial": forms.Imperial, "metric": forms.Metric}[units]
	if !known {
		return 0, fmt.Errorf("blank: --units %q is no system of units; write imperial or metric", units)
	}
	return system, nil
}

// untouched are the tables of empty records: nobody typed what stands in them.
func untouched() []grid.Table {
	empty := append(forms.Empty(forms.Imperial), forms.Empty(forms.Metric)...)
	return lists.Each(empty, func(f grid.Form) grid.Table {
		items := lists.Each(f.Rows, func(item grid.Field) []string { return []string{item.Header} })
		return grid.Table{Name: f.Name}.With([]string{f.Fields[0].Header}, items...)
	})
}

// readMe is the file that tells of an empty record in a folder. It is no table.
const readMe = "read-me.txt"

// blankTables are the files of an empty record in a folder.
func blankTables(b fill.Blank) []target {
	tables := lists.Each(b.Forms, func(f grid.Form) target {
		return target{f.File, func(w io.Writer) error { return writeForm(w, f) }}
	})
	return append(tables, target{readMe, func(w io.Writer) error { return writeReadMe(w, b.Steps) }})
}

// writeForm writes a table's header, and the items of Job with their entries
// empty.
func writeForm(w io.Writer, f grid.Form) error {
	rows := [][]string{lists.Each(f.Fields, func(field grid.Field) string { return field.Header })}
	for _, item := range f.Rows {
		rows = append(rows, []string{item.Header, ""})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

func writeReadMe(w io.Writer, steps []grid.StartStep) error {
	all := "What one wood floor on a slab needs, in this order:\n\n"
	for i, s := range steps {
		line := strconv.Itoa(i+1) + ". "
		if s.Table != "" {
			line += s.Table + ": "
		}
		all += wrapHung(usualColumns, line+s.Says, "", hanging+hanging)
	}
	all += "\n" + wrapTo(usualColumns, "Days are written 2026-03-04, times 2026-03-04 08:30. What goes into each "+
		"column is on the last sheet of a workbook: "+toolName+" blank FILE.xlsx", "")
	_, err := io.WriteString(w, all)
	return err
}
