package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/seal"
	"firstboard/report/untrusted"
	"firstboard/report/workbook"
)

// altered ends a run that read a workbook well and found it changed.
var altered = exit{exitNoGo, errors.New("the workbook does not hold")}

func verifyCommand() *cli.Command {
	return &cli.Command{
		Name:      "verify",
		Usage:     "say whether a decision workbook is still what was written",
		ArgsUsage: toolName + " verify WORKBOOK [--seal HEX]",
		UsageText: toolName + " verify millrace-decision.xlsx",
		Description: "WORKBOOK is what check RECORD -o FILE.xlsx wrote. It is judged again from its own tables, " +
			"written again, and compared: every cell, formula, picture and hidden row. " +
			"Exit code: 0 all of it holds, 1 something was changed, 2 the workbook cannot be read.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "seal", Usage: "the seal as it was written down: 64 digits of `HEX`"},
		},
		Action: verify,
	}
}

func verify(c *cli.Context) error {
	if c.NArg() != 1 {
		return fmt.Errorf("verify: one workbook is verified at a time, and %d were given", c.NArg())
	}
	known, err := givenSeal(c)
	if err != nil {
		return err
	}
	w, err := toVerify(c.Args().First())
	if err != nil {
		return exit{exitUnusable, err}
	}
	w.Known = known
	v := seal.Verify(w)
	printVerification(c.App.Writer, w.Name, v)
	if len(v.Broken) > 0 {
		return altered
	}
	return nil
}

// toVerify is a decision workbook beside what firstboard writes of the record
// it was judged by.
func toVerify(path string) (seal.Workbook, error) {
	w := seal.Workbook{Name: filepath.Base(path), Tool: madeWith(), SignOff: "Sign-off", Tables: record.TableNames()}
	data, err := untrusted.Read(path, untrusted.Wanted{
		Give: "the workbook that check RECORD -o FILE.xlsx wrote", Most: untrusted.MostBytes,
		Smaller: "give the workbook that was written",
	})
	if err != nil {
		return w, err
	}
	w.Given, err = seal.Read(data)
	if err != nil { // the record's reader says what is wrong with a file
		if _, cause := record.ReadJudged(path, ""); cause != nil {
			err = cause
		}
		return w, err
	}
	about := aboutOf(w.Given)
	was, err := record.ReadJudged(path, about.record)
	if err != nil {
		return w, err
	}
	if hexSum(data) != was.SHA256 {
		return w, untrusted.Changed(path)
	}
	was.Name, was.SHA256, w.By, w.Shown = about.record, about.sum, about.tool, about.seal
	again := rewritten(was, w.Shown)
	w.Was, w.Seal = again.decisions, again.seal
	var out bytes.Buffer
	if err := workbook.Write(&out, again.book()); err != nil {
		return w, fmt.Errorf("%s: cannot be written again: %w", w.Name, err)
	}
	if w.Again = w.Given; !bytes.Equal(out.Bytes(), data) { // as written, byte for byte, it says the same
		if w.Again, err = seal.Read(out.Bytes()); err != nil {
			return w, fmt.Errorf("%s: %w", w.Name, err)
		}
	}
	now, fault := record.Read(path)
	if fault == nil && now.SHA256 != hexSum(data) {
		return w, untrusted.Changed(path)
	}
	if fault == nil {
		w.Now = report.Judge(now.Job)
	}
	w.NowFault = fault
	return w, nil
}

// hexSum is the SHA-256 of data in hex.
func hexSum(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// rewritten is the record judged again: whole, or the one area of it whose seal
// the workbook shows.
func rewritten(was record.Record, shown string) judged {
	whole := sealed(was, report.Judge(was.Job))
	if whole.seal == shown {
		return whole
	}
	for _, d := range whole.decisions {
		if part := whole.only(d); part.seal == shown {
			return part
		}
	}
	return whole
}

// about is what a decision workbook says of itself.
type about struct{ record, sum, tool, seal string }

// aboutOf reads it from the file's properties and from the page Decision.
func aboutOf(given seal.Content) about {
	var a about
	find := func(pattern, text string, to ...*string) bool {
		found := regexp.MustCompile(pattern).FindStringSubmatch(text)
		for i := range to {
			if found != nil {
				*to[i] = found[i+1]
			}
		}
		return found != nil
	}
	inProperties := find(`^record (.*), SHA-256 ([0-9a-f]{64})$`, given.About, &a.record, &a.sum)
	at := slices.IndexFunc(given.Sheets, func(s seal.Sheet) bool { return evidence.Same(s.Name, "Decision") })
	if at < 0 {
		return a
	}
	for _, c := range given.Sheets[at].Cells {
		find(`^Seal ([0-9a-f]{64})\. (.*), catalog of`, c.Value, &a.seal, &a.tool)
		if !inProperties {
			find(`^Record: (.*)\. SHA-256: ([0-9a-f]{64})\.`, c.Value, &a.record, &a.sum)
		}
	}
	return a
}

// givenSeal is the seal of the flag as seals are written, empty where none was
// given. Spaces and capitals come of copying it by hand.
func givenSeal(c *cli.Context) (string, error) {
	if !c.IsSet("seal") {
		return "", nil
	}
	given := strings.ToLower(strings.Join(strings.Fields(c.String("seal")), ""))
	const size = 32
	if b, err := hex.DecodeString(given); err != nil || len(b) != size {
		return "", fmt.Errorf("verify: --seal %q is no seal; write its %d digits of 0 to 9 and a to f",
			c.String("seal"), 2*size)
	}
	return given, nil
}

func printVerification(w io.Writer, name string, v seal.Verification) {
	say(w, name+": "+lists.If(len(v.Broken) > 0, "does not hold", "holds"), "")
	sayEach(w, v.Broken, "    ")
	sayEach(w, v.Notes, "")
}
