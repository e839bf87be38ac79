package record

import (
	"fmt"
	_ "time/tzdata"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

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
