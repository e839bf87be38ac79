//go:build unix

package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

// What a file that cannot be used may cost until it is refused. Time is that of
// the processor, so that a busy machine fails no test.
const (
	hostileTime   = 5 * time.Second
	hostileMemory = 512 << 20
	hostileHang   = time.Minute // by the clock
)

// hostileCase is a file that no run can use, and what the refusal must hold.
type hostileCase struct {
	name string
	make func(t *testing.T, dir string) (args []string)
	want []string
}

// ranAs is how a run in a process of its own ended.
type ranAs struct {
	code        int
	out, faults string
	spent       time.Duration // of the processor
	memory      int64         // the most bytes at once
}

// measured runs the command and writes what that cost to the file that the
// environment names.
func measured() {
	os.Args[0] = toolName
	code := runOnce()
	var spent syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &spent); err != nil {
		panic(err)
	}
	cost := fmt.Sprint(spent.Utime.Nano()+spent.Stime.Nano(), " ", mostMemory(spent))
	if err := os.WriteFile(os.Getenv(costFile), []byte(cost), 0o644); err != nil {
		panic(err)
	}
	os.Exit(code)
}

// mostMemory is the most bytes that this process held at once. On Linux the
// account of a process begins with the memory of the one that started it, which
// may be large here, so that its own mark is read there.
func mostMemory(spent syscall.Rusage) int64 {
	status, err := os.ReadFile("/proc/self/status")
	if err != nil {
		return spent.Maxrss
	}
	_, mark, _ := strings.Cut(string(status), "VmHWM:")
	var kilobytes int64
	if _, err := fmt.Sscan(mark, &kilobytes); err != nil {
		panic(err)
	}
	return kilobytes << 10
}

// costFile is the variable that names the file for what a run cost.
const costFile = "FIRSTBOARD_COST"

// runAlone runs the command in a process of its own, in the folder dir.
func runAlone(t *testing.T, dir string, args ...string) ranAs {
	t.Helper()
	self, err := exec.LookPath(measurer)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), hostileHang)
	defer cancel()
	var out, faults bytes.Buffer
	c := exec.CommandContext(ctx, self, args...)
	cost := filepath.Join(t.TempDir(), "cost")
	c.Env = append(os.Environ(), costFile+"="+cost)
	c.Dir, c.Stdout, c.Stderr = dir, &out, &faults
	var ended *exec.ExitError
	if err := c.Run(); err != nil && !errors.As(err, &ended) {
		t.Fatal(err)
	}
	if ctx.Err() != nil {
		t.Fatalf("%q hangs", args)
	}
	r := ranAs{code: c.ProcessState.ExitCode(), out: out.String(), faults: faults.String()}
	said, err := os.ReadFile(cost)
	if err == nil {
		_, err = fmt.Sscan(string(said), (*int64)(&r.spent), &r.memory)
	}
	if err != nil {
		t.Fatalf("%q ends with %d and tells no cost (%v)\n%s%s", args, r.code, err, r.out, r.faults)
	}
	return r
}

// listing are all names below a folder.
func listing(t *testing.T, dir string) []string {
	t.Helper()
	var all []string
	err := filepath.WalkDir(dir, func(path string, _ fs.DirEntry, err error) error {
		all = append(all, path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// A file that no run can use is refused in words that lead with the file and say
// what to do, soon, in little memory, and nothing is written.
func TestHostileInput(t *testing.T) {
	t.Parallel()
	for _, c := range slices.Concat(hostileArchives(), hostileParts(), hostileTables(), hostileKinds(), hostileExports()) {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			args := c.make(t, dir)
			before := listing(t, dir)
			r := runAlone(t, dir, args...)
			if r.code != exitUnusable || r.out != "" {
				t.Errorf("exit code %d, %q on standard output", r.code, r.out)
			}
			for _, want := range c.want {
				if !strings.Contains(r.faults, want) {
					t.Errorf("the refusal does not say %q", want)
				}
			}
			if t.Failed() || strings.Contains(r.faults, dir) || len(r.faults) > 200_000 {
				t.Errorf("refused with (%d bytes)\n%.2000s", len(r.faults), r.faults)
			}
			if after := listing(t, dir); !slices.Equal(before, after) {
				t.Errorf("left behind: %q, where there was %q", after, before)
			}
			t.Logf("%.2f s, %d MB: %.200s", r.spent.Seconds(), r.memory>>20, r.faults)
			if r.spent > hostileTime || r.memory > hostileMemory {
				t.Errorf("it took %v and %d MB", r.spent, r.memory>>20)
			}
		})
	}
}

// checkArgs is a check that is to write all kinds of outputs.
func checkArgs(record string) []string {
	return []string{
		"check", record, "-o", "out.xlsx", "--json", "out.json", "--page", "out.html", "--per-area", "areas", "--print",
		"print.xlsx",
	}
}

// put writes a file into a folder.
func put(t *testing.T, dir, name, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
