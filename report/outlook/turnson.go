package outlook

import (
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// rules are the rules under which the verdict is another one.
func (h *holder) rules() []string {
	var on []string
	other := func(change func(*report.Job), called string) {
		if h.site.Again(report.Change{Job: change}).Whole() != h.verdict {
			on = append(on, called)
		}
	}
	called := lists.If(h.site.Job.Guarded, "guarded acceptance", "simple acceptance")
	other(func(j *report.Job) { j.Guarded = !j.Guarded }, called)
	if len(h.site.Slab.Holes) > 0 {
		wait := h.site.Job.Settings.ProbeWait
		longer := otherWait(wait)
		other(func(j *report.Job) { j.Settings.ProbeWait = longer }, wait.String()+" probe wait")
	}
	return on
}

// otherWait is the wait of the edition that a job does not go by.
func otherWait(wait evidence.Reading) evidence.Reading {
	old := evidence.Typed("72", evidence.Hour) // ASTM F2170 before 2018
	if wait.Exact().Cmp(old.Exact()) < 0 {
		return old
	}
	return report.DefaultSettings().ProbeWait
}

// things are the things that the verdict turns on, those of a kind together.
func (h *holder) things() []string {
	turning := lists.Where(h.all, func(m measured) bool { return h.turns[m.id] })
	kindAndLot := func(m measured) id { return id{kind: m.kind, lot: m.lotName} }
	return lists.Each(lists.Groups(turning, kindAndLot), func(group []measured) string {
		one, many := group[0].kind.words()
		called := evidence.List(lists.Each(group, func(m measured) string { return m.name }))
		lot := group[0].lotName
		return lists.If(len(group) > 1, many, one) + " " + called + lists.If(lot == "", "", " of lot "+lot)
	})
}
