package workbook

import (
	"fmt"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// verdict is an area's verdict as a formula over the rows of its findings: the
// outcomes in column C and what they count as in column D.
type verdict struct {
	d           report.Decision
	first, last int
}

const (
	overLimit   = string(evidence.NoGo) + ", " + evidence.OverLimit
	notProven   = string(evidence.NoGo) + ", " + evidence.NotProven
	underWaiver = string(evidence.NoGo) + ", installed under waiver"
)

// formula folds outcomes as the judge does: a waiver never changes a NO-GO.
func (v verdict) formula() string {
	lacking := v.deciding("not shown") + "+" + v.deciding("judge again")
	blocking := v.deciding("not met") + "+" + lacking
	no := fmt.Sprintf("IF(%s>0,%q,%q)", v.deciding("not met"), overLimit, notProven)
	if waived := v.waived(); len(waived) > 0 {
		no = fmt.Sprintf("IF(%s=%s,%q,%s)", strings.Join(waived, "+"), blocking, underWaiver, no)
	}
	return fmt.Sprintf("IF(%s=0,IF(%s>0,%q,%q),%s)", blocking, v.deciding("met"), evidence.Go, notProven, no)
}

// deciding counts the deciding findings of an outcome.
func (v verdict) deciding(outcome string) string {
	return fmt.Sprintf("COUNTIFS(%s,%q,%s,%q)", v.column("D"), "deciding", v.column("C"), outcome)
}

func (v verdict) column(name string) string {
	return fmt.Sprintf("$%s$%d:$%s$%d", name, v.first, name, v.last)
}

// waived are the blocking findings that somebody signed away, each 1 while it
// blocks.
func (v verdict) waived() []string {
	signed := map[string]bool{}
	for _, w := range v.d.Waivers {
		signed[w.Check] = true
	}
	var all []string
	for i, f := range v.d.Findings {
		if signed[f.ID] {
			at := fmt.Sprintf("$C$%d", v.first+i)
			all = append(all, fmt.Sprintf("IF(OR(%s=%q,%s=%q),0,1)", at, "met", at, "not needed"))
		}
	}
	return all
}

// asJudged and changed say whether a sheet still shows what was judged.
const (
	asJudged = "As firstboard judged the record."
	changed  = "CHANGED since firstboard judged the record: outcomes and verdict are recalculated, reasons are still those of the first judging. Run firstboard check on this workbook."
)

// standing says whether verdict and outcomes are those that were judged.
func (v verdict) standing() (formula, value string) {
	n := map[evidence.Outcome]int{}
	for _, f := range v.d.Findings {
		n[f.Outcome]++
	}
	same := fmt.Sprintf("AND($A$%d=%q", verdictRow, v.d.Says())
	for _, o := range []evidence.Outcome{evidence.Met, evidence.NotMet, evidence.NotShown} {
		same += fmt.Sprintf(",COUNTIF(%s,%q)=%d", v.column("C"), o, n[o])
	}
	return fmt.Sprintf("IF(%s),%q,%q)", same, asJudged, changed), asJudged
}

// tints color verdict and outcomes by what they give now.
func (v verdict) tints() []tint {
	outcomes := fmt.Sprintf("C%d:C%d", v.first, v.last)
	stops := fmt.Sprintf(`AND($D%d="deciding",OR($C%d="not met",$C%d="not shown",$C%d="judge again"))`, v.first, v.first, v.first, v.first)
	return append(verdictTints(fmt.Sprintf("A%d:D%d", verdictRow, verdictRow), fmt.Sprintf("$A$%d", verdictRow)),
		tint{outcomes, stops, look{tone: orange}}, tint{outcomes, "NOT(" + stops + ")", look{tone: white}})
}

// verdictTints are blue for a GO and orange for a NO-GO.
func verdictTints(cells, verdict string) []tint {
	return []tint{
		{cells, fmt.Sprintf("%s=%q", verdict, evidence.Go), look{tone: blue}},
		{cells, fmt.Sprintf("%s<>%q", verdict, evidence.Go), look{tone: orange}},
	}
}
