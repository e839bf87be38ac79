package writer

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"fmt"
	"hash"
	"hash/crc32"
	"io"
	"io/fs"
	"slices"
	"strings"

	"firstboard/report/lists"
)

// parts are an archive whose parts stand in the order of their names and carry
// no time, in whatever order they came. Each is held compressed until the end.
// More than most bytes before they are compressed are an error.
type parts struct {
	to   io.Writer
	all  []*part
	most uint64 // bytes before they are compressed; 0 for any number
	pack *flate.Writer
}

type part struct {
	name   string
	packed bytes.Buffer
	pack   *flate.Writer // of all parts, which are written one after another
	sum    hash.Hash32
	size   uint64
}

// Create opens the part of that name; the part before is whole then.
func (p *parts) Create(name string) (io.Writer, error) {
	one := &part{name: name, sum: crc32.NewIEEE()}
	if err := p.packTo(&one.packed); err != nil {
		return nil, err
	}
	one.pack = p.pack
	p.all = append(p.all, one)
	return one, nil
}

// packTo ends the part in hand and packs into another from here on.
func (p *parts) packTo(next io.Writer) (err error) {
	if p.pack == nil {
		p.pack, err = flate.NewWriter(next, flate.BestSpeed)
		return err
	}
	if err := p.pack.Close(); err != nil {
		return err
	}
	p.pack.Reset(next)
	return nil
}

// AddFS is part of the interface and is never needed.
func (p *parts) AddFS(fs.FS) error { return errors.ErrUnsupported }

// Close writes all parts.
func (p *parts) Close() error {
	var total uint64
	for _, one := range p.all {
		total += one.size
	}
	if p.most > 0 && total > p.most {
		return fmt.Errorf("its sheets come to over %d MB, more than a record may; write a folder, or split the record",
			p.most>>20)
	}
	if p.pack != nil {
		if err := p.pack.Close(); err != nil {
			return err
		}
	}
	slices.SortFunc(p.all, func(a, b *part) int { return strings.Compare(a.name, b.name) })
	zw := zip.NewWriter(p.to)
	if err := lists.Try(p.all, func(one *part) error { return one.writeTo(zw) }); err != nil {
		return err
	}
	return zw.Close()
}

func (p *part) Write(b []byte) (int, error) {
	p.size += uint64(len(b))
	p.sum.Write(b)
	return p.pack.Write(b)
}

// firstDay is 1 January 1980, the first day a zip can name.
const firstDay = 1<<5 | 1

func (p *part) writeTo(zw *zip.Writer) error {
	w, err := zw.CreateRaw(&zip.FileHeader{
		Name: p.name,
		//lint:ignore SA1019 a raw header is written as it stands: Modified is not looked at
		ModifiedDate:       firstDay,
		Method:             zip.Deflate,
		CRC32:              p.sum.Sum32(),
		CompressedSize64:   uint64(p.packed.Len()),
		UncompressedSize64: p.size,
	})
	if err != nil {
		return err
	}
	_, err = p.packed.WriteTo(w)
	return err
}
