package intake

import (
	"fmt"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// say puts into words how the file was read and what is left to do.
func (x *arrival) say() {
	x.guess("text: %s", x.says)
	x.guess("separator: %s", separatorName(x.sep))
	x.guess("header: line %d", x.header)
	for _, t := range x.ties {
		if t.at >= 0 {
			x.guess("%s: %s", t.Name, x.sayTie(t))
		}
	}
	if x.look.comma.line > 0 {
		x.guess("numbers: decimal comma, as in %s", x.look.comma)
	}
	if unused := x.where(func(at int, _ string) bool { return !x.taken(at) }); len(unused) > 0 {
		quoted := lists.Each(unused, func(at int) string { return evidence.Quote(x.names[at]) })
		x.guess("not used: %s", strings.Join(quoted, ", "))
	}
	x.sayConverted()
	x.sayToFill()
}

func (x *arrival) guess(format string, args ...any) {
	x.out.Guesses = append(x.out.Guesses, fmt.Sprintf(format, args...))
}

func (x *arrival) sayTie(t tie) string {
	if isTime(t.Column) {
		return x.sayTime(t)
	}
	return "column " + evidence.Quote(x.names[t.at]) +
		lists.If(len(t.Units) > 0, fmt.Sprintf(", in %s (%s)", t.unit.Short(), t.how), "")
}

// sayTime is how a column of times is read.
func (x *arrival) sayTime(t tie) string {
	says := "column " + evidence.Quote(x.names[t.at])
	if t.clock >= 0 {
		says = "columns " + evidence.Quote(x.names[t.at]) + " and " + evidence.Quote(x.names[t.clock])
	}
	k := x.look
	says += lists.If(k.style.counted, ", counted from 1970 in UTC", ", dates "+x.order.String())
	says += lists.If(k.style.half, ", with AM and PM", "")
	zoned := t.zone != nil || k.style.zoned || k.style.counted
	return says + lists.If(zoned, ", brought to "+x.job.ZoneName, "") + ", such as " + k.telling().String()
}

// sayConverted tells what is not as it was written.
func (x *arrival) sayConverted() {
	for _, t := range x.ties {
		if to := x.goal.units[t.head]; t.unit != to {
			x.guess("converted: %s from %s to %s, the unit of the record's table", t.Name, t.unit.Short(), to.Short())
		}
	}
	if x.rounded > 0 {
		x.guess("rounded: %s, to 6 places, where the converted number does not end",
			evidence.Count(x.rounded, "number", "numbers"))
	}
	if x.cut > 0 {
		x.guess("left out: parts of a second in %s", evidence.Count(x.cut, "time", "times"))
	}
}

// sayToFill tells which starred cells are blank.
func (x *arrival) sayToFill() {
	for i, n := range x.blanks {
		switch {
		case n == 0:
		case n == x.out.Added:
			x.out.ToFill = append(x.out.ToFill, x.goal.table.Header[x.goal.at[i]])
		default:
			x.out.ToFill = append(x.out.ToFill,
				fmt.Sprintf("%s in %s", x.goal.table.Header[x.goal.at[i]], evidence.Count(n, "row", "rows")))
		}
	}
}
