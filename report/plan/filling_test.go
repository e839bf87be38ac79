package plan_test

import (
	"slices"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/report/plan"
	"firstboard/wood"
)

// fill writes into blank cells of rows on record what an act asks for.
func (d *doing) fill(a plan.Act, f plan.Fill) {
	switch f.Table {
	case "Areas":
		for _, column := range f.Columns {
			d.fillArea(a, column)
		}
	case "Products":
		d.fillProduct(f)
	case "Climates":
		for i := range d.job.Climates {
			blankTo(&d.job.Climates[i].Temp, evidence.Typed("70", evidence.Fahrenheit))
			blankTo(&d.job.Climates[i].RH, evidence.Typed("40", evidence.RH))
		}
	case "Instruments":
		d.fillInstrument(a, f)
	case "Instrument checks":
		d.fillCheck(a, f)
	case "Air":
		d.fillAir(f)
	case "Slab RH":
		d.fillHole(a, f)
	default:
		d.fillOthers(a, f)
	}
}

func blankTo(r *evidence.Reading, to evidence.Reading) {
	if !r.Shown() {
		to.Place = r.Place
		*r = to
	}
}

func (d *doing) fillArea(a plan.Act, column string) {
	switch column {
	case "Install on":
		d.area.InstallOn = dated(d.plan.Earliest.Day)
	case "Covered on":
		d.area.CoveredOn = dated(d.plan.Earliest.Day)
	case "Size":
		d.area.Size = evidence.Typed("75", evidence.SquareFoot)
	case "Slab thickness":
		d.area.Thickness = evidence.Typed("4", evidence.Inch)
	case "Exterior walls":
		d.area.ExteriorWalls = evidence.Typed("0", evidence.Walls)
	case "Under slab":
		d.area.UnderSlab = "retarder"
	case "Below":
		d.area.Below = "conditioned room"
	case "Ground cover":
		d.area.GroundCover = "yes"
	case "Heat on since":
		d.area.HeatOnSince = moment(a.Begins)
		if a.Ends.Equal(a.Begins) {
			d.area.HeatOnSince = moment(a.Begins.Add(-100 * 24 * time.Hour))
		}
	case "Adhesive":
		d.area.Installation = "floating"
	default:
		panic("the column " + column)
	}
}

func (d *doing) fillProduct(f plan.Fill) {
	for i := range d.job.Products {
		p := &d.job.Products[i]
		if !evidence.Same(p.ID, f.Name) {
			continue
		}
		for _, k := range limits.Kinds() {
			for _, c := range k.Columns() {
				if slices.Contains(f.Columns, c.Name) {
					c.Cell(p).None = true
				}
			}
		}
		if slices.Contains(f.Columns, "Data sheet") {
			p.DataSheet = "a sheet"
		}
	}
}

func (d *doing) fillInstrument(a plan.Act, f plan.Fill) {
	m, listed := d.job.Instruments.Find(f.Name)
	long := dated(evidence.DayOf(a.Ends) - 100)
	switch {
	case slices.Contains(f.Columns, "Uncertainty"):
		m.Uncertainty = evidence.Typed("0.1", evidence.None)
	case slices.Contains(f.Columns, "Due on"): // newly calibrated: another row, so that earlier readings keep theirs
		m = evidence.Instrument{ID: m.ID + " new", Kinds: m.Kinds, CalibratedOn: dated(evidence.DayOf(a.Ends))}
	case !listed:
		m = evidence.Instrument{ID: "NEW " + f.Name, Kinds: []string{f.Name}, CalibratedOn: long}
		if f.Name == evidence.Probe {
			d.check(m.ID, a.Ends)
		}
	default:
		m.CalibratedOn = long
	}
	d.job.Instruments[evidence.Key(m.ID)] = m
}

func (d *doing) fillCheck(a plan.Act, f plan.Fill) {
	if len(f.Columns) == 0 {
		d.check(f.Name, a.Ends)
		return
	}
	for i := range d.job.Checks {
		c := &d.job.Checks[i]
		if !evidence.Same(c.Instrument, f.Name) {
			continue
		}
		if !c.Expected.Shown() && c.Read.Shown() {
			c.Expected = c.Read
		}
		blankTo(&c.Expected, evidence.Typed("75", evidence.RH))
		blankTo(&c.Read, c.Expected)
		if !c.CheckedAt.Shown() {
			c.CheckedAt = moment(a.Ends.Add(-time.Minute))
			if !c.Read.Value.Sub(c.Expected.Value).Abs().LessThan(decimal.NewFromInt(2)) { // an old one
				c.CheckedAt = moment(a.Ends.Add(-3000 * time.Hour))
			}
		}
	}
}

func (d *doing) fillAir(f plan.Fill) {
	for i := range d.job.Air {
		r := &d.job.Air[i]
		if r.Area != "" && !evidence.Same(r.Area, f.Area) {
			continue
		}
		if slices.Contains(f.Columns, "Instrument") && r.Instrument == "" {
			at := r.ReadAt
			if !at.Shown() {
				at = moment(d.site.Latest())
			}
			r.Instrument = d.meter(at.First, evidence.AirMeter)
		}
		if slices.Contains(f.Columns, "Read at") && !r.ReadAt.Shown() {
			r.ReadAt = moment(d.site.Latest().Add(-40 * 24 * time.Hour)) // an old one, whatever it says
		}
	}
}

func (d *doing) fillHole(a plan.Act, f plan.Fill) {
	var latest time.Time
	for _, h := range d.job.Holes {
		if evidence.Same(h.Area, f.Area) && evidence.Same(h.Hole, f.Name) && h.ReadAt.First.After(latest) {
			latest = h.ReadAt.First
		}
	}
	for i := range d.job.Holes {
		h := &d.job.Holes[i]
		if !evidence.Same(h.Area, f.Area) || !evidence.Same(h.Hole, f.Name) || h.ReadAt.Shown() && h.ReadAt.First.Before(latest) {
			continue
		}
		asked := func(column string) bool { return slices.Contains(f.Columns, column) }
		switch {
		case asked("Discarded"):
			h.Discarded = "wrong depth"
			if !h.ReadAt.Shown() {
				h.ReadAt = moment(a.Begins.Add(-time.Hour))
			}
		case len(f.Columns) == 0 && !h.ReadAt.Shown():
			d.readHole(h, a.Ends)
		case len(f.Columns) == 0:
			blankTo(&h.RH, amid(d.site.Slab.RH, "60", evidence.RH))
		}
		if asked("Depth") || len(f.Columns) == 0 {
			blankTo(&h.Depth, d.depth())
		}
		if asked("Sealed at") && !h.SealedAt.Shown() {
			h.SealedAt = moment(a.Begins)
			if h.ReadAt.Shown() {
				h.SealedAt = moment(h.ReadAt.First.Add(-100 * time.Hour))
			}
		}
		if asked("Temp") || len(f.Columns) == 0 {
			blankTo(&h.Temp, amid(d.site.Slab.Temp, "70", evidence.Fahrenheit))
		}
		if (asked("Instrument") || len(f.Columns) == 0) && h.Instrument == "" {
			h.Instrument = d.meter(h.ReadAt.First, evidence.Probe)
		}
		if asked("To exterior wall") {
			blankTo(&h.ToWall, evidence.Typed("2", evidence.Foot))
			h.Walls = append(h.Walls, "wall "+h.Hole)
		}
	}
}

func (d *doing) fillOthers(a plan.Act, f plan.Fill) {
	asked := func(column string) bool { return len(f.Columns) == 0 || slices.Contains(f.Columns, column) }
	mine := func(area, name string) bool { return evidence.Same(area, f.Area) && evidence.Same(name, f.Name) }
	at := func(t *evidence.Time) {
		if !t.Shown() {
			*t = moment(a.Ends)
		}
	}
	named := func(instrument *string, t evidence.Time, kinds ...string) {
		if *instrument == "" && asked("Instrument") || len(f.Columns) == 0 && t.First.Equal(a.Ends) {
			*instrument = d.meter(t.First, kinds...)
		}
	}
	for i := range d.job.Dishes {
		if r := &d.job.Dishes[i]; mine(r.Area, r.Dish) {
			if len(f.Columns) == 0 && !r.RetrievedAt.Shown() && !r.Start.Shown() {
				r.SetAt, r.Start = moment(a.Begins), evidence.Typed("30", evidence.Gram)
			}
			if len(f.Columns) == 0 && r.RetrievedAt.Shown() {
				blankTo(&r.Start, evidence.Typed("30", evidence.Gram))
				blankTo(&r.End, evidence.Computed(r.Start.Value.Add(decimal.New(1, -1)), evidence.Gram))
				if !r.SetAt.Shown() {
					r.SetAt = moment(r.RetrievedAt.First.Add(-61 * time.Hour))
				}
			}
			if slices.Contains(f.Columns, "Retrieved at") && !r.RetrievedAt.Shown() {
				r.RetrievedAt, r.End = moment(a.Begins.Add(-time.Minute)), evidence.Typed("31", evidence.Gram)
			}
			for _, other := range d.job.Dishes {
				if other.TestArea.Shown() {
					blankTo(&r.TestArea, other.TestArea)
				}
			}
			blankTo(&r.TestArea, evidence.Typed("1", evidence.SquareFoot))
			named(&r.Instrument, r.SetAt, evidence.Balance)
		}
	}
	for i := range d.job.PHs {
		if r := &d.job.PHs[i]; f.Table == "Slab pH" && mine(r.Area, r.Spot) {
			at(&r.ReadAt)
			blankTo(&r.PH, amid(d.site.Slab.PH, "9", evidence.PH))
			named(&r.Instrument, r.ReadAt, evidence.PHMeter)
		}
	}
	for i := range d.job.Carbides {
		if r := &d.job.Carbides[i]; f.Table == "Slab CM" && mine(r.Area, r.Spot) {
			at(&r.ReadAt)
			blankTo(&r.CM, amid(d.site.Slab.CM, "1", evidence.CM))
			named(&r.Instrument, r.ReadAt, evidence.CMMeter)
		}
	}
	for i := range d.job.Surfaces {
		if r := &d.job.Surfaces[i]; f.Table == "Surface" && evidence.Same(r.Spot, f.Name) {
			if !r.ReadAt.Shown() {
				at(&r.ReadAt)
				d.air(a.Ends)
			}
			blankTo(&r.Temp, evidence.Typed("79", evidence.Fahrenheit))
			named(&r.Instrument, r.ReadAt, evidence.Surface)
		}
	}
	for i := range d.job.Wood {
		if r := &d.job.Wood[i]; f.Table == "Wood" && mine(r.Area, r.Piece) {
			at(&r.ReadAt)
			blankTo(&r.Reading, d.board())
			if r.Method == "" {
				r.Method = wood.OvenDry
			}
			r.Scale, r.WoodTemp = wood.Corrected, evidence.Reading{}
			if wood.IsPanel(r.Species) {
				r.Scale = r.Species
			}
			if r.Reading.Value.LessThan(decimal.NewFromInt(6)) || r.Of == wood.OfFlooring {
				r.Method, r.Reading = wood.OvenDry, d.board()
			}
			kind := r.Method
			if kind == wood.OvenDry {
				kind = evidence.OvenMeter
			}
			named(&r.Instrument, r.ReadAt, kind, evidence.PinMeter)
		}
	}
}
