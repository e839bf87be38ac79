package plan

import (
	"slices"
	"strings"

	"firstboard/report/evidence"
)

// task is what is left to do of one kind of thing: things that the record
// holds, and names for those still to be made.
type task struct {
	one, many string
	verb      string
	day       int
	tool      tool
	checks    []string
	table     string
	column    string // of the names of things; empty where they have no row to add
	of, lot   string // of wood
	until     string // when the last of them has to be read, empty where nothing says
	things    []thing
	more      []string
}

// tool is a kind of instrument in words, and the kinds of the record it may be.
type tool struct {
	words string
	kinds []string
}

func anRHProbe() tool    { return tool{"an RH probe", []string{evidence.Probe, evidence.SingleUse}} }
func aBalance() tool     { return tool{"a balance", []string{"balance"}} }
func aPHMeter() tool     { return tool{"a pH meter", []string{"pH"}} }
func aCarbideKit() tool  { return tool{"a carbide (CM) instrument", []string{"CM"}} }
func anAirMeter() tool   { return tool{"an air instrument", []string{evidence.AirMeter}} }
func aThermometer() tool { return tool{"a surface thermometer", []string{evidence.Surface}} }
func aWoodMeter() tool {
	return tool{"a pin or pinless meter or an oven", []string{evidence.PinMeter, "pinless", evidence.OvenMeter}}
}

// meters are the listed instruments of a tool's kinds, in order.
func (p *planner) metersOf(t tool) []evidence.Instrument {
	var all []evidence.Instrument
	for _, m := range p.Job.Instruments {
		if slices.ContainsFunc(t.kinds, m.Has) {
			all = append(all, m)
		}
	}
	slices.SortFunc(all, func(a, b evidence.Instrument) int { return evidence.Order(a.ID, b.ID) })
	return all
}

// with says with what a thing is measured, and which of them are listed.
func (p *planner) with(t tool) string {
	var ids []string
	for _, m := range p.metersOf(t) {
		ids = append(ids, m.ID)
	}
	if len(ids) == 0 {
		return "with " + t.words + " (none is listed)"
	}
	return "with " + t.words + " (" + evidence.List(ids) + ")"
}

// do adds the steps of a task: things still to be made, those whose rows are
// open, those to be measured again, and rows that lack something else.
func (p *planner) do(t task) {
	if len(t.more) > 0 {
		subject := t.count()
		how := sentence(p.with(t.tool), t.until)
		p.add(t.day, t.checks, t.verb+" "+subject+" "+how, subject+", "+how, p.newRows(t)...)
	}
	if open := names(t.things, isOpen); len(open) > 0 {
		subject := t.named(open)
		p.add(t.day, t.checks, t.verb+" "+subject+", on record without a reading, "+p.with(t.tool), "the reading of "+subject+", "+p.with(t.tool))
	}
	p.again(t)
	p.complete(t)
}

// again adds a step for each reason why things have to be measured again.
func (p *planner) again(t task) {
	for _, why := range reasons(t.things) {
		which := names(t.things, func(x thing) bool { return x.again == why })
		subject := t.named(which)
		var rows []PlannedRow
		for _, name := range which {
			if t.column == "" {
				break
			}
			rows = append(rows, p.row(t, name, "again: "+why))
		}
		p.add(t.day, t.checks, t.verb+" "+subject+" again "+p.with(t.tool)+": "+why, subject+" again, "+p.with(t.tool)+": "+why, rows...)
	}
}

// complete asks for what was left blank in rows that hold a reading.
func (p *planner) complete(t task) {
	var seen []string
	for _, x := range t.things {
		columns := evidence.List(x.blank)
		if !hasBlank(x) || slices.Contains(seen, columns) {
			continue
		}
		seen = append(seen, columns)
		which := names(t.things, func(y thing) bool { return hasBlank(y) && evidence.List(y.blank) == columns })
		what := columns + " of " + t.named(which) + " (" + t.table + "), from whoever read it"
		p.ask(t.checks, "write down "+what, what)
	}
	for _, x := range t.things {
		if x.lack != "" {
			what := t.named([]string{x.name}) + " (" + t.table + "): " + x.lack
			p.ask(t.checks, "see to "+what, what)
		}
	}
}

func reasons(things []thing) []string {
	var all []string
	for _, t := range things {
		if t.again != "" && !slices.Contains(all, t.again) {
			all = append(all, t.again)
		}
	}
	return all
}

// named are things by kind and name: "holes H1 and H2".
func (t task) named(which []string) string {
	if len(which) == 1 {
		return t.one + " " + which[0]
	}
	return t.many + " " + span(which)
}

// count is how many are still to be made, and their names: "3 more holes (H4
// to H6)".
func (t task) count() string {
	more := ""
	if len(t.things) > 0 {
		more = "more "
	}
	return evidence.Count(len(t.more), more+t.one, more+t.many) + " (" + span(t.more) + ")"
}

func (p *planner) newRows(t task) []PlannedRow {
	var rows []PlannedRow
	for _, name := range t.more {
		rows = append(rows, p.row(t, name, "planned"))
	}
	return rows
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

// sentence joins clauses that are not empty.
func sentence(clauses ...string) string {
	return strings.Join(slices.DeleteFunc(clauses, func(c string) bool { return c == "" }), ", ")
}
