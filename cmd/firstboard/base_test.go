package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"firstboard/report"
)

// bases is where the records stand that scripts and boundary tests start
// from: each is a GO, and a test changes a cell or two of its own copy.
const bases = "../../testdata/script/base"

// tables are the CSV files of a record by name, row by row.
type tables map[string][][]string

// readTables reads the CSV files of a folder.
func readTables(dir string) (tables, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.csv"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("%s: no tables (%v)", dir, err)
	}
	all := tables{}
	for _, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		r := csv.NewReader(bytes.NewReader(data))
		r.FieldsPerRecord = -1
		if all[filepath.Base(path)], err = r.ReadAll(); err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
	}
	return all, nil
}

// write puts the tables into a folder.
func (t tables) write(dir string) error {
	for file, rows := range t {
		var b bytes.Buffer
		if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, file), b.Bytes(), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// set changes one cell, by line of the file and name of the column: on line 1
// the column's name, to give it another unit. A column that the table lacks is
// added.
func (t tables) set(file string, line int, column, value string) error {
	rows := t[file]
	if line < 1 || line > len(rows) {
		return fmt.Errorf("%s has no line %d", file, line)
	}
	at := slices.Index(rows[0], column)
	if at < 0 {
		at = len(rows[0])
		rows[0] = append(rows[0], column)
	}
	for len(rows[line-1]) <= at {
		rows[line-1] = append(rows[line-1], "")
	}
	rows[line-1][at] = value
	return nil
}

// change makes one change, written as "file:line:column=value", as
// "+file:a row" to add one, or as "-file:line" to take one out. The table's
// ".csv" is left out.
func (t tables) change(c string) error {
	file, rest, ok := strings.Cut(c, ":")
	if !ok {
		return fmt.Errorf("%q is no change", c)
	}
	name := strings.TrimLeft(file, "+-") + ".csv"
	switch file[0] {
	case '+':
		row, err := csv.NewReader(strings.NewReader(rest)).Read()
		t[name] = append(t[name], row)
		return err
	case '-':
		line, err := strconv.Atoi(rest)
		if err != nil || line < 2 || line > len(t[name]) {
			return fmt.Errorf("%q: no such line", c)
		}
		t[name] = slices.Delete(t[name], line-1, line)
		return nil
	}
	at, cell, _ := strings.Cut(rest, ":")
	line, err := strconv.Atoi(at)
	column, value, ok := strings.Cut(cell, "=")
	if err != nil || !ok {
		return fmt.Errorf("%q is no change", c)
	}
	return t.set(name, line, column, value)
}

// oneRun keeps runs within one process apart: the command-line library shares
// its help flag between them, and a script's runs have its working folder.
var oneRun sync.Mutex

// judgeFolder runs check on a record and gives its JSON, or what it complained
// of. The exit code must agree with the verdicts.
func judgeFolder(dir string) (report.Answer, error) {
	var out, faults bytes.Buffer
	var a report.Answer
	oneRun.Lock()
	code := run([]string{toolName, "check", dir, "--json", "-"}, &out, &faults)
	oneRun.Unlock()
	if code != exitGo && code != exitNoGo {
		return a, fmt.Errorf("exit code %d: %s", code, faults.String())
	}
	if err := json.Unmarshal(out.Bytes(), &a); err != nil {
		return a, err
	}
	want := exitGo
	for _, area := range a.Areas {
		if area.Verdict != "GO" {
			want = exitNoGo
		}
	}
	if code != want {
		return a, fmt.Errorf("exit code %d where the verdicts ask for %d", code, want)
	}
	return a, nil
}

// findingOf is the finding of one check of the first area.
func findingOf(a report.Answer, id string) (report.FindingAnswer, error) {
	for _, f := range a.Areas[0].Findings {
		if f.ID == id {
			return f, nil
		}
	}
	return report.FindingAnswer{}, fmt.Errorf("there is no check %s", id)
}

// judgeBase judges a copy of a base with changes made.
func judgeBase(t *testing.T, base string, changes ...string) report.Answer {
	t.Helper()
	record, err := readTables(filepath.Join(bases, base))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range changes {
		if err := record.change(c); err != nil {
			t.Fatal(err)
		}
	}
	dir := t.TempDir()
	if err := record.write(dir); err != nil {
		t.Fatal(err)
	}
	a, err := judgeFolder(dir)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Every base is a GO by itself, so that a test's change is what decides.
func TestBasesAreGO(t *testing.T) {
	t.Parallel()
	dirs, err := os.ReadDir(bases)
	if err != nil {
		t.Fatal(err)
	}
	for _, dir := range dirs {
		t.Run(dir.Name(), func(t *testing.T) {
			area := judgeBase(t, dir.Name()).Areas[0]
			if area.Verdict != "GO" || area.GoodUntil != "2026-03-06" {
				t.Errorf("%s %s, good until %s; blocked by %v", area.Verdict, area.Why, area.GoodUntil, area.Blocking)
			}
		})
	}
}
