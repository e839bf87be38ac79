package outlook_test

import (
	"fmt"
	"slices"
	"time"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// spot is a place of a row that was made for a test.
type spot struct {
	table string
	row   int
}

func (s spot) String() string     { return fmt.Sprintf("%s %d", s.table, s.row) }
func (s spot) Row() (string, int) { return s.table, s.row }

// shaken is a base whose readings were moved about their limits, with more things
// than are asked for, rows at other times, and now and then under guarded acceptance.
func shaken(t *rapid.T, from []report.Job) report.Job {
	j := copied(from[rapid.IntRange(0, len(from)-1).Draw(t, "base")])
	j.Guarded = rapid.IntRange(0, 5).Draw(t, "guarded") == 0
	more(t, &j)
	shiftWood(t, &j)
	for range rapid.IntRange(0, 2).Draw(t, "shakes") {
		shakes()[rapid.IntRange(0, len(shakes())-1).Draw(t, "shake")](t, &j)
	}
	return j
}

// more adds things like the last of each kind.
func more(t *rapid.T, j *report.Job) {
	for i := range rapid.IntRange(0, 2).Draw(t, "holes") {
		if n := len(j.Holes); n > 0 {
			h := j.Holes[n-1]
			h.Hole, h.Place, h.RH.Place = fmt.Sprint("H9", i), spot{"more holes", i}, spot{"more holes", i}
			j.Holes = append(j.Holes, h)
		}
	}
	for i := range rapid.SampledFrom([]int{0, 0, 1, 4, 18}).Draw(t, "boards") {
		at := slices.IndexFunc(j.Wood, func(r wood.Row) bool { return r.Of == wood.OfFlooring })
		if at >= 0 {
			r := j.Wood[at]
			r.Piece, r.Place, r.Reading.Place = fmt.Sprint("B9", i), spot{"more boards", i}, spot{"more boards", i}
			j.Wood = append(j.Wood, r)
		}
	}
}

// shiftWood takes all flooring, or all of a subfloor, some points up or down.
func shiftWood(t *rapid.T, j *report.Job) {
	of := rapid.SampledFrom([]string{wood.OfFlooring, wood.OfSubfloor, ""}).Draw(t, "of")
	by := rapid.SampledFrom([]string{"-2.5", "-2", "-1.9", "-1", "1", "1.7", "1.9", "2", "2.1", "2.5"}).Draw(t, "by")
	for i := range j.Wood {
		if r := &j.Wood[i]; r.Of == of {
			add(&r.Reading, by)
		}
	}
}

func add(r *evidence.Reading, by string) {
	if r.Shown() {
		place := r.Place
		*r = evidence.Computed(r.Value.Add(decimal.RequireFromString(by)), r.Unit)
		r.Place = place
	}
}

func later(at *evidence.Time, by time.Duration) {
	if at.Shown() {
		at.First, at.Last = at.First.Add(by), at.Last.Add(by)
		at.Written = at.First.Format("2006-01-02 15:04")
	}
}

// shakes are what may happen to one row.
func shakes() []func(t *rapid.T, j *report.Job) {
	by := func(t *rapid.T, of ...string) string { return rapid.SampledFrom(of).Draw(t, "by") }
	hours := func(t *rapid.T) time.Duration {
		return time.Duration(rapid.SampledFrom([]int{-900, -200, -60, -25, -3, 3}).Draw(t, "hours")) * time.Hour
	}
	return []func(t *rapid.T, j *report.Job){
		func(t *rapid.T, j *report.Job) {
			i := rapid.IntRange(0, 3).Draw(t, "hole")
			rh := evidence.Typed(by(t, "29", "31", "73", "74", "75", "76", "78", "84", "86", "88"), evidence.RH)
			if i < len(j.Holes) {
				rh.Place = j.Holes[i].RH.Place
				j.Holes[i].RH = rh
			}
		},
		func(t *rapid.T, j *report.Job) {
			i := rapid.IntRange(0, len(j.Wood)).Draw(t, "piece")
			if i < len(j.Wood) {
				add(&j.Wood[i].Reading, by(t, "-3", "-1", "1", "2", "3", "4", "6"))
			}
		},
		func(t *rapid.T, j *report.Job) {
			i := rapid.IntRange(0, 3).Draw(t, "dish")
			if i < len(j.Dishes) {
				add(&j.Dishes[i].End, by(t, "-0.5", "0.2", "0.5", "1"))
			}
		},
		func(t *rapid.T, j *report.Job) {
			i, by := rapid.IntRange(0, 3).Draw(t, "hole"), hours(t)
			if i < len(j.Holes) {
				later(&j.Holes[i].ReadAt, by)
			}
		},
		func(t *rapid.T, j *report.Job) {
			i, by := rapid.IntRange(0, len(j.Wood)).Draw(t, "piece"), hours(t)
			if i < len(j.Wood) {
				later(&j.Wood[i].ReadAt, by)
			}
		},
		func(t *rapid.T, j *report.Job) {
			i, wait := rapid.IntRange(0, 3).Draw(t, "hole"), rapid.SampledFrom([]int{-30, -20}).Draw(t, "wait")
			if i < len(j.Holes) && j.Holes[i].ReadAt.Shown() {
				j.Holes[i].SealedAt = j.Holes[i].ReadAt
				later(&j.Holes[i].SealedAt, time.Duration(wait)*time.Hour)
			}
		},
		func(t *rapid.T, j *report.Job) {
			i := rapid.IntRange(0, 3).Draw(t, "hole")
			if i < len(j.Holes) {
				add(&j.Holes[i].Depth, by(t, "1", "-1"))
			}
		},
		func(t *rapid.T, j *report.Job) {
			i := rapid.IntRange(0, len(j.Air)-1).Draw(t, "air")
			add(&j.Air[i].RH, by(t, "-20", "20"))
		},
	}
}
