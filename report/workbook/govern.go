package workbook

import (
	"fmt"
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
		evidence.Finding.Blocks,
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
	for _, id := range []string{"slab-rh", "wood-difference", "flooring-target", "subfloor-mc", "mver-rate", "slab-cm", "flooring-mc"} {
		i := slices.IndexFunc(all, func(f evidence.Finding) bool {
			return f.ID == id && f.Deciding && f.Outcome == evidence.Met
		})
		if i >= 0 {
			return all[i], true
		}
	}
	return evidence.Finding{}, false
}

// governs tells the governing limit and whose it is, and the worst reading
// and where.
func governs(d report.Decision, t titles) string {
	f, ok := governing(d)
	if !ok {
		return "none"
	}
	limit := f.ID + ": " + orElse(measured(f.Limit, f.Unit), "no limit")
	if f.Whose != "" {
		limit += ", the limit of " + f.Whose
	}
	s := []string{limit}
	if f.Cite.Source != "" {
		s = append(s, fmt.Sprintf("%s (%s)", f.Cite.Source, f.Cite.Standing))
	}
	if f.Value != "" {
		s = append(s, worst(f, t))
	}
	return strings.Join(s, "\n")
}

// worst tells the worst reading by the first clause of the reason, which
// names it, and by its place, which comes first.
func worst(f evidence.Finding, t titles) string {
	first, _, _ := strings.Cut(f.Reason, "; ")
	if !strings.Contains(first, f.Value) {
		first = measured(f.Value, f.Unit) + ": " + first
	}
	if len(f.Evidence) > 0 && f.Outcome != evidence.NotShown {
		first += " (" + t.place(f.Evidence[0]) + ")"
	}
	return "worst: " + first
}

func measured(number string, u evidence.Unit) string {
	if number == "" || u == evidence.None || u == evidence.PH {
		return number
	}
	return number + " " + string(u)
}
