//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// claim makes a draft, or takes over one that a killed run left, and keeps it
// from every other run until it is closed. The kernel lets go of a lock as its
// process ends, however it ends.
func claim(name string, make func() error) (io.Closer, error) {
	const tries = 100 // another run may be done with it between two steps of this one
	for range tries {
		if err := make(); err != nil && !errors.Is(err, fs.ErrExist) {
			return nil, err
		}
		f, err := os.OpenFile(name, os.O_RDONLY|syscall.O_NOFOLLOW|syscall.O_NONBLOCK, 0)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			continue
		case err != nil:
			return nil, err
		}
		err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		mine, failed := f.Stat()
		there, gone := os.Lstat(name)
		switch {
		case errors.Is(err, syscall.EWOULDBLOCK):
			return nil, errors.Join(errBusy, f.Close())
		case failed == nil && gone == nil && os.SameFile(mine, there): // or the file system knows no locks
			return f, nil
		}
		f.Close()
	}
	return nil, errBusy
}
