package record

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"
)

// Reading grows as the record does: a benchmark at n rows and at 4 n, of a
// folder and of a workbook, beside what a bare pass over the same file takes.
func BenchmarkReadAir(b *testing.B) {
	for _, n := range []int{50_000, 200_000} {
		folder := airRecord(b, n)
		book := twin(b, folder)
		size := fmt.Sprintf("%dk", n/1000)
		b.Run("csv/"+size, func(b *testing.B) { readAll(b, folder, n) })
		b.Run("csv bare/"+size, func(b *testing.B) { bareCSV(b, filepath.Join(folder, "air.csv"), n) })
		b.Run("xlsx/"+size, func(b *testing.B) { readAll(b, book, n) })
		b.Run("xlsx raw rows/"+size, func(b *testing.B) { rawRows(b, book, n) })
	}
}

func readAll(b *testing.B, path string, rows int) {
	b.ReportAllocs()
	for b.Loop() {
		rec, err := Read(path)
		if err != nil || len(rec.Job.Air) != rows {
			b.Fatal(len(rec.Job.Air), err)
		}
	}
}

// bareCSV is the pass that every reader of the file has to make.
func bareCSV(b *testing.B, path string, rows int) {
	for b.Loop() {
		f, err := os.Open(path)
		if err != nil {
			b.Fatal(err)
		}
		r := csv.NewReader(f)
		r.ReuseRecord = true
		n := -1 // the header
		for {
			if _, err = r.Read(); err != nil {
				break
			}
			n++
		}
		f.Close()
		if err != io.EOF || n != rows {
			b.Fatal(n, err)
		}
	}
}

// rawRows is the spreadsheet library's own pass over the stored values.
func rawRows(b *testing.B, path string, rows int) {
	for b.Loop() {
		f, err := excelize.OpenFile(path, excelize.Options{RawCellValue: true})
		if err != nil {
			b.Fatal(err)
		}
		all, err := f.Rows("Air")
		if err != nil {
			b.Fatal(err)
		}
		n := -1
		for all.Next() {
			if _, err := all.Columns(excelize.Options{RawCellValue: true}); err != nil {
				b.Fatal(err)
			}
			n++
		}
		f.Close()
		if n != rows {
			b.Fatal(n)
		}
	}
}
