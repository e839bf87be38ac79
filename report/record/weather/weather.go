package weather

import (
	"bytes"
	"path/filepath"
	"strings"
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
