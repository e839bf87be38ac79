//go:build unix

package main

import (
	"archive/zip"
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"firstboard/report/record"
)

// trapNames are names of areas that a path, a sheet, a formula, a page or a
// terminal takes for something else.
func trapNames() []string {
	return []string{
		"A/1", "A:1", "A-1", "A-1-2", "..", "../../up", `..\up`, "/etc/x", "[x]", "'A1'", "*?", "Decision", "Slab RH", "CON", "-rf",
		"=1+1", "+1", "@SUM(A1)", `=HYPERLINK("x","y")`, "<script>alert(1)</script>", "_x0041_",
		strings.Repeat("long ", 8) + "one", strings.Repeat("long ", 8) + "two", strings.Repeat("ö", 200), "e\u0301", "é", "\u202eabc",
		"a\tb",
	}
}

// trapped is a base record with an area of every trap name, and texts that begin
// like formulas wherever a text may stand.
func trapped(t *testing.T, dir string) []string {
	t.Helper()
	folder := folderOfBase(t, dir)
	all, err := readTables(folder)
	if err != nil {
		t.Fatal(err)
	}
	areas := all["areas.csv"]
	var ids []string
	for _, name := range trapNames() {
		row := slices.Clone(areas[1])
		row[0] = name
		areas = append(areas, row)
		ids = append(ids, name)
	}
	all["areas.csv"] = append(areas[:1:1], areas[2:]...)
	for file, rows := range all {
		for i, row := range rows {
			if at := slices.Index(rows[0], "Area"); at >= 0 && file != "areas.csv" && i > 0 && row[at] == "A1" {
				row[at] = ids[0]
			}
		}
	}
	all["job.csv"] = append(all["job.csv"], []string{"Site", "=1+1"}, []string{"Company", "@SUM(1)"}, []string{"Prepared by", "+cmd"})
	for _, file := range []string{"slab-rh.csv", "air.csv"} {
		all[file][0] = append(all[file][0], "Note")
		for i := range all[file][1:] {
			all[file][i+1] = append(all[file][i+1], []string{"=1+1", "+1+1", "-1+1", "@A1", "'=1", "''", "'quoted'", "- dry"}[i%8])
		}
	}
	if err := all.write(folder); err != nil {
		t.Fatal(err)
	}
	return ids
}

// Whatever an area is called, its files stay in the folder that was named, one
// each, and every sheet has a name that a spreadsheet takes.
func TestTrapNames(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	ids := trapped(t, dir)
	if err := os.Mkdir(filepath.Join(dir, "deep"), 0o755); err != nil {
		t.Fatal(err)
	}
	before := listing(t, dir)
	r := runAlone(t, dir, "check", "job", "-o", "out.xlsx", "--json", "out.json", "--page", "out.html", "--per-area", "deep/areas",
		"--print", "print.xlsx")
	if r.code != exitNoGo {
		t.Fatalf("exit code %d, %s", r.code, r.faults)
	}
	wanted := []string{"deep/areas", "out.html", "out.json", "out.xlsx", "print.xlsx"}
	areas := 0
	for _, path := range listing(t, dir) {
		name, err := filepath.Rel(dir, path)
		switch {
		case err != nil:
			t.Fatal(err)
		case filepath.Dir(name) == "deep/areas":
			areas++
			if base := filepath.Base(name); len(base) > 255-len(".."+toolName) || strings.ContainsAny(base, `/\:*?"<>|`) ||
				!validSheets(t, path) {
				t.Errorf("the file %q", base)
			}
		case !slices.Contains(before, path) && !slices.Contains(wanted, name):
			t.Errorf("written: %q", name)
		}
	}
	if areas != len(ids) {
		t.Errorf("%d files for %d areas", areas, len(ids))
	}
	for _, name := range []string{"out.xlsx", "print.xlsx"} {
		validSheets(t, filepath.Join(dir, name))
	}
	if strings.ContainsAny(r.out, "\x1b\t") {
		t.Error("standard output holds control characters of the record")
	}
	page, err := os.ReadFile(filepath.Join(dir, "out.html"))
	if err != nil || bytes.Contains(page, []byte("<script>alert")) || bytes.Contains(page, []byte("\x1b")) {
		t.Errorf("the page holds a script or a control character of the record (%v)", err)
	}
}

// validSheets fails where a workbook has sheet names that a spreadsheet refuses,
// or a formula that somebody typed.
func validSheets(t *testing.T, path string) bool {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Errorf("%s: %v", path, err)
		return false
	}
	defer f.Close()
	seen := map[string]bool{}
	for _, name := range f.GetSheetList() {
		if key := strings.ToLower(name); seen[key] || len([]rune(name)) > 31 || strings.ContainsAny(name, `:\/?*[]`) ||
			strings.Trim(name, "'") != name || name == "" {
			t.Errorf("%s: a sheet is named %q", path, name)
		}
		seen[strings.ToLower(name)] = true
	}
	for _, typed := range []string{"<f>1+1", "<f>+1", "<f>-1+1", "<f>@", "<f>SUM(1)", "<f>cmd", "<f>HYPERLINK"} {
		if part := partWith(t, path, typed); part != "" {
			t.Errorf("%s: %s holds %s", path, part, typed)
		}
	}
	return true
}

// partWith is the first part of a workbook that holds a text.
func partWith(t *testing.T, path, text string) string {
	t.Helper()
	z, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	for _, part := range z.File {
		r, err := part.Open()
		if err != nil {
			t.Fatal(err)
		}
		var all bytes.Buffer
		if _, err := all.ReadFrom(r); err != nil {
			t.Fatal(err)
		}
		if strings.HasPrefix(part.Name, "xl/worksheets/") && strings.Contains(all.String(), text) {
			return part.Name
		}
	}
	return ""
}

// Of what people typed, nothing becomes a formula in a folder of CSV files
// either, and the folder reads as the same record.
func TestNoFormulaInAFolder(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	trapped(t, dir)
	put(t, dir, "export.csv", "Time,Temp (F),RH (%),Remark\n2026-03-04 08:05,70,40,=1+1\n")
	for _, args := range [][]string{
		{"log", "job", "export.csv", "--table", "air", "--instrument", "AL1", "--column", "note=Remark", "-o", "new"},
		{"log", "job", "export.csv", "--table", "air", "--instrument", "AL1", "--column", "note=Remark", "-o", "new.xlsx"},
		{"plan", "job", "-o", "planned"},
		{"log", "new.xlsx", "export.csv", "--table", "air", "--instrument", "AL1", "--column", "note=Remark", "-o", "again"},
	} {
		if r := runAlone(t, dir, args...); r.code != exitGo {
			t.Fatalf("%q: exit code %d, %s%s", args, r.code, r.out, r.faults)
		}
	}
	validSheets(t, filepath.Join(dir, "new.xlsx"))
	for _, folder := range []string{"new", "planned", "again"} {
		all, err := readTables(filepath.Join(dir, folder))
		if err != nil {
			t.Fatal(err)
		}
		for file, rows := range all {
			for i, row := range rows {
				for _, entry := range row {
					if entry != "" && strings.ContainsAny(entry[:1], "=+-@\t\r") && !isNumber(entry) {
						t.Errorf("%s/%s row %d holds %q", folder, file, i+1, entry)
					}
				}
			}
		}
	}
	was, err := record.Read(filepath.Join(dir, "new"))
	if err != nil {
		t.Fatal(err)
	}
	now, err := record.Read(filepath.Join(dir, "new.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(was.Tables, now.Tables); diff != "" {
		t.Errorf("the folder and the workbook differ:\n%s", diff)
	}
	given, err := record.Read(filepath.Join(dir, "job"))
	if err != nil {
		t.Fatal(err)
	}
	for i, hole := range given.Job.Holes {
		if was.Job.Holes[i].Note != hole.Note || was.Job.Areas[i].ID != given.Job.Areas[i].ID {
			t.Errorf("%q became %q", hole.Note, was.Job.Holes[i].Note)
		}
	}
}

func isNumber(s string) bool {
	return strings.Trim(s, "0123456789.") == "-" || strings.Trim(s, "0123456789.") == ""
}

// Days that count from 1904 are read as the days that they are.
func TestDaysFrom1904(t *testing.T) {
	dates := func(from1904 bool) string {
		dir := t.TempDir()
		b := baseBook(t)
		days := 46085.5 // 2026-03-04 12:00
		if from1904 {
			days -= 1462
			b.swap(t, bookPart, "<workbookPr/>", piece{`<workbookPr date1904="1"/>`, 1})
		}
		b.air(t, piece{fmt.Sprintf(`<row><c s="1"><v>%v</v></c>%s</row>`, days, textCell("70")+textCell("40")+textCell("AL1")), 1})
		b.save(t, dir)
		rec, err := record.Read(filepath.Join(dir, "mill.xlsx"))
		if err != nil {
			t.Fatal(err)
		}
		air := rec.Job.Air
		return air[len(air)-1].ReadAt.Written
	}
	if a, b := dates(false), dates(true); a != "2026-03-04 12:00" || b != a {
		t.Errorf("%q from 1900, %q from 1904", a, b)
	}
}
