package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/forms"
	"firstboard/report/record/sheet"
	"firstboard/report/seal"
	"firstboard/report/untrusted"
	"firstboard/report/workbook/fill"
)

// writeRecord writes tables as a new record to the output asked for: a
// workbook where it ends in .xlsx, with the sheets to write on by hand, else a
// new folder.
func writeRecord(c *cli.Context, path string, rec record.Record, tables []grid.Table,
	sheets ...grid.FieldSheet,
) error {
	out := c.String("output")
	if ext := otherExt(out); ext != "" {
		return fmt.Errorf("-o %s: a record is an .xlsx workbook or a folder; name it with .xlsx, or without %s", out, ext)
	}
	if !strings.EqualFold(filepath.Ext(out), ".xlsx") {
		return saveTables(out, path, tables)
	}
	return saveBook(out, filling(rec, tables, sheets).Write, path, tables, c.Bool("force"))
}

// otherExt is the ending of a name that stands for another kind of file than a record's, empty
// where it is none: nobody means a folder by it.
func otherExt(path string) string {
	ext := strings.ToLower(filepath.Ext(path))
	others := []string{".xls", ".xlsm", ".ods", ".csv", ".tsv", ".txt", ".json", ".html", ".pdf"}
	return lists.If(slices.Contains(others, ext), ext, "")
}

// filling is a record to be filled in further, its tables in the order of an
// empty one.
func filling(rec record.Record, tables []grid.Table, sheets []grid.FieldSheet) fill.Record {
	order := record.TableNames()
	tables = slices.SortedStableFunc(slices.Values(tables), func(a, b grid.Table) int {
		return slices.Index(order, a.Name) - slices.Index(order, b.Name)
	})
	return fill.Record{
		Job: rec.Job, Tool: madeWith(), Sheets: sheets, Tables: tables, Sum: seal.OfTables(tables),
		Forms: lists.Each(tables, forms.For), Most: untrusted.MostBytes,
	}
}

// saveTables writes tables as a new folder, which is never made inside the record.
func saveTables(out, path string, tables []grid.Table) error {
	if sameFile(filepath.Dir(filepath.Clean(out)), path) {
		return exit{exitUnusable, fmt.Errorf("%s: it would lie inside the record; name another folder",
			filepath.Clean(out))}
	}
	return saveFolder(out, lists.Each(tables, func(t grid.Table) target {
		return target{sheet.FileName(t.Name), func(w io.Writer) error { return sheet.WriteCSV(w, t) }}
	}))
}

// printWritten says what of the record was not carried along, and what was
// written.
func printWritten(c *cli.Context, rec record.Record) {
	if len(rec.NotRead) > 0 {
		say(c.App.Writer, "not carried along: "+strings.Join(rec.NotRead, ", "), "")
	}
	fmt.Fprintln(c.App.Writer, "written: "+c.String("output"))
}
