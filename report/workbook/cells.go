package workbook

import (
	"firstboard/report/workbook/style"
	"strconv"
	"strings"
)

func text(s string) cell { return cell{value: s, look: style.Look{Boxed: true}} }

func header(names ...string) row {
	var r row
	for _, n := range names {
		r.cells = append(r.cells, cell{value: n, look: style.Look{Tone: style.Heading}})
	}
	return r
}

// figure is a number as it was typed where the text is one and not too long
// for its column, else the text.
func figure(s string) cell {
	const longest = 9
	c := text(s)
	if x, places, ok := plainNumber(s); ok && len(s) <= longest {
		c.value, c.look.Form, c.look.Places = x, style.Number, places
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

// leading makes a cell lead somewhere. Some spreadsheets never break a linked
// text, so one that is longer than a line of its column leads nowhere.
func (c cell) leading(to string, width float64) cell {
	s, _ := c.value.(string)
	if to != "" && c.look.Lines(s, width) == 1 {
		c.link, c.look.Link = to, true
	}
	return c
}

// decimals are the places a number needs, six at most.
func decimals(value any) int {
	const most = 6
	x, isNumber := value.(float64)
	if !isNumber {
		return 0
	}
	_, fraction, _ := strings.Cut(strings.TrimRight(strconv.FormatFloat(x, 'f', most, 64), "0"), ".")
	return len(fraction)
}
