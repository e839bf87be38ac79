package outlook

import (
	"firstboard/report"
	"firstboard/report/evidence"
)

// rules are the rules under which the verdict is another one.
func (h *holder) rules() []string {
	var on []string
	other := func(change func(*report.Job), called string) {
		if h.site.Again(report.Change{Job: change}).Whole() != h.verdict {
			on = append(on, called)
		}
	}
	called := "simple acceptance"
	if h.site.Job.Guarded {
		called = "guarded acceptance"
	}
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
	type group struct {
		kind kind
		lot  string
	}
	var order []group
	named := map[group][]string{}
	for _, m := range h.all {
		g := group{m.kind, m.lotName}
		if !h.turns[m.id] {
			continue
		}
		if named[g] == nil {
			order = append(order, g)
		}
		named[g] = append(named[g], m.name)
	}
	var all []string
	for _, g := range order {
		called, many := g.kind.words()
		if len(named[g]) > 1 {
			called = many
		}
		called += " " + evidence.List(named[g])
		if g.lot != "" {
			called += " of lot " + g.lot
		}
		all = append(all, called)
	}
	return all
}
