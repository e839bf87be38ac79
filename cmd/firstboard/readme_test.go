package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"firstboard/report"
)

// The README's table of checks is the catalog, line by line.
func TestREADMEListsTheCatalog(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	var table strings.Builder
	table.WriteString("| check | asks | unless stated otherwise | source (standing) |\n| --- | --- | --- | --- |\n")
	for _, rule := range report.Rules() {
		id := "`" + rule.ID + "`"
		if !rule.Deciding {
			id += " (advice)"
		}
		fmt.Fprintf(&table, "| %s | %s | %s | %s (%s) |\n", id, rule.Asks, rule.Default, rule.Cite.Source, rule.Cite.Standing)
	}
	if !strings.Contains(string(readme), table.String()) {
		t.Errorf("README.md lacks this table, as it stands:\n%s", table.String())
	}
}
