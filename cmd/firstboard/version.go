package main

import (
	"crypto/sha256"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/report"
	"firstboard/report/lists"
	"firstboard/wood"
)

// The tool's name and version, as every output states them. A seal rests on the
// version, so it is that of a release and not of a build.
const (
	toolName = "firstboard"
	version  = "0.1.0"
)

// madeWith is the tool with its version.
func madeWith() string { return toolName + " " + version }

// versions is the version with what it was built from and with, and the catalog
// of checks it judges by.
func versions() string {
	catalog := sha256.New()
	printRules(catalog)
	lines := []string{
		version,
		"built from " + builtFrom(),
		"built with " + runtime.Version() + " for " + runtime.GOOS + "/" + runtime.GOARCH,
		fmt.Sprintf("catalog of %d checks, SHA-256 of what %s rules writes: %x", len(report.Rules()), toolName,
			catalog.Sum(nil)),
	}
	return strings.Join(lines, "\n")
}

// builtFrom is the state of the source, where the build says it.
func builtFrom() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "a source that is not known"
	}
	said := map[string]string{}
	for _, s := range info.Settings {
		said[s.Key] = s.Value
	}
	revision := said["vcs.revision"]
	if revision == "" {
		return "a source without a revision"
	}
	return "revision " + revision + lists.If(said["vcs.modified"] == "true", ", changed since", "") + " of " + said["vcs.time"]
}

// printRules writes the catalog of checks, and the names of species.
func printRules(w io.Writer) {
	for _, rule := range report.Rules() {
		printRule(w, rule)
	}
	printSynonyms(w)
}

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
