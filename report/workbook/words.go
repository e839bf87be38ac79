package workbook

import (
	"fmt"
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

// stopping are the findings that stop the area, broken limits first.
func stopping(d report.Decision) []evidence.Finding {
	var broken, lacking []evidence.Finding
	for _, f := range d.Findings {
		switch {
		case f.Blocks() && f.Outcome == evidence.NotMet:
			broken = append(broken, f)
		case f.Blocks():
			lacking = append(lacking, f)
		}
	}
	return append(broken, lacking...)
}

// waivers say who signed what away, and what is wrong with that.
func waivers(d report.Decision) []string {
	var all []string
	for _, w := range d.Waivers {
		all = append(all, w.Says())
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
		return strings.Join(append([]string{d.GoodUntil.Day.String()}, again(d)...), "; ")
	case d.Verdict == evidence.Go:
		return "no day was worked out"
	}
	return "not yet GO"
}

func again(d report.Decision) []string {
	if len(d.ReRead) == 0 {
		return nil
	}
	return []string{"then read again: " + strings.Join(d.ReRead, ", ")}
}

// tested counts what was measured.
func tested(d report.Decision) string {
	h := d.Holes
	holes := evidence.Count(h.Asked, "hole", "holes") + " asked"
	if h.Asked == 0 {
		holes = "no holes asked"
	}
	if h != (report.HoleCount{}) {
		holes += fmt.Sprintf(", %d judged, %d discarded", h.Judged, h.Discarded)
	}
	boards := "no boards set aside"
	if d.SetAside > 0 {
		boards = evidence.Count(d.SetAside, "board", "boards") + " set aside"
	}
	return holes + "\n" + boards
}

func named(a report.Area) []string {
	lines := []string{orElse(a.Size.String(), "size not recorded"), "no day of installing recorded"}
	if a.InstallOn.Shown() {
		lines[1] = "to be installed on " + a.InstallOn.Written
	}
	if a.Name != "" {
		lines = append([]string{a.Name}, lines...)
	}
	return lines
}

func stack(a report.Area) []string {
	return []string{
		"flooring: " + orElse(a.Flooring, "none named"),
		"adhesive: " + orElse(a.Adhesive, "none named"),
		"membrane: " + orElse(a.Membrane, "none named"),
	}
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
