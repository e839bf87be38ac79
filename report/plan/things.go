package plan

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
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
	return lists.If(toRead(t), "", t.lack)
}

// stays says whether its row on record stays the judged one: at most cells of it
// are filled in.
func (t thing) stays() bool { return t.again == "" && len(t.over) == 0 && !t.waits }

// seen is a row on record as a plan sees it: as the checks of age and calibration
// see it, whether it was read, what is blank beside its reading, why it has to be
// made again although it was, and why it says nothing.
type seen struct {
	area, id string // of its thing
	row      instruments.Row
	read     bool
	blank    []string
	spoiled  string
	early    bool // surely made before its hole had waited: it does not count beside a later one
	lack     string
}

// saysNothing says whether a row shows nothing, whatever is written down of its
// place.
func (s seen) saysNothing() bool {
	return !s.read || s.spoiled != "" || s.lack != "" ||
		slices.ContainsFunc(s.blank, func(column string) bool { return !slices.Contains(lasting(), column) })
}

// survey is a task with its things, looked at one by one among all rows on
// record, and names for those still to be made. A row that is open may be the latest, so nothing else is asked of its
// thing.
func survey[T any](p *planner, t task, things []evidence.Judged[T], all []T, see func(T) seen) task {
	rows := map[[2]string][]seen{}
	for _, r := range all {
		s := t.metered(see(r))
		rows[idOf(s.area, s.id)] = append(rows[idOf(s.area, s.id)], s)
	}
	for _, judged := range things {
		x := thing{name: judged.Name, area: p.Area.ID, id: judged.Name}
		if len(judged.Rows) == 0 {
			x.again = evidence.WetSince
			for _, s := range rows[idOf(x.area, x.id)] {
				x.blank = append(x.blank, s.blank...)
			}
		}
		for _, r := range judged.Rows {
			p.takeIn(t, &x, t.metered(see(r)))
		}
		if !x.waits {
			p.faults(t, &x, rows[idOf(x.area, x.id)])
			x.open = x.open && len(x.over) == 0
		}
		switch {
		case x.open && x.waits:
			x.again, x.blank, x.lack, x.over = "", nil, "", nil
		case x.open:
			x.blank, x.lack = lists.Among(lasting(), x.blank), ""
		case toRead(x):
			x.not, x.blank = latest(x.not, after(x.to)), lists.Among(lasting(), x.blank)
		}
		slices.Sort(x.blank)
		x.blank = slices.Compact(x.blank)
		t.things = append(t.things, x)
	}
	t.more = p.taken.more(t.head, t.asked-len(t.things))
	return t
}

// metered is a row that lacks the name of its instrument, where it does and a
// certain kind of instrument has to take it.
func (t task) metered(s seen) seen {
	if len(t.tool.kinds) > 0 && s.row.Instrument == "" {
		s.blank = append(s.blank, "Instrument")
	}
	return s
}

// after is the minute after a time; zero where there is none.
func after(t time.Time) time.Time {
	return lists.If(t.IsZero(), t, t.Add(time.Minute))
}

// lasting are the columns that tell of a hole and not of its reading: they are
// filled in even where it is read again.
func lasting() []string { return []string{"Depth", "Sealed at"} }

func idOf(area, name string) [2]string { return [2]string{evidence.Key(area), evidence.Key(name)} }

// takeIn takes in a judged row of a thing.
func (p *planner) takeIn(t task, x *thing, s seen) {
	x.area, x.id = s.area, s.id
	again, timed := firstOf(p.rereads(s.row, t), s.spoiled), s.row.At.Shown()
	x.waits = x.waits || !timed
	x.open = x.open || !timed || !s.read && again == ""
	x.again, x.lack = firstOf(x.again, again), firstOf(x.lack, s.lack)
	x.blank = append(x.blank, s.blank...)
	if timed {
		if from := s.row.From; from.Shown() && (x.from.IsZero() || from.First.Before(x.from)) {
			x.from = from.First
		}
		x.to = latest(x.to, s.row.At.Last)
	}
}

// faults are the checks that rows of a thing break. Where the rows of the day
// before a reading count as well, it is not read again within a day of one that
// broke a check or said nothing.
func (p *planner) faults(t task, x *thing, rows []seen) {
	for _, s := range rows {
		broken := p.broken[evidence.RowKey(s.row.Place)]
		for _, id := range broken {
			if !slices.Contains(x.over, id) {
				x.over = append(x.over, id)
			}
		}
		counts := t.recounts && s.row.At.Shown() && !s.early
		if at := s.row.At; counts && (len(broken) > 0 || s.saysNothing()) {
			x.not = latest(x.not, at.Last.Add(evidence.Again+time.Minute))
		}
	}
}

func latest(a, b time.Time) time.Time { return lists.If(b.After(a), b, a) }

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
func (p *planner) rereads(r instruments.Row, t task) string {
	if r.Untimed() {
		return ""
	}
	if p.TooOld(r) {
		return tooOld
	}
	if why := p.disbelievedAny(r, t.tool); why != "" {
		return why
	}
	if t.heated && p.Unheated(r) {
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
	return p.ofEach("disbelieved", with, r, func(id string) string {
		r.Instrument = id
		return p.disbelieved(r)
	})
}

// nameless is a question about the instruments that may have taken a row of some
// times.
type nameless struct {
	question, tool string
	unit           evidence.Unit
	from, at       time.Time
}

// ofEach is why the instrument of a row will not do, or, where none is named, why
// none of a tool's kinds will; empty where one does. The instrument that decides is
// the first that does, or else the last; it is the same for all rows of one time.
func (p *planner) ofEach(question string, with tool, r instruments.Row, unfit func(id string) string) string {
	if r.Instrument != "" {
		return unfit(r.Instrument)
	}
	asked := nameless{question, with.words, r.Unit, r.From.First, r.At.First}
	id, known := p.decides[asked]
	if !known {
		for _, m := range p.metersOf(with) {
			if id = m.ID; unfit(id) == "" {
				break
			}
		}
		p.decides[asked] = id
	}
	if id == "" {
		return ""
	}
	return unfit(id)
}

// cell is a column of a row, and whether anything stands in it.
type cell struct {
	column string
	shown  bool
}

// blanks are the columns in which nothing stands.
func blanks(cells ...cell) []string {
	empty := lists.Where(cells, func(c cell) bool { return !c.shown })
	return lists.Each(empty, func(c cell) string { return c.column })
}

func names(things []thing) []string {
	return lists.Each(things, func(t thing) string { return t.name })
}
func isOpen(t thing) bool  { return t.open }
func isAgain(t thing) bool { return t.again != "" && len(t.over) == 0 }
func isOver(t thing) bool  { return len(t.over) > 0 }
func toRead(t thing) bool  { return t.open || t.again != "" || len(t.over) > 0 }
