package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record"
	"firstboard/report/record/intake"
	"firstboard/report/untrusted"
)

func logCommand() *cli.Command {
	return &cli.Command{
		Name:      "log",
		Usage:     "bring a logger's or meter's CSV or TSV file into a record",
		ArgsUsage: toolName + " log RECORD FILE --table air|surface|slab-rh|wood [--area A1] --instrument L1 -o NEW",
		UsageText: toolName + ` log testdata/jobs/millrace export.csv --table air --instrument AL1 -o millrace-2`,
		Description: "NEW is a new folder of CSV files, or a new workbook where it ends in .xlsx; the record\n" +
			"given stays as it is. What is guessed of FILE is printed, a line each; what cannot be\n" +
			"told from it is refused, with the flag to give. Exit code: 0 every row was read, 1 rows were\n" +
			"left out, 2 the command, the file or the record is unusable, 3 the output could not be written.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "table", Usage: "the `TABLE` the rows go into: air, surface, slab-rh or wood"},
			&cli.StringFlag{Name: "area", Usage: "the `AREA` of every row; air without one is that of the whole site"},
			&cli.StringFlag{Name: "instrument", Usage: "the `INSTRUMENT` that read every row, as the record lists it"},
			&cli.StringSliceFlag{Name: "column", Usage: "`COLUMNS` of the record, each with that of the file: time=When,temp=Temp (F); a column of the file may be given by its number, #2"},
			&cli.StringSliceFlag{Name: "fill", Usage: "`ENTRIES` that every row is to hold: hole=H1,depth (in)=1.6"},
			&cli.StringFlag{Name: "time-format", Usage: "the `ORDER` of dates in the file: day-first, month-first or year-first"},
			outputFlag("write the new record to `NEW`, a folder or FILE.xlsx"),
			forceFlag("replace a workbook that exists"),
		},
		Action: logRows,
	}
}

func logRows(c *cli.Context) error {
	if c.NArg() != 2 {
		return fmt.Errorf("log: takes a record and the file to bring into it, and %d names were given", c.NArg())
	}
	for _, flag := range []string{"table", "instrument", "output"} {
		if c.String(flag) == "" {
			return fmt.Errorf("log: --%s is missing", flag)
		}
	}
	if c.IsSet("area") && c.String("area") == "" {
		return errors.New("log: --area names nothing; name an area, or leave it out")
	}
	path, file := c.Args().Get(0), c.Args().Get(1)
	rec, err := record.Read(path)
	if err != nil {
		return exit{exitUnusable, err}
	}
	logged, err := logFile(c, rec, file)
	switch {
	case err != nil && strings.Contains(err.Error(), "--"): // a flag mends it, and the help page tells of that
		return err
	case err != nil:
		return exit{exitUnusable, err}
	}
	if err := writeRecord(c, path, rec, grid.Put(rec.Tables, logged.Table)); err != nil {
		return err
	}
	printLogged(c.App.Writer, filepath.Base(file), logged)
	printWritten(c, rec)
	if logged.Unread > 0 {
		return exit{exitNoGo, fmt.Errorf("%s: %s left out of the record", filepath.Base(c.Args().Get(1)),
			evidence.Count(logged.Unread, "row was", "rows were"))}
	}
	return nil
}

// logFile reads the export, with a bar where somebody looks on.
func logFile(c *cli.Context, rec record.Record, file string) (intake.Logged, error) {
	name := filepath.Base(file)
	f, mark, err := untrusted.Open(file, untrusted.Wanted{Give: "the file that the logger or meter wrote"})
	if err != nil {
		return intake.Logged{}, err
	}
	defer f.Close()
	from, done := watched(f, mark.Size(), c.App.ErrWriter)
	defer done()
	logged, err := intake.Log(rec, name, from, intake.Intake{
		Table: c.String("table"), Area: c.String("area"), Instrument: c.String("instrument"),
		Columns: strings.Join(c.StringSlice("column"), ","), Fill: strings.Join(c.StringSlice("fill"), ","),
		Order: c.String("time-format"),
	})
	if changed := mark.Held(); changed != nil {
		return intake.Logged{}, changed // it was read several times over, each time another file
	}
	return logged, err
}

func printLogged(w io.Writer, file string, l intake.Logged) {
	fmt.Fprintln(w, file+" was read so:")
	sayEach(w, l.Guesses, "    ")
	say(w, fmt.Sprintf("%s added to %s, %d repeated and skipped, %d not read",
		evidence.Count(l.Added, "row", "rows"), l.Table.Name, l.Repeated, l.Unread), "")
	sayEach(w, l.Faults, "    ")
	if more := l.Unread - len(l.Faults); more > 0 {
		fmt.Fprintf(w, "    and %d more\n", more)
	}
	if l.Doubled > 0 {
		say(w, evidence.Count(l.Doubled, "row says",
			"rows say")+" something else of a thing and a time that are there already; both are kept, and the worse one counts", "")
	}
	if len(l.ToFill) > 0 {
		say(w, "these cells are blank and to be filled in: "+strings.Join(l.ToFill, ", "), "")
	}
}
