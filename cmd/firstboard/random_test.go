package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// drawnRecord draws a record from a base with a few of its cells, rows and
// limits changed. Most are valid; some are refused.
func drawnRecord(t *rapid.T) tables {
	base := rapid.SampledFrom([]string{
		"heated-slab", "heated-slab", "slab-glue-down-wood", "slab-resilient", "slab-resilient",
		"slab-resilient", "wood-crawl", "wood-over-slab",
	}).Draw(t, "base")
	record, err := readTables(filepath.Join(bases, base))
	if err != nil {
		t.Fatal(err)
	}
	if rapid.IntRange(0, 3).Draw(t, "guarded") == 0 {
		record["job.csv"] = append(record["job.csv"], []string{"Acceptance", "guarded"})
	}
	areas := record["areas.csv"]
	areas[0], areas[1] = append(areas[0], "Placed on"),
		append(areas[1], rapid.SampledFrom([]string{"", "2025-12-01", "2026-02-02", "2026-02-20"}).Draw(t, "placed"))
	if aims := aimed(base); len(aims) > 0 && rapid.Bool().Draw(t, "aimed") {
		if err := record.change(rapid.SampledFrom(aims).Draw(t, "aim")); err != nil {
			t.Fatal(err)
		}
	}
	files := slices.DeleteFunc(slices.Sorted(maps.Keys(record)), func(file string) bool { return file == "job.csv" })
	for range rapid.IntRange(2, 12).Draw(t, "changes") {
		file := rapid.SampledFrom(files).Draw(t, "table")
		if rows := record[file]; len(rows) > 1 {
			record[file] = changedRows(t, file, rows)
		}
	}
	return record
}

// aimed are changes that a draw would rarely come to.
func aimed(base string) []string {
	switch base {
	case "wood-crawl":
		return []string{
			"-wood:8", "wood:8:Reading (%)=15.5", "wood:11:Reading (%)=16", "wood:9:Reading (%)=", "-wood:12",
			"wood:10:Reading (%)=15.5",
		}
	case "wood-over-slab":
		return []string{
			"-wood:8", "wood:9:Reading (%)=15.5", "slab-rh:2:Read at=2026-03-02 20:00", "wood:10:Reading (%)=",
			"areas:2:Install on=",
		}
	case "slab-resilient":
		return []string{
			"slab-ph:2:pH=10.5", "slab-cm:3:CM (%)=2.4", "slab-cm:2:CM (%)=", "-slab-mver:3", "slab-mver:2:End mass (g)=31.9",
			"slab-mver:3:End mass (g)=", "slab-mver:2:Retrieved at=2026-03-02 20:00", "other-tests:2:Result=400",
			"slab-rh:3:Read at=2026-03-02 20:00",
			"slab-mver:3:Set at=", "slab-rh:3:To exterior wall (ft)=",
		}
	case "slab-glue-down-wood":
		return []string{"climates:2:RH (%)=", "slab-rh:2:Read at=2026-03-02 20:00", "slab-rh:3:RH (%)=", "instruments:3:Calibrated on="}
	case "heated-slab":
		return []string{
			"areas:2:Heat on since=2026-03-02 08:00", "areas:2:Heat on since=", "slab-rh:2:Depth (in)=",
			"surface:2:Temp (F)=95", "climates:2:RH (%)=", "areas:2:Install on=",
		}
	}
	return nil
}

// changedRows changes a figure in one row of a table or in all, takes a row out
// or writes it twice.
func changedRows(t *rapid.T, file string, rows [][]string) [][]string {
	y := rapid.IntRange(1, len(rows)-1).Draw(t, "row")
	switch rapid.IntRange(0, 15).Draw(t, "kind") {
	case 15:
		if file != "areas.csv" && file != "products.csv" {
			return slices.Delete(rows, y, y+1)
		}
	case 14:
		return append(rows, slices.Clone(rows[y]))
	}
	var figures []int // columns that hold a number or a time
	for x, cell := range rows[y] {
		if changedCell(cell, 0) != cell {
			figures = append(figures, x)
		}
	}
	if len(figures) == 0 {
		return rows
	}
	x := rapid.SampledFrom(figures).Draw(t, "column")
	change := rapid.IntRange(0, 16).Draw(t, "change")
	for i, row := range rows[1:] {
		if whole := change%2 == 0; whole || i+1 == y {
			row[x] = changedCell(row[x], change)
		}
	}
	return rows
}

// changedCell is a number or a time changed a little or much, with the places it
// had, or nothing in place of either.
func changedCell(cell string, change int) string {
	const last = 16
	at, err := time.Parse("2006-01-02 15:04", cell)
	dated := err == nil
	day, err := time.Parse(time.DateOnly, cell)
	x, notNumber := strconv.ParseFloat(cell, 64)
	switch {
	case dated && change < last:
		hours := []int{-24 * 40, -24 * 9, -73, -49, -25, -3, -1, 1, 3, 23, 25, 49, 73, 24 * 9, 24 * 20, 24 * 40}
		return at.Add(time.Duration(hours[change]) * time.Hour).Format("2006-01-02 15:04")
	case err == nil && change < last:
		days := []int{-400, -200, -40, -30, -8, -3, -2, -1, 1, 2, 3, 8, 30, 40, 200, 400}
		return day.AddDate(0, 0, days[change]).Format(time.DateOnly)
	case notNumber == nil && change < last:
		_, decimals, _ := strings.Cut(cell, ".")
		by := []float64{0.1, 0.5, 0.8, 0.9, 0.95, 0.98, 0.99, 1.01, 1.02, 1.05, 1.1, 1.2, 1.3, 2, 5, 20}
		return strconv.FormatFloat(x*by[change], 'f', max(len(decimals), 1), 64)
	case dated || err == nil || notNumber == nil:
		return ""
	}
	return cell
}

// check -o of a record that reads comes to its end and writes a workbook, and
// one that does not read leaves none.
func TestRandomRecordsAreWritten(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	valid := 0
	rapid.Check(t, func(t *rapid.T) {
		book, code := writtenBook(t, drawnRecord(t), dir)
		if code == exitGo || code == exitNoGo {
			valid++
		}
		if written := len(book) > 0; written != (code == exitGo || code == exitNoGo) || code > exitUnusable {
			t.Fatalf("exit code %d, %d bytes written", code, len(book))
		}
	})
	t.Logf("%d valid records", valid)
	if valid == 0 {
		t.Error("no record was valid")
	}
}

// writtenBook is the decision workbook of a record and the exit code of check.
func writtenBook(t interface{ Fatal(...any) }, record tables, dir string) ([]byte, int) {
	job, out := filepath.Join(dir, "job"), filepath.Join(dir, "job.xlsx")
	for _, path := range []string{job, out} {
		if err := os.RemoveAll(path); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(job, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := record.write(job); err != nil {
		t.Fatal(err)
	}
	var faults bytes.Buffer
	oneRun.Lock()
	code := run([]string{toolName, "check", job, "-o", out}, io.Discard, &faults)
	oneRun.Unlock()
	book, err := os.ReadFile(out)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return book, code
}

// TestSampleOfRecords writes decision workbooks of drawn records without their
// pictures, the same ones at every run: with -args DIR so many as COUNT says
// into DIR, where another program can recalculate them.
func TestSampleOfRecords(t *testing.T) {
	t.Parallel()
	dir, count := t.TempDir(), 12
	if flag.NArg() == 2 {
		dir = flag.Arg(0)
		var err error
		if count, err = strconv.Atoi(flag.Arg(1)); err != nil {
			t.Fatal(err)
		}
	}
	drawn := rapid.Custom(drawnRecord)
	work := t.TempDir()
	written := 0
	for seed := 0; written < count; seed++ {
		if seed > 10*count {
			t.Fatalf("of %d records only %d are valid", seed, written)
		}
		book, _ := writtenBook(t, drawn.Example(seed), work)
		if len(book) == 0 {
			continue
		}
		plain, err := withoutPictures(book)
		if err != nil {
			t.Fatal(err)
		}
		written++
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%04d.xlsx", seed)), plain, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// withoutPictures is a workbook that shows none of its charts.
func withoutPictures(book []byte) ([]byte, error) {
	drawing := regexp.MustCompile(`<drawing [^>]*>(</drawing>)?`)
	return repacked(func(parts map[string]string) error {
		for name, text := range parts {
			switch {
			case strings.HasPrefix(name, "xl/worksheets/_rels"), strings.Contains(name, "xl/charts"), strings.Contains(name, "xl/drawings"):
				delete(parts, name)
			case strings.HasPrefix(name, "xl/worksheets/"):
				parts[name] = drawing.ReplaceAllString(text, "")
			case name == "[Content_Types].xml":
				parts[name] = regexp.MustCompile(`<Override [^>]*(charts|drawings)/[^>]*>(</Override>)?`).ReplaceAllString(text, "")
			}
		}
		return nil
	})(book)
}
