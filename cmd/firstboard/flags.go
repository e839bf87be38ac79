package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

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
	for _, sub := range cmd.Subcommands {
		if sub.HasName(args[2]) {
			cmd, words = sub, 3
		}
	}
	var flags, rest []string
	for i := words; i < len(args); i++ {
		arg := args[i]
		switch {
		case arg == "--":
			rest, i = append(rest, args[i+1:]...), len(args)
		case arg == "--help" || arg == "-h":
			return append(slices.Clone(args[:words]), arg), nil
		case !strings.HasPrefix(arg, "-") || arg == "-":
			rest = append(rest, arg)
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

// isFlag says whether an argument is a flag of the command.
func isFlag(cmd *cli.Command, arg string) bool {
	name, _, _ := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	return strings.HasPrefix(arg, "-") && (arg == "--" || slices.ContainsFunc(cmd.Flags, func(f cli.Flag) bool {
		return slices.Contains(f.Names(), name)
	}))
}

// takesValue says whether the next argument is this flag's value.
func takesValue(cmd *cli.Command, arg string) bool {
	name := strings.TrimLeft(arg, "-")
	if strings.Contains(name, "=") {
		return false
	}
	for _, flag := range cmd.Flags {
		if slices.Contains(flag.Names(), name) {
			_, isSwitch := flag.(*cli.BoolFlag)
			return !isSwitch
		}
	}
	return false
}
