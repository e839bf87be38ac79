package workbook

import (
	"strings"
	"unicode"
)

// Streamed sheets are not fitted by every spreadsheet, and merged cells by
// none, so the room for wrapped text is reckoned here, on the generous side.

// span is how wide a line stands, in the unit of column widths: the width of
// a digit.
func span(s string) float64 {
	w := 0.0
	for _, r := range s {
		w += runeSpan(r)
	}
	return w
}

func runeSpan(r rune) float64 {
	switch {
	case strings.ContainsRune("iljtfrI.,;:'|!()[] -", r):
		return 0.65
	case strings.ContainsRune("mwMW%@", r):
		return 1.5
	case r >= 0x1100:
		return 2
	case unicode.IsUpper(r):
		return 1.2
	}
	return 1
}

// lines is how many lines a text takes in a column, broken at spaces and
// inside words that are too long for it.
func lines(s string, column float64) int {
	room := max(column-1.5, 1)
	n := 0
	for line := range strings.SplitSeq(s, "\n") {
		n += wrapped(line, room)
	}
	return n
}

func wrapped(line string, room float64) int {
	n, used := 1, 0.0
	for word := range strings.FieldsSeq(line) {
		w := span(word)
		if used > 0 && used+0.65+w > room {
			n, used = n+1, 0
		}
		if used > 0 {
			used += 0.65
		}
		for used += w; used > room; used -= room {
			n++
		}
	}
	return n
}

// The height of a row in points.
const (
	lineHeight = 13.5
	padding    = 3
	tallest    = 409 // no spreadsheet shows more
	mostLines  = 28  // of a cell that is to be seen whole
)

func height(lines int, points float64) float64 {
	return min(float64(lines)*lineHeight*points/10+padding, tallest)
}

// fitted sets paragraphs one below another. Those that would overrun the
// tallest row are counted in a last one, which ends in the words of rest.
func fitted(paragraphs []string, column float64, rest string) string {
	used := 0
	for i, p := range paragraphs {
		used += lines(p, column)
		if used > mostLines && i > 0 {
			return strings.Join(append(paragraphs[:i:i], andMore(len(paragraphs)-i, rest)), "\n")
		}
	}
	return strings.Join(paragraphs, "\n")
}
