package writer

import (
	"strconv"
	"strings"

	"firstboard/report/lists"
	"firstboard/report/workbook/style"
)

// Text is a boxed text.
func Text(s string) Cell { return Cell{Value: s, Look: style.Look{Boxed: true}} }

// Line is a row of one cell across so many columns.
func Line(value any, l style.Look, across int) Row {
	return Row{Cells: []Cell{{Value: value, Look: l, Across: across}}}
}

// Header is a row of headings.
func Header(names ...string) Row {
	return Row{Cells: lists.Each(names, func(n string) Cell { return Cell{Value: n, Look: style.Look{Tone: style.Heading}} })}
}

// Figure is a number as it was typed where the text is one and not too long
// for its column, else the text.
func Figure(s string) Cell {
	const longest = 9
	c := Text(s)
	if x, places, ok := PlainNumber(s); ok && len(s) <= longest {
		c.Value, c.Look.Form, c.Look.Places = x, style.Number, places
	}
	return c
}

// PlainNumber reads a plain decimal that a spreadsheet can hold without
// losing a digit, and counts its decimals.
func PlainNumber(s string) (x float64, places int, ok bool) {
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

// Leading makes a cell lead somewhere. Some spreadsheets never break a linked
// text, so one that is longer than a line of its column leads nowhere.
func (c Cell) Leading(to string, width float64) Cell {
	s, _ := c.Value.(string)
	if to != "" && c.Look.Lines(s, width) == 1 {
		c.link, c.Look.Link = to, true
	}
	return c
}

// Decimals are the places a number needs, six at most.
func Decimals(x float64) int {
	const most = 6
	_, fraction, _ := strings.Cut(strings.TrimRight(strconv.FormatFloat(x, 'f', most, 64), "0"), ".")
	return len(fraction)
}
