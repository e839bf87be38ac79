package workbook

import (
	"fmt"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// decisionWidths are the columns of the decision page, where its texts break
// earlier the narrower it is.
func decisionWidths(narrowed float64) []float64 {
	widths := []float64{9, 19, 21, 13, 34, 17, 16, wayWidth, restWidth}
	for i := range widths {
		widths[i] *= narrowed
	}
	return widths
}

// The columns that hold paragraphs.
const (
	wayWidth  = 46
	restWidth = 36

	decisionColumns = 9
)

// decisionPage is one row an area on one printed page, in the columns that
// print it largest.
func decisionPage(b Book, t titles) page {
	best := decisionIn(b, t, 1)
	for _, narrowed := range []float64{0.9, 0.8, 0.7, 0.6} {
		if p := decisionIn(b, t, narrowed); p.scale() > best.scale() {
			best = p
		}
	}
	return best
}

func decisionIn(b Book, t titles, narrowed float64) page {
	rows := decisionHead(b)
	rows = append(rows, header("Area", "Name, size and day of laying", "Stack", "Verdict", "Governing limit and worst reading",
		"Tested", "Good until", "What stands in the way", "Conditions, settings and waivers"))
	head := len(rows)
	for i, d := range b.Decisions {
		rows = append(rows, decisionRow(b, d, t.areas[i], narrowed))
	}
	rows = append(rows, decisionFoot()...)
	return page{name: t.decision, widths: decisionWidths(narrowed), rows: numbered(rows), last: len(rows), head: head, single: true}
}

// decisionHead names the job and the record, two entries a line.
func decisionHead(b Book) []row {
	across := decisionColumns
	rows := []row{
		{cells: []cell{{value: "May the first board be laid here, yet?", look: look{size: large, bold: true}, across: across}}},
		{cells: []cell{{value: tally(b.Decisions), look: look{bold: true}, across: across}}},
	}
	j := b.Job
	for _, e := range [][4]string{
		{"Job", j.Name, "Record", b.Record},
		{"Site", j.Site, "SHA-256", b.SHA256},
		{"Prepared by", j.PreparedBy, "Acceptance", acceptance(j)},
		{"Company", j.Company, "Agreed by", agreed(j)},
		{"General contractor", j.GeneralContractor, "Made with", b.Tool},
	} {
		rows = append(rows, row{cells: []cell{
			{value: e[0], look: look{grey: true}, across: 2}, {value: orElse(e[1], "not recorded"), across: 3},
			{value: e[2], look: look{grey: true}}, {value: orElse(e[3], "not recorded"), across: 3},
		}})
	}
	return append(rows, row{})
}

func tally(all []report.Decision) string {
	n := 0
	for _, d := range all {
		if d.Verdict == evidence.Go {
			n++
		}
	}
	return fmt.Sprintf("%d of %s GO", n, evidence.Count(len(all), "area", "areas"))
}

func acceptance(j report.Job) string {
	if j.Guarded {
		return "guarded: the uncertainty of the instrument counts against every reading"
	}
	return "simple: readings are compared as they were read"
}

func agreed(j report.Job) string {
	s := orElse(j.AcceptanceAgreedBy, "nobody is named")
	if j.AcceptanceAgreedOn.Shown() {
		s += " on " + j.AcceptanceAgreedOn.Day.String()
	}
	return s
}

func decisionRow(b Book, d report.Decision, sheet string, narrowed float64) row {
	rest := "on sheet " + sheet
	id := cell{value: d.Area.ID, look: look{boxed: true, bold: true, link: true}, link: address(sheet, 1)}
	verdict := cell{value: d.Says(), look: look{tone: verdictTone(d), size: large}}
	way := stopping(d)
	if len(way) == 0 {
		way = []string{"nothing"}
	}
	return row{cells: []cell{
		id, text(strings.Join(named(d.Area), "\n")), text(strings.Join(stack(d.Area), "\n")), verdict,
		text(governs(d)), text(tested(d)), text(goodUntil(d)),
		text(fitted(way, wayWidth*narrowed, rest)),
		text(fitted(listed(provisos(b, d)), restWidth*narrowed, rest)),
	}}
}

func named(a report.Area) []string {
	lines := []string{orElse(a.Size.String(), "size not recorded"), "no day of laying recorded"}
	if a.LayOn.Shown() {
		lines[1] = "to be laid on " + a.LayOn.Written
	}
	if a.Name != "" {
		lines = append([]string{a.Name}, lines...)
	}
	return lines
}

func stack(a report.Area) []string {
	return []string{
		"covering: " + orElse(a.Covering, "none named"),
		"adhesive: " + orElse(a.Adhesive, "none named"),
		"membrane: " + orElse(a.Membrane, "none named"),
	}
}

// provisos are what a verdict rests on besides its findings.
func provisos(b Book, d report.Decision) []string {
	all := append([]string{}, d.Conditions...)
	all = append(all, changes(b.Job.Settings)...)
	return append(all, waivers(d)...)
}

func decisionFoot() []row {
	rows := []row{{}}
	for _, s := range []string{
		"A result speaks only for the places and times tested (ASTM F2170, published).",
		"GO: every deciding check is met or not needed, and at least one is met. NO-GO, over a limit: a deciding check is not met. NO-GO, not proven: evidence is missing or cannot be used. A waiver never changes a verdict.",
		"Each area has a sheet of its own with every check, its limit, its source and the rows of the record behind it.",
	} {
		rows = append(rows, row{cells: []cell{{value: s, across: decisionColumns}}})
	}
	return rows
}
