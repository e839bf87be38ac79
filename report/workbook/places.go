package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"firstboard/report/evidence"
)

// located is a place that can tell the table of the record it lies in, and
// the number of its row there.
type located interface {
	Row() (table string, number int)
}

// sources lists the places behind a finding, the worst reading's first, and
// leads to that row.
func sources(places []evidence.Place, t titles, width float64) cell {
	const most, few = 16, 12
	all, more := t.runs(places), ""
	if len(all) > most {
		all, more = all[:few], fmt.Sprintf(", and more: %d rows in all", len(places))
	}
	c := text(words(all) + more)
	if len(places) > 0 {
		c = t.lead(c, places[0], width)
	}
	return c
}

// lead makes a cell lead to a place, where that place is a row of the record.
func (t titles) lead(c cell, p evidence.Place, width float64) cell {
	if l, ok := p.(located); ok {
		return c.leading(t.at(l.Row()), width)
	}
	return c
}

// leading makes a cell lead somewhere. Some spreadsheets never break a linked
// text, so one that is longer than a line of its column leads nowhere.
func (c cell) leading(to string, width float64) cell {
	s, _ := c.value.(string)
	if to != "" && lines(s, c.look.room(width)) == 1 {
		c.link, c.look.link = to, true
	}
	return c
}

// place is a place in words. A row of the record's own file needs no name of
// that file: its sheet stands in this one.
func (t titles) place(p evidence.Place) string { return strings.TrimPrefix(p.String(), t.record+" ") }

// run is rows of one table that follow one another, or a place of another
// kind by its words alone.
type run struct {
	table       string
	first, last int // 0 for a place that is no row
}

// runOf is the run of one place in words: slab-rh.csv row 9.
func runOf(words string) run {
	at := strings.LastIndex(words, rowWord)
	if at < 0 {
		return run{table: words}
	}
	n, err := strconv.Atoi(words[at+len(rowWord):])
	if err != nil {
		return run{table: words}
	}
	return run{words[:at], n, n}
}

const rowWord = " row "

// runs gathers places in their order.
func (t titles) runs(places []evidence.Place) []run {
	var all []run
	for _, p := range places {
		r := runOf(t.place(p))
		if n := len(all); n > 0 && r.first > 0 && all[n-1].table == r.table && all[n-1].last+1 == r.first {
			all[n-1].last = r.last
			continue
		}
		all = append(all, r)
	}
	return all
}

// words are runs in words, each table named once for those that stand
// together.
func words(all []run) string {
	var parts []string
	for len(all) > 0 {
		n := 1
		for n < len(all) && all[n].table == all[0].table {
			n++
		}
		parts = append(parts, together(all[:n]))
		all = all[n:]
	}
	return strings.Join(parts, "; ")
}

// together are runs of one table in words.
func together(all []run) string {
	if all[0].first == 0 {
		return all[0].table
	}
	var rows []string
	for _, r := range all {
		s := strconv.Itoa(r.first)
		switch r.last - r.first {
		case 0:
		case 1:
			s += ", " + strconv.Itoa(r.last)
		default:
			s += " to " + strconv.Itoa(r.last)
		}
		rows = append(rows, s)
	}
	word := rowWord
	if len(all) > 1 || all[0].last > all[0].first {
		word = " rows "
	}
	return all[0].table + word + strings.Join(rows, ", ")
}
