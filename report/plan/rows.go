package plan

import (
	"maps"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
)

// WithPlans are the tables of a record with the rows that plans ask to be
// filled in: what is known of them, and blanks where something is to be read.
// A thing to be measured again keeps what was written down of its place. The
// tables given are left as they are.
func WithPlans(tables []grid.Table, plans []Plan) []grid.Table {
	for _, columns := range plannedColumns() {
		name, columns := columns[0], columns[1:]
		if rows := plannedRows(plans, name); len(rows) > 0 {
			tables = grid.Put(tables, filled(grid.Named(tables, name), columns, rows))
		}
	}
	return tables
}

// PlannedRow is a row to fill in: what is known of it, by the names of its
// table's columns without their units.
type PlannedRow struct {
	Table string
	Cells map[string]string
}

// plannedColumns are the tables that take rows to fill in, each with the
// columns of such a row.
func plannedColumns() [][]string {
	return [][]string{
		{"Instrument checks", "Instrument", "Checked at", "Standard", "Expected", "Read"},
		{
			"Slab RH", "Area", "Hole", "X (ft)", "Y (ft)", "To exterior wall (ft)", "Wall", "Depth (in)", "Sealed at",
			"Read at", "RH (%)", "Temp (F)", "Instrument", "Note",
		},
		{
			"Slab MVER", "Area", "Dish", "Set at", "Retrieved at", "Start mass (g)", "End mass (g)", "Test area (ft2)",
			"Instrument", "Note",
		},
		{"Slab pH", "Area", "Spot", "Read at", "pH", "Instrument", "Note"},
		{"Slab CM", "Area", "Spot", "Read at", "CM (%)", "Instrument", "Note"},
		{
			"Other tests", "Area", "Test", "Spot", "Read at", "Result", "At least", "At most", "Unit", "Instrument",
			"Data sheet", "Note",
		},
		{"Surface", "Area", "Spot", "Read at", "Temp (F)", "Instrument", "Note"},
		{"Wood", "Area", "Of", "Piece", "Lot", "Read at", "Method", "Reading (%)", "Scale", "Instrument", "Note"},
	}
}

// lasts says whether a column keeps its entry where a thing is measured again:
// it tells of the place and not of the reading.
func lasts(column string) bool {
	return slices.Contains([]string{
		"x", "y", "to exterior wall", "wall", "thickness", "depth", "sealed at",
		"test area", "scale", "species", "at least", "at most", "unit", "data sheet",
	}, bare(column))
}

// plannedRows are the rows of a table that plans ask for, each once.
func plannedRows(plans []Plan, table string) []PlannedRow {
	var rows []PlannedRow
	for _, p := range plans {
		for _, a := range p.Acts {
			for _, r := range a.Rows {
				asked := func(o PlannedRow) bool { return maps.Equal(o.Cells, r.Cells) }
				if r.Table == table && !slices.ContainsFunc(rows, asked) {
					rows = append(rows, r)
				}
			}
		}
	}
	return rows
}

// filled is the table with planned rows below its own.
func filled(t grid.Table, columns []string, rows []PlannedRow) grid.Table {
	titles := lists.Each(columns, func(column string) string { return heading(t, column) })
	entries := lists.Each(rows, func(r PlannedRow) []string {
		return lists.Each(columns, func(column string) string { return r.Cells[column] })
	})
	full := t.With(titles, entries...)
	for i, r := range rows {
		keep(full.Rows[len(t.Rows)+i], t, r)
	}
	return full
}

// keep fills in what stays of the last row of the same thing.
func keep(r grid.Row, t grid.Table, planned PlannedRow) {
	for _, was := range slices.Backward(t.Rows) {
		if !tells(t, was, planned) {
			continue
		}
		for k, header := range t.Header {
			if lasts(header) {
				r.Cells[k] = was.Cells[k]
			}
		}
		return
	}
}

// tells says whether a row is of the thing that a planned row names.
func tells(t grid.Table, r grid.Row, planned PlannedRow) bool {
	for column, text := range planned.Cells {
		at := columnNamed(t, column)
		if column != "Note" && (at < 0 || !evidence.Same(r.Cells[at].Text, text)) {
			return false
		}
	}
	return true
}

// heading is the table's own header for a column, whatever its unit, or the
// column as given where it has none.
func heading(t grid.Table, column string) string {
	own, found := lists.First(t.Header, func(h string) bool { return bare(h) == bare(column) })
	return lists.If(found, own, column)
}

func columnNamed(t grid.Table, column string) int {
	return slices.IndexFunc(t.Header, func(h string) bool { return bare(h) == bare(column) })
}

// bare is a header as headers are compared, without its unit.
func bare(header string) string {
	name, _, _ := strings.Cut(header, "(")
	return evidence.Key(name)
}
