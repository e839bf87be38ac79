package record

import (
	"fmt"
	"strings"

	"firstboard/report/evidence"
)

// say puts into words how the file was read and what is left to do.
func (x *exportRows) say() {
	x.guess("text: %s", x.says)
	x.guess("separator: %s", separatorName(x.sep))
	x.guess("header: line %d", x.header)
	for _, t := range x.ties {
		if t.at >= 0 {
			x.guess("%s: %s", t.name, x.sayTie(t))
		}
	}
	if x.look.comma.line > 0 {
		x.guess("numbers: decimal comma, as in %s", x.look.comma)
	}
	var unused []string
	for i, name := range x.names {
		if name != "" && !x.taken(i) {
			unused = append(unused, quote(name))
		}
	}
	if len(unused) > 0 {
		x.guess("not used: %s", strings.Join(unused, ", "))
	}
	x.sayConverted()
	x.sayToFill()
}

func (x *exportRows) guess(format string, args ...any) {
	x.out.Guesses = append(x.out.Guesses, fmt.Sprintf(format, args...))
}

func (x *exportRows) sayTie(t tie) string {
	if isTime(t.column) {
		return x.sayTime(t)
	}
	says := "column " + quote(x.names[t.at])
	if len(t.units) > 0 {
		says += fmt.Sprintf(", in %s (%s)", bracket(t.unit), t.how)
	}
	return says
}

// sayTime is how a column of times is read.
func (x *exportRows) sayTime(t tie) string {
	says := "column " + quote(x.names[t.at])
	if t.clock >= 0 {
		says = "columns " + quote(x.names[t.at]) + " and " + quote(x.names[t.clock])
	}
	k := x.look
	switch {
	case k.style.counted:
		says += ", counted from 1970 in UTC"
	default:
		says += ", dates " + x.order.String()
	}
	if k.style.half {
		says += ", with AM and PM"
	}
	if t.zone != nil || k.style.zoned || k.style.counted {
		says += ", brought to " + x.d.job.ZoneName
	}
	return says + ", such as " + k.telling().String()
}

// sayConverted tells what is not as it was written.
func (x *exportRows) sayConverted() {
	for _, t := range x.ties {
		if to := x.goal.units[t.head]; t.unit != to {
			x.guess("converted: %s from %s to %s, the unit of the record's table", t.name, bracket(t.unit), bracket(to))
		}
	}
	if x.rounded > 0 {
		x.guess("rounded: %s, to 6 places, where the converted number does not end", evidence.Count(x.rounded, "number", "numbers"))
	}
	if x.cut > 0 {
		x.guess("left out: parts of a second in %s", evidence.Count(x.cut, "time", "times"))
	}
}

// sayToFill tells which starred cells are blank.
func (x *exportRows) sayToFill() {
	for i, n := range x.blanks {
		switch {
		case n == 0:
		case n == x.out.Added:
			x.out.ToFill = append(x.out.ToFill, x.goal.table.Header[x.goal.at[i]])
		default:
			x.out.ToFill = append(x.out.ToFill, fmt.Sprintf("%s in %s", x.goal.table.Header[x.goal.at[i]], evidence.Count(n, "row", "rows")))
		}
	}
}
