package main

import (
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/urfave/cli/v2"
)

// The help of every command carries one example, whose command and flags are
// there.
func TestHelpOfEveryCommandCarriesAnExample(t *testing.T) {
	for _, words := range commandWords(newApp(nil, nil).Commands, nil) {
		t.Run(strings.Join(words, " "), func(t *testing.T) {
			example := commandAt(t, newApp(nil, nil), words).UsageText
			if !strings.HasPrefix(example, toolName+" ") || strings.Contains(example, "\n") {
				t.Fatalf("its help carries no example of one line: %q", example)
			}
			args := shellWords(example)
			app, reached := deaf()
			ordered, err := flagsFirst(app, args)
			if err == nil {
				err = app.Run(ordered)
			}
			if err != nil {
				t.Fatalf("%s: %v", example, err)
			}
			if want := strings.Join(words, " "); !strings.HasPrefix(*reached, want) {
				t.Errorf("%s calls %q, not %q", example, *reached, want)
			}
		})
	}
}

func commandAt(t *testing.T, app *cli.App, words []string) *cli.Command {
	t.Helper()
	cmd := &cli.Command{Subcommands: app.Commands}
	for _, word := range words {
		cmd = subcommand(cmd, word)
	}
	return cmd
}

// deaf is the command with actions that tell which of them was called.
func deaf() (app *cli.App, reached *string) {
	app, reached = newApp(io.Discard, io.Discard), new(string)
	var still func(commands []*cli.Command, above []string)
	still = func(commands []*cli.Command, above []string) {
		for _, c := range commands {
			words := append(slices.Clone(above), c.Name)
			c.Action = func(*cli.Context) error { *reached = strings.Join(words, " "); return nil }
			still(c.Subcommands, words)
		}
	}
	still(app.Commands, nil)
	return app, reached
}

// shellWords parts a line at its spaces, but for those between quotes.
func shellWords(line string) []string {
	var words []string
	for i, piece := range strings.Split(line, `"`) {
		if i%2 == 1 {
			words = append(words, piece)
			continue
		}
		words = append(words, strings.Fields(piece)...)
	}
	return words
}
