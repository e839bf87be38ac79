package evidence

import "time"

// Day is a calendar day, counted from 1 January 1970.
type Day int

// DayOf is the calendar day of t on its own clock.
func DayOf(t time.Time) Day {
	y, m, d := t.Date()
	return Day(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// String is the day as 2026-03-04.
func (d Day) String() string { return time.Unix(int64(d)*86400, 0).UTC().Format(time.DateOnly) }

// Begins is the first instant of the day on the clock of a place.
// Where clocks skip midnight it is the instant they do; where midnight comes
// twice, its first coming.
func (d Day) Begins(zone *time.Location) time.Time {
	y, m, n := time.Unix(int64(d)*86400, 0).UTC().Date()
	t := time.Date(y, m, n, 0, 0, 0, 0, zone)
	if DayOf(t) < d {
		_, t = t.ZoneBounds()
	}
	if start, _ := t.ZoneBounds(); !start.IsZero() && start.Equal(t) {
		if before := t.Add(-time.Hour); DayOf(before) == d {
			t = before
		}
	}
	return t
}

// Date is a calendar day somebody typed, and its place.
type Date struct {
	Written string
	Day     Day
	Place   Place
}

// Shown says whether anything was written.
func (d Date) Shown() bool { return d.Written != "" }

// Time is a time of day somebody typed, and its place. First and Last are the
// same instant, except where the clock time came twice because clocks went
// back: then they are its first and its second coming.
type Time struct {
	Written     string
	First, Last time.Time
	Place       Place
}

// Shown says whether anything was written.
func (t Time) Shown() bool { return t.Written != "" }

// Day is the calendar day of the time on its own clock.
func (t Time) Day() Day { return DayOf(t.First) }

// After says whether t lies after u; a blank time is after nothing.
func (t Time) After(u Time) bool { return t.Shown() && u.Shown() && t.First.After(u.First) }

// Shortest is the least time that can have passed from one to the other.
func Shortest(from, to Time) time.Duration { return to.First.Sub(from.Last) }

// Passed is the time from one to the other, each at its first coming.
func Passed(from, to Time) time.Duration { return to.First.Sub(from.First) }

// Longest is the most time that can have passed from one to the other.
func Longest(from, to Time) time.Duration { return to.Last.Sub(from.First) }

// Hours is a duration in hours, exactly.
func Hours(d time.Duration) Exact { return Ratio(int64(d), int64(time.Hour)) }

// Duration is a number of hours as a duration, to the nanosecond below, and at
// most a hundred years, longer than any record.
func Duration(hours Exact) time.Duration {
	const century = 100 * 366 * 24
	if hours.Cmp(Whole(century)) > 0 {
		hours = Whole(century)
	}
	return time.Duration(hours.Mul(Ratio(int64(time.Hour), 1)).Float())
}
