package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/report"
	"firstboard/report/record"
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

// A copy of a record reads as the same tables and gives the same findings,
// from either kind into either kind.
func TestACopyOfARecordIsThatRecord(t *testing.T) {
	const jobs = "../../testdata/jobs/"
	for _, from := range []string{"millrace", "millrace.xlsx"} {
		for _, name := range []string{"copy", "copy.xlsx"} {
			t.Run(from+" to "+name, func(t *testing.T) {
				want := readRecord(t, jobs+from)
				path := filepath.Join(t.TempDir(), name)
				if err := saveRecord(path, jobs+from, want.Tables, false); err != nil {
					t.Fatal(err)
				}
				got := readRecord(t, path)
				if diff := cmp.Diff(want.Tables, got.Tables); diff != "" {
					t.Errorf("tables differ (-record +copy):\n%s", diff)
				}
				if diff := cmp.Diff(findings(want), findings(got)); diff != "" {
					t.Errorf("findings differ (-record +copy):\n%s", diff)
				}
			})
		}
	}
}

// findings are the answers of a record without the places of their evidence,
// which name the file.
func findings(rec record.Record) []report.AreaAnswer {
	areas := report.Answers(rec.Job, report.Judge(rec.Job)).Areas
	for _, a := range areas {
		for i := range a.Findings {
			a.Findings[i].Evidence = nil
		}
	}
	return areas
}

func TestEqualRecordsGiveEqualBytes(t *testing.T) {
	tables := readRecord(t, "../../testdata/jobs/millrace").Tables
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := workbook.WriteRecord(w, tables); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two writings of one record differ")
	}
}

func TestACopyReplacesNoFolder(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "copy")
	if err := os.Mkdir(path, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := saveRecord(path, "job", nil, true); err == nil {
		t.Error("a folder was written over")
	}
	if err := saveRecord(filepath.Join(dir, "none", "copy"), "job", nil, false); err == nil {
		t.Error("a folder was written where there is none to hold it")
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 1 {
		t.Errorf("a failed run left %v", entries)
	}
}
