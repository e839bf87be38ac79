package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/evidence"
	"firstboard/report/gather"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/seal"
	"firstboard/report/workbook"
)

func gatherCommand() *cli.Command {
	return &cli.Command{
		Name:      "gather",
		Usage:     "put the verdicts on many records into one table",
		ArgsUsage: toolName + " gather DIR|RECORD... [-o FILE.xlsx] [--jsonl FILE|-] [--workers N] [--force]",
		UsageText: toolName + " gather jobs -o verdicts.xlsx --jsonl verdicts.jsonl",
		Description: "DIR is searched for records: folders of CSV files, workbooks (.xlsx) and decision workbooks. " +
			"The table has a row for each area: verdict, why, dates, what comes next and whose, products, figures, seal. " +
			"What cannot be read is listed, and the rest is gathered. " +
			"Exit code: 0 every area is GO, 1 some area is NO-GO, 2 the command is unusable or some record cannot be read " +
			"(the others are written), 3 the output could not be written.",
		Flags: []cli.Flag{
			outputFlag("write the table, its summary and what falls due to `FILE.xlsx`"),
			&cli.StringFlag{Name: "jsonl", Usage: "write a line of JSON for each area to `FILE`, or to standard output for -"},
			&cli.IntFlag{Name: "workers", Usage: "read `N` records at a time; one for each core where it is not given"},
			forceFlag("replace files that exist"),
		},
		Action: gatherRecords,
	}
}

func gatherRecords(c *cli.Context) error {
	workers := c.Int("workers")
	if !c.IsSet("workers") {
		workers = runtime.GOMAXPROCS(0)
	}
	switch {
	case c.NArg() == 0:
		return errors.New("gather: it takes folders or records, and none was given")
	case workers < 1:
		return fmt.Errorf("gather: --workers %d: give 1 or more", workers)
	}
	for _, flag := range []string{"output", "jsonl"} {
		if c.IsSet(flag) && c.String(flag) == "" {
			return fmt.Errorf("gather: --%s names nothing; name a file, or leave it out", flag)
		}
	}
	out := gathering{c: c}
	found, err := out.found()
	if err != nil {
		return err
	}
	if err := out.mayWrite(found); err != nil {
		return err
	}
	out.Gathered = gather.Join(readAll(found, workers, c.App.ErrWriter, readOne))
	if err := save(out.targets(), c.Bool("force")); err != nil {
		return err
	}
	if err := out.print(); err != nil {
		return exit{exitUnsaved, err}
	}
	return out.verdict()
}

// gathering is one run of gather: what was asked, and what came of it.
type gathering struct {
	c *cli.Context
	gather.Gathered
}

// found are the records under the arguments.
func (g gathering) found() ([]candidate, error) {
	found, err := candidates(g.c.Args().Slice())
	if err != nil {
		return nil, err
	}
	out := g.c.String("output")
	all := lists.Where(found, func(f candidate) bool {
		return !sameFile(f.path, out) || !isVerdicts(out) // what is to be replaced is no record
	})
	if len(all) == 0 {
		return nil, exit{exitUnusable, fmt.Errorf("gather: no record is in %s; a record is a folder of CSV files, "+
			"named as %s blank FOLDER names them, or a workbook", strings.Join(g.c.Args().Slice(), ", "), toolName)}
	}
	return all, nil
}

// mayWrite refuses targets that cannot or must not be written.
func (g gathering) mayWrite(found []candidate) error {
	targets := g.targets()
	for _, t := range targets {
		if slices.ContainsFunc(found, func(f candidate) bool { return sameFile(t.path, f.path) || isTable(t.path, f.path) }) {
			return exit{exitUnusable, fmt.Errorf("%s: it is one of the records or a table of one; name another file", t.path)}
		}
	}
	if out := g.c.String("output"); out != "" && !strings.EqualFold(filepath.Ext(out), ".xlsx") {
		return fmt.Errorf("-o %s: the table of verdicts is a workbook; name it with .xlsx", out)
	}
	return free(targets, "", nil, g.c.Bool("force"))
}

// targets are the files asked for.
func (g gathering) targets() []target {
	var targets []target
	if out := g.c.String("output"); out != "" {
		targets = append(targets, target{out, g.writeBook})
	}
	if file := g.c.String("jsonl"); file != "" && file != "-" {
		targets = append(targets, target{file, g.writeLines})
	}
	return targets
}

func (g gathering) writeBook(w io.Writer) error {
	listings := g.Sheets()
	tables := lists.Each(listings, func(l grid.Listing) grid.Table { return l.Table })
	says := record.GatheredMark + seal.OfTables(tables)
	return workbook.WriteListings(w, madeWith(), "Verdicts of many records", says, listings)
}

// writeLines writes an object a line. Every line has the same fields.
func (g gathering) writeLines(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return lists.Try(g.Rows, func(r gather.Row) error { return e.Encode(r) })
}

// isVerdicts says whether a file is a workbook of verdicts.
func isVerdicts(path string) bool {
	_, _, says := record.Gathered(path, gather.SheetNames())
	return strings.HasPrefix(says, record.GatheredMark)
}

// verdictsChanged says whether a workbook of verdicts is no longer as it was
// written.
func verdictsChanged(path string) bool {
	tables, strays, says := record.Gathered(path, gather.SheetNames())
	sum, ours := strings.CutPrefix(says, record.GatheredMark)
	return ours && (strays || sum != seal.OfTables(tables))
}

// verdict is noGo unless every area is GO, and says of records that cannot be
// read how many they are.
func (g gathering) verdict() error {
	if n := len(g.unread(gather.Faulty)); n > 0 {
		unread := evidence.Count(n, "record", "records")
		return exit{exitUnusable, fmt.Errorf("gather: %s cannot be read; the others are gathered", unread)}
	}
	switch total := g.Total(); {
	case total.Areas == 0:
		return exit{exitUnusable, errors.New("gather: none of what was found is a record")}
	case total.Go < total.Areas:
		return noGo
	}
	return nil
}

// unread are the things of a kind that were not gathered.
func (g gathering) unread(kind gather.Kind) []gather.Unread {
	return lists.Where(g.Unread, func(u gather.Unread) bool { return u.What == kind })
}
