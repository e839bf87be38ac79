package main

import (
	"io"
	"os"

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
