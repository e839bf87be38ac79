package evidence

import (
	"slices"
	"time"
)

// Judged is one thing that was measured (a hole, a board) with the rows that
// count for it: its latest row, every row that ties with it, and every row
// without a time, which may be the latest. It has no rows where all of them
// came before water.
type Judged[T any] struct {
	Name string
	Rows []T
}

// Latest gathers rows into things by name and keeps what is judged of each.
// Rows before since (when not zero) are dropped, never the name. Things come
// in the order a person lists them.
func Latest[T any](rows []T, since time.Time, name func(T) string, at func(T) Time) []Judged[T] {
	var things []Judged[T]
	index := map[string]int{}
	for _, r := range rows {
		key := Key(name(r))
		i, known := index[key]
		if !known {
			i = len(things)
			index[key] = i
			things = append(things, Judged[T]{Name: Tidy(name(r))})
		}
		things[i].Name = min(things[i].Name, Tidy(name(r)))
		if t := at(r); !t.Shown() || !t.First.Before(since) {
			things[i].Rows = append(things[i].Rows, r)
		}
	}
	for i := range things {
		things[i].Rows = latestRows(things[i].Rows, at)
	}
	slices.SortFunc(things, func(a, b Judged[T]) int { return Order(a.Name, b.Name) })
	return things
}

func latestRows[T any](rows []T, at func(T) Time) []T {
	var last Time
	for _, r := range rows {
		if t := at(r); t.Shown() && (!last.Shown() || t.After(last)) {
			last = t
		}
	}
	return slices.DeleteFunc(rows, func(r T) bool { return at(r).Shown() && at(r).First.Before(last.First) })
}

// Enough answers a count: met if enough are usable; not shown if only the
// unusable make it enough, or there is nothing at all, or the number needed
// is not known; otherwise not met.
func Enough(usable, unusable, needed int, known bool) Outcome {
	switch {
	case !known || usable+unusable == 0:
		return NotShown
	case usable >= needed:
		return Met
	case usable+unusable >= needed:
		return NotShown
	}
	return NotMet
}

// WetSince is the reason of a thing that water left without a reading.
const WetSince = "not read again since it was wetted"

// NoTime is the reason of a row that may be the latest and cannot be told.
const NoTime = "no time of reading"
