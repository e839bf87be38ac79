package said

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/workbook/names"
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

// Worst tells the worst reading of the finding that speaks for an area, and its
// cell.
func Worst(decision report.Decision, t names.Titles) string {
	f, ok := governing(decision)
	if !ok || f.Value == "" {
		return "none"
	}
	parts := []string{f.ID + " " + measured(f.Value, f.Unit)}
	if len(f.Evidence) > 0 {
		parts = append(parts, t.Place(f.Evidence[0]))
	}
	return strings.Join(parts, "\n")
}

// Limit tells the limit of the finding that speaks for an area, and whose it
// is.
func Limit(decision report.Decision) string {
	f, ok := governing(decision)
	if !ok || f.Limit == "" {
		return "none"
	}
	return measured(f.Limit, f.Unit) + "\n" + cmp.Or(f.Whose, "default")
}

func measured(number string, u evidence.Unit) string {
	return number + lists.If(number == "" || u == evidence.None || u == evidence.PH, "", " "+string(u))
}

// Acceptance is how uncertainty counts in a job, and who agreed to it.
func Acceptance(j report.Job) string {
	agreed := cmp.Or(j.AcceptanceAgreedBy, "nobody is named") +
		lists.If(j.AcceptanceAgreedOn.Shown(), " on "+j.AcceptanceAgreedOn.Day.String(), "")
	return lists.If(j.Guarded, "guarded (the instrument's uncertainty counts against a reading)",
		"simple (readings as they were read)") + ", agreed by " + agreed
}

// Stops is what is over, then what is missing, by the names of the checks.
func Stops(d report.Decision, sheet string) string {
	var over, lacking []string
	for _, f := range d.Findings {
		switch {
		case f.Blocks() && f.Outcome == evidence.NotMet:
			over = append(over, f.ID)
		case f.Blocks():
			lacking = append(lacking, f.ID)
		}
	}
	const most = 6
	var all []string
	for _, part := range []Labelled{{"Over: ", over}, {"Not proven: ", lacking}} {
		ids := part.Lines
		if n := len(ids); n > most {
			ids = append(slices.Clone(ids[:most]), fmt.Sprintf("%d more on sheet %s", n-most, sheet))
		}
		if len(ids) > 0 {
			all = append(all, part.Label+strings.Join(ids, ", "))
		}
	}
	return cmp.Or(strings.Join(all, "\n"), "nothing")
}
