package main

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// errBusy says that another run is writing the same target.
var errBusy = errors.New("another run is writing it; wait until that ends")

// errMoved says that something was put in a target's place while it was written.
var errMoved = errors.New("something else was put there meanwhile; look at it, and run this again")

// draft is a file or a folder while it is written: it stands beside its target,
// under a name that every run gives it, so that the next run finds what a killed
// one left, and no two runs write it at once.
type draft struct {
	name   string
	target string
	before fs.FileInfo // what stood at the target, nil where nothing did
	lock   io.Closer
}

// draftOf is a draft for a target, empty.
func draftOf(target string, folder bool) (*draft, error) {
	d := &draft{name: draftName(target), target: target}
	if was, err := os.Lstat(d.name); err == nil && was.IsDir() != folder { // left by a run that wrote the other kind
		_ = os.RemoveAll(d.name) // if it cannot be removed, the next step says so
	}
	var err error
	if d.lock, err = claim(d.name, func() error { return makeDraft(d.name, folder) }); err != nil {
		return nil, err
	}
	if d.before, err = os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
		err = nil
	}
	if err == nil && folder {
		err = emptied(d.name)
	}
	if err != nil {
		d.drop()
		return nil, err
	}
	return d, nil
}

func makeDraft(name string, folder bool) error {
	if folder {
		return os.Mkdir(name, 0o755)
	}
	f, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	return f.Close()
}

// emptied takes everything out of a folder.
func emptied(folder string) error {
	entries, err := os.ReadDir(folder)
	for _, e := range entries {
		err = errors.Join(err, os.RemoveAll(filepath.Join(folder, e.Name())))
	}
	return err
}

// draftName is the name of a target while it is written, as short as a file
// system wants it.
func draftName(target string) string {
	const most = 200
	folder, base := filepath.Split(filepath.Clean(target))
	if len(base) > most {
		sum := sha256.Sum256([]byte(base))
		base = hex.EncodeToString(sum[:])
	}
	return filepath.Join(folder, "."+base+"."+toolName)
}

// fill writes a draft that is a file.
func (d *draft) fill(write func(io.Writer) error) error {
	f, err := os.OpenFile(d.name, os.O_WRONLY|os.O_TRUNC, 0)
	if err != nil {
		return err
	}
	defer f.Close()
	if err := write(f); err != nil {
		return err
	}
	if err := f.Chmod(0o644); err != nil {
		return err
	}
	return f.Close()
}

// publish puts a whole draft in the place of its target, unless something was put
// there since the draft was begun.
func (d *draft) publish() error {
	now, err := os.Lstat(d.target)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	was := d.before
	same := was != nil && now != nil && os.SameFile(was, now) && was.Size() == now.Size()
	if (was != nil || now != nil) && (!same || !was.ModTime().Equal(now.ModTime())) {
		return errMoved
	}
	return os.Rename(d.name, d.target)
}

// drop takes a draft away, where it was not published, and lets other runs have
// its name.
func (d *draft) drop() {
	_ = os.RemoveAll(d.name) // once published nothing has that name
	d.lock.Close()
}
