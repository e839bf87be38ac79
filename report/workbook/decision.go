package workbook

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/said"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// Columns of the decision page that others refer to.
const (
	verdictColumn  = 2
	decisionAcross = 10
)

// toldRow is the row that tells whether the record still stands as judged.
const toldRow = 2

// decisionPage is what a contractor files: a row an area, the conditions
// numbered once below, and lines to sign. Its letters are small already, and so
// it is printed as it is: what one page does not hold goes on the next, under the
// same header.
func (d *desk) decisionPage() writer.Page {
	rows := d.decisionHead()
	rows = append(rows, smaller(writer.Header("Area", "Verdict", "Over or missing", "What next, who, when",
		"Worst reading, cell",
		"Limit, whose", "Tested", "Good until", "Notes", "Signed")))
	head := len(rows)
	notes := d.notes()
	for i, decision := range d.book.Decisions {
		rows = append(rows, smaller(d.decisionRow(i, decision, notes)))
	}
	last := len(rows)
	areas := " of " + evidence.Count(len(d.book.Decisions), "area", "areas") + " GO"
	rows[0].Cells[1].Formula = fmt.Sprintf("COUNTIF(%s,%q)&%q", between(verdictColumn, head+1, last), evidence.Go, areas)
	told := &rows[toldRow-1].Cells[0]
	told.Formula, told.Value = d.told()
	rows = append(rows, d.decisionFoot(notes)...)
	return writer.Page{
		Name: d.titles.Decision, Widths: []float64{15.5, 9.5, 12.5, 29.9, 13.5, 8.5, 13.8, 7.6, 4.4, 7.2},
		Rows: writer.Numbered(rows), Last: len(rows), Head: head, Small: true,
		Tints: append(verdictTints(cellsOf(verdictColumn, head+1, last), fmt.Sprintf("$B%d", head+1)),
			writer.Tint{
				Cells: fmt.Sprintf("A%d", toldRow), Tone: style.Orange,
				Condition: fmt.Sprintf("$A$%d<>%s", toldRow, formula.Text(unchanged)),
			}),
	}
}

// told says whether the record still stands as it was judged, or where it is.
func (d *desk) told() (text, value string) {
	if d.filed {
		return "", "To sign and file. The record, and the figures as formulas over it, are in the decision workbook of the seal below."
	}
	return d.guard.told()
}

// smaller is a row in the small letters of the decision page.
func smaller(r writer.Row) writer.Row {
	for i := range r.Cells {
		if r.Cells[i].Look.Size == style.Normal {
			r.Cells[i].Look.Size = style.Small
		}
	}
	return r
}

// line is one small cell across the page.
func line(value any, l style.Look) writer.Row {
	return smaller(writer.Line(value, l, decisionAcross))
}

// decisionHead asks the question, and names the job and the record.
func (d *desk) decisionHead() []writer.Row {
	const title = 5
	asked := style.Look{Size: style.Large, Bold: true}
	b, j := d.book, d.book.Job
	return []writer.Row{
		{Cells: []writer.Cell{
			{Value: "Is this floor ready to install?", Look: asked, Across: title},
			{Value: report.Tally(b.Decisions), Look: asked, Across: decisionAcross - title},
		}},
		line(unchanged, style.Look{}),
		line(recorded("Job", j.Name, "Site", j.Site, "Prepared by", j.PreparedBy, "Company", j.Company,
			"General contractor", j.GeneralContractor), style.Look{}),
		line(recorded("Record", b.Record, "SHA-256", b.SHA256, "Acceptance", said.Acceptance(j)),
			style.Look{Gray: true}),
	}
}

// recorded is labels and what is recorded of each.
func recorded(labelled ...string) string {
	var all []string
	for pair := range slices.Chunk(labelled, 2) {
		all = append(all, pair[0]+": "+cmp.Or(pair[1], "not recorded"))
	}
	return strings.Join(all, ". ") + "."
}

func (d *desk) decisionRow(nth int, decision report.Decision, n notes) writer.Row {
	sheet := d.titles.Areas[nth]
	return writer.Row{Cells: []writer.Cell{
		writer.Text(said.Named(decision.Area)),
		{
			Value: decision.Says(), Formula: formula.Quoted(sheet) + "!" + formula.Fixed(1, verdictRow),
			Look: style.Look{Tone: verdictTone(decision)},
		},
		writer.Text(said.Stops(decision, sheet)), writer.Text(d.next(nth, decision)),
		writer.Text(said.Worst(decision, d.titles)), writer.Text(said.Limit(decision)),
		writer.Text(said.Tested(decision)),
		writer.Text(said.GoodUntil(decision)),
		writer.Text(strings.Join(lists.Each(n.areas[nth], strconv.Itoa), ", ")), writer.Text(said.Signers(decision)),
	}}
}

// next is who does what first and by when, and the earliest day; else what is
// missing first.
func (d *desk) next(nth int, decision report.Decision) string {
	switch a := d.book.advice(nth); {
	case len(a.Next.Acts) > 0:
		return a.Next.Short()
	case len(a.Missing) > 0:
		more := len(a.Missing) - 1
		return a.Missing[0].What + lists.If(more > 0, fmt.Sprintf(" (and %d more)", more), "")
	case decision.Verdict == evidence.Go:
		return "install"
	}
	return ""
}

// notes are the conditions, changed settings and waivers of all areas, each
// with one number however many areas it holds for.
type notes struct {
	all    []string
	number map[string]int
	areas  [][]int // their numbers, area by area
}

func (d *desk) notes() notes {
	n := notes{number: map[string]int{}}
	changed := said.Changes(d.book.Job.Settings)
	for _, decision := range d.book.Decisions {
		var of []int
		for _, s := range slices.Concat(decision.Conditions, changed, said.Waivers(decision)) {
			if n.number[s] == 0 {
				n.all = append(n.all, s)
				n.number[s] = len(n.all)
			}
			of = append(of, n.number[s])
		}
		slices.Sort(of)
		n.areas = append(n.areas, slices.Compact(of))
	}
	return n
}

func (d *desk) decisionFoot(n notes) []writer.Row {
	var rows []writer.Row
	if len(n.all) > 0 {
		rows = append(rows, line("Notes: conditions, changed settings and waivers", style.Look{Bold: true}))
	}
	for i, s := range n.all {
		rows = append(rows, line(fmt.Sprintf("%d  %s", i+1, s), style.Look{}))
	}
	whereToRead := lists.If(d.filed, "What each standing means: end of sheet "+d.titles.Limits,
		"What each sheet holds and each standing means: sheet "+d.titles.Checks) + "."
	rows = append(rows,
		line("GO: every deciding check is met or not needed. NO-GO, over a limit: one is not met. NO-GO, not proven: evidence is missing or unusable. "+
			"A waiver changes no verdict. A result speaks only for the places and times tested (ASTM F2170, published).",
			style.Look{Gray: true}),
		line(fmt.Sprintf("Seal %s. %s, catalog of %d checks. %s", d.book.Seal, d.book.Tool, len(d.book.Rules),
			whereToRead), style.Look{Gray: true}),
	)
	sign := writer.Row{Least: signTall}
	for _, c := range []struct {
		says   string
		across int
	}{{"Accepted for areas:", 3}, {"Name and role:", 2}, {"Signature:", 3}, {"Date:", 2}} {
		sign.Cells = append(sign.Cells, writer.Cell{
			Value: c.says, Look: style.Look{Boxed: true, Top: true}, Across: c.across,
		})
	}
	return append(rows, smaller(sign))
}

// signTall is the height of a line to sign on, in points.
const signTall = 26
