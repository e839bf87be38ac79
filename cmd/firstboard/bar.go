package main

import (
	"io"
	"os"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// watched is a file with a bar on the terminal as it is read, and what takes
// the bar away; on anything but a terminal, the file alone. A file is read
// three times at most.
func watched(f io.ReadSeeker, size int64, on io.Writer) (io.ReadSeeker, func()) {
	screen, ok := on.(*os.File)
	if !ok || !term.IsTerminal(int(screen.Fd())) {
		return f, func() {}
	}
	const passes, width = 3, 40
	bar := progressbar.NewOptions64(passes*size, progressbar.OptionSetWriter(screen), progressbar.OptionSetDescription("reading"),
		progressbar.OptionSetWidth(width), progressbar.OptionSetPredictTime(false), progressbar.OptionSetElapsedTime(false),
		progressbar.OptionClearOnFinish())
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
