package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/record"
	"firstboard/report/record/sheet"
	"firstboard/report/seal"
	"firstboard/report/workbook"
)

// writeRecord writes tables as a new record to the output asked for: a
// workbook where it ends in .xlsx, with the sheets to write on by hand, else a
// new folder.
func writeRecord(c *cli.Context, path string, rec record.Record, tables []report.Table, sheets ...report.FieldSheet) error {
	out := c.String("output")
	if !strings.EqualFold(filepath.Ext(out), ".xlsx") {
		return saveFolder(out, path, tables)
	}
	f := filling(rec, tables, sheets)
	targets := []target{{out, func(w io.Writer) error { return workbook.WriteRecord(w, f) }}}
	if err := free(targets, path, tables, c.Bool("force")); err != nil {
		return err
	}
	return save(targets)
}

// filling is a record to be filled in further, its tables in the order of an
// empty one.
func filling(rec record.Record, tables []report.Table, sheets []report.FieldSheet) workbook.Filling {
	order := record.TableNames()
	tables = slices.SortedStableFunc(slices.Values(tables), func(a, b report.Table) int {
		return slices.Index(order, a.Name) - slices.Index(order, b.Name)
	})
	f := workbook.Filling{Job: rec.Job, Tool: madeWith(), Sheets: sheets, Tables: tables, Sum: seal.OfTables(tables), Most: sheet.MostBytes}
	for _, t := range tables {
		f.Forms = append(f.Forms, record.FormOf(t))
	}
	return f
}

// saveFolder writes tables under a temporary name first and renames the folder
// when all are whole. A folder that stands is never replaced, and none is made
// inside the record.
func saveFolder(out, path string, tables []report.Table) error {
	out = filepath.Clean(out)
	if _, err := os.Lstat(out); err == nil {
		return exit{exitUnsaved, fmt.Errorf("%s: it exists already, and what stands is never replaced by a folder; name another", out)}
	}
	if sameFile(filepath.Dir(out), path) {
		return exit{exitUnusable, fmt.Errorf("%s: it would lie inside the record; name another folder", out)}
	}
	temporary, err := os.MkdirTemp(filepath.Dir(out), ".firstboard-*")
	if err != nil {
		return unsaved(out, err)
	}
	defer os.RemoveAll(temporary)
	var targets []target
	for _, t := range tables {
		targets = append(targets, target{filepath.Join(temporary, sheet.FileName(t.Name)), func(w io.Writer) error { return sheet.WriteCSV(w, t) }})
	}
	if err := save(targets); err != nil {
		return unsaved(out, err)
	}
	if err := os.Chmod(temporary, 0o755); err != nil {
		return unsaved(out, err)
	}
	if err := os.Rename(temporary, out); err != nil {
		return unsaved(out, err)
	}
	return nil
}

// printWritten says what of the record was not carried along, and what was
// written.
func printWritten(c *cli.Context, rec record.Record) {
	if len(rec.NotRead) > 0 {
		say(c.App.Writer, "not carried along: "+strings.Join(rec.NotRead, ", "), "")
	}
	fmt.Fprintln(c.App.Writer, "written: "+c.String("output"))
}
