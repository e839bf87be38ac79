package record

import (
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/sheet"
)

// System is the units that an empty record asks for.
type System int

// The systems: F, in, ft, ft2 and lb, or C, mm, m, m2 and g.
const (
	Imperial System = iota
	Metric
)

// Layout are the tables of a record as empty forms, in the design's order and
// the units of a system. They come from the schema that reads a record, so
// what they ask for is what is read.
func Layout(s System) []grid.Form {
	var forms []grid.Form
	for _, t := range schemas() {
		forms = append(forms, t.form(s))
	}
	forms[0].Rows = jobRows(s)
	return forms
}

func (t table[T]) form(s System) grid.Form {
	return grid.Form{Name: t.name, File: sheet.FileName(t.name), Fields: fields(t.name, t.columns, s)}
}

// fields are what columns ask for; one that carries units of the other system
// alone is left out.
func fields[T any](table string, columns []column[T], s System) []grid.Field {
	var all []grid.Field
	known := notes()
	for _, c := range columns {
		unit, ok := c.unit(s)
		if !ok {
			continue
		}
		n := known.noteOn(table, c.name)
		f := grid.Field{
			Header: evidence.Heading(c.name, unit), Must: c.star, Says: n.says, Example: n.example,
			Takes: c.takes,
		}
		if s == Metric && n.metric != "" {
			f.Example = n.metric
		}
		if c.rule != nil {
			f.Takes.Span = c.rule(unit)
		}
		all = append(all, f)
	}
	return all
}

// unit is the one a column carries in a system, none where it needs none.
func (c column[T]) unit(s System) (u evidence.Unit, ok bool) {
	if len(c.units) == 0 {
		return evidence.None, true
	}
	u = c.units[0]
	if s == Imperial {
		return u, u != evidence.Celsius
	}
	twins := metric(u)
	for _, twin := range twins {
		for _, carried := range c.units {
			if carried == twin {
				return twin, true
			}
		}
	}
	return u, len(twins) == 0
}

// metric are the metric units that may stand for another, the handier first.
func metric(u evidence.Unit) []evidence.Unit {
	switch u {
	case evidence.Fahrenheit:
		return []evidence.Unit{evidence.Celsius}
	case evidence.Inch:
		return []evidence.Unit{evidence.Millimeter}
	case evidence.Foot:
		return []evidence.Unit{evidence.Meter}
	case evidence.SquareFoot:
		return []evidence.Unit{evidence.SquareCM, evidence.SquareM}
	case evidence.Pounds:
		return []evidence.Unit{evidence.Grams}
	}
	return nil
}

// jobRows are the items of Job. A setting says what holds while it is blank.
func jobRows(s System) []grid.Field {
	rows := fields("Job", jobItems(), s)
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
