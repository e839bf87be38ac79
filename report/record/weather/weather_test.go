package weather

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"firstboard/acclimate"
)

// weatherHead is the head of a weather file of an invented place.
const weatherHead = "LOCATION,Nowhere Fen,XX,YYY,invented,000000,45.0,-90.0,-6.0,200.0\n" +
	"DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\n" +
	"COMMENTS 1,invented\nCOMMENTS 2,invented\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n"

// weatherLines are the lines of a weather file: each hour is as warm in C as
// its month counts, with a dew point a degree below.
func weatherLines(year int) []string {
	all := strings.Split(strings.TrimSpace(weatherHead), "\n")
	for at := time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() == year; at = at.Add(time.Hour) {
		m := int(at.Month())
		all = append(all, weatherLine(year, m, at.Day(), at.Hour()+1, fmt.Sprintf("%d.0", m), fmt.Sprintf("%d.0", m-1)))
	}
	return all
}

func weatherLine(year, month, day, hour int, dry, dew string) string {
	return fmt.Sprintf("%d,%d,%d,%d,60,?9,%s,%s,93,101325%s", year, month, day, hour, dry, dew, strings.Repeat(",0", 25))
}

func parsed(lines []string, end string) (File, error) {
	return parse("fen.epw", []byte(strings.Join(lines, end)+end))
}

func TestWeatherFiles(t *testing.T) {
	for _, c := range []struct {
		name, end   string
		year, hours int
	}{
		{"a year", "\n", 2021, 8760},
		{"a leap year", "\n", 2024, 8784},
		{"lines ended as on another system", "\r\n", 2021, 8760},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, err := parsed(weatherLines(c.year), c.end)
			if err != nil {
				t.Fatal(err)
			}
			if len(w.Hours) != c.hours || w.Location != "LOCATION,Nowhere Fen,XX,YYY,invented,000000,45.0,-90.0,-6.0,200.0" {
				t.Errorf("%d hours at %q", len(w.Hours), w.Location)
			}
			first, last := acclimate.OutdoorHour{Month: 1, TempC: 1, DewC: 0}, acclimate.OutdoorHour{Month: 12, TempC: 12, DewC: 11}
			if w.Hours[0] != first || w.Hours[c.hours-1] != last {
				t.Errorf("the year runs from %+v to %+v", w.Hours[0], w.Hours[c.hours-1])
			}
		})
	}
}

// An older file names its place in ISO 8859-1.
func TestWeatherOfOldLetters(t *testing.T) {
	all := weatherLines(2021)
	all[0] = "LOCATION,Nowhere F\xe9n"
	if w, err := parsed(all, "\n"); err != nil || w.Location != "LOCATION,Nowhere Fén" {
		t.Errorf("%q, %v", w.Location, err)
	}
}

func TestMissingHoursAreLeftOut(t *testing.T) {
	for _, missing := range [][2]string{{"99.9", "5.0"}, {"5.0", "99.9"}, {"999", "999"}, {"", "5.0"}} {
		all := weatherLines(2021)
		all[8] = weatherLine(2021, 1, 1, 1, missing[0], missing[1])
		w, err := parsed(all, "\n")
		if want := (acclimate.OutdoorHour{Month: 1, Missing: true}); err != nil || w.Hours[0] != want {
			t.Errorf("%q reads as %+v, %v", missing, w.Hours, err)
		}
	}
}

// January has 744 hours: it may lack 74 of them, and not 75.
func TestAMonthMayLackATenthOfItsHours(t *testing.T) {
	for _, c := range []struct {
		lacks, from int
		want        string
	}{
		{74, 8, ""},
		{75, 8, "fen.epw line 9: January begins here and lacks the dry bulb or the dew point of 75 of its 744 hours, and at most a tenth may be missing; give another weather file"},
		{75, 8 + 8760 - 75, "fen.epw line 8025: December begins here and lacks the dry bulb or the dew point of 75 of its 744 hours, and at most a tenth may be missing; give another weather file"},
	} {
		all := weatherLines(2021)
		for i := c.from; i < c.from+c.lacks; i++ {
			all[i] = strings.NewReplacer(",1.0,0.0,", ",99.9,0.0,", ",12.0,11.0,", ",12.0,99.9,").Replace(all[i])
		}
		_, err := parsed(all, "\n")
		if got := errorText(err); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func errorText(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

func TestWeatherFaults(t *testing.T) {
	row := func(line int, text string) func([]string) []string {
		return func(all []string) []string { all[line-1] = text; return all }
	}
	for _, c := range []struct {
		name  string
		spoil func([]string) []string
		want  string
	}{
		{
			"no head", func(all []string) []string { return all[8:] },
			`fen.epw line 1: "2021,1,1,1,60,?9,1.0,0.0,93,101325,0,0,0,0,0,0,0,0,0,0,0,0,0..." stands where the head's line LOCATION is due`,
		},
		{
			"a line of the head missing", func(all []string) []string { return append(all[:4:4], all[5:]...) },
			`fen.epw line 5: "COMMENTS 1,invented" stands where the head's line HOLIDAYS/DAYLIGHT SAVING is due`,
		},
		{
			"no end of the head", func(all []string) []string { return append(all[:7:7], all[8:]...) },
			"stands where the head's line DATA PERIODS is due",
		},
		{"nothing at all", func([]string) []string { return nil }, `fen.epw line 1: "" stands where the head's line LOCATION is due`},
		{"cut in the head", func(all []string) []string { return all[:5] }, "fen.epw line 5: the file ends in its head"},
		{"cut after the head", func(all []string) []string { return all[:8] }, "fen.epw line 8: no hour follows the head"},
		{"a control character", row(1, "LOCATION,Nowhere\x01"), "fen.epw line 1: holds a control character"},
		{"an endless place", row(1, "LOCATION,"+strings.Repeat("x", 1000)), "fen.epw line 1: names a place in more than 1000 letters"},
		{"too few columns in the first row", row(9, "2021,1,1,1,60,?9,1.0,0.0"), "fen.epw line 9: has 8 columns where 23 are due"},
		{
			"too few columns later", row(10, strings.TrimSuffix(weatherLine(2021, 1, 1, 2, "1.0", "0.0"), ",0")),
			"fen.epw line 10: has 34 columns where 35 are due",
		},
		{"a blank line", row(10, ""), "fen.epw line 10: has 1 columns where 35 are due"},
		{
			"a month that is no number", row(9, strings.Replace(weatherLine(2021, 1, 1, 1, "1", "0"), ",1,1,1,", ",x,1,1,", 1)),
			`fen.epw line 9: month "x" is not a whole number`,
		},
		{"a month too many", row(9, weatherLine(2021, 13, 1, 1, "1", "0")), "fen.epw line 9: month 13 is outside 1 to 12"},
		{"a day too many", row(9, weatherLine(2021, 1, 32, 1, "1", "0")), "fen.epw line 9: day 32 is outside 1 to 31"},
		{"an hour counted from zero", row(9, weatherLine(2021, 1, 1, 0, "1", "0")), "fen.epw line 9: hour 0 is outside 1 to 24"},
		{"a dry bulb that is no number", row(9, weatherLine(2021, 1, 1, 1, "1;0", "0")), `fen.epw line 9: dry bulb "1;0" is not a number`},
		{
			"a dew point that is no number", row(9, weatherLine(2021, 1, 1, 1, "1", "dry")),
			`fen.epw line 9: dew point "dry" is not a number`,
		},
		{"a dry bulb too high", row(9, weatherLine(2021, 1, 1, 1, "70.0", "0")), `fen.epw line 9: dry bulb "70.0" is outside -70 to 70 C`},
		{
			"a dry bulb just not missing", row(9, weatherLine(2021, 1, 1, 1, "99.8", "0")),
			`fen.epw line 9: dry bulb "99.8" is outside -70 to 70 C`,
		},
		{"a dew point too low", row(9, weatherLine(2021, 1, 1, 1, "1", "-70")), `fen.epw line 9: dew point "-70" is outside -70 to 70 C`},
		{"not a number at all", row(9, weatherLine(2021, 1, 1, 1, "NaN", "0")), `fen.epw line 9: dry bulb "NaN" is outside -70 to 70 C`},
		{
			"a year that begins late", func(all []string) []string { return append(all[:8:8], all[9:]...) },
			"fen.epw line 9: the hours begin with January 1 hour 2",
		},
		{
			"an hour left out", func(all []string) []string { return append(all[:20:20], all[21:]...) },
			"fen.epw line 21: January 1 hour 14 follows January 1 hour 12",
		},
		{
			"a day left out", func(all []string) []string { return append(all[:32:32], all[56:]...) },
			"fen.epw line 33: January 3 hour 1 follows January 1 hour 24",
		},
		{
			"two rows an hour", func(all []string) []string { return append(all[:9:9], all[8:]...) },
			"fen.epw line 10: January 1 hour 1 follows January 1 hour 1",
		},
		{
			"a year that ends early", func(all []string) []string { return all[:len(all)-1] },
			"fen.epw line 8767: the hours end with December 31 hour 23, 8759 of at least 8760",
		},
		{
			"a second year", func(all []string) []string { return append(all, all[8]) },
			"fen.epw line 8769: January 1 hour 1 follows December 31 hour 24",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := parsed(c.spoil(weatherLines(2021)), "\n")
			if got := errorText(err); !strings.Contains(got, c.want) || !strings.HasPrefix(got, "fen.epw line ") ||
				!strings.Contains(got, ";") {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// After February 29 comes March 1, never a day later.
func TestNoDayIsSkippedAfterALeapDay(t *testing.T) {
	all := weatherLines(2024)
	from := 8 + 60*24
	_, err := parsed(append(all[:from:from], all[from+24:]...), "\n")
	if want := "fen.epw line 1449: March 2 hour 1 follows February 29 hour 24"; !strings.HasPrefix(errorText(err), want) {
		t.Errorf("got %v, want %q", err, want)
	}
}

func TestFilesThatAreNoWeather(t *testing.T) {
	dir := t.TempDir()
	big := filepath.Join(dir, "big.epw")
	if err := os.WriteFile(big, make([]byte, 16<<20+1), 0o644); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		filepath.Join(dir, "none.epw"): "none.epw: there is no such file",
		dir:                            "is not a regular file",
		big:                            "big.epw: is over 16 MB",
	} {
		if _, err := Read(path); !strings.Contains(errorText(err), want) || strings.Contains(errorText(err), dir) {
			t.Errorf("got %v, want %q", err, want)
		}
	}
}

// Whatever a line of a file holds, the file is a whole year or an error that
// names its line.
func FuzzWeather(f *testing.F) {
	f.Add(1, "LOCATION,F\xe9n\r")
	f.Add(8, "DATA PERIODS,1,1")
	f.Add(9, weatherLine(2021, 1, 1, 1, "-1.5", "99.9"))
	f.Add(8768, weatherLine(2021, 12, 31, 24, "", "1e9"))
	f.Add(1424, weatherLine(2021, 2, 29, 24, "x", "-71"))
	all := weatherLines(2021)
	f.Fuzz(func(t *testing.T, line int, text string) {
		if line < 1 || line > len(all) {
			line = 9
		}
		lines := append([]string{}, all...)
		lines[line-1] = text
		w, err := parsed(lines[:max(line, len(text)%2*len(lines))], "\n")
		switch {
		case err != nil && !strings.HasPrefix(err.Error(), "fen.epw line "):
			t.Errorf("an error without its line: %v", err)
		case err == nil && (len(w.Hours) < 8760 || w.Location == ""):
			t.Errorf("%d hours at %q", len(w.Hours), w.Location)
		}
		for _, h := range w.Hours {
			if h.Month < 1 || h.Month > 12 || !(h.TempC > -70 && h.TempC < 70 && h.DewC > -70 && h.DewC < 70) {
				t.Fatalf("an hour reads %+v", h)
			}
		}
	})
}
