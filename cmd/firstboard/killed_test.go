//go:build unix

package main

import (
	"errors"
	"flag"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// killedRuns is how many runs are killed of each kind; after -args kills, many.
func killedRuns() int {
	if flag.Arg(0) == "kills" {
		return 200
	}
	return 5
}

// work is a folder with a base record in job, and what it holds beside it.
type work struct {
	*testing.T
	dir string
}

func newWork(t *testing.T) work {
	w := work{t, t.TempDir()}
	folderOfBase(t, w.dir)
	put(t, w.dir, "export.csv", "Time,Temp (F),RH (%)\n2026-03-04 08:05,70,40\n2026-03-04 09:05,70,41\n")
	put(t, w.dir, "fen.epw", strings.Join(weatherFile(strings.Split(inventedClimate, ", ")), "\n")+"\n")
	return w
}

func gathered() []string { return []string{"gather", "job", "-o", "out.xlsx", "--jsonl", "out.jsonl"} }

func climateInto() []string {
	return []string{"climate", "fen.epw", "--name", "home", "--heat-to", "70F", "--into", "job", "-o"}
}

// files are the files of the folder beside the record, by their names.
func (w work) files() map[string]string {
	w.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(w.dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(w.dir, path)
		if err != nil || name == "export.csv" || name == "fen.epw" || strings.HasPrefix(name, "job"+string(filepath.Separator)) {
			return err
		}
		data, err := os.ReadFile(path)
		all[name] = string(data)
		return err
	})
	if err != nil {
		w.Fatal(err)
	}
	return all
}

// start begins a run and does not wait for it.
func (w work) start(args ...string) *exec.Cmd {
	w.Helper()
	self, err := exec.LookPath(toolName)
	if err != nil {
		w.Fatal(err)
	}
	c := exec.Command(self, args...)
	c.Dir = w.dir
	if err := c.Start(); err != nil {
		w.Fatal(err)
	}
	return c
}

// ended waits for a run and gives its exit code, -1 where it was killed.
func (w work) ended(c *exec.Cmd) int {
	w.Helper()
	var failed *exec.ExitError
	if err := c.Wait(); err != nil && !errors.As(err, &failed) {
		w.Fatal(err)
	}
	return c.ProcessState.ExitCode()
}

// drafts are the names of what runs are still writing, or left so.
func (w work) drafts() []string {
	w.Helper()
	var all []string
	for _, pattern := range []string{".*." + toolName, "*/.*." + toolName} {
		found, err := filepath.Glob(filepath.Join(w.dir, pattern))
		if err != nil {
			w.Fatal(err)
		}
		all = append(all, found...)
	}
	return all
}

// A run that is killed, whenever that is, leaves each target as it was or whole,
// and what it leaves beside them the next run clears.
func TestKilledRuns(t *testing.T) {
	t.Parallel()
	check := []string{
		"check", "job", "-o", "out.xlsx", "--json", "out.json", "--page", "out.html", "--print", "print.xlsx", "--per-area",
		"areas", "--force",
	}
	for _, c := range []struct {
		name string
		args []string
		old  []string // targets that stand there before each run
		dirs []string // targets that are folders
	}{
		{"check", check, []string{"out.xlsx", "out.json", "out.html", "print.xlsx"}, nil},
		{"blank", []string{"blank", "blank.xlsx", "--force"}, []string{"blank.xlsx"}, nil},
		{"blank, a folder", []string{"blank", "blank"}, nil, []string{"blank"}},
		{"log", []string{"log", "job", "export.csv", "--table", "air", "--instrument", "AL1", "-o", "new"}, nil, []string{"new"}},
		{"plan", []string{"plan", "job", "-o", "plan.xlsx", "--force"}, []string{"plan.xlsx"}, nil},
		{"gather", append(gathered(), "--force"), []string{"out.xlsx", "out.jsonl"}, nil},
		{"climate", append(climateInto(), "new"), nil, []string{"new"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := newWork(t)
			began := time.Now()
			w.ended(w.start(c.args...))
			took, whole := time.Since(began), w.files()
			if len(whole) == 0 {
				t.Fatal("the run writes nothing")
			}
			strays := 0
			for range killedRuns() {
				w.reset(c.old, c.dirs)
				run := w.start(c.args...)
				w.waitFor(run, took)
				_ = run.Process.Kill() // it may have ended
				w.ended(run)
				strays += len(w.drafts())
				w.wholeOrOld(whole, c.old, c.dirs)
			}
			w.reset(c.old, c.dirs)
			w.ended(w.start(c.args...))
			after := w.files()
			for name := range after {
				if after[name] != whole[name] {
					t.Errorf("after the last run %s is not whole, or a stray", name)
				}
			}
			t.Logf("%d runs of %v killed, %d drafts left and cleared", killedRuns(), took, strays)
		})
	}
}

// reset puts old files in the places of targets and takes folders away, but
// leaves drafts.
func (w work) reset(old, dirs []string) {
	w.Helper()
	for _, name := range old {
		put(w.T, w.dir, name, "old")
	}
	for _, dir := range dirs {
		if err := os.RemoveAll(filepath.Join(w.dir, dir)); err != nil {
			w.Fatal(err)
		}
	}
}

// waitFor waits a random part of the time that a run takes: of all of it, or from
// when it writes its first draft on.
func (w work) waitFor(run *exec.Cmd, took time.Duration) {
	if rand.IntN(3) > 0 {
		for end := time.Now().Add(2 * took); len(w.drafts()) == 0 && time.Now().Before(end); {
			time.Sleep(100 * time.Microsecond)
		}
		took /= 4
	}
	time.Sleep(rand.N(took + 1))
}

// wholeOrOld fails where a target is neither whole nor as it was.
func (w work) wholeOrOld(whole map[string]string, old, dirs []string) {
	w.Helper()
	for name, text := range w.files() {
		switch draft := strings.HasPrefix(filepath.Base(name), ".") || strings.HasPrefix(name, "."); {
		case draft, text == whole[name]:
		case slices.Contains(old, name) && text == "old":
		default:
			w.Errorf("%s is %d bytes, neither old nor whole", name, len(text))
		}
	}
	for _, dir := range dirs {
		if _, err := os.Stat(filepath.Join(w.dir, dir)); err != nil {
			continue
		}
		for name := range whole {
			if _, err := os.Stat(filepath.Join(w.dir, name)); err != nil {
				w.Errorf("the folder %s lacks %s", dir, name)
			}
		}
	}
}
