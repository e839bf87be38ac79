package record

import (
	"slices"

	"github.com/shopspring/decimal"

	"firstboard/report"
	"firstboard/report/evidence"
)

// holding is what a column's cells hold: their kind, and the words that may
// stand there, or the table whose first column lists them, or the rule of their
// numbers.
type holding struct {
	kind  report.ColumnKind
	among []string
	table string
	rule  rule
}

// Units are the units that an empty record is made in.
type Units int

// The two sets of units.
const (
	Imperial Units = iota
	Metric
)

// Layouts are the tables of an empty record, in the design's order.
func Layouts(units Units) []report.Layout {
	var all []report.Layout
	for _, s := range schemas() {
		l := report.Layout{Table: s.title()}
		for _, c := range s.heads() {
			l.Columns = append(l.Columns, units.column(s.title(), c))
		}
		all = append(all, l)
	}
	return all
}

func (u Units) column(table string, c column[any]) report.LayoutColumn {
	unit := u.of(c)
	col := report.LayoutColumn{
		Header: c.name, Kind: c.holds.kind, Among: c.holds.among, Table: c.holds.table,
		Required: c.star, Note: note(table, c.name),
	}
	if unit != "" {
		col.Header = spelled(c.name, unit)
	}
	if c.holds.rule != nil {
		col.Least, col.Most = c.holds.rule.ends(unit)
	}
	return col
}

// of is the unit that a column stands in.
func (u Units) of(c column[any]) evidence.Unit {
	if len(c.units) == 0 {
		return ""
	}
	if u == Metric {
		for _, metric := range []evidence.Unit{evidence.Celsius, evidence.SquareM, evidence.Grams, millimetresOrMetres(c.units[0])} {
			if slices.Contains(c.units, metric) {
				return metric
			}
		}
	}
	return c.units[0]
}

// millimetresOrMetres is the metric unit for what is usually told in inches or
// in feet.
func millimetresOrMetres(usual evidence.Unit) evidence.Unit {
	if usual == evidence.Inch {
		return evidence.Millimetre
	}
	return evidence.Metre
}

// ends are the least and the most that a rule takes, among those that the rules
// of a record have; empty where it takes whatever lies beyond.
func (r rule) ends(unit evidence.Unit) (least, most string) {
	takes := func(written string, beyond int64) bool {
		x := evidence.Typed(written, unit)
		x.Value = x.Value.Add(decimal.New(beyond, -3))
		return r(x, true) == ""
	}
	for _, end := range []string{"-40", "0", "0.001", "1"} {
		if takes(end, 0) && !takes(end, -1) {
			least = end
		}
	}
	for _, end := range []string{"160", "71.1", "200", "100", "14", "2"} {
		if takes(end, 0) && !takes(end, 100) {
			most = end
		}
	}
	return least, most
}
