package main

import (
	"archive/zip"
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"firstboard/report/seal"
)

// tampering is a change of a decision workbook that verify must find. A lost
// one is such that a spreadsheet program takes it back as it saves the file.
type tampering struct {
	name   string
	change func(book []byte) ([]byte, error)
	lost   bool
}

// cellTwice is the one tampering that leaves no workbook to be read.
const cellTwice = "a cell twice"

// TestTamperings holds every tampering against verify, each on its own copy of
// one NO-GO workbook. With -args DIR the copies are written into DIR/found, and
// those that a spreadsheet program takes back into DIR/lost.
func TestTamperings(t *testing.T) {
	t.Parallel()
	book := signedBook(t, "slab-rh:3:RH (%)=81.5")
	all := slices.Concat(cellTamperings(), pageTamperings(), drawnTamperings(), recordTamperings(), fileTamperings())
	names := map[string]bool{}
	for _, c := range all {
		if names[c.name] {
			t.Errorf("%q stands there twice", c.name)
		}
		names[c.name] = true
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			now, err := c.change(book)
			if err != nil {
				t.Fatal(err)
			}
			folder := "found"
			if c.lost {
				folder = "lost"
			}
			keepCopy(t, folder, c.name, now)
			broken, err := brokenBy(t, now)
			if refused := c.name == cellTwice; refused != (err != nil) || !refused && len(broken) == 0 {
				t.Errorf("verify finds %v, and says %v", broken, err)
			}
		})
	}
	const least = 80
	if len(all) < least {
		t.Errorf("%d tamperings, fewer than %d", len(all), least)
	}
}

// TestCleanWorkbooksHold holds workbooks that nobody changed: of a folder, of a
// workbook, of a decision workbook judged again, saved by another library, and
// with signatures added later. With -args DIR they are written into DIR/clean.
func TestCleanWorkbooksHold(t *testing.T) {
	t.Parallel()
	clean := map[string][]byte{
		"demonstration": decided(t, "../../testdata/jobs/millrace"), "twin": decided(t, "../../testdata/jobs/millrace.xlsx"),
		"signed": signedBook(t),
	}
	for _, base := range []string{"heated-slab", "slab-resilient", "wood-crawl", "wood-over-slab"} {
		clean[base] = decided(t, filepath.Join(bases, base))
	}
	again := filepath.Join(t.TempDir(), "signed.xlsx")
	if err := os.WriteFile(again, clean["signed"], 0o644); err != nil {
		t.Fatal(err)
	}
	clean["judged again"] = decided(t, again)
	for name, change := range map[string]func(*excelize.File) error{
		"saved by a library": func(*excelize.File) error { return nil },
		"signed later": func(f *excelize.File) error {
			return f.SetSheetRow("Sign-off", "A3", &[]string{"A1", "owner", "Owner", "2026-03-06 09:00", "refuse"})
		},
	} {
		now, err := opened(change)(clean["signed"])
		if err != nil {
			t.Fatal(err)
		}
		clean[name] = now
	}
	loose, err := repacked(loosened)(clean["demonstration"])
	if err != nil {
		t.Fatal(err)
	}
	clean["saved by a script"] = loose
	for name, book := range clean {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			keepCopy(t, "clean", name, book)
			if broken, err := brokenBy(t, book); err != nil || len(broken) > 0 {
				t.Errorf("it does not hold: %v %q", err, broken)
			}
		})
	}
}

// loosened rewrites the parts of a workbook as the libraries of scripts do: gaps in the margins,
// columns and rows of print titles in another order, empty results behind formulas.
func loosened(parts map[string]string) error {
	for name, text := range parts {
		for pattern, with := range map[string]string{
			`(&amp;[LCR])(&amp;8)`:                                               "$1 $2",
			`(Print_Titles"[^>]*>)([^<,]*),([^<]*)<`:                             "$1$3,$2<",
			`(<c [^>]*?)( t="[a-z]+")?([^>]*>)(<f>[^<]*</f>)(<v>[^<]*</v>|<v/>)`: "$1$3$4<v></v>",
		} {
			text = regexp.MustCompile(pattern).ReplaceAllString(text, with)
		}
		parts[name] = text
	}
	return nil
}

// Record cells come first, then what they change as one count, then what is around them and the
// pages; numbers and times are told as people write them.
func TestVerifyTellsInOrder(t *testing.T) {
	t.Parallel()
	book, err := opened(func(f *excelize.File) error {
		at := time.Date(2026, 3, 4, 20, 0, 0, 0, time.UTC)
		return errors.Join(f.SetRowVisible("Areas", 2, false), f.SetCellValue("Slab RH", "I3", 82.9+1e-14),
			f.SetCellValue("Air", "A3", at), f.SetCellStr("Decision", "A40", "Approved for laying"))
	})(decided(t, filepath.Join(bases, "slab-resilient")))
	if err != nil {
		t.Fatal(err)
	}
	broken, err := brokenBy(t, book)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"Slab RH!I3: from 74 to 82.9", "Air!A3: from 2026-02-27 08:00 to 2026-03-04 20:00", "as the tables stand now ",
		"Areas: was added: hidden row 2", `Decision!A40: was added: "Approved for laying"`,
	}
	if len(broken) != len(want) || slices.ContainsFunc(want, func(line string) bool {
		return !strings.HasPrefix(broken[slices.Index(want, line)], line)
	}) {
		t.Errorf("got %q, want %q", broken, want)
	}
}

// keepCopy writes a workbook where a folder is given.
func keepCopy(t *testing.T, folder, name string, book []byte) {
	if flag.Arg(0) == "" || flag.Arg(0) == "review" {
		return
	}
	dir := filepath.Join(flag.Arg(0), folder)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	name = strings.NewReplacer(" ", "-", "'", "").Replace(name) + ".xlsx"
	if err := os.WriteFile(filepath.Join(dir, name), book, 0o644); err != nil {
		t.Fatal(err)
	}
}

// signedBook is the decision workbook of an area of wood glued to a slab, as a
// file, with changes made to its record and a signature.
func signedBook(t *testing.T, changes ...string) []byte {
	t.Helper()
	record, err := readTables(filepath.Join(bases, "slab-glue-down-wood"))
	if err != nil {
		t.Fatal(err)
	}
	record["sign-off.csv"] = [][]string{
		{"Area", "Role", "Name", "At", "Decision", "Remarks"},
		{"A1", "installer", "Tester", "2026-03-05 07:00", "accept", "seen on site"},
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
	return decided(t, dir)
}

// decided is the decision workbook of a record.
func decided(t *testing.T, record string) []byte {
	t.Helper()
	out := filepath.Join(t.TempDir(), "decision.xlsx")
	var faults bytes.Buffer
	if code := run([]string{toolName, "check", record, "-o", out}, io.Discard, &faults); code != exitGo && code != exitNoGo {
		t.Fatalf("exit code %d: %s", code, faults.String())
	}
	book, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// brokenBy is what verify finds of a workbook.
func brokenBy(t *testing.T, book []byte) ([]string, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "decision.xlsx")
	if err := os.WriteFile(path, book, 0o644); err != nil {
		t.Fatal(err)
	}
	w, err := toVerify(path)
	if err != nil {
		return nil, err
	}
	return seal.Verify(w).Broken, nil
}

// opened changes a workbook by means of a library that is not verify's own.
func opened(change func(*excelize.File) error) func([]byte) ([]byte, error) {
	return func(book []byte) ([]byte, error) {
		f, err := excelize.OpenReader(bytes.NewReader(book))
		if err != nil {
			return nil, err
		}
		defer f.Close()
		if err := change(f); err != nil {
			return nil, err
		}
		var out bytes.Buffer
		err = f.Write(&out)
		return out.Bytes(), err
	}
}

// inPart changes text of one part of a workbook's file: pairs of what stands
// there and what takes its place, each once.
func inPart(part string, pairs ...string) func([]byte) ([]byte, error) {
	return repacked(func(parts map[string]string) error {
		text, known := parts[part]
		if !known {
			return fmt.Errorf("there is no part %s", part)
		}
		for pair := range slices.Chunk(pairs, 2) {
			if !strings.Contains(text, pair[0]) {
				return fmt.Errorf("%s does not hold %s", part, pair[0])
			}
			text = strings.Replace(text, pair[0], pair[1], 1)
		}
		parts[part] = text
		return nil
	})
}

// repacked changes the parts of a workbook's file by their names.
func repacked(change func(parts map[string]string) error) func([]byte) ([]byte, error) {
	return func(book []byte) ([]byte, error) {
		parts, err := unpacked(book)
		if err != nil {
			return nil, err
		}
		if err := change(parts); err != nil {
			return nil, err
		}
		var out bytes.Buffer
		zw := zip.NewWriter(&out)
		for name, text := range parts {
			w, err := zw.Create(name)
			if err != nil {
				return nil, err
			}
			if _, err := io.WriteString(w, text); err != nil {
				return nil, err
			}
		}
		err = zw.Close()
		return out.Bytes(), err
	}
}

func unpacked(book []byte) (map[string]string, error) {
	zr, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		return nil, err
	}
	parts := map[string]string{}
	for _, f := range zr.File {
		r, err := f.Open()
		if err != nil {
			return nil, err
		}
		text, err := io.ReadAll(r)
		r.Close()
		if err != nil {
			return nil, err
		}
		parts[f.Name] = string(text)
	}
	return parts, nil
}
