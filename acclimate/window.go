package acclimate

import (
	"fmt"
	"slices"
	"sort"
	"time"

	"firstboard/report/evidence"
)

// window is a stretch of time over which the air is judged against bounds.
// covered says whether its start must be covered too. An empty bound is not
// asked for.
type window struct {
	from, to   time.Time
	covered    bool
	temp, rh   evidence.Limit
	acceptance evidence.Acceptance
	asRead     bool // without regard to the instruments' uncertainty
}

// judge answers whether the air was in range over a window: instruments taken
// together for coverage and apart for range.
func (r Room) judge(w window, more ...evidence.Item) evidence.Finding {
	sum := &summary{gauges: r.gauges(w), rows: map[*gauge]*extremes{}}
	before, since := time.Time{}, w.from
	if a := r.Air.before(w.from); a != nil {
		before, since = a.ReadAt.First, a.ReadAt.First
	}
	all := meters(r.Air.between(since.Add(-apart-2*r.excursion()), w.to.Add(apart)), sum.gauges)
	var nameless *meter
	for _, m := range all {
		m.mayBegin(w.acceptance.Guarded)
		if m.key == "" {
			nameless = m
		}
	}
	for _, m := range all {
		r.judgeMeter(m, sum, w, before, nameless)
	}
	items := slices.Concat(r.uncovered(w), more, sum.items())
	f := evidence.Weigh(items, w.acceptance, "no air reading")
	f.Worked = evidence.Worked{} // a window of a log has no form as figures of cells
	f.Reason += fmt.Sprintf("; judged from %s to %s", clock(w.from), clock(w.to)) + sum.says(r.Excursion)
	if sum.excused > 0 {
		f.Evidence = append(f.Evidence, sum.worst.row.Place)
	}
	return f
}

func clock(t time.Time) string { return t.Format("2006-01-02 15:04") }

func (r Room) excursion() time.Duration { return evidence.Duration(r.Excursion.Exact()) }

// judgeMeter adds one instrument's rows in the window, and those read at the
// last time before it: all but those of runs that are excused.
func (r Room) judgeMeter(m *meter, sum *summary, w window, before time.Time, nameless *meter) {
	n := sort.Search(len(m.readings), func(i int) bool { return m.at(i).After(w.to) })
	counts := func(i int) bool { return !m.at(i).Before(w.from) || m.at(i).Equal(before) }
	judged := func(first, end int) {
		for i := first; i < end; i++ {
			if counts(i) {
				sum.judge(m.between(i, i+1)...)
			}
		}
	}
	next, longest := 0, r.excursion()
	for _, x := range m.runs(n) {
		if counts(x.end-1) && m.excused(x, n, longest, nameless) {
			sum.excuse(m.between(x.first, x.end)...)
			judged(next, x.first)
			next = x.end
		}
	}
	judged(next, n)
}

// uncovered are the stretches of a window without a reading, and the rows
// without a time, as unusable values.
func (r Room) uncovered(w window) []evidence.Item {
	var items []evidence.Item
	add := func(format string, args ...any) {
		items = append(items, evidence.Item{Name: "the air log", Limit: w.temp, Lack: fmt.Sprintf(format, args...)})
	}
	for _, a := range r.Air.Untimed() {
		items = append(items, evidence.Item{Name: "an air row", Limit: w.temp, Lack: evidence.NoTime, Place: a.Place})
	}
	rows, gap := r.behind(w), evidence.Duration(r.Gap.Exact())
	if w.covered && r.Air.before(w.from) == nil {
		add("no reading at or before %s, where the window begins", clock(w.from))
	}
	for i := 1; i < len(rows); i++ {
		if gapBefore(rows, i) > gap {
			add("no reading from %s to %s, more than %s h", clock(rows[i-1].ReadAt.First), clock(rows[i].ReadAt.First),
				r.Gap.Written)
		}
	}
	if last := tail(rows); last != nil && w.to.Sub(last.ReadAt.First) > gap {
		add("no reading in the %s h before %s, where the window ends", r.Gap.Written, clock(w.to))
	}
	return items
}

// behind are the rows of a window in order of time, from the last one at or
// before its start where that must be covered.
func (r Room) behind(w window) []*Air {
	from := w.from
	if a := r.Air.before(w.from); w.covered && a != nil {
		from = a.ReadAt.First
	}
	return r.Air.between(from, w.to)
}

// gapBefore is the time from the row before to the i-th.
func gapBefore(rows []*Air, i int) time.Duration {
	return rows[i].ReadAt.First.Sub(rows[i-1].ReadAt.First)
}
