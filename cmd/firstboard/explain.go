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
	d, known := lists.First(j.decisions, func(d report.Decision) bool { return evidence.Same(d.Area.ID, area) })
	if !known {
		ids := lists.Each(j.decisions, func(d report.Decision) string { return d.Area.ID })
		return fmt.Errorf("check: --explain: no area %q; %s", area, meant(area, ids))
	}
	f, known := lists.First(d.Findings, func(f evidence.Finding) bool { return evidence.Same(f.ID, check) })
	if !known {
		return fmt.Errorf("check: --explain: no check %q; %s", check, meant(check, report.Order()))
	}
	fmt.Fprintln(w, d.Area.ID+":"+f.ID)
	for _, line := range f.Explain() {
		indent := line[:len(line)-len(strings.TrimLeft(line, " "))]
		say(w, line, "    "+indent)
	}
	return nil
}
