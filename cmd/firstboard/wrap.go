package main

import (
	"fmt"
	_ "image/png"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"firstboard/report/lists"
)

// hanging is by how much further in the lines after the first stand, so that it
// is seen where a sentence begins.
const hanging = "  "

// say writes a text in lines as wide as what they are written to, each after
// the indent.
func say(w io.Writer, text, indent string) {
	fmt.Fprint(w, wrapHung(columnsOf(w), text, indent, indent+hanging))
}

// sayEach is say for each of some lines.
func sayEach(w io.Writer, lines []string, indent string) {
	for _, line := range lines {
		say(w, line, indent)
	}
}

// sayMost writes a list under its head, where it holds anything: so many of it at
// most, and how many more there are.
func sayMost(w io.Writer, most int, head string, list []string) {
	if len(list) > 0 {
		say(w, head, "")
	}
	sayEach(w, list[:min(most, len(list))], "    ")
	if more := len(list) - most; more > 0 {
		say(w, fmt.Sprintf("and %d more", more), "    ")
	}
}

// wrapTo breaks text into lines of at most so many columns, each after the
// indent.
func wrapTo(columns int, text, indent string) string { return wrapHung(columns, text, indent, indent) }

// wrapHung is wrapTo with an indent of its own for the first line.
func wrapHung(columns int, text, first, others string) string {
	return laid(columns, unbroken(text), first, others, "")
}

// laid are words in lines, each line but the last with a mark at its end.
func laid(columns int, words []string, first, others, mark string) string {
	var b strings.Builder
	width := 0
	for i, word := range words {
		n := utf8.RuneCountInString(word)
		switch {
		case i == 0:
			b.WriteString(first)
			width = len(first)
		case width+1+n+len(mark) > columns && width > len(others):
			b.WriteString(mark + "\n" + others)
			width = len(others)
		default:
			b.WriteByte(' ')
			width++
		}
		b.WriteString(word)
		width += n
	}
	return b.String() + "\n"
}

// unbroken are the words of a text, a number with the unit behind it as one:
// nobody reads "84.2" at the end of a line and "% RH" on the next.
func unbroken(text string) []string {
	units := []string{"%", "RH", "MC", "CM", "F", "C", "in", "ft", "mm", "cm", "m", "h", "lb", "g", "points"}
	var words []string
	measured := false
	for word := range strings.FieldsSeq(strings.Map(harmless, text)) {
		bare := strings.TrimRight(word, ",.;:)")
		if measured && slices.Contains(units, bare) {
			words[len(words)-1] += " " + word
			measured = word == "%"
			continue
		}
		words = append(words, word)
		measured = strings.Trim(strings.TrimLeft(word, "(-"), "0123456789.") == "" &&
			strings.ContainsAny(word, "0123456789")
	}
	return words
}

// harmless is a letter of a text, but for those by which a record could give a
// terminal orders.
func harmless(r rune) rune { return lists.If(unicode.IsControl(r) && !unicode.IsSpace(r), '?', r) }

// commandLine is a command in lines that a shell takes as one.
func commandLine(columns int, command string) string {
	var words []string
	for i, part := range strings.Split(command, `"`) {
		if i%2 == 1 { // what is quoted is one word
			words = append(words, `"`+part+`"`)
			continue
		}
		words = append(words, strings.Fields(part)...)
	}
	return laid(columns, words, hanging, hanging+hanging+hanging, ` \`)
}
