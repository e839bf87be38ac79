//go:build unix

package main

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"unicode/utf16"
)

// folderOfBase is a base record as the folder job.
func folderOfBase(t *testing.T, dir string) string {
	t.Helper()
	all, err := readTables(filepath.Join(bases, "slab-resilient"))
	if err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(dir, "job")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := all.write(folder); err != nil {
		t.Fatal(err)
	}
	return folder
}

// ofTable is a case of a folder's file air.csv, written piece by piece.
func ofTable(name string, pieces []piece, want ...string) hostileCase {
	return hostileCase{name, func(t *testing.T, dir string) []string {
		write(t, filepath.Join(folderOfBase(t, dir), "air.csv"), pieces)
		return checkArgs("job")
	}, append([]string{"air.csv"}, want...)}
}

// write writes a file piece by piece.
func write(t *testing.T, path string, pieces []piece) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	w := bufio.NewWriter(f)
	for _, p := range pieces {
		if err := repeat(w, p); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
}

func asUTF16(text string) string {
	wide := []byte("\xff\xfe")
	for _, r := range utf16.Encode([]rune(text)) {
		wide = append(wide, byte(r), byte(r>>8))
	}
	return string(wide)
}

const (
	airHeader = "Read at,Temp (F),RH (%),Instrument\n"
	airRow    = "2026-03-04 08:00,70,40,AL1\n"
)

// hostileTables are CSV files that are no table, or go wrong from end to end.
func hostileTables() []hostileCase {
	once := func(text string) []piece { return []piece{{text, 1}} }
	faults := func(rows int) []piece {
		var b strings.Builder
		for i := range rows {
			fmt.Fprintf(&b, "2026-03-%d 08:00,x%d,y%d,Q%d\n", i, i, i, i)
		}
		return once(airHeader + b.String())
	}
	return []hostileCase{
		ofTable("a table of faulty rows",
			faults(101_000), `air.csv rows 2 to 25007 "Temp (F)": "x0" is not a plain number`,
			"air.csv row 25008: the record has 100000 faults up to here; correct the first ones", "and 2"),
		ofTable("a table of rows with one fault",
			[]piece{{airHeader, 1}, {"2026-03-04 08:00,7O,40,AL1\n", 101_000}},
			"air.csv row 100002: the record has 100000 faults up to here; correct the first ones", "rows 2 to 100001",
			`"7O" is not a plain number`),
		ofTable("an endless line", []piece{{airHeader, 1}, {"70 ", 15 * oneMB}}, "air.csv row 2: is longer than"),
		ofTable("an endless line of commas",
			[]piece{{airHeader, 1}, {",", 60 * oneMB}}, "air.csv row 2: is longer than"),
		ofTable("an endless header", []piece{{"Read at,", 1}, {"a,", 15 * oneMB}}, "air.csv row 1: is longer than"),
		ofTable("a quote that never ends",
			[]piece{{airHeader + "2026-03-04 08:00,\"70,40,AL1\n", 1}, {airRow, oneMB}}, "air.csv row 2: ", "quote"),
		ofTable("quotes and commas without end", []piece{{airHeader, 1}, {`"",`, 15 * oneMB}}, "air.csv row 2: "),
		{"a file that is too large", func(t *testing.T, dir string) []string {
			if err := os.Truncate(filepath.Join(folderOfBase(t, dir), "air.csv"), 256*oneMB+1); err != nil {
				t.Fatal(err)
			}
			return checkArgs("job")
		}, []string{"air.csv: is over 256 MB"}},
		ofTable("many short lines", []piece{{airHeader, 1}, {"x\n", 3 * oneMB}}, "air.csv"),
		ofTable("NUL in a cell",
			once(airHeader+"2026-03-04 08:00,7\x000,40,AL1\n"), "is not UTF-8 text; save it as CSV UTF-8"),
		ofTable("letters that command a terminal",
			once("Read at,Temp (F),RH (%),Instrument,Note\n2026-03-04 08:00,70,40,AL1,\x1b[2Jgone\n"),
			`row 2 "Note": "\x1b[2Jgone" holds a control character`),
		ofTable("UTF-16", once(asUTF16(airHeader+airRow)), "is not UTF-8 text; save it as CSV UTF-8"),
		ofTable("Latin-1",
			once(airHeader+"2026-03-04 08:00,70,40,M\xfcller\n"), "is not UTF-8 text; save it as CSV UTF-8"),
		ofTable("half UTF-8, half Latin-1",
			once(airHeader+"2026-03-04 08:00,70,40,Müller\n2026-03-04 08:00,70,40,M\xfcller\n"), "is not UTF-8 text; save it as CSV UTF-8"),
		ofTable("the same header twice",
			once("Read at,RH (%),Temp (F),RH (%),Instrument\n2026-03-04 08:00,40,70,90,AL1\n"), `"RH (%)"`, "twice"),
		ofTable("two headers of one meaning",
			once("Read at,Temp (C),Temp (F),RH (%),Instrument\n2026-03-04 08:00,21,70,40,AL1\n"), `"Temp (F)"`),
		ofTable("a text of 40,000 letters",
			once("Read at,Temp (F),RH (%),Instrument,Note\n2026-03-04 08:00,70,40,AL1,"+strings.Repeat("ö", 40_000)+"\n"),
			"row 2", "is longer than a cell of a spreadsheet can be; write at most 32767 letters"),
	}
}

// kind is a case of something that is no file in the place of one.
func kind(name string, make func(path string) error, command func(path string) []string, path string, want ...string) hostileCase {
	return hostileCase{name, func(t *testing.T, dir string) []string {
		folderOfBase(t, dir)
		put(t, dir, "export.csv", "Time,Temp (F),RH (%)\n2026-03-04 08:00,70,40\n")
		full := filepath.Join(dir, path)
		if err := os.RemoveAll(full); err != nil {
			t.Fatal(err)
		}
		if err := make(full); err != nil {
			t.Fatal(err)
		}
		return command(path)
	}, want}
}

// hostileKinds are pipes, folders, devices and loops where a file is due, for
// every command that reads one.
func hostileKinds() []hostileCase {
	pipe := func(path string) error { return syscall.Mkfifo(path, 0o644) }
	folder := func(path string) error { return os.Mkdir(path, 0o755) }
	device := func(path string) error { return os.Symlink("/dev/zero", path) }
	loop := func(path string) error {
		if err := os.Symlink(filepath.Base(path)+".2", path); err != nil {
			return err
		}
		return os.Symlink(filepath.Base(path), path+".2")
	}
	logs := func(record, file string) []string {
		return []string{"log", record, file, "--table", "air", "--instrument", "AL1", "-o", "new"}
	}
	var all []hostileCase
	for _, what := range []struct {
		name string
		make func(string) error
		says string
	}{
		{"a pipe", pipe, "is not a regular file"},
		{"a device", device, "is not a regular file"},
		{"links in a loop", loop, "too many levels of symbolic links"},
		{"a folder", folder, ""},
	} {
		says := what.says
		if says == "" {
			says = "is not a regular file"
		}
		as := func(command func(path string) []string, path, says string) {
			all = append(all, kind(what.name+": "+strings.Join(command(path), " "), what.make, command, path, filepath.Base(path)+": ",
				says))
		}
		if what.says != "" { // a folder is a record
			as(checkArgs, "mill.xlsx", says)
			as(func(path string) []string { return []string{"plan", path, "-o", "new.xlsx"} }, "mill.xlsx", says)
			as(func(path string) []string { return logs(path, "export.csv") }, "mill.xlsx", says)
		}
		as(func(string) []string {
			return checkArgs("job")
		}, "job/air.csv", strings.Replace(says, "is not a regular", "is no regular", 1))
		as(func(path string) []string { return logs("job", path) }, "export.csv", says)
		as(func(path string) []string { return []string{"climate", path, "--name", "home"} }, "town.epw", says)
		as(func(path string) []string { return []string{"verify", path} }, "decision.xlsx", says)
	}
	return append(all, kind("a record inside itself", func(path string) error { return os.Symlink(".", path) },
		func(string) []string {
			return checkArgs("job")
		}, "job/air.csv", "air.csv: looks like the table Air and is no regular file"))
}

// hostileExports are files of loggers and of the weather that are none.
func hostileExports() []hostileCase {
	of := func(name, file string, pieces []piece, args []string, want ...string) hostileCase {
		return hostileCase{name, func(t *testing.T, dir string) []string {
			folderOfBase(t, dir)
			write(t, filepath.Join(dir, file), pieces)
			return args
		}, append([]string{file}, want...)}
	}
	log := func(name string, pieces []piece, want ...string) hostileCase {
		return of("log: "+name, "export.csv", pieces,
			[]string{"log", "job", "export.csv", "--table", "air", "--instrument", "AL1", "-o", "new"}, want...)
	}
	weather := func(name string, pieces []piece, want ...string) hostileCase {
		return of("climate: "+name, "town.epw", pieces, []string{"climate", "town.epw", "--name", "home"}, want...)
	}
	head := piece{"Time,Temp (F),RH (%)\n", 1}
	return []hostileCase{
		log("an endless line", []piece{head, {"70 ", 15 * oneMB}}, "line 2: is longer than any row of readings"),
		log("an endless line of commas",
			[]piece{head, {",", 60 * oneMB}}, "line 2: is longer than any row of readings"),
		log("rows that do not read",
			[]piece{head, {"2026-03-04 08:00,7O,x\n", 103_000}}, "none of its first 102400 rows can be read"),
		log("quotes out of place", []piece{head, {"2026-03-04 08:00,\"70,40\n", 1000}}, "no header was found"),
		log("a workbook", []piece{{"PK\x03\x04", 1}, {"x", 5000}}, "is a workbook or an archive"),
		log("NUL", []piece{head, {"\x00", 5000}}, "is not text; export the readings as CSV"),
		weather("an endless line",
			[]piece{{"LOCATION,", 1}, {"x", 10 * oneMB}}, "names a place in more than 1000 letters"),
		weather("commas without end",
			[]piece{{strings.Join([]string{
				"LOCATION", "DESIGN CONDITIONS", "TYPICAL/EXTREME PERIODS", "GROUND TEMPERATURES",
				"HOLIDAYS/DAYLIGHT SAVING", "COMMENTS 1", "COMMENTS 2", "DATA PERIODS", "",
			}, "\n"), 1}, {",", 15 * oneMB}}, "line 9"),
		weather("NUL", []piece{{"LOCATION,\x00", 1}}, "line 1: holds a control character"),
		weather("too large", []piece{{"x", 17 * oneMB}}, "is over 16 MB"),
		weather("UTF-16", []piece{{asUTF16("LOCATION,x\n"), 1}}, "line 1"),
		weather("millions of lines", []piece{{"\n", 15 * oneMB}}, "line 1"),
	}
}
