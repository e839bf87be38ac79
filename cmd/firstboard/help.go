package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// wantsHelp gives the words of the command whose help page is asked for:
// `help check`, `check --help` and `check help` are one question.
func wantsHelp(args []string) (words []string, ok bool) {
	if len(args) < 2 {
		return nil, true
	}
	for i, arg := range args[1:] {
		switch {
		case arg == "--":
			return nil, false
		case arg == "--help", arg == "-h":
			ok = true
		case arg == "help" && i < 2:
			ok = true
		case !strings.HasPrefix(arg, "-"):
			words = append(words, arg)
		}
	}
	return words, ok
}

// helpPage is the help page of a command, or of the whole tool.
func helpPage(app *cli.App, words []string, width int) (string, error) {
	cmd, path := &cli.Command{Subcommands: app.Commands, Usage: app.Usage, Description: app.Description}, toolName
	for _, word := range words {
		sub := subcommand(cmd, word)
		if sub == nil {
			if len(cmd.Subcommands) == 0 {
				break
			}
			return "", unknown(cmd, path, word)
		}
		cmd, path = sub, path+" "+sub.Name
	}
	var b strings.Builder
	b.WriteString(wrapTo(width, path+": "+cmd.Usage, "") + "\n")
	if cmd.ArgsUsage != "" {
		b.WriteString(wrapHung(width, cmd.ArgsUsage, "  ", "      ") + "\n")
	}
	if cmd.Description != "" {
		b.WriteString(wrapTo(width, cmd.Description, ""))
	}
	if cmd.UsageText != "" {
		gap := lists.If(cmd.Description == "", "", "\n")
		b.WriteString(gap + "Example:\n" + commandLine(width, cmd.UsageText))
	}
	helpCommands(&b, cmd, width)
	helpFlags(&b, cmd, width)
	if len(cmd.Subcommands) > 0 {
		b.WriteString("\n" + wrapTo(width, path+" COMMAND --help tells more about one command.", ""))
	}
	if path == toolName {
		b.WriteString(wrapTo(width, path+" --version names the version and its catalog of checks.", ""))
	}
	return b.String(), nil
}

func helpCommands(b *strings.Builder, cmd *cli.Command, width int) {
	if len(cmd.Subcommands) == 0 {
		return
	}
	longest := slices.Max(lists.Each(cmd.Subcommands, func(sub *cli.Command) int { return len(sub.Name) }))
	b.WriteString("\nCommands:\n")
	for _, sub := range cmd.Subcommands {
		lead := fmt.Sprintf("  %-*s  ", longest, sub.Name)
		text := wrapTo(width, sub.Usage, strings.Repeat(" ", len(lead)))
		b.WriteString(lead + strings.TrimLeft(text, " "))
	}
}

func helpFlags(b *strings.Builder, cmd *cli.Command, width int) {
	for i, flag := range cmd.Flags {
		if i == 0 {
			b.WriteString("\nFlags:\n")
		}
		names := lists.Each(flag.Names(), func(name string) string { return lists.If(len(name) == 1, "-", "--") + name })
		slices.Reverse(names)
		takes, usage := placeholder(flag)
		fmt.Fprintf(b, "  %s\n", strings.TrimSpace(strings.Join(names, ", ")+" "+takes))
		b.WriteString(wrapTo(width, usage, "      "))
	}
}

// placeholder is what a flag takes, marked in the words that tell of it, and
// those words.
func placeholder(flag cli.Flag) (takes, usage string) {
	documented, ok := flag.(cli.DocGenerationFlag)
	if !ok {
		return "", ""
	}
	parts := strings.Split(documented.GetUsage(), "`")
	if len(parts) > 1 {
		takes = parts[1]
	}
	usage = strings.Join(parts, "")
	if text, ok := flag.(*cli.StringFlag); ok && text.Value != "" {
		usage += "; " + text.Value + " where it is not given"
	}
	return takes, usage
}

// unknown refuses a command that there is none of, with the nearest one.
func unknown(cmd *cli.Command, path, word string) error {
	has := func(sub *cli.Command) bool { return subcommand(sub, word) != nil }
	if sub, found := lists.First(cmd.Subcommands, has); found {
		return fmt.Errorf("%s: no command %q; did you mean %s %s?", path, word, sub.Name, word)
	}
	return fmt.Errorf("%s: no command %q; %s", path, word, meant(word, commandNames(cmd)))
}

// meant asks whether a near name was meant, or lists what there is.
func meant(typed string, names []string) string {
	begun, _ := lists.First(names, func(n string) bool { return len(typed) > len("--o") && strings.HasPrefix(n, typed) })
	if near := cmp.Or(begun, evidence.NearMiss(typed, names)); near != "" {
		return "did you mean " + near + "?"
	}
	return "choose " + evidence.Either(names)
}
