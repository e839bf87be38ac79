package outlook

import (
	"firstboard/report"
	"firstboard/report/plan"
)

// Advice is what is said under each of the decisions of a job.
func Advice(decisions []report.Decision) []report.Advice {
	all := make([]report.Advice, len(decisions))
	for i, d := range decisions {
		all[i].Outlook.Holds = Holds(d)
		p := plan.Of(d, all[i].Outlook)
		all[i].Missing, all[i].Next = p.Missing(), Next(p)
	}
	return all
}
