package acclimate

import (
	"cmp"
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// Room is the air of one area, what it is held against, and the rows of slab
// and wood that it must be held for. NoHeld and NoFlooring say why a check is
// not needed; they are empty where it is.
type Room struct {
	Air  []Air // of the area and of the whole site, up to the day of installing
	Wood bool  // the flooring is wood

	Temp, RH       evidence.Limit
	Service        []Period
	StatedTemp     evidence.Limit // by the flooring alone
	StatedRH       evidence.Limit
	Boards         wood.Floor
	Tolerance      evidence.Bound // of a lot's mean around the target
	TargetAdvises  bool
	Surfaces       []Surface
	SurfaceMax     evidence.Limit // of a heated floor
	DewF, DewC     evidence.Bound // margins above the dew point
	NoDew, NoHeat  string         // why a check of surfaces is not needed
	NoHeld         string
	HeldFor        []evidence.Time // the judged rows of slab and flooring
	HeldLack       string          // a judged row that has no time
	Held           evidence.Reading
	Gap, Excursion evidence.Reading

	Acceptance  evidence.Acceptance
	Instruments evidence.Instruments
}

// Latest is the time of the latest air reading; blank where there is none.
func (r Room) Latest() evidence.Time {
	return evidence.Last(r.Air, func(a Air) evidence.Time { return a.ReadAt })
}

// reading is what one instrument showed at one time: usually one row.
type reading struct {
	at   time.Time
	rows []Air
}

// meter is the key of the instrument that was read.
func (x reading) meter() string { return evidence.Key(x.rows[0].Instrument) }

// byInstrument are the timed rows up to a time, each instrument's in order of
// time. Rows without an instrument count as one.
func byInstrument(air []Air, from, to time.Time) [][]reading {
	groups := map[string][]Air{}
	for _, a := range air {
		if a.ReadAt.Shown() && !a.ReadAt.First.After(to) && !a.ReadAt.First.Before(from) {
			key := evidence.Key(a.Instrument)
			groups[key] = append(groups[key], a)
		}
	}
	var all [][]reading
	for _, key := range sortedKeys(groups) {
		all = append(all, inOrder(groups[key]))
	}
	return all
}

func sortedKeys(groups map[string][]Air) []string {
	var keys []string
	for key := range groups {
		keys = append(keys, key)
	}
	slices.SortFunc(keys, cmp.Compare[string])
	return keys
}

func inOrder(rows []Air) []reading {
	slices.SortStableFunc(rows, func(a, b Air) int { return a.ReadAt.First.Compare(b.ReadAt.First) })
	var readings []reading
	for _, a := range rows {
		if n := len(readings); n > 0 && readings[n-1].at.Equal(a.ReadAt.First) {
			readings[n-1].rows = append(readings[n-1].rows, a)
		} else {
			readings = append(readings, reading{a.ReadAt.First, []Air{a}})
		}
	}
	return readings
}
