package weather

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// weatherRows reads the lines of a weather file one after another.
type weatherRows struct {
	name     string // of the file
	line     int    // from 1
	location string
	columns  int // of the first row
	hours    []acclimate.OutdoorHour
	last     weatherHour
	month    monthCount
}

// weatherHour is when a row is: the hour that ends at that number of hours.
type weatherHour struct {
	month     time.Month
	day, hour int
}

func (h weatherHour) String() string { return fmt.Sprintf("%s %d hour %d", h.month, h.day, h.hour) }

// monthCount counts the hours of the month in hand.
type monthCount struct {
	month                time.Month
	line, hours, missing int
}

func (r *weatherRows) fault(format string, args ...any) error {
	return fmt.Errorf("%s line %d: %s", r.name, r.line, fmt.Sprintf(format, args...))
}

// The columns that are read, from 0, and the fewest that a row may have: down
// to the sky cover.
const (
	monthColumn   = 1
	dayColumn     = 2
	hourColumn    = 3
	dryBulb       = 6
	dewPoint      = 7
	fewestColumns = 23
)

func (r *weatherRows) read(line string) error {
	if r.line <= len(heads()) {
		return r.head(line)
	}
	columns := strings.Count(line, ",") + 1
	if r.columns == 0 {
		r.columns = max(columns, fewestColumns)
	}
	if columns < r.columns {
		return r.fault("has %d columns where %d are due; the row is cut short, so give the weather file whole",
			columns, r.columns)
	}
	fields := strings.SplitN(line, ",", fewestColumns+1) // the rest is not read
	if err := r.inOrder(fields); err != nil {
		return err
	}
	return r.add(fields)
}

// add reads the air of a row.
func (r *weatherRows) add(fields []string) error {
	temp, hasTemp, noTemp := r.degrees(fields[dryBulb], "dry bulb")
	dew, hasDew, noDew := r.degrees(fields[dewPoint], "dew point")
	if err := cmp.Or(noTemp, noDew); err != nil {
		return err
	}
	h := acclimate.OutdoorHour{Month: r.last.month, Missing: !hasTemp || !hasDew}
	r.month.hours++
	if h.Missing {
		r.month.missing++
	} else {
		h.TempC, h.DewC = temp, dew
	}
	r.hours = append(r.hours, h)
	return nil
}

// degrees reads a temperature in C; shown says that it is not missing.
func (r *weatherRows) degrees(field, what string) (x float64, shown bool, err error) {
	const most, missing = 70, 99.9
	field = strings.TrimSpace(field)
	if field == "" {
		return 0, false, nil
	}
	x, err = strconv.ParseFloat(field, 64)
	switch {
	case err != nil:
		return 0, false, r.fault("%s %s", what,
			evidence.Saying(field, "is not a number; give the weather file as it was published"))
	case x >= missing:
		return 0, false, nil
	case !(x > -most && x < most):
		return 0, false, r.fault("%s %s", what,
			evidence.Saying(field, "is outside -%d to %d C; give the weather file as it was published", most, most))
	}
	return x, true, nil
}

// inOrder reads when a row is, which must be the hour after the row before.
func (r *weatherRows) inOrder(fields []string) error {
	var at [3]int
	for i, column := range []int{monthColumn, dayColumn, hourColumn} {
		what := []string{"month", "day", "hour"}[i]
		n, err := strconv.Atoi(strings.TrimSpace(fields[column]))
		if err != nil {
			return r.fault("%s %s", what, evidence.Saying(fields[column],
				"is not a whole number; give the weather file as it was published"))
		}
		if most := []int{12, 31, 24}[i]; n < 1 || n > most {
			return r.fault("%s %d is outside 1 to %d; give the weather file as it was published", what, n, most)
		}
		at[i] = n
	}
	now := weatherHour{time.Month(at[0]), at[1], at[2]}
	if !r.last.leadsTo(now) {
		if r.last == (weatherHour{}) {
			return r.fault("the hours begin with %s; give a weather file of one year, from January 1 hour 1", now)
		}
		return r.fault("%s follows %s; give the weather file whole and in order, one row an hour", now, r.last)
	}
	begins := now.month != r.last.month
	r.last = now
	if begins {
		return r.turn()
	}
	return nil
}

// leadsTo says whether next is the hour after h, in a leap year or another.
func (h weatherHour) leadsTo(next weatherHour) bool {
	const hours, anyLeapYear = 24, 2000
	if h == (weatherHour{}) {
		return next == weatherHour{time.January, 1, 1}
	}
	if h.hour < hours {
		return next == weatherHour{h.month, h.day, h.hour + 1}
	}
	follows := func(year int) bool {
		day := time.Date(year, h.month, h.day, 0, 0, 0, 0, time.UTC)
		after := day.AddDate(0, 0, 1)
		return day.Day() == h.day && after.Year() == year && next == weatherHour{after.Month(), after.Day(), 1}
	}
	return follows(anyLeapYear) || follows(anyLeapYear+1)
}

// turn ends the month in hand and begins the next.
func (r *weatherRows) turn() error {
	const tenth = 10
	if m := r.month; m.missing*tenth > m.hours {
		return fmt.Errorf("%s line %d: %s begins here and lacks the dry bulb or the dew point of %d of its %d hours, and at most a tenth may be missing; give another weather file", r.name, m.line, m.month, m.missing, m.hours)
	}
	r.month = monthCount{month: r.last.month, line: r.line}
	return nil
}

// end closes the year.
func (r *weatherRows) end() error {
	switch last := (weatherHour{time.December, 31, 24}); {
	case r.line < len(heads()):
		return r.fault("the file ends in its head; give the weather file whole")
	case r.last == (weatherHour{}):
		return r.fault("no hour follows the head; give the weather file whole")
	case r.last != last:
		return r.fault("the hours end with %s, %d of at least 8760; give a weather file of one whole year", r.last,
			len(r.hours))
	}
	return r.turn()
}
