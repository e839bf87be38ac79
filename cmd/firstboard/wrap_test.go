package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"
)

// What a command says keeps to the width of its terminal, down to 40 columns,
// where its words can be parted.
func TestLinesKeepToTheTerminal(t *testing.T) {
	t.Parallel()
	const job = "../../testdata/jobs/millrace"
	for _, columns := range []int{40, 80, 120} {
		for _, args := range [][]string{
			{"check", job},
			{"plan", job},
			{"gather", job, bases},
			{"help", "gather"},
			{"rules"},
			{"help"},
			{"help", "check"},
			{"help", "log"},
			{"help", "climate"},
			{"calc", "air", "--temp", "70F", "--rh", "45%", "--surface", "60F"},
			{"check", job, "--explain", "A2:slab-rh"},
		} {
			var out, faults bytes.Buffer
			s := &screen{w: &out, columns: columns}
			if err := answerTo(newApp(s, &faults), s, append([]string{toolName}, args...)); err != nil && err != noGo {
				t.Fatal(err)
			}
			for line := range strings.Lines(out.String()) {
				line = strings.TrimSuffix(line, "\n")
				if n := utf8.RuneCountInString(line); n > columns && len(unbroken(line)) > 1 && !strings.HasPrefix(line, "seal: ") {
					t.Errorf("%q at %d columns: %d in %q", args, columns, n, line)
				}
			}
		}
	}
}

// A record gives a terminal no orders: what it holds is shown, and nothing more.
func TestATextGivesTheTerminalNoOrders(t *testing.T) {
	const text = "A\x1b[31m1\x07 \u009b2J b\tc\u00a0d é 地"
	if got, want := wrapTo(80, text, ""), "A?[31m1? ?2J b c d é 地\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestANumberKeepsItsUnit(t *testing.T) {
	const text = "highest of 5 holes: H4, 87.9 % RH (limit 85 %, GLUE-W), read at 70.2 F after 26 h"
	for columns := 12; columns < 80; columns++ {
		for line := range strings.Lines(wrapTo(columns, text, "")) {
			first, _, _ := strings.Cut(strings.TrimSpace(line), " ")
			if first == "%" || first == "RH" || first == "F" || first == "h" {
				t.Fatalf("at %d columns a line begins with %q", columns, first)
			}
		}
	}
}

// A command of an example can be pasted into a shell however it is broken.
func TestACommandLineIsOneCommand(t *testing.T) {
	const command = `firstboard calc move --species "red oak" --from 6% --to 9%`
	got := commandLine(30, command)
	if !strings.Contains(got, " \\\n") || !strings.Contains(got, `"red oak"`) {
		t.Errorf("got %q", got)
	}
	if joined := strings.Join(strings.Fields(strings.ReplaceAll(got, "\\\n", " ")), " "); joined != command {
		t.Errorf("joined it is %q", joined)
	}
}
