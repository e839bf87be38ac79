package evidence

import (
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// Quote is what somebody typed, on one line and not too long of it.
func Quote(s string) string {
	const longest = 60
	if utf8.RuneCountInString(s) > longest {
		s = string([]rune(s)[:longest]) + "..."
	}
	return strconv.Quote(s)
}

// Saying is what is wrong with what was typed, in words.
func Saying(typed, format string, args ...any) string {
	return Quote(typed) + " " + fmt.Sprintf(format, args...)
}

// Either lists what may be written: in, mm or m.
func Either(choices []string) string {
	n := len(choices)
	switch n {
	case 0:
		return ""
	case 1:
		return choices[0]
	}
	return strings.Join(choices[:n-1], ", ") + " or " + choices[n-1]
}

// Plain says whether s is a plain decimal: digits, with a minus before them
// and a point among them at most.
func Plain(s string) bool {
	whole, part, point := strings.Cut(strings.TrimPrefix(s, "-"), ".")
	return Digits(whole) && (!point || Digits(part))
}

// Digits says whether s is digits and nothing else.
func Digits(s string) bool { return s != "" && digits(s) == len(s) }

// ClockText is a clock time as a record writes it.
func ClockText(t time.Time) string {
	if t.Second() != 0 {
		return t.Format(time.DateTime)
	}
	return t.Format("2006-01-02 15:04")
}

// ParseClock reads a day, or a day and a time, as a record writes them, as a
// clock time in UTC.
func ParseClock(s string) (time.Time, bool) {
	var at [6]int // year, month, day, hour, minute, second
	layout := "0000-00-00 00:00:00"
	if len(s) != len("2026-03-04") && len(s) != len("2026-03-04 08:30") && len(s) != len(layout) {
		return time.Time{}, false
	}
	part := 0
	for i := range len(s) {
		switch digit := s[i] - '0'; {
		case layout[i] == '0' && digit <= 9:
			at[part] = at[part]*10 + int(digit)
		case layout[i] != '0' && s[i] == layout[i]:
			part++
		default:
			return time.Time{}, false
		}
	}
	// A month, a day or an hour too many makes another day.
	t := time.Date(at[0], time.Month(at[1]), at[2], at[3], at[4], at[5], 0, time.UTC)
	y, m, d := t.Date()
	return t, y == at[0] && int(m) == at[1] && d == at[2] && at[4] < 60 && at[5] < 60
}
