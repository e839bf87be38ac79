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
	for _, readings := range byInstrument(r.Air, since.Add(-2*r.excursion()), w.to) {
		judged, n := r.judgeInstrument(readings, w, before, r.inRange)
		items, excused = append(items, judged...), excused+n
		items = append(items, r.hidden(readings, w, before)...)
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
func (r Room) judgeInstrument(readings []reading, w window, before time.Time, inRange func(reading, window) bool) (items []evidence.Item, excused int) {
	inWindow := func(x reading) bool { return !x.at.Before(w.from) || x.at.Equal(before) }
	var runs [][2]int
	for i := 0; i < len(readings); i++ {
		if inRange(readings[i], w) {
			if inWindow(readings[i]) {
				items = append(items, r.items(readings[i], w)...)
			}
			continue
		}
		first := i
		for i+1 < len(readings) && !inRange(readings[i+1], w) {
			i++
		}
		if inWindow(readings[i]) {
			runs = append(runs, [2]int{first, i})
		}
	}
	excusable := r.excusable(readings, runs)
	for k, run := range runs {
		if excusable[k] {
			excused++
			continue
		}
		for _, x := range readings[run[0] : run[1]+1] {
			if inWindow(x) {
				items = append(items, r.items(x, w)...)
			}
		}
	}
	return items, excused
}

// excusable says which runs lie between two rows in range at most the
// excursion apart, and begin at least 24 h from every other such run.
func (r Room) excusable(readings []reading, runs [][2]int) []bool {
	short := make([]bool, len(runs))
	for k, run := range runs {
		i, j := run[0]-1, run[1]+1
		short[k] = i >= 0 && j < len(readings) && readings[j].at.Sub(readings[i].at) <= r.excursion()
	}
	ok := slices.Clone(short)
	last := -1
	for a := range runs { // in order of time: only the short run before can be near enough
		if !short[a] {
			continue
		}
		if last >= 0 && readings[runs[a][0]].at.Sub(readings[runs[last][0]].at) < span {
			ok[a], ok[last] = false, false
		}
		last = a
	}
	return ok
}

// hidden are the breaches that a blank would hide by joining two runs to one:
// those that stand when blank rows are taken to be in range.
func (r Room) hidden(readings []reading, w window, before time.Time) []evidence.Item {
	breaks := func(it evidence.Item) bool { return it.Breaks(w.acceptance) }
	items, _ := r.judgeInstrument(readings, w, before, func(x reading, w window) bool {
		return !slices.ContainsFunc(r.items(x, w), breaks)
	})
	return slices.DeleteFunc(items, func(it evidence.Item) bool { return !breaks(it) })
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
