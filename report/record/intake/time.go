package intake

import (
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// dateOrder is a set of orders that the three numbers of a date may stand in.
type dateOrder uint8

const (
	yearFirst dateOrder = 1 << iota
	dayFirst
	monthFirst
)

func (o dateOrder) String() string {
	return map[dateOrder]string{yearFirst: "year first", dayFirst: "day first", monthFirst: "month first"}[o]
}

// orders are the single orders of a set.
func (o dateOrder) orders() []dateOrder {
	return lists.Where([]dateOrder{yearFirst, dayFirst, monthFirst}, func(one dateOrder) bool { return o&one != 0 })
}

// stamp is the time that a cell of an export holds, as it was written.
type stamp struct {
	style
	date  [3]int        // its numbers, in the order they stand in
	fits  dateOrder     // the orders in which they are a day
	clock time.Duration // since midnight
	ahead time.Duration // of UTC, where the time states its zone
	epoch time.Time     // in UTC, where it is counted from 1970
	cut   bool          // a part of a second was left out
}

// style is how a time is written; one file has one.
type style struct {
	counted, dated, timed bool // from 1970; holds a date; holds a time of day
	half                  bool // of the day: AM or PM
	zoned                 bool // states its zone
}

// parseStamp reads a day, a time of day, or both.
func parseStamp(s string) (stamp, bool) {
	if t, ok := parseEpoch(s); ok {
		return stamp{style: style{counted: true, dated: true, timed: true}, epoch: t}, true
	}
	var st stamp
	rest := st.readDate(s)
	if st.dated {
		if rest == "" {
			return st, true
		}
		apart := strings.TrimLeft(rest, " ,")
		if apart == rest && rest[0] == 'T' {
			apart = rest[1:]
		}
		if apart == rest {
			return st, false
		}
		rest = apart
	}
	return st, st.readClock(rest)
}

// parseEpoch reads seconds (10 digits) or milliseconds (13) since 1970 UTC.
func parseEpoch(s string) (time.Time, bool) {
	whole, part, point := strings.Cut(s, ".")
	if point && !evidence.Digits(part) || !evidence.Digits(whole) {
		return time.Time{}, false
	}
	n, _ := leading(whole, 13)
	switch len(whole) {
	case len("1772611200"):
		return time.Unix(int64(n), 0).UTC(), true
	case len("1772611200000"):
		return time.UnixMilli(int64(n)).UTC(), !point
	}
	return time.Time{}, false
}

// leading is the number at the head of s, of so many digits at most, and the
// number of its digits.
func leading(s string, most int) (n, length int) {
	for length < len(s) && length < most && s[length] >= '0' && s[length] <= '9' {
		n = n*10 + int(s[length]-'0')
		length++
	}
	return n, length
}

// readDate reads three numbers parted by one sign, and gives what follows.
// Where there are none, dated stays false and nothing is taken.
func (st *stamp) readDate(s string) (rest string) {
	var long [3]int
	rest = s
	var sign byte
	for i := range st.date {
		st.date[i], long[i] = leading(rest, 4)
		rest = rest[long[i]:]
		if long[i] == 0 {
			return s
		}
		if i == 2 {
			break
		}
		if rest == "" || !strings.Contains("-/.", rest[:1]) || i == 1 && rest[0] != sign {
			return s
		}
		sign, rest = rest[0], rest[1:]
	}
	for _, one := range (yearFirst | dayFirst | monthFirst).orders() {
		if laidOut(long, one) && isCalendarDay(st.day(one)) {
			st.fits |= one
		}
	}
	if st.dated = st.fits != 0; !st.dated {
		return s
	}
	return rest
}

// laidOut says whether numbers of these lengths can stand in an order: a year
// has four digits or two, months and days one or two.
func laidOut(long [3]int, o dateOrder) bool {
	year, others := long[2], max(long[0], long[1])
	if o == yearFirst {
		year, others = long[0], max(long[1], long[2])
	}
	return (year == 4 || year == 2) && others <= 2
}

// day is the date in an order, at midnight; a year of two digits is of this
// century.
func (st stamp) day(o dateOrder) (year, month, day int) {
	switch o {
	case yearFirst:
		year, month, day = st.date[0], st.date[1], st.date[2]
	case dayFirst:
		year, month, day = st.date[2], st.date[1], st.date[0]
	default:
		year, month, day = st.date[2], st.date[0], st.date[1]
	}
	if year < 100 {
		year += 2000
	}
	return year, month, day
}

func isCalendarDay(year, month, day int) bool {
	t := time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	return t.Day() == day && int(t.Month()) == month
}

// readClock reads a time of day to its end: hours and minutes, seconds, AM or
// PM, a zone.
func (st *stamp) readClock(s string) bool {
	hour, n := leading(s, 2)
	if n == 0 || !strings.HasPrefix(s[n:], ":") {
		return false
	}
	minute, second := 0, 0
	s = s[n+1:]
	if minute, n = leading(s, 2); n != 2 {
		return false
	}
	if s = s[n:]; strings.HasPrefix(s, ":") {
		if second, n = leading(s[1:], 2); n != 2 {
			return false
		}
		s = st.fraction(s[1+n:])
	}
	s, ok := st.halfDay(s, &hour)
	if !ok || hour > 23 || minute > 59 || second > 59 || !st.zone(s) {
		return false
	}
	st.timed = true
	st.clock = time.Duration(hour*3600+minute*60+second) * time.Second
	return true
}

// fraction passes over a part of a second, which a record does not keep.
func (st *stamp) fraction(s string) string {
	if s == "" || s[0] != '.' && s[0] != ',' {
		return s
	}
	_, n := leading(s[1:], 9)
	if n == 0 {
		return s
	}
	st.cut = strings.Trim(s[1:1+n], "0") != ""
	return s[1+n:]
}

// halfDay reads AM or PM and sets the hour by it.
func (st *stamp) halfDay(s string, hour *int) (rest string, ok bool) {
	mark := strings.ToUpper(strings.ReplaceAll(strings.TrimSpace(s), ".", ""))
	if mark != "AM" && mark != "PM" {
		return s, true
	}
	st.half = true
	if *hour < 1 || *hour > 12 {
		return "", false
	}
	*hour %= 12
	if mark == "PM" {
		*hour += 12
	}
	return "", true
}

// zone reads Z, UTC, GMT, or hours and minutes ahead of UTC, or nothing.
func (st *stamp) zone(s string) bool {
	if s = strings.TrimSpace(s); s == "" {
		return true
	}
	ahead, ok := aheadOfUTC(s)
	st.zoned, st.ahead = true, ahead
	return ok
}

// aheadOfUTC is how far a zone such as Z, UTC, GMT-06:00 or +0100 is ahead.
func aheadOfUTC(s string) (time.Duration, bool) {
	s = strings.ToUpper(s)
	for _, utc := range []string{"UTC", "GMT", "Z"} {
		if rest, ok := strings.CutPrefix(s, utc); ok {
			if rest == "" {
				return 0, true
			}
			s = rest
			break
		}
	}
	if s == "" || s[0] != '+' && s[0] != '-' {
		return 0, false
	}
	hours, n := leading(s[1:], 2)
	if rest := strings.TrimPrefix(s[1+n:], ":"); n > 0 && rest != "" {
		minutes, m := leading(rest, 2)
		if m != 2 || rest[m:] != "" || minutes > 59 {
			return 0, false
		}
		hours = hours*60 + minutes
	} else {
		hours *= 60
	}
	ahead := time.Duration(hours) * time.Minute
	return lists.If(s[0] == '-', -ahead, ahead), n > 0 && hours <= 14*60
}
