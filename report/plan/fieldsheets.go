package plan

import (
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
)

// FieldSheets are the plans as sheets to print and to write on: one for each
// person on each day, with what is done in all areas. Headers are those of the
// record's own tables.
func FieldSheets(tables []grid.Table, plans []Plan) []grid.FieldSheet {
	var all []grid.FieldSheet
	for _, p := range plans {
		for _, a := range p.Acts {
			at := slices.IndexFunc(all, func(s grid.FieldSheet) bool { return s.When == p.When(a) && s.Who == a.Who })
			if at < 0 {
				at = len(all)
				all = append(all, grid.FieldSheet{When: p.When(a), Who: a.Who})
			}
			all[at].Parts = withAct(all[at].Parts, tables, p, a)
		}
	}
	slices.SortStableFunc(all, func(a, b grid.FieldSheet) int { return evidence.Order(a.When, b.When) })
	return all
}

// withAct are the parts of a sheet with an act more.
func withAct(parts []grid.FieldPart, tables []grid.Table, p Plan, a Act) []grid.FieldPart {
	name := strings.TrimSpace(p.Area.ID + " " + p.Area.Name)
	if n := len(parts); n == 0 || parts[n-1].Area != name {
		parts = append(parts, grid.FieldPart{Area: name})
	}
	part := &parts[len(parts)-1]
	part.Orders = append(part.Orders, a.Order())
	for _, l := range a.lists(tables) {
		if l.Title != "Instrument checks" || !listed(parts, l) {
			part.Lists = append(part.Lists, l)
		}
	}
	return parts
}

// listed says whether a list stands on the sheet already: an instrument is
// checked once, whatever it is used for.
func listed(parts []grid.FieldPart, l grid.FieldList) bool {
	return slices.ContainsFunc(parts, func(p grid.FieldPart) bool {
		return slices.ContainsFunc(p.Lists, func(o grid.FieldList) bool {
			return o.Title == l.Title && slices.EqualFunc(o.Rows, l.Rows, slices.Equal)
		})
	})
}

// lists are what an act writes down, a list for each table.
func (a Act) lists(tables []grid.Table) []grid.FieldList {
	if a.stage == ofAir || a.stage == latestAir {
		return []grid.FieldList{airList(tables)}
	}
	var all []grid.FieldList
	for _, planned := range plannedColumns() {
		name := planned[0]
		own := grid.Named(tables, name)
		rows := lists.Where(slices.Concat(a.Rows, a.later), func(r PlannedRow) bool { return r.Table == name })
		full := filled(own, planned[1:], rows)
		full.Rows = append(onRecord(own, a.Fills), full.Rows[len(own.Rows):]...)
		if len(full.Rows) > 0 {
			all = append(all, a.list(full))
		}
	}
	return all
}

// onRecord are the rows of a table whose blanks an act fills in.
func onRecord(t grid.Table, fills []Fill) []grid.Row {
	var all []grid.Row
	for _, f := range fills {
		if f.Table != t.Name || len(t.Header) < 2 {
			continue
		}
		for _, r := range slices.Backward(t.Rows) {
			if evidence.Same(r.Cells[0].Text, f.Area) &&
				slices.ContainsFunc(r.Cells[1:], func(c grid.Cell) bool { return evidence.Same(c.Text, f.Name) }) {
				all = append(all, r)
				break
			}
		}
	}
	return all
}

// list are the rows of a table in the columns that an act writes down. Whose
// lot and what kind of wood they all are stands above them.
func (a Act) list(t grid.Table) grid.FieldList {
	l := grid.FieldList{Title: t.Name}
	for _, column := range []string{"Of", "Lot"} {
		if word := inAll(t, column); word != "" {
			l.Title += ", " + strings.TrimPrefix(strings.ToLower(column)+" ", "of ") + word
		}
	}
	var at []int
	for _, column := range a.written(t.Name) {
		if i := columnNamed(t, column); i >= 0 {
			l.Columns, at = append(l.Columns, t.Header[i]), append(at, i)
		}
	}
	for _, r := range t.Rows {
		row := make([]string, len(at))
		for k, i := range at {
			row[k] = strings.TrimPrefix(entry(r, i), "planned: ")
			if row[k] == "planned" {
				row[k] = ""
			}
		}
		l.Rows = append(l.Rows, row)
	}
	return l
}

func entry(r grid.Row, column int) string {
	if column < 0 || column >= len(r.Cells) {
		return ""
	}
	return r.Cells[column].Text
}

// inAll is what stands in a column of every row, empty where they differ.
func inAll(t grid.Table, column string) string {
	at := columnNamed(t, column)
	word := entry(t.Rows[0], at)
	if slices.ContainsFunc(t.Rows, func(r grid.Row) bool { return entry(r, at) != word }) {
		return ""
	}
	return word
}

// written are the columns that an act writes down on its day, those that name
// the thing first.
func (a Act) written(table string) []string {
	switch {
	case a.stage == sealing:
		return []string{"Hole", "X", "Y", "To exterior wall", "Wall", "Depth", "Sealed at", "Note"}
	case table == "Slab RH":
		return []string{"Hole", "Read at", "RH", "Temp", "Instrument", "Note"}
	case a.stage == setting:
		return []string{"Dish", "Test area", "Set at", "Start mass", "Instrument", "Note"}
	case table == "Slab MVER":
		return []string{"Dish", "Retrieved at", "End mass", "Instrument", "Note"}
	case table == "Instrument checks":
		return []string{"Instrument", "Checked at", "Standard", "Expected", "Read"}
	case table == "Wood":
		return []string{"Piece", "Read at", "Method", "Reading", "Scale", "Instrument", "Note"}
	case table == "Other tests":
		return []string{"Test", "Spot", "At least", "At most", "Unit", "Read at", "Result", "Instrument", "Note"}
	}
	return []string{"Spot", "Read at", "pH", "CM", "Temp", "Instrument", "Note"}
}

// airLines are the lines for readings of the air that one sheet has room for.
const airLines = 6

func airList(tables []grid.Table) grid.FieldList {
	own := grid.Named(tables, "Air")
	l := grid.FieldList{Title: own.Name}
	l.Columns = lists.Each([]string{"Read at", "Temp (F)", "RH (%)", "Instrument", "Note"},
		func(column string) string { return heading(own, column) })
	for range airLines {
		l.Rows = append(l.Rows, make([]string, len(l.Columns)))
	}
	return l
}
