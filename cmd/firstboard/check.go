package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/outlook"
	"firstboard/report/page"
	"firstboard/report/record"
	"firstboard/report/seal"
	"firstboard/report/workbook"
)

func checkCommand() *cli.Command {
	return &cli.Command{
		Name:  "check",
		Usage: "judge a record and write the go/no-go workbook",
		ArgsUsage: toolName + " check RECORD [-o FILE.xlsx] [--json FILE|-] [--page FILE.html [--photos DIR]] " +
			"[--per-area DIR] [--print FILE.xlsx] [--explain AREA:CHECK] [--force]",
		UsageText: toolName + " check testdata/jobs/millrace -o millrace-decision.xlsx",
		Description: "RECORD is a workbook (.xlsx) or a folder of CSV files. Exit code: 0 every area is GO\n" +
			"(or --explain has printed its finding), 1 some area is NO-GO, 2 the command or the record is unusable,\n" +
			"3 the output could not be written.",
		Flags: []cli.Flag{
			outputFlag("write the decision workbook to `FILE.xlsx`"),
			&cli.StringFlag{Name: "json", Usage: "write the findings as JSON to `FILE`, or to standard output for -"},
			&cli.StringFlag{Name: "page", Usage: "write one web page that needs no network to `FILE.html`"},
			&cli.StringFlag{Name: "photos", Usage: "put the photos of the record, found in `DIR`, into the page"},
			&cli.StringFlag{Name: "explain", Usage: "print how one finding came about: `AREA:CHECK`, such as A2:slab-rh; nothing is written"},
			&cli.StringFlag{Name: "per-area", Usage: "write one workbook for each area into `DIR`"},
			&cli.StringFlag{Name: "print", Usage: "write only what is signed and filed, without the record, to `FILE.xlsx`"},
			forceFlag("replace files that exist"),
		},
		Action: check,
	}
}

// judged is a record with its decisions and their seal.
type judged struct {
	record.Record
	decisions []report.Decision
	advice    []ahead.Advice // one a decision
	seal      string
}

// sealed is a record with these decisions, sealed.
func sealed(rec record.Record, decisions []report.Decision) judged {
	answer := report.Decided(rec.Job, decisions)
	return judged{rec, decisions, outlook.Advice(decisions), seal.Of(madeWith(), rec.Tables, answer)}
}

func check(c *cli.Context) error {
	written := []string{"output", "json", "page", "photos", "per-area", "print"}
	if also, found := lists.First(written, c.IsSet); found && c.IsSet("explain") {
		return fmt.Errorf("check: --explain prints one finding and writes nothing; leave out --%s, or ask for it by itself", also)
	}
	rec, path, err := oneRecord(c, append(written, "explain")...)
	if err != nil {
		return err
	}
	j := sealed(rec, report.Judge(rec.Job))
	if asked := c.String("explain"); asked != "" {
		return j.explain(c.App.Writer, asked)
	}
	targets, err := j.targets(c)
	if err != nil {
		return err
	}
	if err := free(targets, path, rec.Tables, c.Bool("force")); err != nil {
		return err
	}
	made, err := makeFolder(c.String("per-area"))
	if err != nil {
		return err
	}
	if err := save(targets, c.Bool("force")); err != nil {
		for _, dir := range made {
			os.Remove(dir)
		}
		return err
	}
	if err := j.print(c, targets); err != nil {
		return exit{exitUnsaved, err}
	}
	return j.verdict()
}

// verdict is noGo unless every area is GO.
func (j judged) verdict() error {
	if slices.ContainsFunc(j.decisions, func(d report.Decision) bool { return d.Verdict != evidence.Go }) {
		return noGo
	}
	return nil
}

// targets are the files asked for.
func (j judged) targets(c *cli.Context) ([]target, error) {
	var targets []target
	books := []struct {
		flag, short, what string
		write             func(io.Writer, workbook.Book) error
	}{{"output", "-o", "the decision", workbook.Write}, {"print", "--print", "what is filed", workbook.WritePrint}}
	for _, b := range books {
		out := c.String(b.flag)
		if out == "" {
			continue
		}
		if !strings.EqualFold(filepath.Ext(out), ".xlsx") {
			return nil, fmt.Errorf("%s %s: %s is a workbook; name it with .xlsx", b.short, out, b.what)
		}
		targets = append(targets, target{out, func(w io.Writer) error { return b.write(w, j.book()) }})
	}
	if file := c.String("json"); file != "" && file != "-" {
		targets = append(targets, target{file, j.writeJSON})
	}
	if file := c.String("page"); file != "" {
		if ext := strings.ToLower(filepath.Ext(file)); ext != ".html" && ext != ".htm" {
			return nil, fmt.Errorf("--page %s: a web page ends in .html; name it so", file)
		}
		shown, err := j.page(c.String("photos"))
		if err != nil {
			return nil, err
		}
		targets = append(targets, target{file, func(w io.Writer) error { return page.Write(w, shown) }})
	} else if c.IsSet("photos") {
		return nil, errors.New("check: --photos goes with --page FILE.html")
	}
	if dir := c.String("per-area"); dir != "" {
		names := fileNames(j.decisions)
		for i, d := range j.decisions {
			path := filepath.Join(dir, names[i]+".xlsx")
			targets = append(targets, target{
				path,
				func(w io.Writer) error { return workbook.Write(w, j.only(d).book()) },
			})
		}
	}
	return targets, nil
}

// makeFolder makes a folder where none stands, and says which ones it had to
// make for it, the innermost first.
func makeFolder(dir string) (made []string, err error) {
	if dir == "" {
		return nil, nil
	}
	for at := filepath.Clean(dir); ; at = filepath.Dir(at) {
		if _, err := os.Lstat(at); err == nil {
			break
		}
		made = append(made, at)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, unsaved(dir, err)
	}
	return made, nil
}

// book is all that the decision workbook shows.
func (j judged) book() workbook.Book {
	return workbook.Book{Statement: j.statement(), Tables: j.Tables, Known: record.TableNames()}
}

func (j judged) statement() report.Statement {
	return report.Statement{
		Job: j.Job, Record: j.Name, SHA256: j.SHA256, Tool: madeWith(), Seal: j.seal, Decisions: j.decisions,
		Advice: j.advice, Rules: report.Rules(), Limits: report.LimitLines(j.decisions), Cautions: report.Cautions(),
	}
}

// only is the same record with what concerns one area. Its tables stay whole
// where their part would be judged otherwise.
func (j judged) only(d report.Decision) judged {
	part := j.Record
	part.Job.Areas = []report.Area{d.Area}
	if seal.StandsAlone(j.Job, d) {
		part.Tables = slices.Clone(part.Tables)
		for i, t := range part.Tables {
			part.Tables[i] = t.Concerning(d.Area.ID)
		}
	}
	return sealed(part, []report.Decision{d})
}

func (j judged) writeJSON(w io.Writer) error {
	a := report.Answers(j.Job, j.decisions, j.advice)
	a.Tool = report.ToolAnswer{Name: toolName, Version: version}
	a.Record = report.RecordAnswer{Name: j.Name, SHA256: j.SHA256, NotRead: append([]string{}, j.NotRead...)}
	a.Seal = j.seal
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	return e.Encode(a)
}

// print writes the verdicts, or the JSON alone where that goes to standard
// output.
func (j judged) print(c *cli.Context, targets []target) error {
	w := c.App.Writer
	if c.String("json") == "-" {
		return j.writeJSON(w)
	}
	printDecisions(w, j.decisions, j.advice, j.Job.Settings.Changed())
	if len(j.NotRead) > 0 {
		say(w, "not read: "+strings.Join(j.NotRead, ", "), "")
	}
	sayEach(w, tooLate(j.decisions), "")
	fmt.Fprintln(w, "seal: "+j.seal)
	printTargets(w, targets, "no workbook written; add -o FILE.xlsx for one")
	return nil
}
