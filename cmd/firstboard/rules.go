package main

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"firstboard/report"
)

func rulesCommand() *cli.Command {
	return &cli.Command{
		Name:         "rules",
		Usage:        "list the checks, their limits, sources and standings",
		ArgsUsage:    toolName + " rules",
		UsageText:    toolName + " rules",
		OnUsageError: usage,
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("rules: takes no argument, and %q was given", c.Args().First())
			}
			for _, rule := range report.Rules() {
				printRule(c, rule)
			}
			return nil
		},
	}
}

func printRule(c *cli.Context, rule report.Rule) {
	title := rule.ID
	if !rule.Deciding {
		title += " (advice)"
	}
	fmt.Fprintln(c.App.Writer, title)
	say(c.App.Writer, rule.Asks, "  ")
	if rule.Default != "" {
		say(c.App.Writer, "unless stated otherwise: "+rule.Default, "  ")
	}
	say(c.App.Writer, "source: "+rule.Cite.Source+" ("+string(rule.Cite.Standing)+")", "  ")
}
