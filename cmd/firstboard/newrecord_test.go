package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/record"
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
	if err := saveTables(folder, dir+"/record", rec.Tables); err != nil {
		t.Fatal(err)
	}
	if err := save([]target{{book, filling(rec, rec.Tables, nil).Write}}, false); err != nil {
		t.Fatal(err)
	}
	return folder, book
}

// A copy of a record reads as the same tables and gives the same findings,
// from either kind into either kind, and the same bytes each time.
func TestACopyOfARecordIsThatRecord(t *testing.T) {
	t.Parallel()
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

// A plan's workbook asks of every entry what an empty record asks, in the
// record's own columns and units.
func TestAPlansWorkbookKeepsTheChecksOfAnEmptyRecord(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	blankBook, planned := filepath.Join(dir, "blank.xlsx"), filepath.Join(dir, "plan.xlsx")
	for _, args := range [][]string{{"blank", blankBook}, {"plan", "../../testdata/jobs/millrace", "-o", planned}} {
		if code := run(append([]string{toolName}, args...), io.Discard, os.Stderr); code != exitGo {
			t.Fatalf("%q ends with %d", args, code)
		}
	}
	asked, kept := checksByHeader(t, blankBook), checksByHeader(t, planned)
	for _, name := range []string{
		"Areas!Substrate", "Areas!Install on", "Slab RH!RH (%)", "Slab RH!Read at", "Slab RH!Area", "Wood!Method",
		"Air!Temp (F)", "Job!Acceptance",
	} {
		if asked[name] == "" || kept[name] != asked[name] {
			t.Errorf("%s: the plan's workbook asks %q, an empty record %q", name, kept[name], asked[name])
		}
	}
}

// checksByHeader are the input checks and notes of a workbook's columns, and of
// the items of Job, without the addresses that their formulas name.
func checksByHeader(t *testing.T, path string) map[string]string {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all := map[string]string{}
	for _, name := range f.GetSheetList() {
		validations, err := f.GetDataValidations(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range validations {
			first, _, _ := strings.Cut(v.Sqref, ":")
			column, row, err := excelize.CellNameToCoordinates(first)
			if err != nil {
				t.Fatal(err)
			}
			head, _ := excelize.CoordinatesToCellName(column, 1)
			if name == "Job" && column == 2 && row > 1 {
				head, _ = excelize.CoordinatesToCellName(1, row)
			}
			text, err := f.GetCellValue(name, head)
			if err != nil {
				t.Fatal(err)
			}
			all[name+"!"+text] += v.Type + strings.ReplaceAll(v.Formula1, first, "") + told(v.Prompt) + told(v.Error)
		}
	}
	return all
}

func told(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}
