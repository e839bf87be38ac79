package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/wood"
)

func rulesCommand() *cli.Command {
	return &cli.Command{
		Name:      "rules",
		Usage:     "list the checks, their limits, sources and standings",
		ArgsUsage: toolName + " rules",
		UsageText: toolName + " rules",
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("rules: takes no argument, and %q was given", c.Args().First())
			}
			printRules(c.App.Writer)
			return nil
		},
	}
}

func printRule(w io.Writer, rule report.Rule) {
	title := rule.ID
	if !rule.Deciding {
		title += " (advice)"
	}
	fmt.Fprintln(w, title)
	say(w, rule.Asks, "  ")
	if rule.Default != "" {
		say(w, "unless stated otherwise: "+rule.Default, "  ")
	}
	say(w, "source: "+rule.Cite.Source+" ("+string(rule.Cite.Standing)+")", "  ")
}

// printSynonyms lists the trade's names of species that count as one.
func printSynonyms(w io.Writer) {
	names := map[string][]string{}
	var means []string
	for _, s := range wood.Synonyms() {
		if names[s.Means] == nil {
			means = append(means, s.Means)
		}
		names[s.Means] = append(names[s.Means], s.Name)
	}
	slices.Sort(means)
	fmt.Fprintln(w, "names of species")
	say(w, "a meter's scale and a wood are one species under any of these names (the trade's usage, from memory):",
		"  ")
	for _, species := range means {
		say(w, species+": "+strings.Join(names[species], ", "), "  ")
	}
}
