package untrusted

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Wanted is the file that is due, in the words of a refusal: what to give
// instead of what is no file, how large it may be, and how to make it smaller.
type Wanted struct {
	Give    string
	Most    int64
	Smaller string
}

// Read is the whole of the file at path. A refusal leads with its base name.
func Read(path string, w Wanted) ([]byte, error) {
	f, mark, err := Open(path, w)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data := make([]byte, mark.Size())
	n, err := io.ReadFull(f, data)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) && err != io.EOF {
		return nil, unread(path, err)
	}
	return data[:n], mark.Held()
}

// Open opens the file at path to be read bit by bit, and marks its state.
func Open(path string, w Wanted) (*os.File, Mark, error) {
	mark, err := MarkOf(path)
	name := filepath.Base(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, mark, fmt.Errorf("%s: there is no such file; check the name", name)
	case err != nil:
		return nil, mark, unread(path, err)
	case !mark.info.Mode().IsRegular():
		return nil, mark, fmt.Errorf("%s: is not a regular file; give %s", name, w.Give)
	case w.Most > 0 && mark.Size() > w.Most:
		return nil, mark, fmt.Errorf("%s: is over %d MB; %s", name, w.Most>>20, w.Smaller)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, mark, unread(path, err)
	}
	return f, mark, nil
}

func unread(path string, err error) error {
	return fmt.Errorf("%s: cannot be read (%w); check that you may read it", filepath.Base(path), Cause(err))
}

// Cause is an error of the file system without its path.
func Cause(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}

// Mark is the state of a file at one time.
type Mark struct {
	path string
	info fs.FileInfo
}

// MarkOf is the state of the file at path; a link counts as what it leads to.
func MarkOf(path string) (Mark, error) {
	info, err := os.Stat(path)
	return Mark{path, info}, err
}

// Size is how many bytes the file had.
func (m Mark) Size() int64 { return m.info.Size() }

// Held is an error unless the file is still in the state of the mark: the same
// file, of the same size and time.
func (m Mark) Held() error {
	now, err := os.Stat(m.path)
	if err == nil && os.SameFile(m.info, now) && now.Size() == m.info.Size() && now.ModTime().Equal(m.info.ModTime()) {
		return nil
	}
	return Changed(m.path)
}

// Changed says that the file at path changed while it was read.
func Changed(path string) error {
	return fmt.Errorf("%s: changed while it was read; run this again once nothing writes to it", filepath.Base(path))
}
