package main

import (
	"fmt"
	"io"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// explain prints how one finding came about.
func (j judged) explain(w io.Writer, asked string) error {
	at := strings.LastIndex(asked, ":")
	if at < 0 {
		return fmt.Errorf("check: --explain %s: write an area and a check with a colon between them, such as %s:slab-rh", asked,
			j.decisions[0].Area.ID)
	}
	area, check := asked[:at], asked[at+1:]
	for _, d := range j.decisions {
		if evidence.Same(d.Area.ID, area) {
			return explainFinding(w, d, check)
		}
	}
	ids := lists.Each(j.decisions, func(d report.Decision) string { return d.Area.ID })
	return fmt.Errorf("check: --explain: no area %q; %s", area, meant(area, ids))
}

func explainFinding(w io.Writer, d report.Decision, check string) error {
	for _, f := range d.Findings {
		if !evidence.Same(f.ID, check) {
			continue
		}
		fmt.Fprintln(w, d.Area.ID+":"+f.ID)
		for _, line := range f.Explain() {
			indent := line[:len(line)-len(strings.TrimLeft(line, " "))]
			say(w, line, "    "+indent)
		}
		return nil
	}
	return fmt.Errorf("check: --explain: no check %q; %s", check, meant(check, report.Order()))
}
