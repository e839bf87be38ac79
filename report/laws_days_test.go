package report_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
)

// On the last day that a GO is good for it is still a GO; it is no day before
// installing; on the day after, the readings are too old. Rows of air and surfaces
// after the day of installing are left out, or they would be news.
func TestGoodUntilHolds(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		j := spoilt(t)
		for i, d := range report.Judge(j) {
			if d.Verdict != evidence.Go {
				continue
			}
			if d.GoodUntil.Day < d.Area.InstallOn.Day {
				t.Fatalf("area %s may be installed on %s and is good until %s", d.Area.ID, d.Area.InstallOn.Written, d.GoodUntil.Written)
			}
			if on := report.Judge(laidOn(j, i, d.GoodUntil.Day))[i]; on.Verdict != evidence.Go || on.GoodUntil.Day != d.GoodUntil.Day {
				t.Fatalf("area %s, good until %s, is on that day %s, good until %s: %q", d.Area.ID, d.GoodUntil.Written, on.Verdict, on.GoodUntil.Written, reasons(on))
			}
			after := report.Judge(laidOn(j, i, d.GoodUntil.Day+1))[i].Findings[slices.Index(report.Order(), "reading-age")]
			if after.Outcome != evidence.NotMet {
				t.Fatalf("area %s, good until %s: the day after, reading-age is %s, %s", d.Area.ID, d.GoodUntil.Written, after.Outcome, after.Reason)
			}
		}
	})
}

// laidOn is the record with another day of installing for one area, without the
// air and surfaces that were read after the day it had.
func laidOn(j report.Job, area int, on evidence.Day) report.Job {
	was := j.Areas[area].InstallOn.Day
	news := func(at evidence.Time) bool { return at.Shown() && at.Day() > was }
	j.Air = slices.DeleteFunc(slices.Clone(j.Air), func(a acclimate.Air) bool { return news(a.ReadAt) })
	j.Surfaces = slices.DeleteFunc(slices.Clone(j.Surfaces), func(s acclimate.Surface) bool { return news(s.ReadAt) })
	j.Areas = slices.Clone(j.Areas)
	j.Areas[area].InstallOn = day(on)
	return j
}
