package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/seal"
)

// target is one file to write.
type target struct {
	path  string
	write func(io.Writer) error
}

// printTargets says what was written, or how something would have been.
func printTargets(w io.Writer, targets []target, none string) {
	for _, t := range targets {
		fmt.Fprintln(w, "written: "+t.path)
	}
	if len(targets) == 0 {
		say(w, none, "")
	}
}

// free refuses, before anything is written, targets that are named twice, that
// are the record or a table of it, that exist (without force), or that are no
// ordinary file: --force replaces files, never a table that somebody typed, a
// folder or a device, nor a decision workbook into which somebody typed what
// these tables do not hold.
func free(targets []target, record string, tables []grid.Table, force bool) error {
	seen := map[string]bool{}
	for _, t := range targets {
		path := filepath.Clean(t.path)
		was, err := os.Lstat(path)
		switch {
		case seen[path]:
			return exit{exitUnusable, fmt.Errorf("%s: it is named twice; name another file", t.path)}
		case sameFile(path, record) || isTable(path, record):
			return exit{exitUnusable, fmt.Errorf("%s: it is the record or a table of it; name another file", t.path)}
		case err == nil && !was.Mode().IsRegular():
			return exit{exitUnsaved, fmt.Errorf("%s: it is no ordinary file (%s); name another file", t.path,
				kindOf(was))}
		case err == nil && !force:
			return standing(t.path)
		}
		seen[path] = true
		if err != nil {
			continue
		}
		if typed := typedInto(path, tables); len(typed) > 0 {
			return exit{exitUnsaved, fmt.Errorf("%s: what was typed into it would be lost (%s); name another file",
				t.path, typed[0])}
		}
	}
	return nil
}

// typedInto is what somebody typed into a workbook and the tables do not hold: a
// reading of a record, a sign-off added to a decision since it was sealed, a note
// in a table of verdicts. Of a record that was written here and left as it was, of any other file, and of one
// that nobody can read any more, it is nothing.
func typedInto(path string, tables []grid.Table) []string {
	if !strings.EqualFold(filepath.Ext(path), ".xlsx") {
		return nil
	}
	if verdictsChanged(path) {
		return []string{"its tables of verdicts are not as they were written"}
	}
	was, err := record.ReadJudged(path, filepath.Base(path))
	if err != nil {
		was = record.Record{}
	}
	now, says := record.Standing(path)
	if strings.Contains(says, seal.OfTables(now)) {
		return nil
	}
	return seal.Typed(was.Tables, now, tables)
}

func kindOf(was fs.FileInfo) string {
	switch {
	case was.IsDir():
		return "a folder"
	case was.Mode()&fs.ModeSymlink != 0:
		return "a link"
	}
	return "a device or a pipe"
}

// isTable says whether a path is, or would become, a table of a folder that
// is the record.
func isTable(path, record string) bool {
	return strings.EqualFold(filepath.Ext(path), ".csv") && sameFile(filepath.Dir(path), record)
}

func sameFile(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(x, y)
}

// saveBook writes one workbook where it is free to be written.
func saveBook(
	path string, write func(io.Writer) error, record string, tables []grid.Table, force bool,
) error {
	targets := []target{{path, write}}
	if err := free(targets, record, tables, force); err != nil {
		return err
	}
	return save(targets, force)
}

// save writes a draft of every target first and puts them in their places only
// when all are whole. A failed run leaves no file: what was new is taken away
// again.
func save(targets []target, force bool) (err error) {
	var made []string
	defer func() {
		for _, path := range made {
			if err != nil {
				os.Remove(path)
			}
		}
	}()
	var drafts []*draft
	for _, t := range targets {
		d, err := draftOf(t.path, false)
		if err != nil {
			return unsaved(t.path, err)
		}
		defer d.drop()
		if d.before != nil && !force {
			return standing(t.path)
		}
		if err := d.fill(t.write); err != nil {
			return unsaved(t.path, err)
		}
		drafts = append(drafts, d)
	}
	for _, d := range drafts {
		if err := d.publish(); err != nil {
			return unsaved(d.target, err)
		}
		if d.before == nil {
			made = append(made, d.target)
		}
	}
	return nil
}

// standing refuses to replace a file.
func standing(path string) error {
	return exit{exitUnsaved, fmt.Errorf("%s: it exists already; name another file, or add --force to replace it", path)}
}

// saveFolder makes a new folder of files, whole or not at all. What stands there
// is never replaced.
func saveFolder(path string, files []target) error {
	path = filepath.Clean(path)
	if _, err := os.Lstat(path); err == nil {
		return exit{exitUnsaved, fmt.Errorf("%s: it exists already, and a folder never replaces what is there; name another", path)}
	}
	d, err := draftOf(path, true)
	if err != nil {
		return unsaved(path, err)
	}
	defer d.drop()
	err = lists.Try(files, func(f target) error { return create(filepath.Join(d.name, f.path), f.write) })
	if err == nil {
		err = os.Chmod(d.name, 0o755)
	}
	if err == nil {
		err = d.publish()
	}
	if err != nil {
		return unsaved(path, err)
	}
	return nil
}

// create writes a file of a folder that nobody has seen yet.
func create(path string, write func(io.Writer) error) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer f.Close()
	if err := write(f); err != nil {
		return err
	}
	return f.Close()
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
