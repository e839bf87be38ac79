package workbook

import (
	"cmp"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// governing is the finding that speaks for an area: the first that breaks a
// limit, else the first that stops it, else the main one that was met.
func governing(d report.Decision) (evidence.Finding, bool) {
	for _, speaks := range []func(evidence.Finding) bool{
		func(f evidence.Finding) bool { return f.Blocks() && f.Outcome == evidence.NotMet },
		func(f evidence.Finding) bool { return f.Blocks() && f.Value != "" },
	} {
		if i := slices.IndexFunc(d.Findings, speaks); i >= 0 {
			return d.Findings[i], true
		}
	}
	return mainFinding(d.Findings)
}

// mainFinding is the met finding that matters most, by the order in which an
// installer would ask.
func mainFinding(all []evidence.Finding) (evidence.Finding, bool) {
	for _, id := range []string{
		"slab-rh", "wood-difference", "flooring-target", "subfloor-mc", "mver-rate", "slab-cm",
		"flooring-mc",
	} {
		i := slices.IndexFunc(all, func(f evidence.Finding) bool {
			return f.ID == id && f.Deciding && f.Outcome == evidence.Met
		})
		if i >= 0 {
			return all[i], true
		}
	}
	return evidence.Finding{}, false
}

// worst tells the worst reading of the finding that speaks for an area, and its
// cell.
func (d *desk) worst(decision report.Decision) string {
	f, ok := governing(decision)
	if !ok || f.Value == "" {
		return "none"
	}
	parts := []string{f.ID + " " + measured(f.Value, f.Unit)}
	if len(f.Evidence) > 0 {
		parts = append(parts, d.titles.Place(f.Evidence[0]))
	}
	return strings.Join(parts, "\n")
}

// limitOf tells the limit of the finding that speaks for an area, and whose it
// is.
func limitOf(decision report.Decision) string {
	f, ok := governing(decision)
	if !ok || f.Limit == "" {
		return "none"
	}
	return measured(f.Limit, f.Unit) + "\n" + cmp.Or(f.Whose, "default")
}

func measured(number string, u evidence.Unit) string {
	if number == "" || u == evidence.None || u == evidence.PH {
		return number
	}
	return number + " " + string(u)
}
