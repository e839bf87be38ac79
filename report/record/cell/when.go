package cell

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// Era is the time that a column of dates or times allows.
type Era struct {
	Since     int  // the first year, 0 for any
	ToInstall bool // nothing is read a year after the last Install on
}

// lastYear is the last one that any column allows.
const lastYear = 2199

// Takes is what a column of dates or times takes.
func (e Era) Takes(kind grid.FieldKind) grid.Takes {
	return grid.Takes{Kind: kind, Since: e.Since, Until: lastYear}
}

// Minute is a clock time without seconds, as a record writes it.
const Minute = "2006-01-02 15:04"

const (
	writeDay   = "write it as year-month-day, such as 2026-03-04"
	writeClock = "write the day and the time, such as 2026-03-04 08:30"
)

// elseMeant is what to write, with what was meant for its example where that is
// known.
func elseMeant(write, meant string) string {
	if meant == "" {
		return write
	}
	write, _, _ = strings.Cut(write, ", such as ")
	return write + ": " + meant
}

// IsDay says whether a cell holds a day alone.
func IsDay(c *grid.Cell) bool {
	return c.Kind == grid.DayCell || c.Kind == grid.TextCell && len(strings.TrimSpace(c.Text)) == len(time.DateOnly)
}

// Date is the calendar day of a cell, or what is wrong with it. Installs is
// the last Install on.
func Date(c *grid.Cell, from Era, installs evidence.Date) (evidence.Date, faults.Complaint) {
	text := strings.TrimSpace(c.Text)
	t, ok := evidence.ParseClock(text)
	midnight := c.Kind == grid.TimeCell && t.Equal(t.Truncate(24*time.Hour))
	switch {
	case numeric(c):
		return evidence.Date{}, faults.Mistake(text, "is a number, not a date; %s", writeDay)
	case !ok:
		return evidence.Date{}, faults.Mistake(text, "is not a date; %s", elseMeant(writeDay, meantClock(text, false)))
	case len(text) != len(time.DateOnly) && !midnight:
		return evidence.Date{}, faults.Mistake(text, "has a time in it, and a date is asked for; write %s",
			t.Format(time.DateOnly))
	}
	return evidence.Date{Written: t.Format(time.DateOnly), Day: evidence.DayOf(t)}, from.outside(text, t, installs)
}

// Clock is the day and time that a cell's clock showed, likewise.
func Clock(c *grid.Cell, from Era, installs evidence.Date) (time.Time, faults.Complaint) {
	text := strings.TrimSpace(c.Text)
	t, ok := evidence.ParseClock(text)
	switch {
	case numeric(c):
		return t, faults.Mistake(text, "is a number, not a time; %s", writeClock)
	case !ok:
		return t, faults.Mistake(text, "is not a time; %s", elseMeant(writeClock, meantClock(text, true)))
	case len(text) == len(time.DateOnly):
		return t, faults.Mistake(text, "is a date, and a time is asked for; %s", writeClock)
	}
	return t, from.outside(text, t, installs)
}

func numeric(c *grid.Cell) bool {
	return c.Kind == grid.NumberCell || c.Kind == sheet.Percent
}

// outside says that a date or time lies outside the years a record covers.
func (e Era) outside(text string, t time.Time, installs evidence.Date) faults.Complaint {
	const longest = 366 // days from the last day of installing to any reading
	switch late := installs.Shown() && int(evidence.DayOf(t)-installs.Day) > longest; {
	case e.ToInstall && late:
		return faults.Mistake(text, "is more than %d days after the last Install on, %s; is the year right?%s", longest,
			installs.Written, yearMeant(text, t, installs))
	case t.Year() >= e.Since && t.Year() <= lastYear:
		return faults.Complaint{}
	case e.Since == 0:
		return faults.Mistake(text, "is after %d; is the year right?%s", lastYear, yearMeant(text, t, installs))
	}
	return faults.Mistake(text, "is outside the years %d to %d; is the year right?%s", e.Since, lastYear,
		yearMeant(text, t, installs))
}

// yearMeant is the same day in the year up to the last Install on, to write
// instead, or nothing where there is none.
func yearMeant(text string, t time.Time, installs evidence.Date) string {
	if !installs.Shown() || len(text) < len("2026") {
		return ""
	}
	year := time.Unix(int64(installs.Day)*86400, 0).UTC().Year()
	const near = 60 // days after installing in which somebody may still read
	if evidence.DayOf(t.AddDate(year-t.Year(), 0, 0)) > installs.Day+near {
		year--
	}
	return fmt.Sprintf(" write %d%s", year, text[len("2026"):])
}

// meantClock is what a date or a time that is written another way may mean, as a
// record writes it, with or without its time of day: two answers where month and
// day may stand either way round, none where nobody can tell.
func meantClock(text string, withTime bool) string {
	text = strings.Join(strings.Fields(strings.NewReplacer(",", " ", "T", " ").Replace(text)), " ")
	var all []string
	for _, order := range []string{
		"January 2 2006", "Jan 2 2006", "2 January 2006", "2 Jan 2006", "2-Jan-2006", "2006/1/2", "2006.1.2",
		"2006-1-2",
		"1/2/2006", "2/1/2006", "1/2/06", "2/1/06", "1-2-2006", "2-1-2006", "2.1.2006", "2.1.06",
	} {
		if written := inOrder(text, order, withTime); written != "" && (len(all) == 0 || all[len(all)-1] != written) {
			all = append(all, written)
		}
	}
	return strings.Join(all, " or ")
}

// inOrder reads a text whose date has that order, empty where it has not.
func inOrder(text, order string, withTime bool) string {
	clocks, written := []string{""}, time.DateOnly
	if withTime {
		clocks, written = []string{" 15:04", " 15:04:05", " 3:04 PM", " 3:04:05 PM", " 3:04PM"}, Minute
	}
	if part := strings.IndexAny(order, " -/."); !strings.Contains(text, order[part:part+1]) {
		return ""
	}
	upper := strings.ToUpper(text)
	for _, clock := range clocks {
		if strings.HasSuffix(clock, "M") != strings.HasSuffix(upper, "M") {
			continue
		}
		for _, text := range slices.Compact([]string{upper, text}) {
			if t, err := time.Parse(order+clock, text); err == nil && t.Year() <= lastYear {
				return t.Format(written)
			}
		}
	}
	return ""
}

// Clocks keeps the stretch of time in which the clocks of a zone were last
// found not to change.
type Clocks struct {
	from, to time.Time // on the clock
	ahead    time.Duration
}

// near is how far from a change of the clocks a time may come twice or never.
const near = 26 * time.Hour

// Instants are the first and the last time a clock showed that time; it never
// did where clocks went forward over it.
func (k *Clocks) Instants(clock time.Time, zone *time.Location) (first, last time.Time, ok bool) {
	if zone == time.UTC {
		return clock, clock, true
	}
	if !clock.Before(k.from) && clock.Before(k.to) {
		at := clock.Add(-k.ahead).In(zone)
		return at, at, true
	}
	y, m, n := clock.Date()
	guess := time.Date(y, m, n, clock.Hour(), clock.Minute(), clock.Second(), 0, zone)
	k.around(guess)
	for _, at := range neighbors(guess) {
		_, offset := at.Zone()
		t := clock.Add(-time.Duration(offset) * time.Second).In(zone)
		if _, o := t.Zone(); o != offset {
			continue
		}
		if !ok || t.Before(first) {
			first = t
		}
		if !ok || t.After(last) {
			last = t
		}
		ok = true
	}
	return first, last, ok
}

// around keeps the stretch without a change of the clocks that a time lies in.
func (k *Clocks) around(t time.Time) {
	start, end := t.ZoneBounds()
	if start.IsZero() || end.IsZero() {
		return
	}
	_, offset := t.Zone()
	k.ahead = time.Duration(offset) * time.Second
	k.from, k.to = start.Add(near+k.ahead).UTC(), end.Add(k.ahead-near).UTC()
}

// neighbors are a time and, where clocks change near it, times of before and
// after the change.
func neighbors(t time.Time) []time.Time {
	all := []time.Time{t}
	start, end := t.ZoneBounds()
	if !start.IsZero() && t.Sub(start) < near {
		all = append(all, start.Add(-time.Second))
	}
	if !end.IsZero() && end.Sub(t) < near {
		all = append(all, end)
	}
	return all
}
