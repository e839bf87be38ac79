package cell

import (
	"fmt"
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
