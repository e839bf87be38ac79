package workbook

import (
	"fmt"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// celled is a place that can tell its cell: the table, and the numbers of row
// and column there, the column 0 for a whole row.
type celled interface {
	Cell() (table string, row, column int)
}

// sources lists the places behind a finding, the worst reading's first, as many
// as a few lines of the column hold, and leads to that one.
func sources(places []evidence.Place, t titles, width float64) cell {
	const most = 3
	all := t.runs(places)
	c, room := text(words(all)), look{boxed: true}.room(width)
	for n := len(all) - 1; n > 0 && lines(c.value.(string), room) > most; n-- {
		c = text(fmt.Sprintf("%s, and more: %d in all", words(all[:n]), len(places)))
	}
	if len(places) > 0 {
		c = t.lead(c, places[0], width)
	}
	return c
}

// lead makes a cell lead to a place, where that place is a row of the record.
func (t titles) lead(c cell, p evidence.Place, width float64) cell {
	if l, ok := p.(celled); ok {
		table, row, column := l.Cell()
		if sheet, known := t.rows[squash(table)]; known {
			return c.leading(formula.Quoted(sheet)+"!"+formula.Name(max(column, 1), row), width)
		}
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

// place is a place as this workbook names it: Slab RH!J9.
func (t titles) place(p evidence.Place) string { return words(t.runs([]evidence.Place{p})) }

// run is cells of one column that follow one another, or a place of another
// kind by its words alone.
type run struct {
	sheet       string
	column      int
	first, last int // 0 for a place that is no cell
}

func (t titles) runOf(p evidence.Place) run {
	l, ok := p.(celled)
	if !ok {
		return run{sheet: p.String()}
	}
	table, row, column := l.Cell()
	return run{orElse(t.rows[squash(table)], table), column, row, row}
}

// runs gathers places in their order.
func (t titles) runs(places []evidence.Place) []run {
	var all []run
	for _, p := range places {
		r := t.runOf(p)
		if n := len(all); n > 0 && r.first > 0 && all[n-1].sheet == r.sheet && all[n-1].column == r.column &&
			all[n-1].last+1 == r.first {
			all[n-1].last = r.last
			continue
		}
		all = append(all, r)
	}
	return all
}

// words are runs in words, each sheet named once for those that stand together.
func words(all []run) string {
	var b strings.Builder
	for i, r := range all {
		switch {
		case i == 0:
			b.WriteString(r.sheet)
		case r.sheet != all[i-1].sheet:
			b.WriteString("; " + r.sheet)
		default:
			b.WriteString(", ")
		}
		if r.first > 0 {
			b.WriteString(r.cells(i == 0 || r.sheet != all[i-1].sheet))
		}
	}
	return b.String()
}

// cells are the cells of a run: !J7 or !J7:J12 behind the name of their sheet,
// or rows in words.
func (r run) cells(first bool) string {
	switch {
	case r.column == 0 && r.first == r.last:
		return strings.Repeat(" row ", ones(first)) + fmt.Sprint(r.first)
	case r.column == 0:
		return strings.Repeat(" rows ", ones(first)) + fmt.Sprintf("%d to %d", r.first, r.last)
	}
	s := formula.Name(r.column, r.first)
	if r.last > r.first {
		s += ":" + formula.Name(r.column, r.last)
	}
	if first {
		return "!" + s
	}
	return s
}

func ones(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
