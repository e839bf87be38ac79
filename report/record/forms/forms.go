package forms

import (
	"fmt"
	"slices"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/sheet"
	"firstboard/slab"
	"firstboard/wood"
)

// System is the units that an empty record asks for.
type System int

// The systems: F, in, ft, ft2 and lb, or C, mm, m, m2 and g.
const (
	Imperial System = iota
	Metric
)

// Empty are the tables of a record as empty forms, in the design's order and
// the units of a system.
func Empty(s System) []grid.Form {
	return lists.Each(record.TableNames(), func(table string) grid.Form { return empty(table, s) })
}

func empty(table string, s System) grid.Form {
	f := grid.Form{Name: table, File: sheet.FileName(table), Fields: fields(table, record.Columns(table), s)}
	if table == "Job" {
		f.Rows = jobRows(s)
	}
	return f
}

// fields are what columns ask for; one that carries units of the other system
// alone is left out.
func fields(table string, columns []record.Column, s System) []grid.Field {
	var all []grid.Field
	known := notes()
	for _, c := range columns {
		unit, ok := unitIn(c, s)
		if !ok {
			continue
		}
		n := known.noteOn(table, c.Name)
		f := grid.Field{
			Header: evidence.Heading(c.Name, unit), Must: c.Star, Says: n.says, Example: n.example,
			Takes: c.Takes,
		}
		if s == Metric && n.metric != "" {
			f.Example = n.metric
		}
		if c.Span != nil {
			f.Takes.Span = c.Span(unit)
		}
		all = append(all, f)
	}
	return all
}

// unitIn is the unit that a column carries in a system, none where it needs none.
func unitIn(c record.Column, s System) (u evidence.Unit, ok bool) {
	if len(c.Units) == 0 {
		return evidence.None, true
	}
	u = c.Units[0]
	if s == Imperial {
		return u, u != evidence.Celsius
	}
	twins := metric(u)
	if at := slices.IndexFunc(twins, func(twin evidence.Unit) bool { return slices.Contains(c.Units, twin) }); at >= 0 {
		return twins[at], true
	}
	return u, len(twins) == 0
}

// metric are the metric units that may stand for another, the handier first.
func metric(u evidence.Unit) []evidence.Unit {
	return map[evidence.Unit][]evidence.Unit{
		evidence.Fahrenheit: {evidence.Celsius},
		evidence.Inch:       {evidence.Millimeter},
		evidence.Foot:       {evidence.Meter},
		evidence.SquareFoot: {evidence.SquareCM, evidence.SquareM},
		evidence.Pounds:     {evidence.Grams},
	}[u]
}

// jobRows are the items of Job. A setting says what holds while it is blank.
func jobRows(s System) []grid.Field {
	rows := fields("Job", record.JobItems(), s)
	settings := report.DefaultSettings()
	for _, item := range settings.Items() {
		for i := range rows {
			if rows[i].Header == item.Item {
				rows[i].Says += "; blank is " + item.Value.Written
				rows[i].Example = item.Value.Written
			}
		}
	}
	return rows
}

// For is what a table of a record takes, in the columns and the units that
// it has: a field for each of its headers. What is no column of it, and of Job
// what is no item, is a field without a name.
func For(t grid.Table) grid.Form {
	asked := [2]grid.Form{empty(t.Name, Imperial), empty(t.Name, Metric)}
	f := grid.Form{Name: t.Name, Fields: lists.Each(t.Header, func(header string) grid.Field {
		return fieldNamed(header, asked[0].Fields, asked[1].Fields)
	})}
	if asked[0].Rows == nil || len(t.Rows) == 0 {
		return f
	}
	f.Rows = make([]grid.Field, t.Rows[len(t.Rows)-1].Number-1)
	for _, r := range t.Rows {
		f.Rows[r.Number-2] = fieldNamed(r.Cells[0].Text, asked[0].Rows, asked[1].Rows)
	}
	return f
}

// fieldNamed is the field that a header names; in a unit of neither system
// without the span of its numbers.
func fieldNamed(header string, lists ...[]grid.Field) (found grid.Field) {
	name, in := evidence.Parted(header)
	for _, f := range slices.Concat(lists...) {
		own, unit := evidence.Parted(f.Header)
		if !evidence.Same(own, name) {
			continue
		}
		found, found.Header = f, header
		if evidence.Same(unit, in) {
			return found
		}
		found.Takes.Span = grid.Span{}
	}
	return found
}

// FirstSteps are the tables to fill in, in order, for the three floors that
// most jobs have: wood on a slab, wood on wood, resilient on a slab.
func FirstSteps() []grid.StartStep {
	return []grid.StartStep{
		{Table: "Job", Says: "Name the job, and its time zone. The rest of the entries may stay blank."},
		{Table: "Products", Says: "A row for the flooring, and one for its adhesive or membrane. Take each limit from the data sheet and name that sheet in Data sheet. " +
			"Write none where the sheet states no such limit: a blank says that the limit was not looked up, and then the floor is no GO."},
		{Table: "Climates", Says: "A row for each season the floor will live through: temperature, humidity, and who says so."},
		{Table: "Areas", Says: "A row for each room: its size, what the flooring is laid on (slab, wood, or wood over slab), the products, the climate, and the day of installing. " +
			"On a slab: its thickness and kind, how many walls are exterior, and what lies under it (write unknown where nobody knows). On wood over a crawl space: Below, and Ground cover."},
		{Table: "Instruments", Says: "A row for each meter: its kind (several with commas), and the day it was calibrated."},
		{Table: "Instrument checks", Says: fmt.Sprintf("For a reusable probe: a check in a known humidity "+
			"at most %d days before it is read (ASTM F2170, published). "+
			"For a pin or pinless meter without a certificate: its check block, within %d days before the boards.",
			instruments.ProbeDays, instruments.BlockDays)},
		{Table: "Slab RH", Says: fmt.Sprintf("Wood or resilient on a slab: at least %d holes (ASTM F2170, published), "+
			"one within %s of each exterior wall, a row each time one is read. "+
			"Before drilling find tendons, pipes and cables, and keep the silica dust out of your lungs.",
			slab.FirstHoles, slab.NearWall())},
		{Table: "Slab pH", Says: fmt.Sprintf("Where anything is glued to the slab and the adhesive states a pH: "+
			"%d spots at least. Where a data sheet asks for it instead of holes or beside them: Slab MVER or Slab CM.", slab.PHSpots)},
		{Table: "Air", Says: fmt.Sprintf("Every floor: a row a day at least, or a logger's rows (firstboard log), "+
			"from %s before the first reading (ASTM F2170, recalled) to the day of installing. Where anything is glued, fill in Surface too.",
			acclimate.DefaultHeld())},
		{Table: "Wood", Says: fmt.Sprintf("Wood flooring: %d boards for each %[3]d ft2; a wood subfloor: %[2]d spots for each %[3]d ft2 "+
			"(NWFA guidance 2019, published). For each: what, piece, method, reading, "+
			"and in Scale the species or panel setting of the meter, or corrected: a reading whose scale is not known counts for nothing. Resilient flooring needs none of this.",
			wood.PerFlooring, wood.PerSubfloor, wood.PartFT2)},
		{Says: "Then judge it: firstboard check FILE -o decision.xlsx. What a job does not need stays empty; a blank is a missing value, never zero."},
	}
}
