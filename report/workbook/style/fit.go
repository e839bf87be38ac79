package style

import (
	"strings"
	"unicode"
)

// Streamed sheets are not fitted by every spreadsheet, and merged cells by
// none, so the room for wrapped text is reckoned here, on the generous side.

// UnitPoints is one unit of column width: a digit of the file's default letters.
const UnitPoints = 6

// IndentWidth is how much wider a column is whose texts stand a little in.
const IndentWidth = indent / UnitPoints

const (
	edgePoints   = 3.75 // of a column's width that no text uses
	indent       = 10.0 // points
	slack        = 1.03 // spreadsheets set letters on whole dots, and so a little wider
	boldSlack    = 1.09
	widestLetter = 10 * slack // in points
	lineRatio    = 1.18       // a line's height to the size of its letters
	padding      = 1.5        // points above and below the lines of a row
	tallest      = 409        // no spreadsheet shows a higher row
)

// Span is how wide a line of normal letters stands, in points.
func Span(s string) float64 {
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

// wideFor is the width of a column that shows a line of that span.
func wideFor(points float64) float64 { return (points + edgePoints) / UnitPoints }

// Width is that of a column that shows a line.
func Width(s string) float64 { return wideFor(Span(s)) }

// IndentedWidth is that of a column that shows a line a little in from its edge.
func IndentedWidth(s string) float64 { return wideFor(Span(s) + indent) }

// Widest is the width that so many letters take at most.
func Widest(letters int) float64 { return wideFor(float64(letters) * widestLetter) }

// HeadWidth lets a header break into two lines, but no word of it.
func HeadWidth(name string) float64 {
	const spare = 0.5
	longest := Span(name) * 0.5
	for word := range strings.FieldsSeq(name) {
		longest = max(longest, Span(word))
	}
	return wideFor(longest*boldSlack) + spare
}

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
	if float64(len(line))*widestLetter <= room || Span(line) <= room {
		return 1
	}
	n, used, gap := 1, 0.0, Span(" ")
	for word := range strings.FieldsSeq(line) {
		w := Span(word)
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

// Height is what a text needs in a column of that width, in points; 0 where the
// usual height does.
func (l Look) Height(text string, width float64) float64 {
	switch {
	case text == "":
		return 0
	case l.Turned:
		return HeadWidth(text) * UnitPoints
	}
	n := l.Lines(text, width)
	if n == 1 && l.Size == Normal {
		return 0
	}
	return min(float64(n)*lineRatio*l.points()+padding, tallest)
}

// Lines is how many lines a text takes in a column of that width.
func (l Look) Lines(text string, width float64) int { return lines(text, l.room(width)) }

// room is what a column of that width, or several, offers a line of this look,
// in points, as if its letters were normal.
func (l Look) room(width float64) float64 {
	r := max(width*UnitPoints-edgePoints, 1)
	if l.Stands == Indented {
		r = max(r-indent, 1)
	}
	r *= Look{}.points() / l.points()
	if l.heavy() {
		r /= boldSlack
	}
	return r
}
