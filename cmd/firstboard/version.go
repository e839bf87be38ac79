package main

import (
	"crypto/sha256"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"

	"firstboard/report"
	"firstboard/report/lists"
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
