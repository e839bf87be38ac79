package report

import (
	"fmt"
	"slices"
	"strings"

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

// look is how a plan looks at the rows of one kind of thing: the entry that
// the checks of age and calibration see, whether it was read, what else is
// blank and what else spoils it. Heat says that a heated floor had to run
// before.
type look[T any] struct {
	kind  kind
	heat  bool
	entry func(T) entry
	read  func(T) bool
	blank func(T) []string
	spoil func(T) string
	lack  func(T) string // nil where every reading says something
}

// survey looks at things one by one. A row that is open may be the latest, so
// nothing else is asked of its thing.
func survey[T any](s Site, things []evidence.Judged[T], l look[T]) []thing {
	all := make([]thing, len(things))
	for i, judged := range things {
		t := thing{name: judged.Name}
		if len(judged.Rows) == 0 {
			t.again = evidence.WetSince
		}
		for _, r := range judged.Rows {
			e := l.entry(r)
			e.kind, e.what = l.kind, judged.Name
			spoilt := firstOf(s.spoilt(e, l.heat), l.spoil(r))
			t.waits = t.waits || !e.at.Shown()
			t.open = t.open || !e.at.Shown() || !l.read(r) && spoilt == ""
			t.again = firstOf(t.again, spoilt)
			t.blank = append(t.blank, l.blank(r)...)
			if l.lack != nil {
				t.lack = firstOf(t.lack, l.lack(r))
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

// spoilt says why a reading has to be taken again although it was made: it
// will be too old, its instrument was not calibrated, or the heating had not
// run for long enough.
func (s Site) spoilt(e entry, heat bool) string {
	if e.began() != "" || !e.at.Shown() {
		return ""
	}
	if s.Area.InstallOn.Shown() {
		life := evidence.AtMost(s.lifeOf(e.kind).Most)
		if it := s.aged(evidence.Item{Limit: life}, e); it.Breaks(evidence.Acceptance{}) {
			return "too old on the day of installing"
		}
	}
	if meter, listed := s.Job.Instruments.Find(e.instrument); listed && !covers(meter, e) {
		use := &meterUse{meter: meter, as: e.as, unit: e.unit, rows: []entry{e}}
		for _, it := range s.calibrated(use) {
			if it.Breaks(evidence.Acceptance{}) {
				return it.Says
			}
		}
	}
	if run := s.Area.HeatOnSince; heat && s.Area.RadiantHeat == "yes" && run.Shown() &&
		evidence.Hours(evidence.Shortest(run, e.from)).Cmp(s.Job.Settings.HeatRun.Exact()) < 0 {
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
