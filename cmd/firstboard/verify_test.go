package main

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/xuri/excelize/v2"
)

// cmdKeep puts what an expression's group finds on standard output into a
// variable.
func cmdKeep(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 2, "keep NAME EXPRESSION")
	m := regexp.MustCompile("(?m)" + a[1]).FindStringSubmatch(ts.ReadFile("stdout"))
	if len(m) != 2 {
		ts.Fatalf("standard output does not match %s", a[1])
	}
	ts.Setenv(a[0], m[1])
}

// cmdCell sets a cell of a workbook: the first on the sheet that shows a text,
// or one by its address.
func cmdCell(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 4, "cell FILE SHEET TEXT|ADDRESS VALUE")
	f, err := excelize.OpenFile(ts.MkAbs(a[0]))
	ts.Check(err)
	defer f.Close()
	_, err = f.NewSheet(a[1]) // none where it stands already
	ts.Check(err)
	at := a[2]
	if found, err := f.SearchSheet(a[1], a[2]); err == nil && len(found) > 0 {
		at = found[0]
	}
	var value any = a[3]
	if n, err := strconv.ParseFloat(a[3], 64); err == nil {
		value = n
	}
	ts.Check(f.SetCellValue(a[1], at, value))
	ts.Check(f.Save())
}

// cmdWithout deletes a sheet of a workbook.
func cmdWithout(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 2, "without FILE SHEET")
	f, err := excelize.OpenFile(ts.MkAbs(a[0]))
	ts.Check(err)
	defer f.Close()
	ts.Check(f.DeleteSheet(a[1]))
	ts.Check(f.Save())
}

// cmdShows looks for a row of a sheet, or with ! for none such.
func cmdShows(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, false, a, 3, "shows FILE SHEET EXPRESSION")
	f, err := excelize.OpenFile(ts.MkAbs(a[0]))
	ts.Check(err)
	defer f.Close()
	rows, err := f.GetRows(a[1])
	ts.Check(err)
	wanted := regexp.MustCompile(a[2])
	var all []string
	for _, row := range rows {
		all = append(all, strings.Join(row, "|"))
	}
	if found := slices.ContainsFunc(all, wanted.MatchString); found == neg {
		ts.Fatalf("%s %s: %q is there: %v, in\n%s", a[0], a[1], a[2], found, strings.Join(all, "\n"))
	}
}

// cmdMerge merges cells of a sheet.
func cmdMerge(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 4, "merge FILE SHEET FROM TO")
	f, err := excelize.OpenFile(ts.MkAbs(a[0]))
	ts.Check(err)
	defer f.Close()
	ts.Check(f.MergeCell(a[1], a[2], a[3]))
	ts.Check(f.Save())
}
