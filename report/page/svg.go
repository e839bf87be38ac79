package page

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"strings"

	"firstboard/report/lists"
)

// The size of a drawing and the room around its plot, in its own units.
const (
	drawingWide, drawingHigh = 640.0, 300.0
	leftRoom, rightRoom      = 52.0, 16.0
	topRoom, bottomRoom      = 14.0, 46.0
)

// drawing is a picture being drawn: two scales and what was drawn so far.
type drawing struct {
	body       strings.Builder
	wide, high float64
	x0, x1     float64
	y0, y1     float64
	named      float64 // where the last level was named
}

func newDrawing(x0, x1, y0, y1 float64) *drawing {
	return &drawing{wide: drawingWide, high: drawingHigh, x0: x0, x1: x1, y0: y0, y1: y1}
}

func (d *drawing) x(v float64) float64 {
	return leftRoom + (v-d.x0)/(d.x1-d.x0)*(d.wide-leftRoom-rightRoom)
}

func (d *drawing) y(v float64) float64 {
	return d.high - bottomRoom - (v-d.y0)/(d.y1-d.y0)*(d.high-topRoom-bottomRoom)
}

func (d *drawing) put(format string, args ...any) { fmt.Fprintf(&d.body, format, args...) }

// words puts a text at a place; anchor is start, middle or end.
func (d *drawing) words(x, y float64, anchor, class, text string) {
	d.put(`<text x="%.1f" y="%.1f" text-anchor="%s" class="%s">%s</text>`, x, y, anchor, class, html.EscapeString(text))
}

// path draws a line through points of the scales. A point that is no number
// breaks it.
func (d *drawing) path(class string, xs, ys []float64) {
	var b strings.Builder
	pen := "M"
	for i := range xs {
		if math.IsNaN(ys[i]) {
			pen = "M"
			continue
		}
		fmt.Fprintf(&b, "%s%.1f %.1f", pen, d.x(xs[i]), d.y(ys[i]))
		pen = "L"
	}
	if b.Len() > 0 {
		d.put(`<path d="%s" class="%s"/>`, b.String(), class)
	}
}

// band fills between two lines.
func (d *drawing) band(xs, low, top []float64) {
	var b strings.Builder
	for i := range xs {
		fmt.Fprintf(&b, "%.1f,%.1f ", d.x(xs[i]), d.y(top[i]))
	}
	for i := len(xs) - 1; i >= 0; i-- {
		fmt.Fprintf(&b, "%.1f,%.1f ", d.x(xs[i]), d.y(low[i]))
	}
	d.put(`<polygon points="%s" class="band"/>`, strings.TrimSpace(b.String()))
}

// mark draws a point in a shape of its own, so that series are told apart
// without color.
func (d *drawing) mark(shape int, x, y float64, title string) { d.shape(shape, d.x(x), d.y(y), title) }

// shape draws the shape of a series at a place of the drawing.
func (d *drawing) shape(shape int, px, py float64, title string) {
	const r = 4.0
	says := "<title>" + html.EscapeString(title) + "</title>"
	class := fmt.Sprintf("mark s%d", shape%5)
	switch shape % 5 {
	case 0:
		d.put(`<circle cx="%.1f" cy="%.1f" r="%.1f" class="%s">%s</circle>`, px, py, r, class, says)
	case 1:
		d.put(`<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f" class="%s">%s</rect>`, px-r, py-r, 2*r, 2*r, class,
			says)
	case 2:
		d.put(`<path d="M%.1f %.1fL%.1f %.1fL%.1f %.1fZ" class="%s">%s</path>`, px, py-r-1, px+r+1, py+r, px-r-1, py+r,
			class, says)
	case 3:
		d.put(`<path d="M%.1f %.1fL%.1f %.1fL%.1f %.1fL%.1f %.1fZ" class="%s">%s</path>`, px, py-r-1, px+r+1, py, px,
			py+r+1, px-r-1, py, class, says)
	default:
		d.put(`<path d="M%.1f %.1fL%.1f %.1fM%.1f %.1fL%.1f %.1f" class="%s cross">%s</path>`, px-r, py-r, px+r, py+r,
			px-r, py+r, px+r, py-r, class, says)
	}
}

// level draws a limit or a mean across the plot and names it.
func (d *drawing) level(y float64, name, class string) {
	if y < d.y0 || y > d.y1 {
		return
	}
	d.put(`<path d="M%.1f %.1fL%.1f %.1f" class="%s"/>`, leftRoom, d.y(y), d.wide-rightRoom, d.y(y), class)
	if d.named != 0 && math.Abs(d.named-d.y(y)) < 14 { // beside the one below, not over it
		d.words(leftRoom+4, d.y(y)-4, "start", "level", name)
		return
	}
	d.named = d.y(y)
	d.words(d.wide-rightRoom, d.y(y)-4, "end", "level", name)
}

// axisY draws the values at the left, with what they are.
func (d *drawing) axisY(title string) {
	for _, v := range ticks(d.y0, d.y1, 6) {
		d.put(`<path d="M%.1f %.1fL%.1f %.1f" class="grid"/>`, leftRoom, d.y(v), d.wide-rightRoom, d.y(v))
		d.words(leftRoom-6, d.y(v)+4, "end", "tick", plain(v))
	}
	d.put(`<text transform="translate(12 %.1f) rotate(-90)" text-anchor="middle" class="axis">%s</text>`,
		(topRoom+d.high-bottomRoom)/2, html.EscapeString(title))
}

// tick is a value of an axis that is named.
type tick struct {
	at   float64
	name string
}

// axisX puts names below the plot, with what they are.
func (d *drawing) axisX(title string, all []tick) {
	for _, t := range all {
		x := d.x(t.at)
		d.put(`<path d="M%.1f %.1fL%.1f %.1f" class="tickmark"/>`, x, d.high-bottomRoom, x, d.high-bottomRoom+4)
		d.words(x, d.high-bottomRoom+17, "middle", "tick", t.name)
	}
	d.words((leftRoom+d.wide-rightRoom)/2, d.high-8, "middle", "axis", title)
	d.put(`<path d="M%.1f %.1fL%.1f %.1f" class="frame"/>`, leftRoom, d.high-bottomRoom, d.wide-rightRoom,
		d.high-bottomRoom)
}

// finish is the drawing with its name and what it shows in words.
func (d *drawing) finish(id, title, says string) template.HTML {
	return template.HTML(fmt.Sprintf(
		`<svg viewBox="0 0 %.0f %.0f" role="img" aria-labelledby="%s-t %s-d" xmlns="http://www.w3.org/2000/svg"><title id="%s-t">%s</title><desc id="%s-d">%s</desc>%s</svg>`,
		d.wide, d.high, id, id, id, html.EscapeString(title), id, html.EscapeString(says), d.body.String()))
}

// ticks are round values within a range, about so many of them.
func ticks(from, to float64, about int) []float64 {
	span := to - from
	if span <= 0 || math.IsNaN(span) || math.IsInf(span, 0) {
		return []float64{from}
	}
	step := math.Pow(10, math.Floor(math.Log10(span/float64(about))))
	for _, m := range []float64{1, 2, 5, 10} {
		if span/(step*m) <= float64(about) {
			step *= m
			break
		}
	}
	var all []float64
	for v := math.Ceil(from/step-1e-9) * step; v <= to+step*1e-9; v += step {
		all = append(all, v)
	}
	return all
}

// plain is a value without idle zeros.
func plain(v float64) string {
	s := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.4f", v), "0"), ".")
	return lists.If(s == "-0", "0", s)
}
