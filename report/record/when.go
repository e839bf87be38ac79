package record

import (
	"fmt"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/sheet"
)

// era is the time that a column of dates or times allows.
type era struct {
	since     int  // the first year, 0 for any
	toInstall bool // nothing is read a year after the last Install on
}

func anyYear() era { return era{} }

// since90 is for calibrations and checks of instruments, measured for readings.
func since90() era  { return era{since: 1990} }
func measured() era { return era{since: 1990, toInstall: true} }

// lastYear is the last one that any column allows.
const lastYear = 2199

// takes is what a column of dates or times takes.
func (e era) takes(kind grid.FieldKind) grid.Takes {
	return grid.Takes{Kind: kind, Since: e.since, Until: lastYear}
}

const (
	minute     = "2006-01-02 15:04"
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

// isDay says whether a cell holds a day alone.
func isDay(c *grid.Cell) bool {
	return c.Kind == grid.DayCell || c.Kind == grid.TextCell && len(strings.TrimSpace(c.Text)) == len(time.DateOnly)
}

// date reads the calendar day of a cell.
func (d *decoder) date(c *grid.Cell, from era) evidence.Date {
	text := strings.TrimSpace(c.Text)
	t, ok := evidence.ParseClock(text)
	midnight := c.Kind == grid.TimeCell && t.Equal(t.Truncate(24*time.Hour))
	switch {
	case d.numeric(c):
		d.wrong(text, "is a number, not a date; %s", writeDay)
	case !ok:
		d.wrong(text, "is not a date; %s", elseMeant(writeDay, meantClock(text, false)))
	case len(text) != len(time.DateOnly) && !midnight:
		d.wrong(text, "has a time in it, and a date is asked for; write %s", t.Format(time.DateOnly))
	case d.inYears(text, t, from):
		written := t.Format(time.DateOnly)
		c.Kind, c.Text = grid.DayCell, written
		return evidence.Date{Written: written, Day: evidence.DayOf(t), Place: d.kept(d.cell())}
	}
	return evidence.Date{}
}

// time reads the day and time of a cell.
func (d *decoder) time(c *grid.Cell, from era) evidence.Time {
	text := strings.TrimSpace(c.Text)
	t, ok := evidence.ParseClock(text)
	switch {
	case d.numeric(c):
		d.wrong(text, "is a number, not a time; %s", writeClock)
	case !ok:
		d.wrong(text, "is not a time; %s", elseMeant(writeClock, meantClock(text, true)))
	case len(text) == len(time.DateOnly):
		d.wrong(text, "is a date, and a time is asked for; %s", writeClock)
	case d.inYears(text, t, from):
		return d.instant(c, t)
	}
	return evidence.Time{}
}

func (d *decoder) instant(c *grid.Cell, clock time.Time) evidence.Time {
	first, last, ok := d.clocks.instants(clock, d.job.Zone)
	if !ok {
		d.wrong(c.Text, "never was in %s, where clocks went forward over it; write the time the clock showed",
			d.job.ZoneName)
		return evidence.Time{}
	}
	c.Kind = grid.TimeCell
	if text := c.Text; len(text) != len(minute) {
		c.Text = evidence.ClockText(clock)
	}
	return evidence.Time{Written: c.Text, First: first, Last: last, Place: d.kept(d.cell())}
}

// endOf is the instant that ends a day.
func (d *decoder) endOf(day evidence.Date) evidence.Time {
	if !day.Shown() {
		return evidence.Time{}
	}
	end := (day.Day + 1).Begins(d.job.Zone)
	return evidence.Time{Written: day.Written, First: end, Last: end, Place: day.Place}
}

func (d *decoder) numeric(c *grid.Cell) bool {
	return c.Kind == grid.NumberCell || c.Kind == sheet.Percent
}

// inYears faults a date or time that lies outside the years a record covers.
func (d *decoder) inYears(text string, t time.Time, from era) bool {
	const longest = 366 // days from the last day of installing to any reading
	switch late := d.installs.Shown() && int(evidence.DayOf(t)-d.installs.Day) > longest; {
	case from.toInstall && late:
		d.wrong(text, "is more than %d days after the last Install on, %s; is the year right?%s", longest,
			d.installs.Written, d.yearMeant(text, t))
	case t.Year() >= from.since && t.Year() <= lastYear:
		return true
	case from.since == 0:
		d.wrong(text, "is after %d; is the year right?%s", lastYear, d.yearMeant(text, t))
	default:
		d.wrong(text, "is outside the years %d to %d; is the year right?%s", from.since, lastYear, d.yearMeant(text, t))
	}
	return false
}

// yearMeant is the same day in the year up to the last Install on, to write
// instead, or nothing where there is none.
func (d *decoder) yearMeant(text string, t time.Time) string {
	if !d.installs.Shown() || len(text) < len("2026") {
		return ""
	}
	year := time.Unix(int64(d.installs.Day)*86400, 0).UTC().Year()
	const near = 60 // days after installing in which somebody may still read
	if evidence.DayOf(t.AddDate(year-t.Year(), 0, 0)) > d.installs.Day+near {
		year--
	}
	return fmt.Sprintf(" write %d%s", year, text[len("2026"):])
}

// clocks keeps the stretch of time in which the clocks of a zone were last
// found not to change.
type clocks struct {
	from, to time.Time // on the clock
	ahead    time.Duration
}

// near is how far from a change of the clocks a time may come twice or never.
const near = 26 * time.Hour

// instants are the first and the last time a clock showed that time; it never
// did where clocks went forward over it.
func (k *clocks) instants(clock time.Time, zone *time.Location) (first, last time.Time, ok bool) {
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
func (k *clocks) around(t time.Time) {
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
