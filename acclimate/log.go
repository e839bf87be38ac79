package acclimate

import (
	"slices"
	"sort"
	"time"

	"firstboard/report/evidence"
)

// Log is the air log of a job: put in order of time once, its rows shared by
// all areas. It points into the rows it was made of and never changes them.
type Log struct {
	timed   map[string][]*Air // by the key of their area, "" for the whole site
	untimed map[string][]*Air
}

// NewLog puts the air rows of a job in order.
func NewLog(rows []Air) Log {
	l := Log{timed: map[string][]*Air{}, untimed: map[string][]*Air{}}
	keys := map[string]string{}
	for i := range rows {
		a := &rows[i]
		key, known := keys[a.Area]
		if !known {
			key = evidence.Key(a.Area)
			keys[a.Area] = key
		}
		if a.ReadAt.Shown() {
			l.timed[key] = append(l.timed[key], a)
		} else {
			l.untimed[key] = append(l.untimed[key], a)
		}
	}
	for _, rows := range l.timed {
		if !slices.IsSortedFunc(rows, earlier) {
			slices.SortStableFunc(rows, earlier)
		}
	}
	return l
}

func earlier(a, b *Air) int { return a.ReadAt.First.Compare(b.ReadAt.First) }

// AirRows are the air rows of one area and of the whole site up to the end of
// a day. They share the rows of the log.
type AirRows struct {
	site, own []*Air // in order of time
	untimed   []*Air
	after     int
}

// Of are the rows of an area up to the end of a day, or all of them where the
// day is blank. A row without a time may be of any day.
func (l Log) Of(area string, last evidence.Date) AirRows {
	rows := AirRows{site: l.timed[""], untimed: l.untimed[""]}
	if key := evidence.Key(area); key != "" {
		rows.own, rows.untimed = l.timed[key], slices.Concat(l.untimed[""], l.untimed[key])
	}
	if last.Shown() {
		all := len(rows.site) + len(rows.own)
		rows.site, rows.own = upTo(rows.site, last.Day), upTo(rows.own, last.Day)
		rows.after = all - len(rows.site) - len(rows.own)
	}
	return rows
}

func upTo(rows []*Air, day evidence.Day) []*Air {
	return rows[:sort.Search(len(rows), func(i int) bool { return rows[i].ReadAt.Day() > day })]
}

// Len is how many rows there are, those without a time included.
func (r AirRows) Len() int { return len(r.site) + len(r.own) + len(r.untimed) }

// After is how many rows were read after the last day.
func (r AirRows) After() int { return r.after }

// Untimed are the rows without a time.
func (r AirRows) Untimed() []*Air { return r.untimed }

// Timed are the rows with a time, in its order.
func (r AirRows) Timed() []*Air { return merged(r.site, r.own) }

// States are the air in numbers, one an hour, on an axis of days since 1970 in
// UTC: rows without a time, a temperature or a humidity are left out.
func (r AirRows) States() []evidence.AirState {
	const hour = 3600
	var all []evidence.AirState
	last := int64(-1)
	for _, a := range r.Timed() {
		at := a.ReadAt.First.Unix()
		if at/hour == last {
			continue
		}
		rh := a.Humidity()
		if !a.Temp.Shown() || !rh.Shown() {
			continue
		}
		last = at / hour
		tempC := a.Temp.In(evidence.Celsius).Float()
		all = append(all, evidence.AirState{Day: float64(at) / (24 * hour), TempC: tempC, RHPct: rh.Exact().Float()})
	}
	return all
}

// Earliest is the first row with a time, nil where there is none.
func (r AirRows) Earliest() *Air {
	return choose(head(r.site), head(r.own), func(a, b *Air) bool { return b.ReadAt.First.Before(a.ReadAt.First) })
}

// Latest is the last row with a time, nil where there is none.
func (r AirRows) Latest() *Air { return choose(tail(r.site), tail(r.own), later) }

func later(a, b *Air) bool { return b.ReadAt.First.After(a.ReadAt.First) }

// choose is b where there is no a, or where b is better.
func choose(a, b *Air, better func(a, b *Air) bool) *Air {
	if a == nil || b != nil && better(a, b) {
		return b
	}
	return a
}

func head(rows []*Air) *Air {
	if len(rows) == 0 {
		return nil
	}
	return rows[0]
}

func tail(rows []*Air) *Air {
	if len(rows) == 0 {
		return nil
	}
	return rows[len(rows)-1]
}

// between are the rows from one time to another, both included, in order.
func (r AirRows) between(from, to time.Time) []*Air {
	return merged(between(r.site, from, to), between(r.own, from, to))
}

func between(rows []*Air, from, to time.Time) []*Air {
	first, end := since(rows, from), after(rows, to)
	return rows[first:max(first, end)]
}

// since is the place of the first row at a time or later.
func since(rows []*Air, t time.Time) int {
	return sort.Search(len(rows), func(i int) bool { return !rows[i].ReadAt.First.Before(t) })
}

// after is the place of the first row later than a time.
func after(rows []*Air, t time.Time) int {
	return sort.Search(len(rows), func(i int) bool { return rows[i].ReadAt.First.After(t) })
}

// merged joins two lists in order of time, without copying where one is empty.
func merged(a, b []*Air) []*Air {
	if len(b) == 0 {
		return a
	}
	if len(a) == 0 {
		return b
	}
	all := make([]*Air, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if later(b[0], a[0]) {
			all, b = append(all, b[0]), b[1:]
		} else {
			all, a = append(all, a[0]), a[1:]
		}
	}
	return append(append(all, a...), b...)
}

// before is the last row at or before a time, nil where there is none.
func (r AirRows) before(t time.Time) *Air {
	upTo := func(rows []*Air) *Air { return tail(rows[:after(rows, t)]) }
	return choose(upTo(r.site), upTo(r.own), later)
}

// nearest are the rows nearest to a time, at most so far from it.
func (r AirRows) nearest(t time.Time, most time.Duration) []*Air {
	best := most
	for _, rows := range [][]*Air{r.site, r.own} {
		i := since(rows, t)
		for _, a := range []*Air{tail(rows[:i]), head(rows[i:])} {
			if a != nil {
				best = min(best, a.ReadAt.First.Sub(t).Abs())
			}
		}
	}
	return r.between(t.Add(-best), t.Add(best)) // none is nearer than the nearest
}
