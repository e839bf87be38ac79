package main

import (
	_ "image/png"
	"io"
	"os"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

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
