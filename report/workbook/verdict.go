package workbook

import (
	"fmt"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// verdict is what an area's sheet says while nobody changes the record: the
// verdict that was judged, as long as every table stands as it did and as many
// deciding findings are met as were; what is not needed hangs on no figure. Anything else asks to be
// judged again; a NO-GO never turns to GO.
func (d *desk) verdict(decision report.Decision, first, last int) string {
	isGood := func(f evidence.Finding) bool { return f.Deciding && f.Outcome == evidence.Met }
	met := fmt.Sprintf("COUNTIFS(%s,%q,%s,%q)", between(countsColumn, first, last), "deciding",
		between(outcomeColumn, first, last), evidence.Met)
	stands := fmt.Sprintf("%s,%s=%d", d.guard.same(), met, len(lists.Where(decision.Findings, isGood)))
	return fmt.Sprintf("IF(IFERROR(AND(%s),0),%q,%q)", stands, decision.Says(), changed)
}

func between(column, first, last int) string {
	return formula.Fixed(column, first) + ":" + formula.Fixed(column, last)
}

// cellsOf are cells of a column, one alone by its own name.
func cellsOf(column, first, last int) string {
	return formula.Name(column, first) + lists.If(first == last, "", ":"+formula.Name(column, last))
}

// areaTints color verdict and outcomes by what they give now.
func areaTints(first, last int) []writer.Tint {
	outcome, counts := grid.Letters(outcomeColumn), grid.Letters(countsColumn)
	cells := cellsOf(outcomeColumn, first, last)
	at := fmt.Sprintf("$%s%d", outcome, first)
	stops := fmt.Sprintf(`AND($%s%d="deciding",%s<>"met")`, counts, first, at)
	return append(verdictTints(fmt.Sprintf("A%d:C%d", verdictRow, verdictRow), fmt.Sprintf("$A$%d", verdictRow)),
		writer.Tint{Cells: cells, Condition: stops, Tone: style.Orange})
}

// verdictTints are blue for a GO and orange for anything else.
func verdictTints(cells, verdict string) []writer.Tint {
	return []writer.Tint{
		{Cells: cells, Condition: fmt.Sprintf("%s=%q", verdict, evidence.Go), Tone: style.Blue},
		{Cells: cells, Condition: fmt.Sprintf("%s<>%q", verdict, evidence.Go), Tone: style.Orange},
	}
}

func verdictTone(d report.Decision) style.Tone {
	return lists.If(d.Verdict == evidence.Go, style.Blue, style.Orange)
}
