package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report/lists"
)

// completionMark is the last argument of a script that asks what may follow.
const completionMark = "--generate-bash-completion"

// completing gives the words of a script that asks, the one being typed last.
func completing(args []string) (words []string, ok bool) {
	if len(args) < 2 || args[len(args)-1] != completionMark {
		return nil, false
	}
	return append([]string{""}, args[1:len(args)-1]...), true
}

// completions are what the last word may become: a flag or a command. There
// are none where a file or a quantity is to be typed.
func completions(app *cli.App, words []string) []string {
	last, before := words[len(words)-1], words[max(len(words)-2, 0)]
	names, cmd := []string{"--help", "--version"}, &cli.Command{Subcommands: app.Commands}
	for _, word := range words[1:max(len(words)-1, 1)] {
		if sub := subcommand(cmd, word); sub != nil {
			names, cmd = []string{"--help"}, sub
		}
	}
	switch {
	case slices.Contains(words[:len(words)-1], "--") || strings.HasPrefix(before, "-") && takesValue(cmd, before):
		return nil
	case strings.HasPrefix(last, "-"):
		names = append(flagNames(cmd), names...)
	default:
		names = commandNames(cmd)
	}
	return slices.DeleteFunc(names, func(name string) bool { return !strings.HasPrefix(name, last) })
}

func subcommand(cmd *cli.Command, name string) *cli.Command {
	for _, sub := range cmd.Subcommands {
		if sub.HasName(name) {
			return sub
		}
	}
	return nil
}

func flagNames(cmd *cli.Command) []string {
	return lists.Each(cmd.Flags, func(flag cli.Flag) string { return "--" + flag.Names()[0] })
}

func commandNames(cmd *cli.Command) []string {
	return lists.Each(cmd.Subcommands, func(sub *cli.Command) string { return sub.Name })
}

func completionCommand() *cli.Command {
	cmd := &cli.Command{
		Name:      "completion",
		Usage:     "print a script by which a shell completes commands",
		ArgsUsage: toolName + " completion bash|zsh|fish",
		UsageText: toolName + " completion bash > ~/.local/share/bash-completion/completions/" + toolName,
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("completion: no script for %q; choose bash, zsh or fish", c.Args().First())
			}
			return errors.New("completion: choose bash, zsh or fish")
		},
	}
	cmd.Subcommands = []*cli.Command{
		shellCommand("bash", bashScript), shellCommand("zsh", zshScript), shellCommand("fish", fishScript),
	}
	return cmd
}

func printLines(w io.Writer, lines []string) {
	for _, line := range lines {
		fmt.Fprintln(w, line)
	}
}

func shellCommand(shell, script string) *cli.Command {
	return &cli.Command{
		Name:      shell,
		Usage:     "print the script for " + shell,
		ArgsUsage: toolName + " completion " + shell,
		UsageText: toolName + " completion " + shell,
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("completion %s: takes no argument, and %q was given", shell, c.Args().First())
			}
			_, err := io.WriteString(c.App.Writer,
				strings.NewReplacer("NAME", toolName, "MARK", completionMark).Replace(script))
			return err
		},
	}
}

// The scripts ask the command itself, with the word being typed. Where it has
// no answer they offer the names of files.
const (
	bashScript = `# Completion of NAME for bash.
_NAME() {
  local IFS=$'\n' word=${COMP_WORDS[COMP_CWORD]}
  COMPREPLY=($(compgen -W "$("${COMP_WORDS[@]:0:COMP_CWORD}" "$word" MARK 2>/dev/null)" -- "$word"))
}
complete -o bashdefault -o default -F _NAME NAME
`

	zshScript = `#compdef NAME
# Completion of NAME for zsh.
_NAME() {
  local -a answers=("${(@f)$("${(@)words[1,CURRENT-1]}" "$words[CURRENT]" MARK 2>/dev/null)}")
  if [[ -n $answers[1] ]]; then
    compadd -a answers
  else
    _files
  fi
}
if [[ $funcstack[1] == _NAME ]]; then
  _NAME "$@"
else
  compdef _NAME NAME
fi
`

	fishScript = `# Completion of NAME for fish.
function __NAME_answers
    set -l before (commandline -opc)
    set -l word (commandline -ct)
    set -l answers ($before "$word" MARK 2>/dev/null)
    if test (count $answers) -gt 0
        printf '%s\n' $answers
    else
        __fish_complete_path "$word"
    end
end
complete -c NAME -f -a '(__NAME_answers)'
`
)
