package chart

import (
	"math"
	"strconv"

	"firstboard/report/lists"
	"firstboard/report/pictures"
)

// axis is one side of a picture. Where it has names it has no numbers.
type axis struct {
	title       string
	names       bool
	format      string
	least, most *float64 // where they are not left to the spreadsheet
	unit        float64  // between its figures, 0 the same
	between     bool     // its figures cross between the names of the other side
	ruled       bool     // lines across the picture at its figures
}

// extent is the least and the greatest of what is drawn along one side.
type extent struct{ low, high float64 }

func (b *block) extent(side func(line) stretch) extent {
	e := extent{math.Inf(1), math.Inf(-1)}
	for _, l := range b.lines {
		s := side(l)
		for _, r := range b.rows[s.from : s.to+1] {
			if s.column < len(r) {
				if x, ok := plotted(r[s.column]); ok {
					e.low, e.high = min(e.low, x), max(e.high, x)
				}
			}
		}
	}
	return e
}

func (b *block) xExtent() extent { return b.extent(func(l line) stretch { return l.x }) }
func (b *block) yExtent() extent { return b.extent(func(l line) stretch { return l.y }) }

// titles are the two sides of a picture by their titles, none where the title of
// the picture says the same.
func (b *block) titles() (x, y axis) {
	y.format = "General"
	switch b.picture.Shows {
	case pictures.Positions:
		x, y.title = axis{title: b.picture.X, format: "General", ruled: true}, b.picture.Y
	case pictures.WoodMoisture:
		x.format, x.title = "0", "reading, in the order of the record"
	case pictures.HoleReadings, pictures.ServiceEMC:
		x.names, y.between = true, true
	}
	return x, y
}

// scale sets the figures of both sides, each from near its least value: only
// counts begin at zero.
func (b *block) scale(x, y *axis, plot box) {
	switch b.picture.Shows {
	case pictures.Positions:
		b.evenly(x, y, plot.wide/plot.tall)
		return
	case pictures.WoodMoisture:
		least, most := 0.0, b.xExtent().high+1
		x.least, x.most = &least, &most
	case pictures.HoleReadings, pictures.ServiceEMC:
	default:
		b.timed(x, plot.wide)
	}
	e := b.yExtent()
	y.unit = step(e)
	least := math.Floor((e.low-y.unit/5)/y.unit) * y.unit
	if e.low >= 0 {
		least = max(least, 0)
	}
	y.least = &least
}

// step is a round distance that cuts an extent into about five.
func step(e extent) float64 {
	wide := (e.high - e.low) / 5
	if wide < 0.1 {
		return 0.2
	}
	power := math.Pow(10, math.Floor(math.Log10(wide)))
	for _, n := range []float64{1, 2, 5} {
		if n*power >= wide {
			return n * power
		}
	}
	return 10 * power
}

// title is that of a picture; where its days are of one year, it tells it.
func (b *block) title() string {
	switch b.picture.Shows {
	case pictures.DryingHistory, pictures.AirTemperature, pictures.AirHumidity:
		e := b.xExtent()
		if year := clock(e.low).Year(); year == clock(e.high).Year() {
			return b.picture.Title + ", " + strconv.Itoa(year)
		}
	}
	return b.picture.Title
}

// timed is an axis of days, or of hours where there are few days. Days of one
// year go without it.
func (b *block) timed(x *axis, wide float64) {
	const ofDay, ofHour, ofYear = 40, 70, 75 // points a figure takes
	e := b.xExtent()
	x.format = "mm-dd"
	figure := float64(ofDay)
	if clock(e.low).Year() != clock(e.high).Year() {
		x.format, figure = "yyyy-mm-dd", ofYear
	}
	x.unit = 1.0 / 24
	for _, unit := range []float64{0.125, 0.25, 0.5, 1, 2, 4, 7, 14, 28, 56, 91, 182, 365, 730, 1461, 3652} {
		if (e.high-e.low)/x.unit > wide/lists.If(x.unit < 1, ofHour, figure) {
			x.unit = unit
		}
	}
	if x.unit < 1 {
		x.format = "mm-dd hh:mm"
	}
	whole := min(x.unit, 1)
	least := math.Floor(e.low/whole+1e-6) * whole
	last := least + max(math.Ceil((e.high-least)/x.unit-1e-6), 1)*x.unit
	x.least, x.most = &least, &last
}

// evenly gives both sides of a plan one scale; room is how many times as wide
// as high the plan is drawn.
func (b *block) evenly(x, y *axis, room float64) {
	across, up := b.xExtent(), b.yExtent()
	unit := step(extent{0, max(up.high-up.low, (across.high-across.low)/room, 1)})
	x.unit, y.unit = unit, unit
	low, high := math.Floor((up.low-unit/4)/unit)*unit, math.Ceil((up.high+unit/4)/unit)*unit
	if need := (across.high - across.low + unit) / room; high-low < need {
		high = low + math.Ceil(need/unit)*unit
	}
	if up.low >= 0 {
		low, high = max(low, 0), high-min(low, 0)
	}
	wide := math.Round((high-low)*room/unit) * unit
	left := math.Floor(((across.low+across.high)-wide)/2/unit) * unit
	if across.low >= 0 {
		left = max(left, 0)
	}
	right := left + wide
	x.least, x.most, y.least, y.most = &left, &right, &low, &high
}
