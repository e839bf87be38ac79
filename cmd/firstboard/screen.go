package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"

	"firstboard/report/lists"
)

// The columns of what is no terminal, and the fewest that are written to.
const (
	usualColumns = 80
	leastColumns = 40
)

// screen is standard output: it knows how wide it is and whether it shows
// colors, and remembers the first failure to write, which nobody looks at line
// by line.
type screen struct {
	w        io.Writer
	columns  int
	terminal bool
	colors   bool
	err      error
}

// newScreen is a screen of the usual width, or of a terminal's own.
func newScreen(w io.Writer) *screen {
	s := &screen{w: w, columns: usualColumns}
	file, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return s
	}
	s.terminal = true
	if columns, _, err := term.GetSize(int(file.Fd())); err == nil && columns > 0 {
		s.columns = max(columns, leastColumns)
	}
	s.colors = os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	return s
}

func (s *screen) Write(b []byte) (int, error) {
	n, err := s.w.Write(b)
	if s.err == nil {
		s.err = err
	}
	return n, err
}

// columnsOf is how wide lines to a writer may be.
func columnsOf(w io.Writer) int {
	if s, ok := w.(*screen); ok {
		return s.columns
	}
	return usualColumns
}

// tinted is a text in blue or orange where the writer shows colors. The text
// says the same without them.
func tinted(w io.Writer, text string, good bool) string {
	if s, ok := w.(*screen); !ok || !s.colors {
		return text
	}
	return lists.If(good, "\x1b[34m", "\x1b[38;5;166m") + text + "\x1b[0m"
}

// newBar is a bar on the terminal up to so many steps, or a silent one on anything
// that cannot draw it.
func newBar(on io.Writer, doing string, steps int64) *progressbar.ProgressBar {
	screen, ok := on.(*os.File)
	if !ok || !term.IsTerminal(int(screen.Fd())) || os.Getenv("TERM") == "dumb" {
		return progressbar.DefaultSilent(steps)
	}
	const width = 40
	return progressbar.NewOptions64(steps, progressbar.OptionSetWriter(screen), progressbar.OptionSetDescription(doing),
		progressbar.OptionSetWidth(width), progressbar.OptionSetPredictTime(false),
		progressbar.OptionSetElapsedTime(false),
		progressbar.OptionClearOnFinish())
}

// watched is a file with a bar on the terminal as it is read, and what takes
// the bar away. A file is read three times at most.
func watched(f io.ReadSeeker, size int64, on io.Writer) (io.ReadSeeker, func()) {
	const passes = 3
	bar := newBar(on, "reading", passes*size)
	return counted{f, bar}, func() { bar.Finish() }
}

// counted tells a bar how much of a file is read.
type counted struct {
	io.ReadSeeker
	bar *progressbar.ProgressBar
}

func (c counted) Read(b []byte) (int, error) {
	n, err := c.ReadSeeker.Read(b)
	c.bar.Add(n)
	return n, err
}

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
