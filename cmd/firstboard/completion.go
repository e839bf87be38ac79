package main

import (
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
	sub, _ := lists.First(cmd.Subcommands, func(sub *cli.Command) bool { return sub.HasName(name) })
	return sub
}

func flagNames(cmd *cli.Command) []string {
	return lists.Each(cmd.Flags, func(flag cli.Flag) string { return "--" + flag.Names()[0] })
}

func commandNames(cmd *cli.Command) []string {
	return lists.Each(cmd.Subcommands, func(sub *cli.Command) string { return sub.Name })
}

func completionCommand() *cli.Command {
	return &cli.Command{
		Name:      "completion",
		Usage:     "print a script by which a shell completes commands",
		ArgsUsage: toolName + " completion bash|zsh|fish",
		UsageText: toolName + " completion bash > ~/.local/share/bash-completion/completions/" + toolName,
		Action:    choosing("script for", "bash, zsh or fish"),
		Subcommands: []*cli.Command{
			shellCommand("bash", bashScript), shellCommand("zsh", zshScript), shellCommand("fish", fishScript),
		},
	}
}

// choosing asks a command that was given nothing that it has for one of its choices.
func choosing(what, choices string) cli.ActionFunc {
	return func(c *cli.Context) error {
		if c.NArg() > 0 {
			return fmt.Errorf("%s: no %s %q; choose %s", c.Command.Name, what, c.Args().First(), choices)
		}
		return fmt.Errorf("%s: choose %s", c.Command.Name, choices)
	}
}

func shellCommand(shell, script string) *cli.Command {
	return printing(shell, "completion "+shell, "print the script for "+shell, func(w io.Writer) error {
		_, err := strings.NewReplacer("NAME", toolName, "MARK", completionMark).WriteString(w, script)
		return err
	})
}

// printing is a command that prints one thing and takes nothing.
func printing(name, path, use string, show func(io.Writer) error) *cli.Command {
	return &cli.Command{
		Name: name, Usage: use, ArgsUsage: toolName + " " + path, UsageText: toolName + " " + path,
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("%s: takes no argument, and %q was given", path, c.Args().First())
			}
			return show(c.App.Writer)
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
