package record

import (
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
