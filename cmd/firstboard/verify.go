package main

import (
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/record"
)

// altered ends a run that read a workbook well and found it changed.
var altered = exit{exitNoGo, errors.New("the workbook does not hold")}

func verifyCommand() *cli.Command {
	return &cli.Command{
		Name:      "verify",
		Usage:     "say whether a decision workbook still holds what was sealed",
		ArgsUsage: toolName + " verify WORKBOOK [--seal HEX]",
		UsageText: toolName + " verify millrace-decision.xlsx",
		Description: "WORKBOOK is what check RECORD -o FILE.xlsx wrote. It is judged again from its own\n" +
			"tables and held against its seal. Exit code: 0 all of it holds, 1 something was\nchanged, 2 the workbook cannot be read.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "seal", Usage: "the seal as it was written down: 64 digits of `HEX`"},
		},
		OnUsageError: usage,
		Action:       verify,
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
	sealed, err := record.ReadSealed(c.Args().First())
	if err != nil {
		return exit{exitUnusable, err}
	}
	v, err := report.Verify(sealed, known, madeWith(), report.Rules())
	if err != nil {
		return exit{exitUnusable, err}
	}
	printVerification(c.App.Writer, sealed, v)
	if len(v.Broken) > 0 {
		return altered
	}
	return nil
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
		return "", fmt.Errorf("verify: --seal %q is no seal; write its %d digits of 0 to 9 and a to f", c.String("seal"), 2*size)
	}
	return given, nil
}

func printVerification(w io.Writer, s report.Sealed, v report.Verification) {
	says := "holds"
	if len(v.Broken) > 0 {
		says = "does not hold"
	}
	say(w, s.Name+": "+says, "")
	for _, line := range v.Broken {
		say(w, line, "    ")
	}
	for _, line := range v.Notes {
		say(w, line, "")
	}
}
