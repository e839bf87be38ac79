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
	widths := []float64{idWidth, 19, 21, 13, 34, 17, 16, wayWidth, restWidth}
	for i := range widths {
		widths[i] *= narrowed
	}
	return widths
}

// Columns that their texts are fitted to.
const (
	idWidth   = 9
	wayWidth  = 46
	restWidth = 36

	decisionColumns = 9
)

// mostLines are what the tallest row of a spreadsheet shows of a cell.
const mostLines = 28

// toldRow is the row that tells whether the record still stands as judged.
const toldRow = 3

// decisionTable is the table of the decision page, its columns narrowed by a
// factor and its paragraphs kept to so many lines.
type decisionTable struct {
	book     Book
	titles   titles
	guard    guard
	narrowed float64
	most     int
}

// decisionPage is one row an area on one printed page. Where all that is to be
// said would print too small, the areas' own sheets say the rest of it; where
// the areas are too many even so, it runs on over several pages.
func (d *desk) decisionPage() page {
	const readable, smallest = 0.6, 0.4
	var p page
	for _, most := range []int{mostLines, 14, 8, 5} {
		if p = d.largest(most); p.scale() >= readable {
			return p
		}
	}
	if p.scale() < smallest {
		p = decisionTable{d.book, d.titles, d.guard, 1, mostLines}.page()
		p.single = false
	}
	return p
}

// largest is the page in the columns that print it largest.
func (d *desk) largest(most int) page {
	best := decisionTable{d.book, d.titles, d.guard, 1, most}.page()
	for _, narrowed := range []float64{0.9, 0.8, 0.7, 0.6, 1.2, 1.4} {
		if p := (decisionTable{d.book, d.titles, d.guard, narrowed, most}).page(); p.scale() > best.scale() {
			best = p
		}
	}
	return best
}

func (t decisionTable) page() page {
	rows := decisionHead(t.book)
	rows = append(rows, header("Area", "Name, size and day of installing", "Stack", "Verdict", "Governing limit and worst reading",
		"Tested", "Good until", "What stands in the way", "Conditions, settings and waivers"))
	head := len(rows)
	for i, d := range t.book.Decisions {
		rows = append(rows, t.row(d, t.titles.areas[i]))
	}
	last := len(rows)
	rows = append(rows, decisionFoot()...)
	rows[1].cells[0].formula = t.tally(head+1, last)
	rows[toldRow-1].cells[0].formula, rows[toldRow-1].cells[0].value = t.guard.told()
	return page{
		name: t.titles.decision, widths: decisionWidths(t.narrowed),
		rows: numbered(rows), last: len(rows), head: head, single: true,
		tints: verdictTints(fmt.Sprintf("D%d:D%d", head+1, last), fmt.Sprintf("$D%d", head+1)),
	}
}

// decisionHead names the job and the record, two entries a line.
func decisionHead(b Book) []row {
	across := decisionColumns
	rows := []row{
		{cells: []cell{{value: "Is this floor ready to install?", look: look{size: large, bold: true}, across: across}}},
		{cells: []cell{
			{value: report.Tally(b.Decisions), look: look{bold: true}, across: across},
		}},
		{cells: []cell{{look: look{gray: true}, across: across}}},
	}
	j := b.Job
	for _, e := range [][4]string{
		{"Job", j.Name, "Record", b.Record},
		{"Site", j.Site, "SHA-256", b.SHA256},
		{"Prepared by", j.PreparedBy, "Acceptance", acceptance(j)},
		{"Company", j.Company, "Agreed by", agreed(j)},
		{"General contractor", j.GeneralContractor, "Made with", b.Tool},
		{"Catalog", fmt.Sprintf("%d checks, version %.16s", len(b.Catalog), b.Seal.Catalog), "Seal", b.Seal.String()},
	} {
		rows = append(rows, row{cells: []cell{
			{value: e[0], look: look{gray: true}, across: 2},
			{value: orElse(e[1], "not recorded"), across: 3},
			{value: e[2], look: look{gray: true}},
			{value: orElse(e[3], "not recorded"), across: 3},
		}})
	}
	return append(rows, row{})
}

// tally counts the areas that are GO by their rows on the page.
func (t decisionTable) tally(first, last int) string {
	areas := evidence.Count(len(t.book.Decisions), "area", "areas")
	return fmt.Sprintf("COUNTIF($D$%d:$D$%d,%q)&%q", first, last, evidence.Go, " of "+areas+" GO")
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

func (t decisionTable) row(d report.Decision, sheet string) row {
	id := cell{value: d.Area.ID, look: look{boxed: true, bold: true}}
	return row{cells: []cell{
		id.leading(address(sheet, 1), idWidth*t.narrowed),
		text(strings.Join(named(d.Area), "\n")),
		text(strings.Join(stack(d.Area), "\n")),
		{value: d.Says(), formula: quoted(sheet) + fmt.Sprintf("!$A$%d", verdictRow), look: look{tone: verdictTone(d), size: large}},
		text(governs(d, t.titles)), text(tested(d)), text(goodUntil(d)),
		t.inTheWay(d, sheet), t.provisos(d, sheet),
	}}
}

// inTheWay are the reasons of what stops the area, the last by their checks'
// names alone where there are too many.
func (t decisionTable) inTheWay(d report.Decision, sheet string) cell {
	var reasons, ids []string
	for _, f := range stopping(d) {
		reasons = append(reasons, fmt.Sprintf("%s (%s): %s", f.ID, f.Outcome, f.Reason))
		ids = append(ids, f.ID)
	}
	if len(reasons) == 0 {
		return text("nothing")
	}
	return text(fitted(reasons, wayWidth*t.narrowed, t.most, func(from int) string {
		return "and, on sheet " + sheet + ": " + strings.Join(ids[from:], ", ")
	}))
}

// provisos are what a verdict rests on besides its findings. They are left to
// the area's sheet only where no row of a spreadsheet could hold them.
func (t decisionTable) provisos(d report.Decision, sheet string) cell {
	all := append([]string{}, d.Conditions...)
	all = append(all, changes(t.book.Job.Settings)...)
	all = append(all, waivers(d)...)
	return text(fitted(listed(all), restWidth*t.narrowed, mostLines, func(from int) string {
		return fmt.Sprintf("and %d more on sheet %s", len(all)-from, sheet)
	}))
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
