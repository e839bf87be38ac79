package forms

import (
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/sheet"
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
