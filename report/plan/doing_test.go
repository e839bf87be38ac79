package plan_test

import (
	"slices"
	"strings"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/plan"
	"firstboard/slab"
	"firstboard/wood"
)

// doing is somebody who does what a plan says, no more, and finds everything in
// good order: what is read lies within its limit.
type doing struct {
	job  report.Job
	plan plan.Plan
	site report.Site
	area *report.Area
	room acclimate.Room // with the service climate written down
	last time.Time
}

// done is a job after every act of an area's plan was done at its earliest time.
func done(j report.Job, p plan.Plan) report.Job {
	d := &doing{job: copied(j), plan: p, site: p.Decision.Site}
	for i := range d.job.Areas {
		if evidence.Same(d.job.Areas[i].ID, p.Area.ID) {
			d.area = &d.job.Areas[i]
		}
	}
	for _, a := range p.Acts {
		if a.Ends.After(d.last) {
			d.last = a.Ends
		}
	}
	for _, a := range p.Acts {
		for _, f := range a.Fills {
			if isFirst(f) {
				d.fill(a, f)
			}
		}
	}
	d.room = report.Judge(d.job)[d.index()].Site.Room
	for _, a := range p.Acts {
		for _, f := range a.Fills {
			if !isFirst(f) {
				d.fill(a, f)
			}
		}
		for _, r := range a.Rows {
			d.add(a, r)
		}
		if strings.Contains(a.Short, "read the air") || strings.HasPrefix(a.Short, "keep the air log") {
			d.log(a)
		}
		if strings.Contains(a.Short, "lift dish") {
			d.lift(a)
		}
	}
	return d.job
}

// isFirst says whether others rest on what is filled in there.
func isFirst(f plan.Fill) bool { return f.Table == "Instruments" || f.Table == "Climates" }

func moment(t time.Time) evidence.Time {
	return evidence.Time{Written: t.Format("2006-01-02 15:04"), First: t, Last: t}
}

func dated(day evidence.Day) evidence.Date { return evidence.Date{Written: day.String(), Day: day} }

// amid is a value well within a limit, and of the usual size where it has one
// end or none.
func amid(l evidence.Limit, usual string, unit evidence.Unit) evidence.Reading {
	want := evidence.Typed(usual, unit)
	least, most := l.Least.Number, l.Most.Number
	switch {
	case least.Shown() && most.Shown():
		return evidence.Computed(least.In(most.Unit).Add(most.Exact()).Over(evidence.Whole(2)).Round(1).Decimal(), most.Unit)
	case most.Shown():
		return evidence.Computed(most.Value.Mul(decimal.New(8, -1)).Round(1), most.Unit)
	}
	return want
}

func (d *doing) meter(at time.Time, kinds ...string) string {
	var ids []string
	for _, m := range d.job.Instruments {
		on, due := m.CalibratedOn, instruments.DueOn(m)
		if slices.ContainsFunc(kinds, m.Has) && on.Shown() && on.Day <= evidence.DayOf(at) && due >= evidence.DayOf(at) {
			ids = append(ids, m.ID)
		}
	}
	slices.SortFunc(ids, func(a, b string) int { return evidence.Order(b, a) })
	if len(ids) == 0 {
		return ""
	}
	return ids[0]
}

// board is the moisture content of a board in good order.
func (d *doing) board() evidence.Reading {
	t := acclimate.TargetOf(d.service())
	if t.Lack != "" {
		return evidence.Typed("8", evidence.MC)
	}
	mid := t.Mid.Value.Round(1)
	if l := d.site.Limits.Flooring; l.Least.Shown() && mid.Cmp(l.Least.Number.Exact()) < 0 || l.Most.Shown() &&
		mid.Cmp(l.Most.Number.Exact()) > 0 {
		return amid(l, "8", evidence.MC)
	}
	return evidence.Computed(mid.Decimal(), evidence.MC)
}

func (d *doing) service() []acclimate.Period {
	var all []acclimate.Period
	for _, c := range d.job.Climates {
		if evidence.Same(c.Climate, d.area.Climate) {
			all = append(all, c)
		}
	}
	return all
}

// log keeps an air log in range, every 6 h, from when an act begins to its end.
func (d *doing) log(a plan.Act) {
	for t := a.Begins; !t.After(a.Ends); t = t.Add(6 * time.Hour) {
		d.air(t)
	}
	d.air(a.Ends)
}

func (d *doing) air(t time.Time) {
	rh := amid(d.room.RH, "40", evidence.RH)
	d.job.Air = append(d.job.Air, acclimate.Air{
		Area: d.area.ID, ReadAt: moment(t), Temp: amid(d.room.Temp, "70", evidence.Fahrenheit), RH: rh,
		Instrument: d.meter(t, evidence.AirMeter),
	})
}

func (d *doing) index() int {
	return slices.IndexFunc(d.job.Areas, func(a report.Area) bool { return evidence.Same(a.ID, d.area.ID) })
}

// add adds a planned row, read when its act ends.
func (d *doing) add(a plan.Act, r plan.PlannedRow) {
	area, at := r.Cells["Area"], a.Ends
	switch r.Table {
	case "Instrument checks":
		d.check(r.Cells["Instrument"], at)
	case "Slab RH":
		d.hole(a, r, area)
	case "Slab MVER":
		d.job.Dishes = append(d.job.Dishes, slab.Dish{
			Area: area, Dish: r.Cells["Dish"], SetAt: moment(a.Begins), Start: evidence.Typed("30", evidence.Gram),
			TestArea: evidence.Typed("0.2", evidence.SquareFoot), Instrument: d.meter(at, evidence.Balance),
		})
	case "Slab pH":
		d.job.PHs = append(d.job.PHs, slab.PH{
			Area: area, Spot: r.Cells["Spot"], ReadAt: moment(at), PH: amid(d.site.Slab.PH, "9", evidence.PH),
			Instrument: d.meter(at, evidence.PHMeter),
		})
	case "Slab CM":
		d.job.Carbides = append(d.job.Carbides, slab.Carbide{
			Area: area, Spot: r.Cells["Spot"], ReadAt: moment(at), CM: amid(d.site.Slab.CM, "1", evidence.CM),
			Instrument: d.meter(at, evidence.CMMeter),
		})
	case "Surface":
		d.surface(r.Cells["Spot"], at)
	case "Wood":
		d.job.Wood = append(d.job.Wood, wood.Row{
			Area: area, Of: r.Cells["Of"], Piece: r.Cells["Piece"], Lot: r.Cells["Lot"], ReadAt: moment(at), Method: wood.Pin,
			Scale: wood.Corrected, Reading: d.board(), Instrument: d.meter(at, evidence.PinMeter),
		})
	case "Other tests":
		d.other(r, at)
	default:
		panic("a row of " + r.Table)
	}
}

// other makes a further test again, by the bounds it had.
func (d *doing) other(r plan.PlannedRow, at time.Time) {
	for _, was := range d.job.Others {
		if evidence.Same(was.Area, r.Cells["Area"]) && evidence.Same(was.Test, r.Cells["Test"]) &&
			evidence.Same(was.Spot, r.Cells["Spot"]) {
			was.ReadAt, was.Place = moment(at), nil
			if was.Instrument != "" {
				was.Instrument = d.meter(at, evidence.AnyMeter)
			}
			was.Result = amid(evidence.Limit{Least: evidence.Bound{Number: was.AtLeast}, Most: evidence.Bound{Number: was.AtMost}},
				was.Result.Written, was.Result.Unit)
			d.job.Others = append(d.job.Others, was)
			return
		}
	}
}

func (d *doing) surface(spot string, at time.Time) {
	temp := amid(d.site.Room.Temp, "70", evidence.Fahrenheit)
	if most := d.site.Room.SurfaceMax.Most.Number; most.Shown() && most.In(temp.Unit).Cmp(temp.Exact()) < 0 {
		temp = evidence.Computed(most.In(temp.Unit).Sub(evidence.Whole(2)).Decimal(), temp.Unit)
	}
	d.job.Surfaces = append(d.job.Surfaces, acclimate.Surface{
		Area: d.area.ID, Spot: spot, ReadAt: moment(at), Temp: temp, Instrument: d.meter(at, evidence.Surface),
	})
	d.air(at)
}

func (d *doing) check(instrument string, at time.Time) {
	if _, renewed := d.job.Instruments.Find(instrument + " new"); renewed {
		instrument += " new"
	}
	d.job.Checks = append(d.job.Checks, instruments.Comparison{
		Instrument: instrument, CheckedAt: moment(at.Add(-time.Minute)), Expected: evidence.Typed("75.3", evidence.RH),
		Read: evidence.Typed("75.3", evidence.RH),
	})
}

// hole seals a new hole when it is drilled, or reads one again.
func (d *doing) hole(a plan.Act, r plan.PlannedRow, area string) {
	h := slab.Hole{Area: area, Hole: r.Cells["Hole"]}
	for _, was := range d.job.Holes {
		if evidence.Same(was.Area, area) && evidence.Same(was.Hole, h.Hole) {
			h.X, h.Y, h.ToWall, h.Walls, h.Thickness, h.Depth, h.SealedAt = was.X, was.Y, was.ToWall, was.Walls, was.Thickness, was.Depth,
				was.SealedAt
		}
	}
	if strings.HasPrefix(a.Short, "drill") {
		h.SealedAt, h.Depth = moment(a.Begins), d.depth()
		h.ToWall, h.Walls = evidence.Typed("20", evidence.Foot), nil
		if strings.Contains(r.Cells["Note"], "exterior wall") {
			h.ToWall, h.Walls = evidence.Typed("2", evidence.Foot), []string{"new " + h.Hole}
		}
		if beside := strings.LastIndex(r.Cells["Note"], "within 3 ft of "); beside >= 0 {
			near := r.Cells["Note"][beside+len("within 3 ft of "):]
			for _, was := range d.job.Holes {
				if evidence.Same(was.Hole, near) {
					h.X, h.Y = evidence.Computed(was.X.Value.Add(decimal.NewFromInt(1)), was.X.Unit), was.Y
				}
			}
		}
		for _, b := range d.plan.Acts {
			if strings.HasPrefix(b.Short, "read hole") {
				a = b
			}
		}
	}
	if !h.Depth.Shown() {
		h.Depth = d.depth()
	}
	d.readHole(&h, a.Ends)
	d.job.Holes = append(d.job.Holes, h)
}

func (d *doing) readHole(h *slab.Hole, at time.Time) {
	h.ReadAt, h.RH, h.Temp = moment(at), amid(d.site.Slab.RH, "60", evidence.RH), amid(d.site.Slab.Temp, "70", evidence.Fahrenheit)
	h.Instrument, h.Place = d.meter(at, evidence.Probe), nil
}

// depth is 40 % of a slab's thickness, or 20 % where it dries at two faces.
func (d *doing) depth() evidence.Reading {
	share := decimal.New(4, -1)
	if d.site.Slab.TwoFaces {
		share = decimal.New(2, -1)
	}
	thick := d.area.Thickness
	if !thick.Shown() {
		thick = evidence.Typed("4", evidence.Inch)
	}
	return evidence.Computed(thick.Value.Mul(share), thick.Unit)
}

func (d *doing) lift(a plan.Act) {
	for i := range d.job.Dishes {
		dish := &d.job.Dishes[i]
		if dish.SetAt.Shown() && !dish.RetrievedAt.Shown() && dish.Start.Shown() && a.Ends.Sub(dish.SetAt.First) <= 72*time.Hour {
			dish.RetrievedAt = moment(a.Ends)
			dish.End = evidence.Computed(dish.Start.Value.Add(decimal.New(1, -1)), evidence.Gram)
		}
	}
}
