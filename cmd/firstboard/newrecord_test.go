package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/report"
	"firstboard/report/record"
	"firstboard/report/record/sheet"
	"firstboard/report/workbook"
)

func readRecord(t *testing.T, path string) record.Record {
	t.Helper()
	rec, err := record.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// findings are the answers of a record without the places of their evidence,
// which name the file.
func findings(rec record.Record) []report.AreaAnswer {
	areas := report.Answers(rec.Job, report.Judge(rec.Job), nil).Areas
	for _, a := range areas {
		for i := range a.Findings {
			a.Findings[i].Evidence, a.Findings[i].Working = nil, ""
		}
	}
	return areas
}

// copies writes a record as a folder and as a workbook.
func copies(t *testing.T, rec record.Record) (folder, book string) {
	t.Helper()
	dir := t.TempDir()
	folder, book = filepath.Join(dir, "copy"), filepath.Join(dir, "copy.xlsx")
	if err := saveFolder(folder, dir+"/record", rec.Tables); err != nil {
		t.Fatal(err)
	}
	err := save([]target{{book, func(w io.Writer) error {
		return workbook.WriteRecord(w, rec.Job, toolName, rec.Tables, sheet.MostBytes)
	}}})
	if err != nil {
		t.Fatal(err)
	}
	return folder, book
}

// A copy of a record reads as the same tables and gives the same findings,
// from either kind into either kind, and the same bytes each time.
func TestACopyOfARecordIsThatRecord(t *testing.T) {
	for _, name := range []string{"millrace", "millrace.xlsx"} {
		want := readRecord(t, filepath.Join("../../testdata/jobs", name))
		folder, book := copies(t, want)
		for _, path := range []string{folder, book} {
			t.Run(name+" to "+filepath.Base(path), func(t *testing.T) {
				got := readRecord(t, path)
				if diff := cmp.Diff(want.Tables, got.Tables); diff != "" {
					t.Errorf("tables differ (-record +copy):\n%s", diff)
				}
				if diff := cmp.Diff(findings(want), findings(got)); diff != "" {
					t.Errorf("findings differ (-record +copy):\n%s", diff)
				}
			})
		}
		again, bookAgain := copies(t, want)
		if readRecord(t, again).SHA256 != readRecord(t, folder).SHA256 {
			t.Error("two folders of one record differ")
		}
		a, _ := os.ReadFile(book)
		b, _ := os.ReadFile(bookAgain)
		if !bytes.Equal(a, b) {
			t.Error("two workbooks of one record differ")
		}
	}
}
