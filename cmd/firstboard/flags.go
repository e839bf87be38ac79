package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/lists"
	"firstboard/report/record"
)

// outputFlag and forceFlag are flags that several commands have.
func outputFlag(use string) cli.Flag {
	return &cli.StringFlag{Name: "output", Aliases: []string{"o"}, Usage: use}
}

func forceFlag(use string) cli.Flag { return &cli.BoolFlag{Name: "force", Usage: use} }

// usualFlag is a flag with a value where none is given.
func usualFlag(name, value, use string) cli.Flag {
	return &cli.StringFlag{Name: name, Value: value, Usage: use}
}

// flagsFirst puts the flags of a command before its arguments: the library
// ignores a flag that follows one, and people write them there.
func flagsFirst(app *cli.App, args []string) ([]string, error) {
	if len(args) < 3 {
		return args, nil
	}
	cmd, words := app.Command(args[1]), 2
	if cmd == nil {
		return args, nil
	}
	if sub := subcommand(cmd, args[2]); sub != nil {
		cmd, words = sub, 3
	}
	if len(cmd.Subcommands) > 0 && !strings.HasPrefix(args[2], "-") {
		return nil, unknown(cmd, toolName+" "+cmd.Name, args[2])
	}
	var flags, rest []string
	for i := words; i < len(args); i++ {
		arg := args[i]
		switch {
		case arg == "--":
			rest, i = append(rest, args[i+1:]...), len(args)
		case !strings.HasPrefix(arg, "-") || arg == "-":
			rest = append(rest, arg)
		case !isFlag(cmd, arg):
			return nil, unknownFlag(cmd, strings.Join(args[1:words], " "), arg)
		default:
			flags = append(flags, arg)
			if takesValue(cmd, arg) {
				i++
				if i == len(args) || isFlag(cmd, args[i]) {
					return nil, fmt.Errorf("%s: %s is left without its value", cmd.Name, arg)
				}
				flags = append(flags, args[i])
			}
		}
	}
	return slices.Concat(args[:words], flags, []string{"--"}, rest), nil
}

// unknownFlag refuses a flag that the command does not take, with the nearest
// one.
func unknownFlag(cmd *cli.Command, path, arg string) error {
	name, _, _ := strings.Cut(arg, "=")
	names := flagNames(cmd)
	if len(names) == 0 {
		return fmt.Errorf("%s: it takes no flag, and %s was given", path, name)
	}
	return fmt.Errorf("%s: it takes no flag %s; %s", path, name, meant(name, names))
}

// isFlag says whether an argument is a flag of the command.
func isFlag(cmd *cli.Command, arg string) bool {
	return strings.HasPrefix(arg, "-") && (arg == "--" || flagNamed(cmd, arg) != nil)
}

// flagNamed is the flag of the command that an argument names, nil where it names
// none.
func flagNamed(cmd *cli.Command, arg string) cli.Flag {
	name, _, _ := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	flag, _ := lists.First(cmd.Flags, func(f cli.Flag) bool { return slices.Contains(f.Names(), name) })
	return flag
}

// takesValue says whether the next argument is this flag's value.
func takesValue(cmd *cli.Command, arg string) bool {
	flag := flagNamed(cmd, arg)
	_, isSwitch := flag.(*cli.BoolFlag)
	return flag != nil && !isSwitch && !strings.Contains(arg, "=")
}

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
