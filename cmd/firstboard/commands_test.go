package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/urfave/cli/v2"

	"firstboard/report"
)

// Every command answers --help with how it is used, and ends with 0.
func TestHelpOfEveryCommand(t *testing.T) {
	for _, words := range commandWords(newApp(nil, nil).Commands, nil) {
		t.Run(strings.Join(words, " "), func(t *testing.T) {
			var out, faults bytes.Buffer
			code := run(append(append([]string{toolName}, words...), "--help"), &out, &faults)
			usage := toolName + " " + strings.Join(words, " ")
			if code != exitGo || faults.Len() > 0 || !strings.Contains(out.String(), usage) {
				t.Errorf("exit code %d, complaint %q, help:\n%s", code, faults.String(), out.String())
			}
		})
	}
}

// commandWords are the words that call each command, those below it included.
func commandWords(commands []*cli.Command, above []string) [][]string {
	var all [][]string
	for _, c := range commands {
		words := append(above[:len(above):len(above)], c.Name)
		all = append(append(all, words), commandWords(c.Subcommands, words)...)
	}
	return all
}

// Every check has a script of its own name that shows it met, not met and not
// shown. What was not looked up is never over a limit.
func TestEveryCheckHasItsScript(t *testing.T) {
	for _, id := range report.Order() {
		script, err := os.ReadFile(filepath.Join(filepath.Dir(bases), id+".txtar"))
		if err != nil {
			t.Errorf("%s: %v", id, err)
			continue
		}
		for _, outcome := range []string{"met", "'not met'", "'not shown'"} {
			never := id == "limits-known" && outcome == "'not met'"
			if !never && !strings.Contains(string(script), "\nfinding "+id+" "+outcome) {
				t.Errorf("%s.txtar never shows it %s", id, outcome)
			}
		}
	}
}
