package page

import (
	"fmt"
	"html/template"
	"math"
	"slices"
	"strings"
	"time"

	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/pictures"
)

// draw is a picture of the record as a figure of the page, under a name that no
// other on the page has.
func draw(id string, p pictures.Picture, course []ahead.Course, apart float64) figure {
	f := figure{Caption: p.Title, Notes: p.Notes}
	switch p.Shows {
	case pictures.WoodMoisture:
		series, levels := drawn(p)
		f.Drawing = dots(id, p, series, levels, apart)
		f.Notes = append(f.Notes, "a bar across the dots is their mean")
		if apart > 0 {
			f.Notes = append(f.Notes, fmt.Sprintf("the shade is the mean of the subfloor and %g points either side, the allowed difference",
				apart))
		}
	case pictures.DryingHistory:
		f.Drawing = overTime(id, p, course)
	case pictures.AirTemperature, pictures.AirHumidity:
		f.Drawing = overTime(id, p, nil)
	case pictures.Positions:
		f.Drawing = plan(id, p)
	default:
		f.Drawing = byName(id, p)
	}
	return f
}

// drawn are the series of a picture that are points, and those that are levels.
func drawn(p pictures.Picture) (points, levels []pictures.Series) {
	for _, s := range p.Series {
		if s.Role.Bound() {
			levels = append(levels, s)
		} else {
			points = append(points, s)
		}
	}
	return points, levels
}

// reach is the range of values with a little room on either side.
func reach(values []float64) (least, most float64) {
	values = slices.DeleteFunc(values, math.IsNaN)
	if len(values) == 0 {
		return 0, 1
	}
	least, most = slices.Min(values), slices.Max(values)
	room := math.Max((most-least)*0.08, 0.5)
	return least - room, most + room
}

func valuesOf(series []pictures.Series) []float64 {
	var all []float64
	for _, s := range series {
		for _, p := range s.Points {
			if p.Y.Shown() {
				all = append(all, p.Y.Exact().Float())
			}
		}
	}
	return all
}

func (d *drawing) levels(levels []pictures.Series) {
	slices.SortStableFunc(levels, func(a, b pictures.Series) int {
		return a.Points[0].Y.Exact().Cmp(b.Points[0].Y.Exact())
	})
	for _, s := range levels {
		class := lists.If(s.Role == pictures.LotMean || s.Role == pictures.TargetEMC, "mean", "limit")
		for _, p := range s.Points {
			d.level(p.Y.Exact().Float(), s.Name+" "+p.Y.Written, class)
		}
	}
}

// overTime draws lines over days, with the expected course of one of them.
func overTime(id string, p pictures.Picture, course []ahead.Course) template.HTML {
	series, levels := drawn(p)
	values := append(valuesOf(series), valuesOf(levels)...)
	var days []float64
	for _, s := range series {
		for _, pt := range s.Points {
			if pt.At.Shown() {
				days = append(days, dayOf(pt.At.First))
			}
		}
	}
	for _, c := range course {
		days, values = append(days, float64(c.Day)), append(values, c.LowPct, c.TopPct)
	}
	if len(days) == 0 {
		return ""
	}
	y0, y1 := reach(values)
	d := newDrawing(slices.Min(days)-0.2, slices.Max(days)+0.2, y0, y1)
	d.axisY(p.Y)
	d.dates(p.X)
	if !p.HeldFrom.IsZero() {
		from, to := max(dayOf(p.HeldFrom), d.x0), min(dayOf(p.HeldTo), d.x1)
		d.band([]float64{from, to}, []float64{y0, y0}, []float64{y1, y1})
		d.words(d.x(from)+4, d.y(y0)-6, "start", "tick", "air-held")
	}
	d.course(course)
	for i, s := range series {
		d.line(i, s)
	}
	d.levels(levels)
	d.key(series, course)
	return d.finish(id, p.Title, says(p))
}

func dayOf(t time.Time) float64 {
	return float64(evidence.DayOf(t)) + float64(t.Hour()*60+t.Minute())/1440
}

// dates puts days below the plot.
func (d *drawing) dates(title string) {
	var named []tick
	for _, v := range ticks(d.x0, d.x1, 5) {
		if v == math.Trunc(v) {
			named = append(named, tick{v, evidence.Day(int(v)).String()})
		}
	}
	d.axisX(title, named)
}

// course draws what is expected, with its band.
func (d *drawing) course(course []ahead.Course) {
	if len(course) < 2 {
		return
	}
	var xs, mid, low, top []float64
	for _, c := range course {
		xs, mid = append(xs, float64(c.Day)), append(mid, c.RHPct)
		low, top = append(low, c.LowPct), append(top, c.TopPct)
	}
	d.band(xs, low, top)
	d.path("expected", xs, mid)
}

// mostMarks is how many points of a line are marked one by one.
const mostMarks = 60

func (d *drawing) line(i int, s pictures.Series) {
	var xs, ys []float64
	for _, p := range s.Points {
		y := lists.If(p.Y.Shown() && p.At.Shown(), p.Y.Exact().Float(), math.NaN())
		xs, ys = append(xs, dayOf(p.At.First)), append(ys, y)
	}
	d.path(fmt.Sprintf("line s%d", i%5), xs, ys)
	if len(xs) > mostMarks {
		return
	}
	for k, p := range s.Points {
		if !math.IsNaN(ys[k]) {
			d.mark(i, xs[k], ys[k], s.Name+" "+p.At.Written+": "+p.Y.String())
		}
	}
}

// key names the lines in the upper left corner.
func (d *drawing) key(series []pictures.Series, course []ahead.Course) {
	if len(series)+len(course) < 2 {
		return
	}
	y := topRoom + 6
	x := leftRoom + 12
	for i, s := range series {
		if x > d.wide-rightRoom-60 {
			x, y = leftRoom+12, y+14
		}
		d.shape(i, x, y, s.Name)
		d.words(x+8, y+4, "start", "tick", s.Name)
		x += 22 + 6.5*float64(len(s.Name))
	}
	if len(course) > 1 {
		d.words(x+4, y+4, "start", "tick", "dashed: expected, with its band")
	}
}

// plan draws places on the floor, both ways at one scale.
func plan(id string, p pictures.Picture) template.HTML {
	series, _ := drawn(p)
	var xs, ys []float64
	for _, s := range series {
		for _, pt := range s.Points {
			xs, ys = append(xs, pt.X.Exact().Float()), append(ys, pt.Y.Exact().Float())
		}
	}
	if len(xs) == 0 {
		return ""
	}
	x0, x1 := reach(xs)
	y0, y1 := reach(ys)
	d := newDrawing(x0, x1, y0, y1)
	d.high = math.Min(2*drawingHigh, topRoom+bottomRoom+(y1-y0)*(d.wide-leftRoom-rightRoom)/(x1-x0))
	d.high = math.Max(d.high, 0.6*drawingHigh)
	perX := (d.wide - leftRoom - rightRoom) / (x1 - x0)
	perY := (d.high - topRoom - bottomRoom) / (y1 - y0)
	if perX > perY {
		d.x1 = x0 + (d.wide-leftRoom-rightRoom)/perY
	} else {
		d.y1 = y0 + (d.high-topRoom-bottomRoom)/perX
	}
	d.axisY(p.Y)
	d.axisX(p.X, lists.Each(ticks(d.x0, d.x1, 8), func(v float64) tick { return tick{v, plain(v)} }))
	for i, s := range series {
		for _, pt := range s.Points {
			d.mark(i, pt.X.Exact().Float(), pt.Y.Exact().Float(), s.Name+" "+pt.Name)
			d.words(d.x(pt.X.Exact().Float())+7, d.y(pt.Y.Exact().Float())+4, "start", "tick", pt.Name)
		}
	}
	d.key(series, nil)
	return d.finish(id, p.Title, says(p))
}

// says is a picture in words, for who cannot see it.
func says(p pictures.Picture) string {
	var parts []string
	for _, s := range p.Series {
		if s.Role.Bound() {
			for _, pt := range s.Points {
				parts = append(parts, s.Name+": "+pt.Y.String())
			}
			continue
		}
		values := valuesOf([]pictures.Series{s})
		if len(values) == 0 {
			continue
		}
		parts = append(parts, fmt.Sprintf("%s: %s from %s to %s", s.Name,
			evidence.Count(len(values), "value", "values"),
			plain(slices.Min(values)), plain(slices.Max(values))))
	}
	return strings.Join(parts, "; ")
}
