package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"firstboard/report/grid"
	"firstboard/report/record"
)

// longLog is a record with so many rows of air, the folder it stands in.
func longLog(b testing.TB, rows int) string {
	b.Helper()
	tables, err := readTables(filepath.Join(bases, "slab-resilient"))
	if err != nil {
		b.Fatal(err)
	}
	air := tables["air.csv"][:1]
	last := time.Date(2026, time.March, 4, 8, 0, 0, 0, time.UTC)
	for i := range rows {
		at := last.Add(-time.Duration(rows-1-i) * time.Minute)
		air = append(air, []string{
			at.Format("2006-01-02 15:04"), fmt.Sprintf("%.1f", 69+float64(i%20)/10),
			fmt.Sprintf("%.1f", 38+float64(i%40)/10), "AL1",
		})
	}
	tables["air.csv"] = air
	dir := b.TempDir()
	if err := tables.write(dir); err != nil {
		b.Fatal(err)
	}
	return dir
}

// BenchmarkSharedLog checks the demonstration with 200,000 rows of air, of each area
// and of the whole site in turn. The ratio is what that costs in passes of the
// standard library's reader over the same file.
func BenchmarkSharedLog(b *testing.B) {
	const rows = 200_000
	tables, err := readTables(filepath.Join("..", "..", "testdata", "jobs", "millrace"))
	if err != nil {
		b.Fatal(err)
	}
	air := [][]string{{"Area", "Read at", "Temp (F)", "RH (%)", "Instrument"}}
	for i := range rows {
		air = append(air, []string{
			[]string{"", "A1", "A2", "A3", "A4", "A5"}[i%6], minute(rows - i),
			fmt.Sprintf("%.1f", 69+float64(i%20)/10), fmt.Sprintf("%.1f", 38+float64(i%40)/10), "AL1",
		})
	}
	tables["air.csv"] = air
	dir := b.TempDir()
	if err := tables.write(dir); err != nil {
		b.Fatal(err)
	}
	var check, pass time.Duration
	for b.Loop() {
		began := time.Now()
		if code := run([]string{toolName, "check", dir}, io.Discard, io.Discard); code > exitNoGo {
			b.Fatalf("exit code %d", code)
		}
		check += time.Since(began)
		began = time.Now()
		barePass(b, filepath.Join(dir, "air.csv"))
		pass += time.Since(began)
	}
	b.ReportMetric(check.Seconds()/float64(b.N), "check-s")
	b.ReportMetric(pass.Seconds()/float64(b.N), "pass-s")
	b.ReportMetric(check.Seconds()/pass.Seconds(), "ratio")
}

// barePass reads a CSV file row by row.
func barePass(b *testing.B, path string) {
	f, err := os.Open(path)
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	for err = error(nil); err == nil; {
		_, err = r.Read()
	}
	if err != io.EOF {
		b.Fatal(err)
	}
}

// BenchmarkLongLog checks a record with 200,000 rows of air without and with a
// decision workbook, verifies that, and writes its tables and their copies by the library
// alone. The ratio is what the workbook costs in such writes.
func BenchmarkLongLog(b *testing.B) {
	const rows = 200_000
	dir := longLog(b, rows)
	rec, err := record.Read(dir)
	if err != nil {
		b.Fatal(err)
	}
	took := func(work func()) time.Duration {
		began := time.Now()
		work()
		return time.Since(began)
	}
	checked := func(more ...string) func() {
		return func() {
			if code := run(append([]string{toolName, "check", dir}, more...), io.Discard, io.Discard); code > exitNoGo {
				b.Fatalf("exit code %d", code)
			}
		}
	}
	var check, book, verify, bare time.Duration
	for b.Loop() {
		f := excelize.NewFile()
		tables := bareTables(b, f, rec.Tables)
		bare += took(func() { bareWrite(b, f, tables) })
		f.Close()
		check += took(checked())
		out := filepath.Join(b.TempDir(), "decision.xlsx")
		book += took(checked("-o", out))
		verify += took(func() {
			if code := run([]string{toolName, "verify", out}, io.Discard, io.Discard); code != exitGo {
				b.Fatalf("exit code %d", code)
			}
		})
	}
	n := float64(b.N)
	b.ReportMetric(check.Seconds()/n, "check-s")
	b.ReportMetric(book.Seconds()/n, "check-o-s")
	b.ReportMetric(verify.Seconds()/n, "verify-s")
	b.ReportMetric(bare.Seconds()/n, "bare-s")
	b.ReportMetric((book-check).Seconds()/bare.Seconds(), "ratio")
}

// bareWrite streams tables and a copy of each to a workbook by the library
// alone: numbers, times and texts, with the format of a time and no other look.
func bareWrite(b *testing.B, f *excelize.File, tables []bareTable) {
	for _, copied := range []string{"", "copy of "} {
		for _, t := range tables {
			if _, err := f.NewSheet(copied + t.name); err != nil {
				b.Fatal(err)
			}
			sw, err := f.NewStreamWriter(copied + t.name)
			if err != nil {
				b.Fatal(err)
			}
			for i, row := range t.rows {
				if err := sw.SetRow(fmt.Sprint("A", i+1), row); err != nil {
					b.Fatal(err)
				}
			}
			if err := sw.Flush(); err != nil {
				b.Fatal(err)
			}
		}
	}
	if err := f.Write(io.Discard); err != nil {
		b.Fatal(err)
	}
}

// bareTable is a table as the library takes it.
type bareTable struct {
	name string
	rows [][]any
}

func bareTables(b *testing.B, f *excelize.File, tables []grid.Table) []bareTable {
	format := "yyyy-mm-dd hh:mm"
	clock, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
	if err != nil {
		b.Fatal(err)
	}
	var all []bareTable
	for _, t := range tables {
		bare := bareTable{name: t.Name, rows: make([][]any, 1, len(t.Rows)+1)}
		for _, h := range t.Header {
			bare.rows[0] = append(bare.rows[0], h)
		}
		for _, r := range t.Rows {
			var row []any
			for _, c := range r.Cells {
				row = append(row, bareValue(c, clock))
			}
			bare.rows = append(bare.rows, row)
		}
		all = append(all, bare)
	}
	return all
}

func bareValue(c grid.Cell, clock int) any {
	switch c.Kind {
	case grid.NumberCell:
		if x, err := strconv.ParseFloat(c.Text, 64); err == nil {
			return x
		}
	case grid.TimeCell, grid.DayCell:
		return excelize.Cell{StyleID: clock, Value: c.Clock()}
	case grid.BlankCell:
		return nil
	}
	return c.Text
}
