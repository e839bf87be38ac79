package weather

import (
	"bytes"
	"cmp"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/record/sheet"
	"firstboard/report/untrusted"
)

// File is an open weather file (EPW): a year of hours at one place.
type File struct {
	Name     string // base name of the file, never a path
	Location string // the file's own line on its place, as it stands there
	Hours    []acclimate.OutdoorHour
}

// Read reads the weather file at path: eight lines of head, LOCATION to
// DATA PERIODS, and a row for every hour of one year in order, leap year or
// not. An error leads with the file and the line.
//
// An hour whose dry bulb or dew point is missing (99.9 and above, or blank) is
// kept as missing; a month that lacks more than a tenth of its hours is an
// error. Of each row month, day, hour, dry bulb and dew point are read.
//
// Source: the weather file data dictionary of EnergyPlus (columns, ranges and
// marks of missing values read there; the names of the head lines and that an
// hour is counted by its end, 1 to 24, recalled).
func Read(path string) (File, error) {
	name := filepath.Base(path)
	data, err := untrusted.Read(path, untrusted.Wanted{
		Give: "a weather file (.epw)", Most: 16 << 20, Smaller: "give a weather file (.epw), which is about 2 MB",
	})
	if err != nil {
		return File{}, err
	}
	return parse(name, data)
}

func parse(name string, data []byte) (File, error) {
	r := &weatherRows{name: name}
	text := strings.TrimRight(letters(bytes.TrimPrefix(data, []byte(sheet.ByteOrderMark))), " \t\r\n")
	for line := range strings.SplitSeq(text, "\n") {
		r.line++
		if err := r.read(strings.TrimSuffix(line, "\r")); err != nil {
			return File{}, err
		}
	}
	if err := r.end(); err != nil {
		return File{}, err
	}
	return File{Name: name, Location: r.location, Hours: r.hours}, nil
}

// letters are the letters of a text in UTF-8, or else in ISO 8859-1, in which
// older weather files name their places.
func letters(data []byte) string {
	if utf8.Valid(data) {
		return string(data)
	}
	all, _ := charmap.ISO8859_1.NewDecoder().Bytes(data) // which has a letter for every byte
	return string(all)
}

// heads are the words that the lines of the head begin with, in their order.
func heads() []string {
	return []string{
		"LOCATION", "DESIGN CONDITIONS", "TYPICAL/EXTREME PERIODS", "GROUND TEMPERATURES",
		"HOLIDAYS/DAYLIGHT SAVING", "COMMENTS 1", "COMMENTS 2", "DATA PERIODS",
	}
}

func (r *weatherRows) head(line string) error {
	want := heads()[r.line-1]
	if !strings.HasPrefix(strings.ToUpper(line), want) {
		return r.fault("%s", evidence.Saying(line,
			"stands where the head's line %s is due; give the weather file whole, its head of %d lines from LOCATION to DATA PERIODS included", want, len(heads())))
	}
	const longest = 1000
	switch {
	case r.line > 1:
	case strings.ContainsFunc(line, unicode.IsControl):
		return r.fault("holds a control character; save the weather file as UTF-8 text")
	case utf8.RuneCountInString(line) > longest:
		return r.fault("names a place in more than %d letters; give the weather file as it was published", longest)
	default:
		r.location = strings.TrimSpace(line)
	}
	return nil
}

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
