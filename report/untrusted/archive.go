package untrusted

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
)

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
