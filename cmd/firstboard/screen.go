package main

import (
	"io"
	"os"

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
