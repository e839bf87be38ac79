package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

func verdictTone(d report.Decision) tone {
	if d.Verdict == evidence.Go {
		return blue
	}
	return orange
}

// stopping are the reasons of the findings that stop the area.
func stopping(d report.Decision) []string {
	var reasons []string
	for _, f := range d.Findings {
		if f.Blocks() {
			reasons = append(reasons, fmt.Sprintf("%s (%s): %s", f.ID, f.Outcome, f.Reason))
		}
	}
	return reasons
}

// waivers say who signed what away, and what is wrong with that.
func waivers(d report.Decision) []string {
	var all []string
	for _, w := range d.Waivers {
		s := fmt.Sprintf("%s is waived by %s (%s)", w.Check, orElse(w.Name, "nobody named"), w.Role)
		all = append(all, strings.Join(append([]string{s}, w.Doubts...), "; "))
	}
	return all
}

// changes are the settings that differ from their defaults.
func changes(s report.Settings) []string {
	defaults := report.DefaultSettings()
	usual := map[string]string{}
	for _, item := range defaults.Items() {
		usual[item.Item] = item.Value.String()
	}
	var all []string
	for _, c := range s.Changed() {
		all = append(all, fmt.Sprintf("%s is set to %s; the default is %s", c.Item, c.Value, usual[c.Item]))
	}
	return all
}

func goodUntil(d report.Decision) string {
	switch {
	case d.GoodUntil.Shown():
		return d.GoodUntil.Day.String() + "; then read again: " + strings.Join(d.ReRead, ", ")
	case d.Verdict == evidence.Go:
		return "no day was worked out"
	}
	return "not while NO-GO"
}

// tested counts what was measured.
func tested(d report.Decision) string {
	holes := "no holes asked"
	if d.Holes.Asked > 0 {
		holes = evidence.Count(d.Holes.Asked, "hole", "holes") + " asked"
	}
	return fmt.Sprintf("%s, %d judged, %d discarded\n%s set aside",
		holes, d.Holes.Judged, d.Holes.Discarded, evidence.Count(d.SetAside, "board", "boards"))
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

func listed(paragraphs []string) []string {
	if len(paragraphs) == 0 {
		return []string{"none"}
	}
	return paragraphs
}

func andMore(n int, where string) string {
	return strings.TrimSpace("and " + strconv.Itoa(n) + " more " + where)
}
