package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"firstboard/report/record"
)

// oneRecord reads the one record that a command takes, and refuses flags of
// these names that name nothing.
func oneRecord(c *cli.Context, flags ...string) (rec record.Record, path string, err error) {
	if c.NArg() != 1 {
		return rec, "", fmt.Errorf("%s: it takes one record, and %d were given", c.Command.Name, c.NArg())
	}
	for _, flag := range flags {
		if c.IsSet(flag) && c.String(flag) == "" {
			return rec, "", fmt.Errorf("%s: --%s names nothing; name a file or a folder, or leave it out",
				c.Command.Name, flag)
		}
	}
	path = c.Args().First()
	if path == "" {
		return rec, "", fmt.Errorf("%s: the record's name is empty; name a workbook or a folder", c.Command.Name)
	}
	if rec, err = record.Read(path); err != nil {
		return rec, "", exit{exitUnusable, err}
	}
	return rec, path, nil
}
