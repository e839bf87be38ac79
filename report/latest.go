package report

import (
	"time"

	"firstboard/report/evidence"
)

// Latest is the time of the latest entry of the record, of whatever area: what
// a plan takes for today. It is zero where nothing has a time.
func (s Site) Latest() time.Time { return s.record.latest }

// latest is the time of the latest entry of a job; zero where nothing has one.
func (j Job) latest() time.Time {
	var last time.Time
	see := func(times ...evidence.Time) {
		for _, t := range times {
			if t.Shown() && t.First.After(last) {
				last = t.First
			}
		}
	}
	for _, r := range j.Holes {
		see(r.SealedAt, r.ReadAt)
	}
	for _, r := range j.Dishes {
		see(r.SetAt, r.RetrievedAt)
	}
	for _, r := range j.PHs {
		see(r.ReadAt)
	}
	for _, r := range j.Carbides {
		see(r.ReadAt)
	}
	for _, r := range j.Others {
		see(r.ReadAt)
	}
	for _, r := range j.Scans {
		see(r.ReadAt)
	}
	for i := range j.Air {
		see(j.Air[i].ReadAt)
	}
	for _, r := range j.Surfaces {
		see(r.ReadAt)
	}
	for _, r := range j.Wood {
		see(r.ReadAt)
	}
	for _, r := range j.Checks {
		see(r.CheckedAt)
	}
	for _, r := range j.Events {
		see(r.At)
	}
	return last
}
