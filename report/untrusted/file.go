package untrusted

import (
	"archive/zip"
	"bytes"
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

// ErrLarge says that an archive unpacks to more bytes than it may.
var ErrLarge = errors.New("unpacks to more than it may")

// MostBytes is the most bytes of a file, or of a workbook unpacked, that are
// read.
const MostBytes = 256 << 20

// What an archive may be at most. Tables that people and loggers fill pack to a
// tenth or a twentieth of their size, and a text that repeats without end to a
// thousandth.
const (
	mostParts  = 20_000
	smallPart  = 16 << 20 // bytes that do no harm, however small they were packed
	mostPacked = 200      // times
)

// Archive opens a zip archive, unless it is a bomb: of too many parts, of parts
// packed tighter than any table, or of more than so many bytes.
func Archive(data []byte, most uint64) (*zip.Reader, error) {
	if n := bytes.Count(data, []byte("PK\x01\x02")); n > mostParts {
		return nil, fmt.Errorf("its archive holds %d parts, and no workbook has over %d", n, mostParts)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fmt.Errorf("its archive cannot be opened: %w", err)
	}
	var total uint64
	for _, f := range z.File {
		size := f.UncompressedSize64
		if total += min(size, most+1); total > most {
			return nil, ErrLarge
		}
		if size > smallPart && size/mostPacked > f.CompressedSize64 {
			return nil, fmt.Errorf("its part %s unpacks to over %d times its size, so it is no table that anyone typed",
				f.Name, mostPacked)
		}
	}
	return z, nil
}
