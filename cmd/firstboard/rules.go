package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/wood"
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
			printSynonyms(c)
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

// printSynonyms lists the trade's names of species that count as one.
func printSynonyms(c *cli.Context) {
	names := map[string][]string{}
	var means []string
	for _, s := range wood.Synonyms() {
		if names[s.Means] == nil {
			means = append(means, s.Means)
		}
		names[s.Means] = append(names[s.Means], s.Name)
	}
	slices.Sort(means)
	fmt.Fprintln(c.App.Writer, "names of species")
	say(c.App.Writer, "a meter's scale and a wood are one species under any of these names (the trade's usage, from memory):", "  ")
	for _, species := range means {
		say(c.App.Writer, species+": "+strings.Join(names[species], ", "), "  ")
	}
}
