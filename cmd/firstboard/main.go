// Command firstboard judges whether a floor may be installed yet, area by area,
// from a field record, and writes a go/no-go workbook.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/lists"
)

// Exit codes.
const (
	exitGo       = 0 // every area may be installed
	exitNoGo     = 1 // some area may not
	exitUnusable = 2 // the command or the record is unusable
	exitUnsaved  = 3 // the output could not be written
)

// exit is an error that carries its exit code.
type exit struct {
	code int
	err  error
}

func (e exit) Error() string { return e.err.Error() }
func (e exit) Unwrap() error { return e.err }

// noGo ends a run that judged well and found an area that may not be installed.
var noGo = exit{exitNoGo, errors.New("some area is not GO")}

func main() { os.Exit(runOnce()) }

// runOnce is the whole of the command's process, and gives the exit code.
func runOnce() int {
	debug.SetGCPercent(sweptOften)
	unused := make([]byte, sweptFrom)
	defer runtime.KeepAlive(unused)
	return run(os.Args, os.Stdout, os.Stderr)
}

const (
	// sweptOften is how much the memory in use may grow, in percent, before it is
	// swept: less than the usual, which takes a fifth less of memory.
	sweptOften = 40

	// sweptFrom are bytes that count as in use and are never touched, so that they
	// take no memory. Nothing is swept before two fifths of that are in use, so that
	// small runs, most of them, spend little time on it.
	sweptFrom = 32 << 20
)

// run is the command with its streams, and gives the exit code.
func run(args []string, stdout, stderr io.Writer) int {
	out := newScreen(stdout)
	app := newApp(out, stderr)
	err := answerTo(app, out, args)
	var e exit
	switch {
	case out.err != nil:
		fmt.Fprintln(stderr, "standard output: cannot be written:", out.err)
		return exitUnsaved
	case err == nil:
		return exitGo
	case errors.Is(err, noGo), errors.Is(err, altered):
		return exitNoGo
	case errors.As(err, &e):
		refuse(stderr, err.Error())
		return e.code
	}
	refuse(stderr, withHelp(err.Error(), app, args))
	return exitUnusable
}

// refuse writes a refusal: a line for each thing to mend, broken where somebody
// reads it on a terminal.
func refuse(stderr io.Writer, refusal string) {
	s := newScreen(stderr)
	for line := range strings.Lines(refusal) {
		if s.terminal {
			say(s, line, "")
			continue
		}
		fmt.Fprintln(s, strings.TrimSuffix(line, "\n"))
	}
}

// answerTo completes words, shows a help page, or runs the command.
func answerTo(app *cli.App, out io.Writer, args []string) error {
	if asked, ok := completing(args); ok {
		for _, word := range completions(app, asked) {
			fmt.Fprintln(out, word)
		}
		return nil
	}
	if words, ok := wantsHelp(args); ok {
		page, err := helpPage(app, words, columnsOf(out))
		fmt.Fprint(out, page)
		return err
	}
	ordered, err := flagsFirst(app, args)
	if err != nil {
		return err
	}
	return app.Run(ordered)
}

// withHelp is a refusal with the help page that answers it.
func withHelp(refusal string, app *cli.App, args []string) string {
	page := toolName
	cmd := &cli.Command{Subcommands: app.Commands}
	for _, word := range args[1:] {
		if cmd = subcommand(cmd, word); cmd == nil {
			break
		}
		page += " " + cmd.Name
	}
	return refusal + lists.If(strings.HasSuffix(refusal, "?"), " See ", "; see ") + page + " --help"
}

func newApp(stdout, stderr io.Writer) *cli.App {
	app := &cli.App{
		Name:      toolName,
		Usage:     "judge whether a floor may be installed yet, area by area, and prove it",
		Version:   versions(),
		Writer:    stdout,
		ErrWriter: stderr,
		HideHelp:  true,
		Description: "A record is a workbook (.xlsx) or a folder of CSV files, as " + toolName + " blank writes it. " +
			"Missing evidence is never a GO.",
		Commands: []*cli.Command{
			checkCommand(), verifyCommand(), planCommand(), gatherCommand(), logCommand(),
			climateCommand(), rulesCommand(), calcCommand(), blankCommand(), completionCommand(),
		},
		Action: func(c *cli.Context) error {
			return unknown(&cli.Command{Subcommands: c.App.Commands}, toolName, c.Args().First())
		},
		OnUsageError:   usage,
		ExitErrHandler: func(*cli.Context, error) {},
	}
	ours(app.Commands)
	return app
}

// ours has commands refuse in our words, and keeps the library from taking a
// record named h, or help, for a question: the help pages are our own.
func ours(commands []*cli.Command) {
	for _, c := range commands {
		c.HideHelp, c.OnUsageError = true, usage
		ours(c.Subcommands)
	}
}

// usage says in our words what the library says of flags: one that the tool itself does not
// take, and a value that does not read.
func usage(c *cli.Context, err error, _ bool) error {
	if name, unknown := strings.CutPrefix(err.Error(), "flag provided but not defined: -"); unknown {
		return fmt.Errorf("%s: it takes no flag --%s; %s", toolName, name, meant("--"+name, []string{"--help", "--version"}))
	}
	var value, name string
	for _, form := range []string{"invalid value %q for flag -%s", "invalid boolean value %q for -%s"} {
		if n, _ := fmt.Sscanf(err.Error(), form, &value, &name); n == 2 {
			return fmt.Errorf("%s: --%s cannot be %q", c.Command.Name, strings.TrimSuffix(name, ":"), value)
		}
	}
	return err
}
