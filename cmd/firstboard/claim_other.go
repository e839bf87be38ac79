//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd)

package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

// claim makes a draft in place of one that a killed run left. One that another
// run writes cannot be removed where open files cannot.
func claim(name string, make func() error) (io.Closer, error) {
	if err := os.RemoveAll(name); err != nil {
		return nil, errBusy
	}
	err := make()
	if errors.Is(err, fs.ErrExist) {
		return nil, errBusy
	}
	return unlocked{}, err
}

// unlocked is a draft that only its name keeps from others.
type unlocked struct{}

func (unlocked) Close() error { return nil }
