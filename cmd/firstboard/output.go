package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// target is one file to write.
type target struct {
	path  string
	write func(io.Writer) error
}

// free refuses, before anything is written, targets that exist (without
// force), that are named twice, or that are the record itself.
func free(targets []target, record string, force bool) error {
	seen := map[string]bool{filepath.Clean(record): true}
	for _, t := range targets {
		path := filepath.Clean(t.path)
		if seen[path] {
			return exit{exitUnusable, fmt.Errorf("%s: it is the record or named twice; name another file", t.path)}
		}
		seen[path] = true
		if sameFile(path, record) {
			return exit{exitUnusable, fmt.Errorf("%s: it is the record; name another file", t.path)}
		}
		if _, err := os.Lstat(path); err == nil && !force {
			return exit{exitUnsaved, fmt.Errorf("%s: it exists already; name another file, or add --force to replace it", t.path)}
		}
	}
	return nil
}

func sameFile(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(x, y)
}

// save writes every target to a temporary name first and renames them only
// when all are whole: a failed run leaves no file.
func save(targets []target) error {
	temporary := make([]string, len(targets))
	defer func() {
		for _, path := range temporary {
			if path != "" {
				os.Remove(path)
			}
		}
	}()
	for i, t := range targets {
		path, err := writeTemporary(t)
		temporary[i] = path
		if err != nil {
			return unsaved(t.path, err)
		}
	}
	for i, t := range targets {
		if err := os.Rename(temporary[i], t.path); err != nil {
			return unsaved(t.path, err)
		}
		temporary[i] = ""
	}
	return nil
}

// unsaved says why a file could not be written, without the name it had while
// it was.
func unsaved(path string, err error) error {
	var at *fs.PathError
	var link *os.LinkError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		err = fmt.Errorf("there is no folder %s; make it, or name another", filepath.Dir(path))
	case errors.As(err, &at):
		err = at.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return exit{exitUnsaved, fmt.Errorf("%s: cannot be written: %w", path, err)}
}

func writeTemporary(t target) (path string, err error) {
	f, err := os.CreateTemp(filepath.Dir(t.path), ".firstboard-*")
	if err != nil {
		return "", err
	}
	defer f.Close()
	if err := t.write(f); err != nil {
		return f.Name(), err
	}
	if err := f.Chmod(0o644); err != nil {
		return f.Name(), err
	}
	return f.Name(), f.Close()
}
