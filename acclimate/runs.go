package acclimate

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// reading is what one instrument showed at one time: usually one row.
type reading struct {
	first, end int32 // of the instrument's rows
	mark       mark
}

func (x reading) out() bool { return x.mark&(breaks|blank) != 0 }

// meter is one instrument's rows in order of time, and its readings.
type meter struct {
	key      string
	rows     []*Air
	readings []reading
	begins   [][]time.Time // of runs out of range, as accepted and as read
}

// meters sorts rows in order of time by their instruments. Rows without one
// count as one instrument.
func meters(rows []*Air, gauges []*gauge) []*meter {
	var all []*meter
	asTyped, index := map[string]*meter{}, map[string]*meter{}
	for _, a := range rows {
		m := asTyped[a.Instrument]
		if m == nil {
			key := evidence.Key(a.Instrument)
			if m = index[key]; m == nil {
				m = &meter{key: key}
				index[key], all = m, append(all, m)
			}
			asTyped[a.Instrument] = m
		}
		m.add(a, gauges)
	}
	slices.SortFunc(all, func(a, b *meter) int { return evidence.Order(a.key, b.key) })
	return all
}

func (m *meter) add(a *Air, gauges []*gauge) {
	var mark mark
	for _, g := range gauges {
		mark |= g.mark(a)
	}
	m.rows = append(m.rows, a)
	end := int32(len(m.rows))
	if n := len(m.readings); n > 0 && m.at(n-1).Equal(a.ReadAt.First) {
		m.readings[n-1].end, m.readings[n-1].mark = end, m.readings[n-1].mark|mark
		return
	}
	m.readings = append(m.readings, reading{end - 1, end, mark})
}

// at is the time of the i-th reading.
func (m *meter) at(i int) time.Time { return m.rows[m.readings[i].first].ReadAt.First }

// between are the rows of the readings from one up to another.
func (m *meter) between(first, end int) []*Air {
	return m.rows[m.readings[first].first:m.readings[end-1].end]
}

// mayBegin finds where a run out of range may begin: at a reading that is out
// of range or blank, behind one that is in range or blank, or behind none. They
// are told as accepted and, where acceptance is guarded, as read too: neither a
// blank nor an uncertainty that joins two runs to one may excuse them.
func (m *meter) mayBegin(guarded bool) {
	ways := []mark{breaks}
	if guarded {
		ways = append(ways, exceeds)
	}
	for _, out := range ways {
		var begins []time.Time
		for i, x := range m.readings {
			if x.mark&(out|blank) != 0 && (i == 0 || m.readings[i-1].mark&out == 0) {
				begins = append(begins, m.at(i))
			}
		}
		m.begins = append(m.begins, begins)
	}
}

// run is a stretch of one instrument's readings out of range, from the first
// of them up to the first that is not.
type run struct{ first, end int }

// runs are the runs among the first readings.
func (m *meter) runs(n int) []run {
	var all []run
	for i, x := range m.readings[:n] {
		if !x.out() {
			continue
		}
		if i == 0 || !m.readings[i-1].out() {
			all = append(all, run{first: i})
		}
		all[len(all)-1].end = i + 1
	}
	return all
}

// excused says whether a run among the first n readings lies between two in
// range at most so long apart, shows every value and none too far outside, and
// begins more than a day from every other run, of its instrument or of none.
func (m *meter) excused(x run, n int, longest time.Duration, nameless *meter) bool {
	if x.first == 0 || x.end == n || m.at(x.end).Sub(m.at(x.first-1)) > longest {
		return false
	}
	for _, r := range m.readings[x.first:x.end] {
		if r.mark&(beyond|blank) != 0 {
			return false
		}
	}
	first, last := m.at(x.first), m.at(x.end-1)
	for way, begins := range m.begins {
		own := within(begins, first, last)
		if len(own) == 0 {
			continue // a run by its uncertainty alone
		}
		near := len(within(begins, own[0].Add(-apart), own[0].Add(apart)))
		if nameless != nil && nameless != m {
			near += len(within(nameless.begins[way], own[0].Add(-apart), own[0].Add(apart)))
		}
		if near > 1 {
			return false
		}
	}
	return true
}

// apart is how far apart runs must begin to be excused: more than a day.
const apart = 24 * time.Hour

// within are the times from one to another, both included.
func within(times []time.Time, from, to time.Time) []time.Time {
	first, _ := slices.BinarySearchFunc(times, from, time.Time.Compare)
	end, found := slices.BinarySearchFunc(times, to, time.Time.Compare)
	if found {
		end++
	}
	return times[first:max(first, end)]
}
