package plan_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/plan"
)

// forecast is one in which everything over a limit is dry within days.
func forecast(d report.Decision) ahead.Outlook {
	now := d.Site.Latest()
	ready := evidence.DayOf(now.Add(72 * time.Hour)).String()
	o := ahead.Outlook{Slab: ahead.Slab{Status: evidence.Losing, Ready: ready, From: ready, To: ready}}
	for _, lot := range d.Site.Wood.Lots() {
		o.Boards = append(o.Boards, ahead.Boards{Lot: lot.Name, Status: evidence.Losing, Ready: ready})
	}
	return o
}

// Whoever does what comes next, and finds everything in good order, has a GO on
// the day that was named.
func TestDoingWhatComesNextGivesGO(t *testing.T) {
	t.Parallel()
	from := bases(t)
	told, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		j := lacking(t, from)
		for i, d := range report.Judge(j) {
			all++
			p := plan.Of(d, forecast(d))
			if !p.Earliest.Shown() {
				continue
			}
			told++
			after := done(j, p)
			if on := &after.Areas[i].InstallOn; !on.Shown() {
				*on = dated(p.Earliest.Day)
			}
			then := report.Judge(after)[i]
			if then.Verdict == evidence.Go {
				continue
			}
			for _, a := range p.Acts {
				t.Logf("%s (%s, %s to %s)", a.Order(), a.Who, a.Begins.Format("01-02 15:04"), a.Ends.Format("01-02 15:04"))
			}
			for _, f := range d.Findings {
				if f.Blocks() {
					t.Logf("before: %s %s: %s", f.ID, f.Outcome, f.Reason)
				}
			}
			for _, f := range then.Findings {
				if f.Blocks() {
					t.Errorf("%s %s: %s", f.ID, f.Outcome, f.Reason)
				}
			}
			t.FailNow()
		}
	})
	if told*2 < all {
		t.Errorf("of %d areas only %d were told when", all, told)
	}
}
