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
func sources(places []evidence.Place, t titles) cell {
	const most, few = 16, 12
	all, more := runs(places), ""
	if len(all) > most {
		all, more = all[:few], fmt.Sprintf(", and more: %d rows in all", len(places))
	}
	c := text(words(all) + more)
	if len(places) > 0 {
		c = t.lead(c, places[0])
	}
	return c
}

// lead makes a cell lead to a place, where that place is a row of the record.
func (t titles) lead(c cell, p evidence.Place) cell {
	if l, ok := p.(located); ok {
		if to := t.at(l.Row()); to != "" {
			c.link, c.look.link = to, true
		}
	}
	return c
}

// run is rows of one table that follow one another, or a place of another
// kind by its words alone.
type run struct {
	table       string
	first, last int // 0 for a place that is no row
}

// runOf is the run of one place: slab-rh.csv row 9.
func runOf(p evidence.Place) run {
	words := p.String()
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
func runs(places []evidence.Place) []run {
	var all []run
	for _, p := range places {
		r := runOf(p)
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
		if r.last > r.first {
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
