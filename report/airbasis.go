package report

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// AirBasis is what the checks of the air rested on, for outputs that show how
// far it carries: the latest reading, the window the air was held over, and the
// days each instrument was used on.
type AirBasis struct {
	Latest   evidence.Time
	Untimed  bool // some row has no time
	Held     bool // the window is known
	From, To time.Time
	Used     []AirUse
}

// AirUse is an instrument behind judged air rows, and the first and the last
// day it was used on; Lack says why that cannot be told.
type AirUse struct {
	Instrument  string
	First, Last evidence.Day
	Lack        string
}

// BasisOfAir is what the checks of an area's air rest on.
func BasisOfAir(j Job, a Area) AirBasis {
	s := j.site(a)
	b := AirBasis{Latest: s.Room.Latest()}
	b.From, b.To, b.Held = s.Room.HeldWindow()
	at := map[string]int{}
	for _, a := range s.Room.JudgedAir() {
		e := airEntry(a)
		b.Untimed = b.Untimed || e.lack != ""
		key := evidence.Key(a.Instrument)
		i, known := at[key]
		if !known {
			i = len(b.Used)
			at[key] = i
			b.Used = append(b.Used, AirUse{Instrument: a.Instrument, Lack: e.lack})
			if e.lack == "" {
				b.Used[i].First, b.Used[i].Last = e.at.Day(), e.at.Day()
			}
			continue
		}
		b.Used[i].add(e)
	}
	slices.SortFunc(b.Used, func(x, y AirUse) int { return evidence.Order(x.Instrument, y.Instrument) })
	return b
}

func (u *AirUse) add(e entry) {
	if u.Lack != "" || e.lack != "" {
		u.Lack = evidence.NoTime
		return
	}
	u.First, u.Last = min(u.First, e.at.Day()), max(u.Last, e.at.Day())
}
