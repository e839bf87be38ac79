package intake

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/record"
)

// timeKind is what the cells of a column are as times.
type timeKind int

const (
	noTime timeKind = iota
	dayAndClock
	dayAlone
	clockAlone
)

// guessTime ties the column of times, or the columns of days and times of day.
func (b *matcher) guessTime() error {
	head := slices.IndexFunc(b.heads, func(c record.Column) bool { return c.Name == "Read at" })
	at := map[timeKind][]int{}
	for i := range b.names {
		if k := b.timeKind(i); k != noTime && !b.taken(i) && !b.offered(i) {
			at[k] = append(at[k], i)
		}
	}
	t := tie{Column: b.heads[head], head: head, clock: -1}
	whole, days, clocks := at[dayAndClock], at[dayAlone], at[clockAlone]
	switch {
	case len(whole) == 1:
		t.at = whole[0]
	case len(whole) > 1:
		return b.several(record.Column{Name: "time"}, whole)
	case len(days) == 1 && len(clocks) == 1:
		t.at, t.clock = days[0], clocks[0]
	case len(days) > 1:
		return b.several(record.Column{Name: "date"}, days)
	case len(clocks) > 1:
		return b.several(record.Column{Name: "time"}, clocks)
	case len(days) == 1:
		return b.fail(days[0], "holds days, and no column holds a time of day; export the time of each reading as well")
	default:
		return fmt.Errorf(`%s line %d: no column holds times; add --column "time=..." with the file's column`, b.file,
			b.header)
	}
	b.ties = append(b.ties, t)
	return nil
}

// offered says whether a column's name is that of another time of the table.
func (b *matcher) offered(at int) bool {
	return slices.ContainsFunc(b.heads, func(c record.Column) bool {
		return isTime(c) && c.Name != "Read at" && fits(c, b.names[at])
	})
}

// timeKind is what most cells of a column are. Whole numbers are times only
// where the column's name says so: a serial number has as many digits.
func (b *matcher) timeKind(at int) timeKind {
	kinds := map[timeKind]int{}
	filled := 0
	for _, row := range b.sample {
		if at >= len(row) || row[at] == "" {
			continue
		}
		filled++
		st, ok := parseStamp(row[at])
		switch {
		case !ok, st.counted && !namesTime(b.names[at]):
		case st.dated && st.timed:
			kinds[dayAndClock]++
		case st.dated:
			kinds[dayAlone]++
		default:
			kinds[clockAlone]++
		}
	}
	for k, n := range kinds {
		if 2*n > filled {
			return k
		}
	}
	return noTime
}

func namesTime(name string) bool {
	return slices.ContainsFunc([]string{"time", "date", "epoch", "unix"}, func(word string) bool {
		return strings.Contains(strings.ToLower(name), word)
	})
}
