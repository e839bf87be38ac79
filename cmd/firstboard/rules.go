package main

import (
	"fmt"
	_ "image/png"
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/lists"
	"firstboard/wood"
)

func rulesCommand() *cli.Command {
	return printing("rules", "rules", "list the checks, their limits, sources and standings", func(w io.Writer) error {
		printRules(w)
		return nil
	})
}

func printRule(w io.Writer, rule report.Rule) {
	fmt.Fprintln(w, rule.ID+lists.If(rule.Deciding, "", " (advice)"))
	say(w, rule.Asks, "  ")
	if rule.Default != "" {
		say(w, "unless stated otherwise: "+rule.Default, "  ")
	}
	say(w, "source: "+rule.Cite.Source+" ("+string(rule.Cite.Standing)+")", "  ")
}

// printSynonyms lists the trade's names of species that count as one.
func printSynonyms(w io.Writer) {
	synonyms := wood.Synonyms()
	slices.SortStableFunc(synonyms, func(a, b wood.Synonym) int { return strings.Compare(a.Means, b.Means) })
	fmt.Fprintln(w, "names of species")
	say(w, "a meter's scale and a wood are one species under any of these names (the trade's usage, from memory):",
		"  ")
	for _, alike := range lists.Groups(synonyms, func(s wood.Synonym) string { return s.Means }) {
		names := lists.Each(alike, func(s wood.Synonym) string { return s.Name })
		say(w, alike[0].Means+": "+strings.Join(names, ", "), "  ")
	}
}
