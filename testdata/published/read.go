// Package published reads the tables of this folder for tests. Each table
// begins with a head of lines that start with #: publication, status, units
// and tolerance.
package published

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"testing"
)

// Rows are the rows of a table below its head and its line of names.
func Rows(t *testing.T, name string) [][]string {
	t.Helper()
	_, here, _, _ := runtime.Caller(0)
	f, err := os.Open(filepath.Join(filepath.Dir(here), name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// Number is a cell's number.
func Number(t *testing.T, cell string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
