package live

import (
	"time"

	"firstboard/report/workbook/formula"
)

// clockChanges are the changes of clocks around the record's times: what was
// put forward (or back) from which clock time on. A clock time that came twice
// is taken as its first or as its last coming.
type clockChanges struct{ first, last, steps formula.List }

// clockChanges lists the changes from a year before the day of laying to a year
// after it, where the record names a time zone.
func (w *work) clockChanges() clockChanges {
	day := w.d.Area.LayOn
	if w.job.ZoneName == "" || !day.Shown() {
		return clockChanges{}
	}
	w.heading("Changes of clocks, for times that passed between two clock times")
	w.header("Clocks changed on", "", "From, first coming", "From, last coming", "Hours put forward")
	from := w.next()
	at := day.Day.Begins(w.job.Zone).AddDate(-1, 0, 0)
	end := at.AddDate(2, 0, 0)
	for {
		_, next := at.ZoneBounds()
		if next.IsZero() || next.After(end) {
			break
		}
		w.change(next)
		at = next
	}
	if to := w.next() - 1; to >= from {
		return clockChanges{w.column(2, from, to), w.column(3, from, to), w.column(4, from, to)}
	}
	return clockChanges{}
}

func (w *work) change(at time.Time) {
	_, before := at.Add(-time.Second).Zone()
	_, after := at.Zone()
	old := at.In(time.FixedZone("", before))
	first, last := serial(old), serial(at)
	if first < last {
		first, last = last, first
	}
	w.add(label(old.Format(time.DateOnly)), label(""), formed(num(first), Minute), formed(num(last), Minute),
		plain(num(float64(after-before)/3600)))
}

// true is a clock time without the changes of clocks, by its first or its last
// coming.
func (w *work) first(t formula.Expr) formula.Expr { return w.changes.of(t, w.changes.first) }
func (w *work) last(t formula.Expr) formula.Expr  { return w.changes.of(t, w.changes.last) }

func (c clockChanges) of(t formula.Expr, limits formula.List) formula.Expr {
	if limits.Empty() {
		return t
	}
	return known(t.Minus(formula.Steps(t, limits, c.steps).Over(num(24))), t)
}
