package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/names"
)

func text(s string) cell { return cell{value: s, look: look{boxed: true}} }

func header(names ...string) row {
	var r row
	for _, n := range names {
		r.cells = append(r.cells, cell{value: n, look: look{tone: heading}})
	}
	return r
}

// figure is a number as it was typed where the text is one and not too long
// for its column, else the text.
func figure(s string) cell {
	const longest = 9
	c := text(s)
	if x, places, ok := plainNumber(s); ok && len(s) <= longest {
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

// sources lists the places behind a finding, the worst reading's first, as many
// as a few lines of the column hold, and leads to that one.
func sources(places []evidence.Place, t names.Titles, width float64) cell {
	const most = 3
	all := t.Runs(places)
	c, room := text(names.Words(all)), look{boxed: true}.room(width)
	for n := len(all) - 1; n > 0 && lines(c.value.(string), room) > most; n-- {
		c = text(fmt.Sprintf("%s, and more: %d in all", names.Words(all[:n]), len(places)))
	}
	if len(places) > 0 {
		c = c.leadingTo(places[0], t, width)
	}
	return c
}

// leadingTo makes a cell lead to a place, where that place is a row of the record.
func (c cell) leadingTo(p evidence.Place, t names.Titles, width float64) cell {
	if l, ok := p.(names.Celled); ok {
		table, row, column := l.Cell()
		if sheet, known := t.Sheet(table); known {
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
