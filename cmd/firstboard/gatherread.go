package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"unicode"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/gather"
	"firstboard/report/lists"
	"firstboard/report/outlook"
	"firstboard/report/plan"
	"firstboard/report/record"
	"firstboard/report/record/faults"
	"firstboard/report/seal"
)

// readAll reads and judges records, so many at a time, with a bar where
// somebody looks on. Each is reduced to its rows at once and let go.
func readAll(
	found []candidate, workers int, on io.Writer, read func(candidate) result,
) (parts []gather.Part, unread []gather.Unread) {
	// What is read is let go at once: memory is swept seldom, which else takes longer than judging.
	const seldom = 200 // percent
	defer debug.SetGCPercent(debug.SetGCPercent(seldom))
	bar := newBar(on, "gathering", int64(len(found)))
	all := make([]result, len(found))
	next := make(chan int)
	var busy sync.WaitGroup
	for range min(workers, len(found)) {
		busy.Go(func() {
			for i := range next {
				all[i] = alone(found[i], read)
				bar.Add(1)
			}
		})
	}
	for i := range found {
		next <- i
	}
	close(next)
	busy.Wait()
	bar.Finish()
	for _, o := range all {
		if o.unread.What != "" {
			unread = append(unread, o.unread)
			continue
		}
		parts = append(parts, o.part)
	}
	return parts, unread
}

// result is what came of a record: its part, or why it was not read.
type result struct {
	part   gather.Part
	unread gather.Unread
}

// alone reads a record so that a fault of the program itself, which would end
// all the others too, is told as that record's.
func alone(f candidate, read func(candidate) result) (r result) {
	defer func() {
		if fault := recover(); fault != nil {
			const mend = "check it alone, and report what that says as a fault of the program"
			r = result{unread: unreadable(f, fmt.Errorf("%s failed while it judged this record: %v; %s", toolName, fault, mend))}
		}
	}()
	return read(f)
}

func readOne(f candidate) result {
	rec, err := record.Read(f.path)
	if err != nil {
		return result{unread: unreadable(f, err)}
	}
	decisions := report.Judge(rec.Job)
	advice := make([]ahead.Advice, len(decisions))
	for i, d := range decisions {
		coming := outlook.Ahead(d)
		advice[i] = ahead.Advice{Outlook: coming, Next: outlook.Next(plan.Of(d, coming))}
	}
	from := gather.From{
		Record: f.shown, SHA256: rec.SHA256, Origin: rec.Origin,
		Seal: seal.Of(madeWith(), rec.Tables, report.Decided(rec.Job, decisions)),
	}
	return result{part: gather.Of(from, rec.Job, decisions, advice)}
}

// unreadable says why a record could not be read: its first fault, and how many
// follow. What was only found by a search may be no record without harm.
func unreadable(f candidate, err error) gather.Unread {
	u := gather.Unread{Record: f.shown, What: gather.Faulty, Why: err.Error()}
	var found faults.List
	if errors.As(err, &found) && len(found) > 0 {
		u.Why, u.More = found[0].Error(), len(found)-1
	}
	u.Why, _, _ = strings.Cut(u.Why, "\n")
	u.Why = strings.TrimPrefix(u.Why, filepath.Base(f.path)+": ")
	if record.NoRecord(err) && !f.named {
		u.What = gather.Another
	}
	return u
}

// candidate is what may be a record: where it stands, and what outputs call it,
// a path below the one folder that holds all that was searched.
type candidate struct {
	path, shown string
	named       bool // by an argument, and not found by a search
}

// candidates are what may be a record under some paths, each once, whatever
// their order, in that of the names that are shown.
func candidates(args []string) ([]candidate, error) {
	known := map[string]candidate{} // by their own paths
	var roots []string
	for _, arg := range args {
		if arg == "" {
			return nil, errors.New("gather: the name of a record is empty; name a folder or a workbook")
		}
		path, err := filepath.Abs(arg)
		if err != nil {
			return nil, err
		}
		found := record.Search(path)
		roots = append(roots, lists.If(slices.Contains(found, path), filepath.Dir(path), path))
		for _, f := range found {
			own, err := filepath.EvalSymlinks(f)
			if err != nil {
				own = f
			}
			was, twice := known[own]
			if !twice || f < was.path {
				was.path = f
			}
			was.named = was.named || f == path
			known[own] = was
		}
	}
	base := above(roots)
	var all []candidate
	for _, f := range known {
		f.shown = below(base, f.path)
		all = append(all, f)
	}
	slices.SortFunc(all, func(a, b candidate) int {
		return cmp.Or(evidence.Order(a.shown, b.shown), strings.Compare(a.shown, b.shown))
	})
	return all, nil
}

// above is the folder that holds all of some folders.
func above(folders []string) string {
	base := folders[0]
	for _, f := range folders[1:] {
		for !within(base, f) && filepath.Dir(base) != base {
			base = filepath.Dir(base)
		}
	}
	return base
}

func within(folder, path string) bool {
	const between = string(os.PathSeparator)
	return path == folder || strings.HasPrefix(path, strings.TrimSuffix(folder, between)+between)
}

// below is a path as seen from a folder, with slashes and without letters that
// would do something to a terminal.
func below(folder, path string) string {
	if rel, err := filepath.Rel(folder, path); err == nil {
		path = rel
	}
	return strings.Map(func(r rune) rune { return lists.If(unicode.IsPrint(r), r, '?') }, filepath.ToSlash(path))
}
