package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/gather"
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
