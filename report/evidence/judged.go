package evidence

import (
	"fmt"
	"slices"
	"strconv"
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

// Group gathers rows into things by name, in the order a person lists them.
func Group[T any](rows []T, name func(T) string) []Judged[T] {
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
		things[i].Rows = append(things[i].Rows, r)
	}
	slices.SortFunc(things, func(a, b Judged[T]) int { return Order(a.Name, b.Name) })
	return things
}

// Latest gathers rows into things by name and keeps what is judged of each.
// Rows before since (when not zero) are dropped, never the name.
func Latest[T any](rows []T, since time.Time, name func(T) string, at func(T) Time) []Judged[T] {
	return Recent(rows, since, 0, name, at)
}

// Again is how long before a judged row another reading of the same thing
// counts as well: reading again until it passes proves nothing.
const Again = 24 * time.Hour

// Recent is Latest with the rows up to so long before the latest one as well.
func Recent[T any](rows []T, since time.Time, before time.Duration, name func(T) string, at func(T) Time) []Judged[T] {
	things := Group(rows, name)
	for i, thing := range things {
		dry := slices.DeleteFunc(thing.Rows, func(r T) bool { return at(r).Shown() && at(r).First.Before(since) })
		things[i].Rows = latestRows(dry, before, at)
	}
	return things
}

// Last is the latest time of rows; blank where none has a time.
func Last[T any](rows []T, at func(T) Time) Time {
	var last Time
	for _, r := range rows {
		if t := at(r); t.Shown() && (!last.Shown() || t.After(last)) {
			last = t
		}
	}
	return last
}

func latestRows[T any](rows []T, before time.Duration, at func(T) Time) []T {
	from := Last(rows, at).First.Add(-before)
	return slices.DeleteFunc(rows, func(r T) bool { return at(r).Shown() && at(r).First.Before(from) })
}

// Items are the judged values of things: one a row, made by measure, unusable
// where the row has no time, and one for a thing that water left without rows.
func Items[T any](things []Judged[T], at func(T) Time, measure func(name string, row T) Item) []Item {
	items := make([]Item, 0, RowCount(things))
	for _, thing := range things {
		if len(thing.Rows) == 0 {
			var none T
			it := measure(thing.Name, none)
			it.Lack, it.Place = WetSince, nil
			items = append(items, it)
		}
		for _, row := range thing.Rows {
			it := measure(thing.Name, row)
			if !at(row).Shown() {
				it.Lack = NoTime
			}
			items = append(items, it)
		}
	}
	return items
}

// RowCount is how many rows things have together.
func RowCount[T any](things []Judged[T]) int {
	n := 0
	for _, thing := range things {
		n += len(thing.Rows)
	}
	return n
}

// Tally is a count of things of which so many are needed: the figures by which
// they count, how many cannot be used, and the number needed, which is no
// figure where it cannot be told.
type Tally struct {
	Counted   []Working
	Unusable  int
	Needed    Working
	Unit      Unit
	One, Many string // "hole", "holes"
}

// TallyOf counts things whose every judged row is usable, each by the figure
// of its first.
func TallyOf[T any](things []Judged[T], usable func(T) bool, figure func(T) Working) (counted []Working, unusable int) {
	for _, thing := range things {
		if len(thing.Rows) > 0 && !slices.ContainsFunc(thing.Rows, func(r T) bool { return !usable(r) }) {
			counted = append(counted, figure(thing.Rows[0]).Called(thing.Name))
		} else {
			unusable++
		}
	}
	return counted, unusable
}

// Rows are the places of all judged rows of things.
func Rows[T any](things []Judged[T], place func(T) Place) []Place {
	var places []Place
	for _, thing := range things {
		for _, r := range thing.Rows {
			places = append(places, place(r))
		}
	}
	return places
}

// Find answers whether enough were taken, on an area of that size.
func (t Tally) Find(size Reading) Finding {
	usable := len(t.Counted)
	f := Finding{Value: strconv.Itoa(usable), Unit: t.Unit}
	f.Reason = fmt.Sprintf("%s usable", Count(usable, t.One, t.Many))
	if t.Unusable > 0 {
		f.Reason += fmt.Sprintf(" and %d unusable", t.Unusable)
	}
	if !t.Needed.Shown() {
		f.Reason += "; how many are needed cannot be told: the area's size is not recorded"
		return f
	}
	needed := t.Needed.Value.Ceil()
	f.Outcome, f.Limit = Enough(usable, t.Unusable, needed), strconv.Itoa(needed)
	f.Worked = t.worked()
	f.Reason += fmt.Sprintf("; %s asked for on %s", Count(needed, "is", "are"), size)
	return f
}

// worked is the count against the number needed: where only the unusable could
// make it enough, they stand in the sum and leave it not shown.
func (t Tally) worked() Worked {
	w := AtLeastSo(CountOf(t.Unit, t.Counted...), t.Needed, 0)
	if len(t.Counted)+t.Unusable == 0 {
		w.Room = Working{}
	}
	if t.Unusable > 0 && w.Room.Value.Sign() < 0 {
		w.Unusable = t.Unusable
		unusable := Stated("unusable", Whole(t.Unusable), t.Unit)
		w.Room = Less(Total(w.Value, unusable), t.Needed)
	}
	return w
}

// Enough answers a count: met if enough are usable; not shown if only the
// unusable make it enough, or there is nothing at all; otherwise not met.
func Enough(usable, unusable, needed int) Outcome {
	if usable+unusable == 0 {
		return NotShown
	}
	if usable >= needed {
		return Met
	}
	if usable+unusable >= needed {
		return NotShown
	}
	return NotMet
}

// WetSince is the reason of a thing that water left without a reading.
const WetSince = "not read again since water came"

// NoTime is the reason of a row that may be the latest and cannot be told.
const NoTime = "no time of reading"

// ByKey are rows by the key of a name, in their order. Rows that are all of
// one name are shared, not copied.
func ByKey[T any](rows []T, name func(T) string) map[string][]T {
	groups := map[string][]T{}
	var last, key string
	keyOf := func(r T) string {
		if n := name(r); n != last {
			last, key = n, Key(n)
		}
		return key
	}
	counts := map[string]int{}
	for _, r := range rows {
		counts[keyOf(r)]++
	}
	if len(counts) == 1 {
		groups[key] = slices.Clip(rows)
		return groups
	}
	for _, r := range rows {
		key := keyOf(r)
		if groups[key] == nil {
			groups[key] = make([]T, 0, counts[key])
		}
		groups[key] = append(groups[key], r)
	}
	return groups
}
