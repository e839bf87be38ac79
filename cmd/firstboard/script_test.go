package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	debug.SetGCPercent(400) // hundreds of workbooks are written: memory is cheaper here than time
	if folder := inMemory(); folder != "" && os.Getenv("TMPDIR") == "" {
		os.Setenv("TMPDIR", folder) // a file is made there in a hundredth of the time
	}
	testscript.Main(m, map[string]func(){
		toolName: func() { os.Exit(runOnce()) },
		measurer: measured,
	})
}

// TestScripts runs testdata/script/*.txtar. What a script compares with a file of
// its own is written anew as the demonstration is. Beside the usual commands:
//
//	base NAME                      start from a base record, as the folder job
//	edit FILE LINE COLUMN VALUE    set one cell of job/FILE
//	append FILE ROW                add a row to job/FILE, creating it
//	drop FILE LINE                 take one row out of job/FILE
//	finding CHECK OUTCOME [value V] [limit L] [unit U] [standing S] [says TEXT]...
//	verdict VERDICT [WHY]          of the only area of job, as it stands now
//	condition TEXT                 a condition that the area carries
//	weather FILE.epw [LINES]       a weather file of an invented place, or its first lines
//	exits CODE COMMAND...          run a command that ends with that exit code
//	leftovers NAME...              nothing else stands in the work folder
//	utf16 FILE                     write a text file anew as UTF-16, marked
//	keep NAME EXPRESSION           what its group finds on standard output, as $NAME
//	cell FILE SHEET TEXT VALUE     set the first cell of a workbook that shows TEXT, or one by its address
//	without FILE SHEET             delete a sheet of a workbook
//	merge FILE SHEET FROM TO       merge cells of a sheet of a workbook
//	shows FILE SHEET EXPRESSION    some row of a sheet, its cells parted by |, fits it
//
// The command runs within the test's own process, one run at a time since each has a
// working folder; exec starts it as a process, which killed_test.go and what calls
// runAlone do too.
func TestScripts(t *testing.T) {
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join(root, "testdata", "script"),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       flag.Arg(0) == "review",
		Setup: func(env *testscript.Env) error {
			env.Setenv("ROOT", root)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"base":      cmdBase,
			"edit":      cmdEdit,
			"append":    cmdAppend,
			"drop":      cmdDrop,
			"finding":   cmdFinding,
			"verdict":   cmdVerdict,
			"condition": cmdCondition,
			"weather":   cmdWeather,
			"exits":     cmdExits,
			"leftovers": cmdLeftovers,
			"utf16":     cmdUTF16,
			"keep":      cmdKeep,
			"cell":      cmdCell,
			"without":   cmdWithout,
			"merge":     cmdMerge,
			"shows":     cmdShows,
		},
	})
}

// args refuses a number of arguments that a command cannot take, and "!".
func args(ts *testscript.TestScript, neg bool, given []string, least int, usage string) {
	if neg || len(given) < least {
		ts.Fatalf("usage: %s", usage)
	}
}

func cmdBase(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 1, "base NAME")
	record, err := readTables(filepath.Join(ts.Getenv("ROOT"), "cmd", toolName, bases, a[0]))
	ts.Check(err)
	ts.Check(os.RemoveAll(ts.MkAbs("job")))
	ts.Check(os.Mkdir(ts.MkAbs("job"), 0o755))
	ts.Check(record.write(ts.MkAbs("job")))
}

func changeJob(ts *testscript.TestScript, change string) {
	record, err := readTables(ts.MkAbs("job"))
	ts.Check(err)
	ts.Check(record.change(change))
	ts.Check(record.write(ts.MkAbs("job")))
}

func cmdEdit(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 4, "edit FILE LINE COLUMN VALUE")
	changeJob(ts, strings.TrimSuffix(a[0], ".csv")+":"+a[1]+":"+a[2]+"="+a[3])
}

func cmdAppend(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 2, "append FILE ROW")
	changeJob(ts, "+"+strings.TrimSuffix(a[0], ".csv")+":"+a[1])
}

func cmdDrop(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 2, "drop FILE LINE")
	changeJob(ts, "-"+strings.TrimSuffix(a[0], ".csv")+":"+a[1])
}

func cmdFinding(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 2, "finding CHECK OUTCOME [value V] [limit L] [unit U] [standing S] [says TEXT]...")
	answer, err := judgeFolder(ts.MkAbs("job"))
	ts.Check(err)
	f, err := findingOf(answer, a[0])
	ts.Check(err)
	pairs := append([]string{"outcome"}, a[1:]...)
	if len(pairs)%2 == 1 {
		ts.Fatalf("finding: %s wants a word after it", pairs[len(pairs)-1])
	}
	shown := map[string]string{
		"outcome": f.Outcome, "value": f.Value, "limit": f.Limit, "unit": f.Unit, "standing": f.Standing,
		"says": f.Reason,
	}
	for i := 0; i < len(pairs); i += 2 {
		word, want := pairs[i], pairs[i+1]
		got, known := shown[word]
		if same := got == want || word == "says" && strings.Contains(got, want); !known || !same {
			ts.Fatalf("%s: %s is %q, want %q\n(%s: %s; value %s, limit %s)", f.ID, word, got, want, f.Outcome, f.Reason, f.Value, f.Limit)
		}
	}
}

func cmdVerdict(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 1, "verdict VERDICT [WHY]")
	answer, err := judgeFolder(ts.MkAbs("job"))
	ts.Check(err)
	area := answer.Areas[0]
	if got := strings.TrimSpace(area.Verdict + " " + area.Why); got != strings.Join(a, " ") {
		ts.Fatalf("the verdict is %s, blocked by %v", got, area.Blocking)
	}
}

func cmdCondition(ts *testscript.TestScript, neg bool, a []string) {
	if len(a) != 1 {
		ts.Fatalf("usage: [!] condition TEXT")
	}
	answer, err := judgeFolder(ts.MkAbs("job"))
	ts.Check(err)
	if all := answer.Areas[0].Conditions; slices.Contains(all, a[0]) == neg {
		ts.Fatalf("the conditions are %q", all)
	}
}

func cmdExits(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 2, "exits CODE firstboard WORD...")
	want, err := strconv.Atoi(a[0])
	ts.Check(err)
	if a[1] != toolName {
		ts.Fatalf("exits: it runs %s, not %s", toolName, a[1])
	}
	oneRun.Lock()
	defer oneRun.Unlock()
	here, err := os.Getwd()
	ts.Check(err)
	ts.Check(os.Chdir(ts.MkAbs(".")))
	got := run(a[1:], ts.Stdout(), ts.Stderr())
	ts.Check(os.Chdir(here))
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// cmdLeftovers says that the work folder holds these entries and no other,
// hidden ones included.
func cmdLeftovers(ts *testscript.TestScript, neg bool, want []string) {
	if neg {
		ts.Fatalf("usage: leftovers NAME...")
	}
	entries, err := os.ReadDir(ts.MkAbs("."))
	ts.Check(err)
	var got []string
	for _, e := range entries {
		if e.Name() != ".tmp" {
			got = append(got, e.Name())
		}
	}
	slices.Sort(want)
	if !slices.Equal(got, want) {
		ts.Fatalf("%s", fmt.Sprintf("the folder holds %q, want %q", got, want))
	}
}

func cmdUTF16(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 1, "utf16 FILE")
	wide := []byte("\xff\xfe")
	for _, r := range utf16.Encode([]rune(ts.ReadFile(a[0]))) {
		wide = append(wide, byte(r), byte(r>>8))
	}
	ts.Check(os.WriteFile(ts.MkAbs(a[0]), wide, 0o644))
}
