package plan

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
)

// thing is one hole, dish, spot or piece of the record as a plan sees it.
type thing struct {
	name     string
	area, id string    // by which its rows stand in the record
	open     bool      // its row is there and has no reading or no time yet
	waits    bool      // its row has no time: it can still be filled in on any day
	again    string    // why it has to be measured again, empty where it need not
	over     []string  // the checks whose limit it is over
	blank    []string  // the columns that are blank beside its reading
	lack     string    // why its reading says nothing, empty where it does
	from, to time.Time // when its judged rows began and were read
	not      time.Time // it is not read again before
}

// fit says whether nothing is left to do to it.
func (t thing) fit() bool {
	return !t.open && t.again == "" && len(t.over) == 0 && len(t.blank) == 0 && t.lack == ""
}

// wants is why its reading says nothing, where it is not read again.
func (t thing) wants() string {
	if toRead(t) {
		return ""
	}
	return t.lack
}

// stays says whether its row on record stays the judged one: at most cells of it
// are filled in.
func (t thing) stays() bool { return t.again == "" && len(t.over) == 0 && !t.waits }

// view is how a plan sees the rows of one kind of thing: as the checks of age
// and calibration see them, whether it was read, what else is blank and why
// else it has to be read again. Heat says that a heated floor had to run before.
type view[T any] struct {
	heat     bool
	tool     tool // what it is read with; nothing where anything will do
	recounts bool // rows of the 24 h before a reading count as well
	all      []T  // every row on record
	id       func(T) (area, name string)
	place    func(T) evidence.Place
	row      func(what string, r T) instruments.Row
	read     func(T) bool
	blank    func(T) []string
	spoil    func(T) string
	lack     func(T) string // nil where every reading says something
}

// survey looks at things one by one. A row that is open may be the latest, so
// nothing else is asked of its thing.
func survey[T any](p *planner, things []evidence.Judged[T], v view[T]) []thing {
	all := make([]thing, len(things))
	rows := v.byThing()
	for i, judged := range things {
		t := thing{name: judged.Name, area: p.Area.ID, id: judged.Name}
		if len(judged.Rows) == 0 {
			t.again = evidence.WetSince
			for _, r := range rows[idOf(t.area, t.id)] {
				t.blank = append(t.blank, v.blank(r)...)
			}
		}
		for _, r := range judged.Rows {
			v.see(p, &t, r)
		}
		if !t.waits {
			v.faults(p, &t, rows[idOf(t.area, t.id)])
			t.open = t.open && len(t.over) == 0
		}
		switch {
		case t.open && t.waits:
			t.again, t.blank, t.lack, t.over = "", nil, "", nil
		case t.open:
			t.blank, t.lack = among(t.blank, lasting()), ""
		case toRead(t):
			t.not, t.blank = latest(t.not, after(t.to)), among(t.blank, lasting())
		}
		slices.Sort(t.blank)
		t.blank = slices.Compact(t.blank)
		all[i] = t
	}
	return all
}

// after is the minute after a time; zero where there is none.
func after(t time.Time) time.Time {
	if t.IsZero() {
		return t
	}
	return t.Add(time.Minute)
}

// lasting are the columns that tell of a hole and not of its reading: they are
// filled in even where it is read again.
func lasting() []string { return []string{"Depth", "Sealed at"} }

// byThing are the rows on record of each thing.
func (v view[T]) byThing() map[[2]string][]T {
	rows := map[[2]string][]T{}
	for _, r := range v.all {
		id := idOf(v.id(r))
		rows[id] = append(rows[id], r)
	}
	return rows
}

func idOf(area, name string) [2]string { return [2]string{evidence.Key(area), evidence.Key(name)} }

// see takes in a judged row of a thing.
func (v view[T]) see(p *planner, t *thing, r T) {
	t.area, t.id = v.id(r)
	row := v.row(t.name, r)
	again, timed := firstOf(p.rereads(row, v.heat, v.tool), v.spoil(r)), row.At.Shown()
	t.waits = t.waits || !timed
	t.open = t.open || !timed || !v.read(r) && again == ""
	t.again = firstOf(t.again, again)
	t.blank = append(t.blank, v.blank(r)...)
	if v.lack != nil {
		t.lack = firstOf(t.lack, v.lack(r))
	}
	if timed {
		if from := row.From; from.Shown() && (t.from.IsZero() || from.First.Before(t.from)) {
			t.from = from.First
		}
		t.to = latest(t.to, row.At.Last)
	}
}

// faults are the checks that rows of a thing break. Where the rows of the day
// before a reading count as well, it is not read again within a day of one that
// broke a check or said nothing.
func (v view[T]) faults(p *planner, t *thing, rows []T) {
	for _, r := range rows {
		broken := p.broken[evidence.RowKey(v.place(r))]
		for _, id := range broken {
			if !slices.Contains(t.over, id) {
				t.over = append(t.over, id)
			}
		}
		at := v.row("", r).At
		if v.recounts && at.Shown() && (len(broken) > 0 || v.saysNothing(r)) {
			t.not = latest(t.not, at.Last.Add(evidence.Again+time.Minute))
		}
	}
}

// saysNothing says whether a row shows nothing, whatever is written down of its
// place.
func (v view[T]) saysNothing(r T) bool {
	return !v.read(r) || v.spoil(r) != "" || v.lack != nil && v.lack(r) != "" ||
		slices.ContainsFunc(v.blank(r), func(column string) bool { return !slices.Contains(lasting(), column) })
}

func latest(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
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

// tooOld is why a reading is taken again whose age is the only thing wrong.
const tooOld = "too old on the day of installing"

// rereads says why a reading has to be taken again although it was made: it
// will be too old, its instrument cannot be believed, or the heating had not
// run for long enough.
func (p *planner) rereads(r instruments.Row, heat bool, with tool) string {
	if r.Untimed() {
		return ""
	}
	if p.TooOld(r) {
		return tooOld
	}
	if why := p.disbelievedAny(r, with); why != "" {
		return why
	}
	if heat && p.Unheated(r) {
		return "the heating had not run for " + p.Job.Settings.HeatRun.String()
	}
	return ""
}

// disbelieved says why the instrument of a row cannot be believed, empty where it
// can.
func (p *planner) disbelieved(r instruments.Row) string {
	if p.distrusted[evidence.Key(r.Instrument)] {
		return "a check of " + r.Instrument + " does not agree with its standard"
	}
	return p.Uncalibrated(r)
}

// disbelievedAny is disbelieved for a row that may not say with what it was read:
// where it does not, every instrument it can have been has to be disbelieved.
func (p *planner) disbelievedAny(r instruments.Row, with tool) string {
	if r.Instrument != "" {
		return p.disbelieved(r)
	}
	why := ""
	for _, m := range p.metersOf(with) {
		r.Instrument = m.ID
		if why = p.disbelieved(r); why == "" {
			return ""
		}
	}
	return why
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

// chosen are the things that a test holds of.
func chosen(things []thing, holds func(thing) bool) []thing {
	var all []thing
	for _, t := range things {
		if holds(t) {
			all = append(all, t)
		}
	}
	return all
}

// names are the names of the things that a test holds of.
func names(things []thing, holds func(thing) bool) []string {
	var all []string
	for _, t := range chosen(things, holds) {
		all = append(all, t.name)
	}
	return all
}

func always(thing) bool    { return true }
func isOpen(t thing) bool  { return t.open }
func isAgain(t thing) bool { return t.again != "" && len(t.over) == 0 }
func isOver(t thing) bool  { return len(t.over) > 0 }
func isFit(t thing) bool   { return t.fit() }
func toRead(t thing) bool  { return t.open || t.again != "" || len(t.over) > 0 }

func never[T any](T) string { return "" }
