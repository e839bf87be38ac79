package plan

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// thing is one hole, dish, spot or piece of the record as a plan sees it.
type thing struct {
	name  string
	open  bool   // its row is there and has no reading or no time yet
	waits bool   // its row has no time: it can still be filled in on any day
	again string // why it has to be measured again, empty where it need not
	blank []string
	lack  string // why its reading says nothing, empty where it does
}

// fit says whether nothing is left to do to it.
func (t thing) fit() bool { return !t.open && t.again == "" && len(t.blank) == 0 && t.lack == "" }

// view is how a plan sees the rows of one kind of thing: as the checks of age
// and calibration see them, whether it was read, what else is blank and why
// else it has to be read again. Heat says that a heated floor had to run before.
type view[T any] struct {
	heat  bool
	row   func(what string, r T) report.JudgedRow
	read  func(T) bool
	blank func(T) []string
	spoil func(T) string
	lack  func(T) string // nil where every reading says something
}

// survey looks at things one by one. A row that is open may be the latest, so
// nothing else is asked of its thing.
func survey[T any](s report.Site, things []evidence.Judged[T], v view[T]) []thing {
	all := make([]thing, len(things))
	for i, judged := range things {
		t := thing{name: judged.Name}
		if len(judged.Rows) == 0 {
			t.again = evidence.WetSince
		}
		for _, r := range judged.Rows {
			row := v.row(judged.Name, r)
			again, timed := firstOf(rereads(s, row, v.heat), v.spoil(r)), row.ReadAt().Shown()
			t.waits = t.waits || !timed
			t.open = t.open || !timed || !v.read(r) && again == ""
			t.again = firstOf(t.again, again)
			t.blank = append(t.blank, v.blank(r)...)
			if v.lack != nil {
				t.lack = firstOf(t.lack, v.lack(r))
			}
		}
		if t.open {
			t.again, t.blank, t.lack = "", nil, ""
		}
		slices.Sort(t.blank)
		t.blank = slices.Compact(t.blank)
		all[i] = t
	}
	return all
}

// firstOf is the first reason in the order of the alphabet, so that the order
// of rows never matters; empty where there is none.
func firstOf(reasons ...string) string {
	first := ""
	for _, r := range reasons {
		if r != "" && (first == "" || r < first) {
			first = r
		}
	}
	return first
}

// rereads says why a reading has to be taken again although it was made: it
// will be too old, its instrument was not calibrated, or the heating had not
// run for long enough.
func rereads(s report.Site, r report.JudgedRow, heat bool) string {
	if r.Untimed() {
		return ""
	}
	if s.TooOld(r) {
		return "too old on the day of installing"
	}
	if why := s.Uncalibrated(r); why != "" {
		return why
	}
	if heat && s.Unheated(r) {
		return "the heating had not run for " + s.Job.Settings.HeatRun.String()
	}
	return ""
}

// cell is a column of a row, and whether anything stands in it.
type cell struct {
	column string
	shown  bool
}

// blanks are the columns in which nothing stands.
func blanks(cells ...cell) []string {
	var all []string
	for _, c := range cells {
		if !c.shown {
			all = append(all, c.column)
		}
	}
	return all
}

// names are the names of the things that a test holds of.
func names(things []thing, holds func(thing) bool) []string {
	var all []string
	for _, t := range things {
		if holds(t) {
			all = append(all, t.name)
		}
	}
	return all
}

func isOpen(t thing) bool   { return t.open }
func isAgain(t thing) bool  { return t.again != "" }
func isFit(t thing) bool    { return t.fit() }
func hasBlank(t thing) bool { return t.again == "" && len(t.blank) > 0 }

// newNames are names for so many new things, led by a letter and numbered on
// from those in use.
func newNames(letter string, n int, used []string) []string {
	var all []string
	for i := 1; len(all) < n; i++ {
		name := fmt.Sprint(letter, i)
		if !slices.ContainsFunc(used, func(u string) bool { return evidence.Same(u, name) }) {
			all = append(all, name)
		}
	}
	return all
}

// span writes names in few words: "H1 to H9" where they are numbered on.
func span(names []string) string {
	if len(names) < 3 {
		return evidence.List(names)
	}
	letter := strings.TrimRight(names[0], "0123456789")
	first := strings.TrimPrefix(names[0], letter)
	var start int
	if _, err := fmt.Sscan(first, &start); err != nil {
		return evidence.List(names)
	}
	for i, name := range names {
		if name != fmt.Sprint(letter, start+i) {
			return evidence.List(names)
		}
	}
	return names[0] + " to " + names[len(names)-1]
}
