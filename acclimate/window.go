package acclimate

import (
	"fmt"
	"slices"
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

// span is the longest distance in time between two runs that spoil each other.
const span = 24 * time.Hour

// judge answers whether the air was in range over a window: instruments taken
// together for coverage and apart for range.
func (r Room) judge(w window) evidence.Finding {
	items := r.uncovered(w)
	before := r.lastBefore(w.from)
	since := w.from
	if before.Before(since) && !before.IsZero() {
		since = before
	}
	excused := 0
	begins := r.begins(w, since)
	for _, readings := range byInstrument(r.Air, since.Add(-2*r.excursion()), w.to) {
		judged, n := r.judgeInstrument(readings, w, before, begins)
		items, excused = append(items, judged...), excused+n
	}
	f := evidence.Weigh(items, w.acceptance, "no air reading")
	f.Evidence = brief(f.Evidence)
	f.Reason += fmt.Sprintf("; judged from %s to %s", clock(w.from), clock(w.to))
	if excused > 0 {
		f.Reason += fmt.Sprintf(", %s of at most %s h excused", evidence.Count(excused, "excursion", "excursions"), r.Excursion.Written)
	}
	return f
}

func clock(t time.Time) string { return t.Format("2006-01-02 15:04") }

// brief keeps the first few places of a long log: the worst comes first.
func brief(places []evidence.Place) []evidence.Place {
	return places[:min(len(places), 8)]
}

func (r Room) excursion() time.Duration { return evidence.Duration(r.Excursion.Exact()) }

// judgeInstrument gives the judged values of one instrument's rows: those in
// range, those of runs that are not excused, and how many runs are.
func (r Room) judgeInstrument(readings []reading, w window, before time.Time, begins []map[string][]time.Time) (items []evidence.Item, excused int) {
	isOut := func(x reading) bool { return !r.inRange(x, w) }
	judged := func(rows []reading) {
		for _, x := range rows {
			if !x.at.Before(w.from) || x.at.Equal(before) {
				items = append(items, r.items(x, w)...)
			}
		}
	}
	next := 0
	for _, run := range runs(readings, isOut) {
		judged(readings[next:run[0]])
		next = run[1]
		last := readings[run[1]-1].at
		switch reaches := !last.Before(w.from) || last.Equal(before); {
		case reaches && r.excused(readings, run, begins):
			excused++
		case reaches:
			judged(readings[run[0]:run[1]])
		}
	}
	judged(readings[next:])
	return items, excused
}

// runs are the stretches of rows out of range, from the first of them up to
// the first that is not.
func runs(readings []reading, isOut func(reading) bool) [][2]int {
	var all [][2]int
	for i := 0; i < len(readings); i++ {
		if !isOut(readings[i]) {
			continue
		}
		first := i
		for i < len(readings) && isOut(readings[i]) {
			i++
		}
		all = append(all, [2]int{first, i})
	}
	return all
}

// short says whether a run lies between two rows in range at most the excursion
// apart.
func (r Room) short(readings []reading, run [2]int) bool {
	return run[0] > 0 && run[1] < len(readings) && readings[run[1]].at.Sub(readings[run[0]-1].at) <= r.excursion()
}

// excused says whether a run is short, begins at least 24 h from every other
// one that counts, and is one run however its rows are taken.
func (r Room) excused(readings []reading, run [2]int, begins []map[string][]time.Time) bool {
	return r.short(readings, run) && !slices.ContainsFunc(begins, func(view map[string][]time.Time) bool {
		return spoilt(readings[run[0]:run[1]], view)
	})
}

// spoilt says whether another run begins within 24 h of this one, or a second
// one inside it. A run of no instrument may be of any.
func spoilt(run []reading, view map[string][]time.Time) bool {
	first, last, inside := run[0].at, run[len(run)-1].at, 0
	for _, key := range slices.Compact([]string{run[0].meter(), ""}) {
		near, _ := slices.BinarySearchFunc(view[key], first.Add(-span), time.Time.Compare)
		for _, at := range view[key][near:] {
			switch own := key == run[0].meter() && !at.Before(first) && !at.After(last); {
			case own:
				inside++
			case at.Sub(first).Abs() < span:
				return true
			}
		}
	}
	return inside > 1
}

// begins are the times at which runs out of range begin that may spoil others,
// by instrument, in the window and a day on either side. They are told for
// every way of taking the rows, with blanks out of range and in, guarded and as
// read: neither a blank nor an uncertainty that joins two runs to one may
// excuse them.
func (r Room) begins(w window, since time.Time) []map[string][]time.Time {
	simple := w
	simple.acceptance.Guarded = false
	out := func(w window) func(reading) bool {
		return func(x reading) bool { return !r.inRange(x, w) }
	}
	breaks := func(w window) func(reading) bool {
		return func(x reading) bool {
			return slices.ContainsFunc(r.items(x, w), func(it evidence.Item) bool { return it.Breaks(w.acceptance) })
		}
	}
	ways := []func(reading) bool{out(w), breaks(w)}
	if w.acceptance.Guarded {
		ways = append(ways, out(simple), breaks(simple))
	}
	groups := byInstrument(r.Air, since.Add(-span-2*r.excursion()), w.to.Add(span))
	var all []map[string][]time.Time
	for _, isOut := range ways {
		view := map[string][]time.Time{}
		for _, readings := range groups {
			for _, run := range runs(readings, isOut) {
				if first := readings[run[0]]; !r.stands(readings, run, w, since) {
					view[first.meter()] = append(view[first.meter()], first.at)
				}
			}
		}
		all = append(all, view)
	}
	return all
}

// stands says whether a run is judged in the window for itself, being too long
// to excuse: it need not spoil another.
func (r Room) stands(readings []reading, run [2]int, w window, since time.Time) bool {
	if readings[run[0]].at.After(w.to) || readings[run[1]-1].at.Before(since) {
		return false
	}
	ends := run[1] == len(readings) || readings[run[1]].at.After(w.to)
	return ends || !r.short(readings, run)
}

func (r Room) inRange(x reading, w window) bool {
	return !slices.ContainsFunc(r.items(x, w), func(it evidence.Item) bool {
		return it.Breaks(w.acceptance) || it.Lack != ""
	})
}

// items are the judged values of a reading: a temperature and a humidity of
// each of its rows, as far as the window asks for them.
func (r Room) items(x reading, w window) []evidence.Item {
	var items []evidence.Item
	for _, a := range x.rows {
		temp, rh := evidence.Measure(airName(a), a.Temp, w.temp), evidence.Measure(airName(a), a.RH, w.rh)
		if !w.asRead {
			temp.U = r.Instruments.UTemp(a.Instrument, w.temp.Unit())
			rh.U = r.Instruments.U(a.Instrument, evidence.RH)
		}
		if w.temp.Shown() {
			items = append(items, temp)
		}
		if w.rh.Shown() {
			items = append(items, rh)
		}
	}
	return items
}

func airName(a Air) string {
	name := "the air at " + a.ReadAt.Written
	if a.Instrument != "" {
		name += " (" + a.Instrument + ")"
	}
	return name
}

// lastBefore is the time of the last row at or before t, of all instruments;
// zero where there is none.
func (r Room) lastBefore(t time.Time) time.Time {
	var last time.Time
	for _, a := range r.Air {
		if at := a.ReadAt; at.Shown() && !at.First.After(t) && at.First.After(last) {
			last = at.First
		}
	}
	return last
}

// uncovered are the stretches of a window without a reading, and the rows
// without a time, as unusable values.
func (r Room) uncovered(w window) []evidence.Item {
	var items []evidence.Item
	add := func(format string, args ...any) {
		items = append(items, evidence.Item{Name: "the air log", Limit: w.temp, Lack: fmt.Sprintf(format, args...)})
	}
	for _, a := range r.Air {
		if !a.ReadAt.Shown() {
			items = append(items, evidence.Item{Name: "an air row", Limit: w.temp, Lack: evidence.NoTime, Place: a.Place})
		}
	}
	times := r.timesIn(w)
	if before := r.lastBefore(w.from); w.covered && before.IsZero() {
		add("no reading at or before %s, where the window begins", clock(w.from))
	} else if w.covered {
		if w.from.Sub(before) > r.gap() {
			add("no reading in the %s h before %s, where the window begins", r.Gap.Written, clock(w.from))
		}
		times = slices.Insert(times, 0, before)
	}
	for i := 1; i < len(times); i++ {
		if times[i].Sub(times[i-1]) > r.gap() {
			add("no reading from %s to %s, more than %s h", clock(times[i-1]), clock(times[i]), r.Gap.Written)
		}
	}
	if n := len(times); n > 0 && w.to.Sub(times[n-1]) > r.gap() {
		add("no reading in the %s h before %s, where the window ends", r.Gap.Written, clock(w.to))
	}
	return items
}

func (r Room) gap() time.Duration { return evidence.Duration(r.Gap.Exact()) }

// timesIn are the times of the rows of a window. A row at its very start is
// left out where that start must be covered: it is the last at or before it.
func (r Room) timesIn(w window) []time.Time {
	var times []time.Time
	for _, a := range r.Air {
		if at := a.ReadAt; at.Shown() && !at.First.After(w.to) &&
			(at.First.After(w.from) || !w.covered && at.First.Equal(w.from)) {
			times = append(times, at.First)
		}
	}
	slices.SortFunc(times, time.Time.Compare)
	return times
}
