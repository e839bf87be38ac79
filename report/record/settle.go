package record

import (
	"fmt"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// Column is a column of a table, for those who bring rows into it or ask for
// them.
type Column struct {
	Name  string                        // without its unit
	Units []evidence.Unit               // it may carry, the design's own first
	Takes grid.Takes                    // what a person may enter
	Span  func(evidence.Unit) grid.Span // of a number, nil for any other entry
	Star  bool                          // must be there when the table has rows
	Key   bool                          // must be filled in when its row holds anything
}

// Title is the column's header with the design's own unit.
func (c Column) Title() string {
	return c.Titles()[0]
}

// Titles are the headers the column may have: one for each unit.
func (c Column) Titles() []string {
	if len(c.Units) == 0 {
		return []string{c.Name}
	}
	return lists.Each(c.Units, func(u evidence.Unit) string { return evidence.Heading(c.Name, u) })
}

// Columns are the columns of a table of a record, in the design's order.
func Columns(table string) []Column {
	if s := schemaOf(table); s != nil {
		return s.heads()
	}
	return nil
}

// ColumnOf is the column that a header of a table names, counted from 0, and
// the unit it carries; -1 where there is none or the unit is not one of its own.
func ColumnOf(table, header string) (int, evidence.Unit) {
	if m := match(table, header, Columns(table)); m.complaint == "" {
		return m.column, m.unit
	}
	return -1, evidence.None
}

func schemaOf(table string) schema {
	s, _ := lists.First(schemas(), func(s schema) bool { return s.title() == table })
	return s
}

// Settler settles rows that are brought into a table of a job, by the rules of
// Read.
type Settler struct{ d *decoder }

// NewSettler settles rows by what a job lists.
func NewSettler(job report.Job) Settler {
	d := newDecoder()
	d.apart = true
	d.job.Zone, d.job.ZoneName, d.job.Areas, d.job.Instruments = job.Zone, job.ZoneName, job.Areas, job.Instruments
	for i, a := range job.Areas {
		d.areas.add(a.ID, i)
		d.lastInstall(a)
	}
	for _, m := range job.Instruments {
		d.instruments.add(m.ID, 0)
	}
	return Settler{d}
}

// Settle settles the cells of some rows and gives a fault for each that breaks
// a rule.
func (s Settler) Settle(t *sheet.Table) faults.List {
	s.d.read(0, schemaOf(t.Name), t)
	found := s.d.faults
	s.d.faults = nil
	return found
}

// ReadWith reads the record at path with rows added to one of its tables, and
// judges the whole by the rules of Read: what is wrong with the added rows is
// a fault as well. Nothing at path is changed, and the sum is that of what
// stands there.
//
// add is given the table as it stands, its cells unsettled, or a table of that
// name without a header where the record has none; it gives the table with its
// rows added, as grid.Table.With does.
func ReadWith(path, table string, add func(grid.Table) grid.Table) (Record, error) {
	from, err := open(path)
	if err != nil {
		return Record{}, err
	}
	src := from.Table(table)
	was := len(src.Rows)
	src.Table = add(src.Table)
	for _, r := range src.Rows[was:] {
		if err := src.Take(len(r.Cells)); err != nil {
			return Record{}, fmt.Errorf("%s: %w", from.Name, err)
		}
	}
	return decoded(from)
}

// Heading is the header under which a table has a column that measures, and
// its unit, one of those given; where the table has none it is the name with
// the first unit in its bracket.
func Heading(t grid.Table, column string, units ...evidence.Unit) (string, evidence.Unit) {
	for _, header := range t.Header {
		name, in := evidence.Parted(header)
		if u, ok := evidence.UnitNamed(in, units); ok && evidence.Same(name, column) {
			return header, u
		}
	}
	return evidence.Heading(column, units[0]), units[0]
}
