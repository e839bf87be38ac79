package report_test

import (
	"testing"

	"firstboard/report"
	"firstboard/report/evidence"
)

// A margin changed in one unit counts in the other where it is the stricter.
func TestDewMargins(t *testing.T) {
	set := func(f, c float64) func(*report.Job) {
		return func(j *report.Job) {
			j.Settings.DewMarginF, j.Settings.DewMarginC = num(f, evidence.Fahrenheit), num(c, evidence.Celsius)
		}
	}
	for _, c := range []struct {
		f, c float64
		want string
	}{
		{5, 3, "5 and 3"},
		{5, 2, "5 and 2"},
		{5, 4, "7.2 and 4"},
		{9, 3, "9 and 5"},
		{4, 3, "4 and 3"},
		{9, 1, "9 and 1"},
		{5.4, 3, "5.4 and 3"},
	} {
		j := small()
		set(c.f, c.c)(&j)
		room := report.Judge(j)[0].Site.Room
		if got := room.DewF.Number.Exact().Short() + " and " + room.DewC.Number.Exact().Short(); got != c.want {
			t.Errorf("%v F and %v C give %s, want %s", c.f, c.c, got, c.want)
		}
	}
}
