package plan

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
)

// task is what is left to do of one kind of thing: things that the record
// holds, and names for those still to be made.
type task struct {
	one, many string
	verb      string
	who       string
	stage     stage
	tool      tool
	checks    []string
	table     string
	column    string // of the names of things
	of, lot   string // of wood
	heated    bool   // a heated floor has to run before
	recounts  bool   // rows of the 24 h before a reading count as well
	how       string // where and how, empty where nothing says
	from      time.Time
	asked     int    // how many of them there must be
	head      string // of the names of those still to be made
	things    []thing
	more      []string
	planned   bool // another act has the rows of those still to be made
	mend      func(things []thing) mending
}

// mending is what is done before things over a limit are read again: in words,
// what else would do, and when it is done; open where that cannot be told, and
// untold why, or what helps.
type mending struct {
	do, how, or string
	untold      string
	who         string
	from        time.Time
	open        bool
}

// tool is a kind of instrument in words, and the kinds of the record it may be.
type tool struct {
	words string
	kinds []string
}

func anRHProbe() tool    { return tool{"an RH probe", []string{evidence.Probe, evidence.SingleUse}} }
func aBalance() tool     { return tool{"a balance", []string{evidence.Balance}} }
func aPHMeter() tool     { return tool{"a pH meter", []string{evidence.PHMeter}} }
func aCarbideKit() tool  { return tool{"a carbide (CM) instrument", []string{evidence.CMMeter}} }
func anAirMeter() tool   { return tool{"an air instrument", []string{evidence.AirMeter}} }
func aThermometer() tool { return tool{"a surface thermometer", []string{evidence.Surface}} }
func aFurtherTest() tool { return tool{"what its manufacturer names", []string{evidence.AnyMeter}} }
func aWoodMeter() tool {
	return tool{"a pin or pinless meter or an oven", []string{evidence.PinMeter, evidence.Pinless, evidence.OvenMeter}}
}

// metersOf are the listed instruments of a tool's kinds, in order.
func (p *planner) metersOf(t tool) []evidence.Instrument {
	key := strings.Join(t.kinds, ", ")
	all, known := p.listed[key]
	if !known {
		all = slices.SortedFunc(maps.Values(p.Job.Instruments), func(a, b evidence.Instrument) int {
			return evidence.Order(a.ID, b.ID)
		})
		all = lists.Where(all, func(m evidence.Instrument) bool { return slices.ContainsFunc(t.kinds, m.Has) })
		p.listed[key] = all
	}
	return all
}

// with says with what a thing is measured, and which of them are listed.
func (p *planner) with(t tool) string {
	left := lists.Where(p.metersOf(t), func(m evidence.Instrument) bool { return !p.spent(m) })
	ids := lists.Each(left, func(m evidence.Instrument) string { return m.ID })
	return "with " + t.words + " (" + cmp.Or(span(ids), "none is listed") + ")"
}

// spent says whether an instrument is a probe for single use that stands in a hole
// elsewhere.
func (p *planner) spent(m evidence.Instrument) bool {
	used := m.Has(evidence.SingleUse) && !m.Has(evidence.Probe) && p.Used[evidence.Key(m.ID)].Value.Sign() > 0
	return used && !slices.ContainsFunc(p.Slab.Holes, func(h slab.Hole) bool { return evidence.Same(h.Instrument, m.ID) })
}

// left says whether anything is left to be measured.
func (t task) left() bool { return len(t.more) > 0 || slices.ContainsFunc(t.things, toRead) }

// do adds the acts of a task: one reading of things still to be made, of those
// whose rows are open and of those to be measured again; one of those over a
// limit; and what is to be written down.
func (p *planner) do(t task) {
	p.read(t)
	p.mendAll(t)
	p.complete(t)
}

// read adds the reading of all that only has to be read.
func (p *planner) read(t task) {
	open, again := lists.Where(t.things, isOpen), lists.Where(t.things, isAgain)
	n := len(t.more) + len(open) + len(again)
	if n == 0 {
		return
	}
	a := p.reading(t, n)
	if t.planned {
		a.later = p.newRows(t)
	} else {
		a.Rows = p.newRows(t)
	}
	var all []string
	for _, x := range t.things {
		switch {
		case isOpen(x):
			a.Fills = append(a.Fills, t.fill(x))
		case isAgain(x):
			a.Rows = append(a.Rows, p.rowAgain(t, x, x.again))
		default:
			continue
		}
		a.from = latest(a.from, x.not)
		all = append(all, x.name)
	}
	a.Short = t.verb + " " + t.called(append(all, t.more...))
	if len(again) == n {
		a.Short += " again"
	}
	a.How = sentence(p.with(t.tool), t.how, whyAgain(again, n))
	p.add(a)
}

// reading is an act of a task on so many things.
func (p *planner) reading(t task, n int) Act {
	return Act{Who: t.who, Checks: t.checks, Things: n, stage: t.stage, from: t.from}
}

// whyAgain says why things are measured again, each reason once, with the
// names where others are read as well.
func whyAgain(again []thing, n int) string {
	alike := lists.Groups(again, func(x thing) string { return x.again })
	return sentence(lists.Each(alike, func(which []thing) string {
		if len(which) < n {
			return span(names(which)) + " again: " + which[0].again
		}
		return which[0].again
	})...)
}

// mendAll adds an act for the things over a limit.
func (p *planner) mendAll(t task) {
	over := lists.Where(t.things, isOver)
	if len(over) == 0 || t.mend == nil {
		return
	}
	m := t.mend(over)
	a := p.reading(t, len(over))
	for _, x := range over {
		a.Rows = append(a.Rows, p.rowAgain(t, x, "over the limit"))
		a.from = latest(a.from, x.not)
	}
	a.Short = m.do + ", then " + t.verb + " " + t.called(names(over)) + " again"
	a.How, a.Or = sentence(m.how, p.with(t.tool), t.how), m.or
	a.from, a.open, a.Untold = latest(a.from, m.from), m.open, m.untold
	a.mends = true
	if m.who != "" {
		a.Who = m.who + ", then " + t.who
	}
	p.add(a)
}

// complete asks for what was left blank in rows that hold a reading, and for
// what makes a reading say nothing, each once for all things it concerns.
func (p *planner) complete(t task) {
	lacks := func(x thing) [2]string { return [2]string{strings.Join(x.blank, "\n"), x.wants()} }
	for _, which := range lists.Groups(t.things, lacks) {
		if len(which[0].blank) > 0 || which[0].wants() != "" {
			p.write(t, which)
		}
	}
}

func (p *planner) write(t task, which []thing) {
	first, subject := which[0], t.called(names(which))
	short, how := "write down "+evidence.List(first.blank)+" of "+subject, "("+t.table+"), from whoever read it"
	if len(first.blank) == 0 {
		short, how = "see to "+subject+": "+first.wants(), "correct what is wrong there in "+t.table+", or read again"
	}
	p.ask(t.who, t.checks, short, how, t.fills(which, first.blank...)...)
}

// called are things by kind and name: "holes H1 and H2".
func (t task) called(which []string) string {
	if len(which) == 1 {
		return t.one + " " + which[0]
	}
	return t.many + " " + span(which)
}

// count is how many are still to be made, and their names: "3 more holes (H4
// to H6)".
func (t task) count() string {
	more := lists.If(len(t.things) > 0, "more ", "")
	return evidence.Count(len(t.more), more+t.one, more+t.many) + " (" + span(t.more) + ")"
}

// fill are blank cells of the row of a thing.
func (t task) fill(x thing, columns ...string) Fill { return Fill{t.table, x.area, x.id, columns} }

func (t task) fills(which []thing, columns ...string) []Fill {
	return lists.Each(which, func(x thing) Fill { return t.fill(x, columns...) })
}

func (p *planner) newRows(t task) []PlannedRow {
	return lists.Each(t.more, func(name string) PlannedRow { return p.row(t, name, "planned") })
}

// rowAgain is the row of a thing to be measured again.
func (p *planner) rowAgain(t task, x thing, why string) PlannedRow {
	row := p.row(t, x.id, "again: "+why)
	row.Cells["Area"] = x.area
	if test, spot, parted := strings.Cut(x.id, atSpot); parted {
		row.Cells["Test"], row.Cells["Spot"] = test, spot
	}
	return row
}

// row is a row to fill in of a thing. Cells without an entry are left out.
func (p *planner) row(t task, name, note string) PlannedRow {
	cells := map[string]string{"Area": p.Area.ID, t.column: name, "Note": note}
	if t.of != "" {
		cells["Of"] = t.of
	}
	if t.lot != "" {
		cells["Lot"] = t.lot
	}
	return PlannedRow{t.table, cells}
}

// also are the checks of a test and those that every reading serves.
func also(checks ...string) []string {
	return append(checks, "air-held", "heat-run", "calibration", "reading-age")
}
