package workbook

import (
	"strconv"
	"strings"

	"firstboard/report/evidence"
)

func text(s string) cell { return cell{value: s, look: look{boxed: true}} }

func header(names ...string) row {
	var r row
	for _, n := range names {
		r.cells = append(r.cells, cell{value: n, look: look{tone: heading}})
	}
	return r
}

// figure is a number as it was typed where the text is one, else the text.
func figure(s string) cell {
	c := text(s)
	if x, places, ok := plainNumber(s); ok {
		c.value, c.look.form, c.look.places = x, number, places
	}
	return c
}

// plainNumber reads a plain decimal that a spreadsheet can hold without
// losing a digit, and counts its decimals.
func plainNumber(s string) (x float64, places int, ok bool) {
	digits := strings.TrimLeft(s, "+-")
	if len(s)-len(digits) > 1 || digits == "" || strings.Trim(digits, "0123456789.") != "" {
		return 0, 0, false
	}
	whole, fraction, _ := strings.Cut(digits, ".")
	const exact, most = 15, 30
	if len(strings.TrimLeft(whole+fraction, "0")) > exact || len(fraction) > most {
		return 0, 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, len(fraction), err == nil
}

// located is a place that can tell the table of the record it lies in, and
// the number of its row there.
type located interface {
	Row() (table string, number int)
}

// sources lists places, the first few of many. A single one leads to the row
// it names.
func sources(places []evidence.Place, t titles) cell {
	const most, few = 12, 8
	var names []string
	for _, p := range places {
		names = append(names, p.String())
	}
	if n := len(names); n > most {
		names = append(names[:few:few], andMore(n-few, ""))
	}
	c := text(strings.Join(names, "; "))
	if len(places) == 1 {
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
