package workbook

import (
	"strconv"
	"strings"
	"unicode"
)

// Streamed sheets are not fitted by every spreadsheet, and merged cells by
// none, so the room for wrapped text is reckoned here, on the generous side.

const (
	unitPoints = 6    // one unit of column width: a digit of the file's default letters
	edgePoints = 3.75 // of a column's width that no text uses
	indent     = 10.0 // points
	slack      = 1.03 // spreadsheets set letters on whole dots, and so a little wider
	boldSlack  = 1.09
	lineRatio  = 1.18 // a line's height to the size of its letters
	padding    = 1.5  // points above and below the lines of a row
	tightLine  = 11.5 // points of a row of one line in print
	oneLine    = 15   // points of a row whose height is left alone
	tallest    = 409  // no spreadsheet shows a higher row
)

// span is how wide a line of normal letters stands, in points.
func span(s string) float64 {
	const size = 10
	mils := 0
	for _, r := range s {
		mils += milliEm(r)
	}
	return float64(mils) * size / 1000 * slack
}

// milliEm is the width of a letter in thousandths of its size, as Arial and its
// like have it (Adobe's metrics of Helvetica, from memory).
func milliEm(r rune) int {
	switch {
	case r >= 0x1100:
		return 1000
	case r > '~' && !unicode.IsUpper(r):
		return 600
	case r > '~':
		return 750
	}
	switch r {
	case 'i', 'j', 'l', '\'':
		return 222
	case ' ', '|', '!', ',', '.', '/', ':', ';', 'I', '[', '\\', ']', 'f', 't':
		return 278
	case '(', ')', '-', '`', 'r':
		return 333
	case '"', '*', '{', '}':
		return 389
	case 'J', 'c', 'k', 'v', 's', 'x', 'y', 'z', '^':
		return 500
	case 'T', 'Z', 'F', '+', '<', '=', '>', '~':
		return 611
	case 'A', 'B', 'E', 'K', 'P', 'S', 'V', 'X', 'Y', '&':
		return 667
	case 'C', 'D', 'H', 'N', 'R', 'U', 'w':
		return 722
	case 'G', 'O', 'Q':
		return 778
	case 'M', 'm', '%':
		return 889
	case 'W', '@':
		return 1015
	}
	return 556
}

// room is what a column of that width, or several, offers a line of text in
// normal letters, in points.
func room(width float64) float64 { return max(width*unitPoints-edgePoints, 1) }

// wideFor is the width of a column that shows a line of that span.
func wideFor(points float64) float64 { return (points + edgePoints) / unitPoints }

// lines is how many lines a text takes, broken at spaces and inside words
// that are too long.
func lines(s string, room float64) int {
	n := 0
	for line := range strings.SplitSeq(s, "\n") {
		n += wrapped(line, room)
	}
	return n
}

func wrapped(line string, room float64) int {
	const widest = 10 * slack // of a letter
	if float64(len(line))*widest <= room || span(line) <= room {
		return 1
	}
	n, used, gap := 1, 0.0, span(" ")
	for word := range strings.FieldsSeq(line) {
		w := span(word)
		if used > 0 && used+gap+w > room {
			n, used = n+1, 0
		}
		if used > 0 {
			used += gap
		}
		for used += w; used > room; used -= room {
			n++
		}
	}
	return n
}

// height is that of a row on its page, in points; 0 for the usual height.
func (p page) height(r row) float64 {
	if p.tight {
		r.least = max(r.least, tightLine)
	}
	return r.height(p.widths)
}

// height is what a row needs in columns of these widths, in points; 0 where
// the usual height does.
func (r row) height(widths []float64) float64 {
	tall, column := r.least, 0
	for _, c := range r.cells {
		next := column + max(c.across, 1)
		tall = max(tall, c.height(widths[min(column, len(widths)):min(next, len(widths))]))
		column = next
	}
	return tall
}

func (c cell) height(widths []float64) float64 {
	text, _ := c.value.(string)
	if text == "" {
		return 0
	}
	if c.look.turned {
		return headWidth(text) * unitPoints
	}
	n := lines(text, c.look.room(total(widths)))
	if n == 1 && c.look.size == normal {
		return 0
	}
	return min(float64(n)*lineRatio*c.look.points()+padding, tallest)
}

// room is what columns offer letters of this look, as if they were normal.
func (l look) room(width float64) float64 {
	r := room(width)
	if l.stands == indented {
		r = max(r-indent, 1)
	}
	r *= look{}.points() / l.points()
	if l.heavy() {
		r /= boldSlack
	}
	return r
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
