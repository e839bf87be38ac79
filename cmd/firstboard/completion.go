package main

import (
	"fmt"

	"github.com/urfave/cli/v2"
)

func completionCommand() *cli.Command {
	return &cli.Command{
		Name:  "completion",
		Usage: "print a script that completes commands and flags in a shell",
		UsageText: toolName + " completion bash|zsh|fish\n\nexample:\n   " +
			toolName + " completion bash > ~/.local/share/bash-completion/completions/" + toolName,
		OnUsageError: usage,
		Action:       completion,
	}
}

func completion(c *cli.Context) error {
	script, known := map[string]string{"bash": bashCompletion, "zsh": zshCompletion, "fish": fishCompletion}[c.Args().First()]
	if !known || c.NArg() != 1 {
		return fmt.Errorf("completion: name one shell: bash, zsh or fish")
	}
	fmt.Fprint(c.App.Writer, script)
	return nil
}

// completing says whether a shell asks what may follow.
func completing(args []string) bool {
	return len(args) > 1 && args[len(args)-1] == "--generate-bash-completion"
}

// The scripts ask the command itself what may follow, with the flag that the
// command-line library answers to; where it knows nothing, files are offered.
const (
	bashCompletion = `_firstboard() {
  local word=${COMP_WORDS[COMP_CWORD]}
  local line=("${COMP_WORDS[@]:1:COMP_CWORD-1}")
  [[ $word == -* ]] && line+=("$word")
  local offers
  offers=$(firstboard "${line[@]}" --generate-bash-completion 2>/dev/null | grep -vxe h -e help)
  COMPREPLY=($(compgen -W "$offers" -- "$word"))
}
complete -o default -o bashdefault -F _firstboard firstboard
`
	zshCompletion = `#compdef firstboard
_firstboard() {
  local -a offers line
  line=("${(@)words[2,CURRENT-1]}")
  [[ $words[CURRENT] == -* ]] && line+=("$words[CURRENT]")
  offers=("${(@f)$(firstboard "${line[@]}" --generate-bash-completion 2>/dev/null | grep -vxe h -e help)}")
  compadd -a offers
  _files
}
compdef _firstboard firstboard
`
	fishCompletion = `function __firstboard_offers
  set -l line (commandline -opc)
  set -l word (commandline -ct)
  string match -q -- '-*' $word; and set -a line $word
  $line --generate-bash-completion 2>/dev/null | string match -rv "^h(elp)?$"
end
complete -c firstboard -a '(__firstboard_offers)'
`
)
