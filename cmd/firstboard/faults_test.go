//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// A disk that is full, and a target that cannot be written, end in exit code 3
// and one line, and what stood there stays.
func TestOutputsThatCannotBeWritten(t *testing.T) {
	t.Parallel()
	long := strings.Repeat("x", 300)
	for _, c := range []struct {
		name  string
		limit string // of the size of a file, in blocks
		args  []string
		want  string
	}{
		{"full: workbook", "2", []string{"check", "job", "-o", "out.xlsx", "--force"}, "out.xlsx: cannot be written: file too large"},
		{"full: JSON", "2", []string{"check", "job", "--json", "out.json", "--force"}, "out.json: cannot be written: file too large"},
		{"full: page", "2", []string{"check", "job", "--page", "out.html", "--force"}, "out.html: cannot be written: file too large"},
		{"full: print", "2", []string{"check", "job", "--print", "out.xlsx", "--force"}, "out.xlsx: cannot be written: file too large"},
		{"full: areas", "2", []string{"check", "job", "--per-area", "new"}, "A1.xlsx: cannot be written: file too large"},
		{"full: plan", "2", []string{"plan", "job", "-o", "out.xlsx", "--force"}, "out.xlsx: cannot be written: file too large"},
		{"full: gather", "2", append(gathered(), "--force"), "out.xlsx: cannot be written: file too large"},
		{"full: lines of JSON", "0", append(gathered(), "--force"), "cannot be written: file too large"},
		{"full: climate", "2", append(climateInto(), "new.xlsx"), "new.xlsx: cannot be written: file too large"},
		{"full: climate, a folder", "0", append(climateInto(), "new"), "new: cannot be written: file too large"},
		{"full: blank", "2", []string{"blank", "out.xlsx", "--force"}, "out.xlsx: cannot be written: file too large"},
		{
			"full: log, a folder", "0",
			[]string{"log", "job", "export.csv", "--table", "air", "--instrument", "AL1", "-o", "new"},
			"new: cannot be written: file too large",
		},
		{"full: blank, a folder", "0", []string{"blank", "new"}, "new: cannot be written: file too large"},
		{
			"the second of two", "2",
			[]string{"check", "job", "--json", "new.json", "-o", "out.xlsx", "--force"},
			"out.xlsx: cannot be written: file too large",
		},
		{
			"below a file", "",
			[]string{"check", "job", "-o", "export.csv/out.xlsx"},
			"export.csv/out.xlsx: cannot be written: not a directory",
		},
		{"a folder below a file", "", []string{"blank", "export.csv/new"}, "export.csv/new: cannot be written: not a directory"},
		{
			"areas below a file", "",
			[]string{"check", "job", "--per-area", "export.csv/new"},
			"export.csv/new: cannot be written: not a directory",
		},
		{
			"no folder", "",
			[]string{"check", "job", "-o", "none/out.xlsx"},
			"none/out.xlsx: cannot be written: there is no folder none; make it, or name another",
		},
		{"a long name", "", []string{"check", "job", "--json", long + ".json"}, ".json: cannot be written: file name too long"},
		{"a long name of a folder", "", []string{"blank", long}, "cannot be written: file name too long"},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := newWork(t)
			w.reset([]string{"out.xlsx", "out.json", "out.jsonl", "out.html"}, nil)
			before := w.files()
			self, err := exec.LookPath(toolName)
			if err != nil {
				t.Fatal(err)
			}
			script := `exec "$@"`
			if c.limit != "" {
				script = "ulimit -f " + c.limit + "; " + script
			}
			run := exec.Command("sh", append([]string{"-c", script, "sh", self}, c.args...)...)
			run.Dir = w.dir
			said, _ := run.CombinedOutput() // the exit code is looked at below
			if code := run.ProcessState.ExitCode(); code != exitUnsaved || !strings.Contains(string(said), c.want) ||
				strings.Count(string(said), "\n") != 1 {
				t.Errorf("exit code %d, %q", code, said)
			}
			after := w.files()
			if len(after) != len(before) || len(w.drafts()) > 0 {
				t.Errorf("left behind: %v beside %v", w.drafts(), len(after))
			}
			for name := range before {
				if after[name] != "old" {
					t.Errorf("%s was not kept", name)
				}
			}
			if _, err := os.Stat(filepath.Join(w.dir, "new")); err == nil {
				t.Error("a folder is left behind")
			}
		})
	}
}

// Of two runs into one target at once, one file stands there whole.
func TestTwoRunsAtOnce(t *testing.T) {
	t.Parallel()
	w := newWork(t)
	all, err := readTables(filepath.Join(bases, "wood-crawl"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(w.dir, "job2"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := all.write(filepath.Join(w.dir, "job2")); err != nil {
		t.Fatal(err)
	}
	var whole []string
	for _, record := range []string{"job", "job2"} {
		w.ended(w.start("check", record, "-o", "out.xlsx", "--force"))
		whole = append(whole, w.files()["out.xlsx"])
	}
	for range 5 {
		a, b := w.start("check", "job", "-o", "out.xlsx", "--force"), w.start("check", "job2", "-o", "out.xlsx", "--force")
		codes := []int{w.ended(a), w.ended(b)}
		if !slices.Contains(codes, exitGo) {
			t.Errorf("no run wrote: exit codes %v", codes)
		}
		if got := w.files()["out.xlsx"]; !slices.Contains(whole, got) {
			t.Errorf("the file is %d bytes, neither %d nor %d", len(got), len(whole[0]), len(whole[1]))
		}
	}
	if drafts := w.drafts(); len(drafts) > 0 {
		t.Errorf("left behind: %v", drafts)
	}
}

// While one run writes a target, another is told so. Where files cannot be
// locked, only open ones are kept from others.
func TestATargetThatIsBeingWritten(t *testing.T) {
	w := newWork(t)
	path := filepath.Join(w.dir, "out.xlsx")
	d, err := draftOf(path, false)
	if err != nil {
		t.Fatal(err)
	}
	r := runAlone(t, w.dir, "check", "job", "-o", "out.xlsx")
	if want := "out.xlsx: cannot be written: another run is writing it; wait until that ends\n"; r.code != exitUnsaved || r.faults != want {
		t.Errorf("exit code %d, %q on %s", r.code, r.faults, runtime.GOOS)
	}
	d.drop()
	if r := runAlone(t, w.dir, "check", "job", "-o", "out.xlsx"); r.code != exitGo {
		t.Errorf("exit code %d, %q", r.code, r.faults)
	}
}

// What somebody puts in a target's place while it is written is not replaced.
func TestATargetThatMoves(t *testing.T) {
	w := newWork(t)
	path := filepath.Join(w.dir, "out.json")
	d, err := draftOf(path, false)
	if err != nil {
		t.Fatal(err)
	}
	put(t, w.dir, "out.json", "typed meanwhile")
	if err := d.publish(); err == nil || w.files()["out.json"] != "typed meanwhile" {
		t.Errorf("%v, and it holds %q", err, w.files()["out.json"])
	}
	d.drop()
	if drafts := w.drafts(); len(drafts) > 0 {
		t.Errorf("left behind: %v", drafts)
	}
}

// A link in the place of a draft leads no run to another file.
func TestADraftThatIsALink(t *testing.T) {
	w := newWork(t)
	if err := os.Symlink("export.csv", filepath.Join(w.dir, ".out.json."+toolName)); err != nil {
		t.Fatal(err)
	}
	r := runAlone(t, w.dir, "check", "job", "--json", "out.json")
	if data, err := os.ReadFile(filepath.Join(w.dir, "export.csv")); err != nil || !strings.HasPrefix(string(data), "Time,") {
		t.Errorf("%v, and the file holds %.80q", err, data)
	}
	if r.code != exitUnsaved {
		t.Errorf("exit code %d, %q", r.code, r.faults)
	}
}

// A record that changes while it is read is refused: what is judged would be of
// no time.
func TestARecordThatChanges(t *testing.T) {
	w := newWork(t)
	path := filepath.Join(w.dir, "job", "air.csv")
	var over atomic.Bool
	done := make(chan struct{})
	go func() {
		defer close(done)
		for at := time.Now(); !over.Load(); at = at.Add(time.Second) {
			_ = os.Chtimes(path, at, at) // a failure shows below
		}
	}()
	defer func() {
		over.Store(true)
		<-done
	}()
	const tries = 20 // a busy machine may give the other no turn while the record is read
	for n := range tries {
		r := runAlone(t, w.dir, "check", "job", "-o", fmt.Sprintf("out%d.xlsx", n))
		if r.code == exitGo {
			continue
		}
		want := "air.csv: changed while it was read; run this again once nothing writes to it\n"
		if r.code != exitUnusable || r.faults != want || len(w.files()) != n {
			t.Errorf("exit code %d, %q, %d files", r.code, r.faults, len(w.files()))
		}
		return
	}
	t.Error("the record was never seen to change")
}
