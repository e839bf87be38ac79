package record

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record/alike"
	"firstboard/report/record/sheet"
	"firstboard/slab"
)

// headerMatch is the column that a header names and the unit it carries. The
// column is -1 where there is none; meant is the one that it may be misspelt
// from, or -1. Where either is wrong the complaint says so.
type headerMatch struct {
	column, meant int
	unit          evidence.Unit
	complaint     string
}

// match finds the column that a header names.
func match(table, header string, columns []Column) headerMatch {
	name, in := evidence.Parted(header)
	m := headerMatch{column: -1, meant: -1}
	var namesakes []string
	for i, c := range columns {
		if !evidence.Same(name, c.Name) {
			continue
		}
		if unit, ok := c.Carries(in); ok {
			return headerMatch{i, i, unit, ""}
		}
		m.column, m.meant, namesakes = i, i, append(namesakes, c.Titles()...)
	}
	switch {
	case m.column < 0:
		m.meant, m.complaint = unmatched(table, header, columns)
	case in == "":
		m.complaint = "carries no unit; write " + evidence.Either(namesakes)
	default:
		m.complaint = unitMeant(in, columns[m.column]) + "write " + evidence.Either(namesakes)
	}
	return m
}

// unmatched is what is wrong with a header that names no column, and which it
// may be meant for.
func unmatched(table, header string, columns []Column) (meant int, complaint string) {
	name, _ := evidence.Parted(header)
	if now := alike.ColumnNow(table, name); now != "" {
		meant = slices.IndexFunc(columns, func(c Column) bool { return evidence.Same(c.Name, now) })
		if meant >= 0 {
			return meant, fmt.Sprintf("%s is now %s; write %s", evidence.Quote(name), evidence.Quote(now),
				evidence.Either(columns[meant].Titles()))
		}
	}
	names := lists.Each(columns, func(c Column) string { return c.Name })
	titles := slices.Concat(lists.Each(columns, Column.Titles)...)
	near := slices.Index(names, evidence.NearMiss(name, names))
	return near, fmt.Sprintf("is not known here; the nearest is %q%s", evidence.Nearest(evidence.Tidy(header), titles),
		lists.If(near < 0, "; else take it out", ""))
}

// unitMeant says of a unit that is not known in a column which one it spells.
func unitMeant(in string, c Column) string {
	u, ok := evidence.UnitMeant(in, c.Units)
	return lists.If(ok, "writes its unit "+evidence.Quote(u.Short()), "carries a unit that is not known here") + "; "
}

// Carries is the unit that the text of a bracket stands for in this column; one
// without units has none.
func (c Column) Carries(in string) (evidence.Unit, bool) {
	if len(c.Units) == 0 {
		return evidence.None, in == ""
	}
	return evidence.UnitNamed(in, c.Units)
}

// headerBelow is the number of the row that holds the header where row 1 does
// not, or 0.
func headerBelow(s schema, src *sheet.Table) int {
	const enough = 2 // columns of the table, for a row to be a header
	for i, row := range src.Above {
		named := 0
		for _, text := range row.Texts {
			if s.names(text) {
				named++
			}
		}
		switch {
		case i == 0 && row.Number == 1 && named >= min(enough, len(row.Texts)) && named > 0:
			return 0
		case named >= enough && row.Number > 1:
			return row.Number
		}
	}
	return 0
}

// thickest is the thickest slab that anybody writes in inches or centimeters, in
// inches; a raft that is thicker is written in feet or meters.
const thickest = 60

// thick faults a thickness that is one in millimeters, typed in another unit.
func (d *decoder) thick(column string, r evidence.Reading) {
	if !r.Shown() || r.Unit != evidence.Inch && r.Unit != evidence.Centimeter ||
		r.In(evidence.Inch).Cmp(evidence.Whole(thickest)) <= 0 {
		return
	}
	d.wrongAt(column, r.Written, "is over %d in of slab; are these mm? Then name the column %s; a slab as thick as that is written in ft or m",
		thickest, evidence.Heading(column, evidence.Millimeter))
}

// misfit faults the depths of all holes where none fits its slab in the unit of
// the column, and every one does in another. Fewer holes than slabs are tested
// with may fit another unit by chance.
func (d *decoder) misfit() {
	const least = 3
	for _, u := range []evidence.Unit{evidence.Inch, evidence.Millimeter, evidence.Centimeter} {
		n := 0
		for _, h := range d.job.Holes {
			floor, thick, known := d.floorOf(h)
			if !known {
				continue
			}
			meant := h.Depth
			meant.Unit = u
			if h.Depth.Unit == u || fitsDepth(floor, h.Depth, thick) || !fitsDepth(floor, meant, thick) {
				n = 0
				break
			}
			n++
		}
		if n >= least {
			d.depths = u
		}
	}
}

// otherUnit faults the depth of a hole where all depths fit another unit.
func (d *decoder) otherUnit(h slab.Hole) {
	_, thick, known := d.floorOf(h)
	if !known || d.depths == evidence.None {
		return
	}
	d.wrongAt("Depth", h.Depth.Written,
		"is no depth of a hole in a slab %s thick, nor is any other here; are these %s? Then name the column %s; else correct the depths",
		thick, d.depths, evidence.Heading("Depth", d.depths))
}

// floorOf is the slab that a hole was drilled into and its thickness; known is
// false where its depth says nothing.
func (d *decoder) floorOf(h slab.Hole) (f slab.Floor, thick evidence.Reading, known bool) {
	area, ok := d.areaOf(h.Area)
	if !ok || !h.Depth.Shown() || h.Discarded != "" {
		return f, h.Thickness, false
	}
	thick = lists.If(h.Thickness.Shown(), h.Thickness, area.Thickness)
	f.TwoFaces = area.DryingFaces.Shown() && area.DryingFaces.Value.IntPart() == 2
	f.DepthTolerance = d.job.Settings.DepthTolerance
	return f, thick, thick.Shown()
}

func fitsDepth(f slab.Floor, depth, thick evidence.Reading) bool {
	return !evidence.Measure("", depth, f.DepthRange(thick)).Breaks(evidence.Acceptance{})
}
