package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"firstboard/report"
	"firstboard/report/record"
	"firstboard/report/workbook"
)

// saveRecord writes a record that was made from another one: a workbook where
// its name ends in .xlsx, else a new folder of CSV files. The one it was made
// from is never replaced; force replaces another workbook, never a folder.
func saveRecord(path, from string, tables []report.Table, force bool) error {
	if strings.EqualFold(filepath.Ext(path), ".xlsx") {
		targets := []target{{path, func(w io.Writer) error { return workbook.WriteRecord(w, tables) }}}
		if err := free(targets, from, force); err != nil {
			return err
		}
		return save(targets)
	}
	err := record.WriteFolder(path, tables)
	if errors.Is(err, os.ErrExist) {
		return exit{exitUnsaved, fmt.Errorf("%s: it exists already, and a record is never written over; name a folder that is not there yet", path)}
	}
	if err != nil {
		return unsaved(path, err)
	}
	return nil
}
