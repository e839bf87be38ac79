package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// headline is the verdict with its why.
func headline(d report.Decision) string {
	switch {
	case d.Verdict == evidence.Go:
		return string(d.Verdict)
	case allWaived(d):
		return string(d.Verdict) + ", laid under waiver"
	}
	return string(d.Verdict) + ", " + d.Why
}

func verdictTone(d report.Decision) tone {
	if d.Verdict == evidence.Go {
		return blue
	}
	return orange
}

// allWaived says whether somebody signed away every check that blocks.
func allWaived(d report.Decision) bool {
	waived := map[string]bool{}
	for _, w := range d.Waivers {
		waived[evidence.Key(w.Check)] = true
	}
	blocking := d.Blocking()
	for _, id := range blocking {
		if !waived[evidence.Key(id)] {
			return false
		}
	}
	return len(blocking) > 0
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
		all = append(all, fmt.Sprintf("%s is set to %s; the default is %s",
			c.Item, orElse(c.Value.String(), "nothing"), orElse(usual[c.Item], "5 F or 3 C, as the surface was read")))
	}
	return all
}

func goodUntil(d report.Decision) string {
	switch {
	case d.GoodUntil.Shown():
		return d.GoodUntil.Day.String()
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
