package record

import (
	_ "time/tzdata"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
)

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
