package chart

import (
	"strings"
	"time"

	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/writer"
)

// byPoint lays a picture out a point a row: the lines one below the other, then
// the ends of the limit, each from the first to the last of the others.
func (p *Plots) byPoint(b *block) {
	b.rows = [][]writer.Cell{writer.Header("Line", "Point", b.picture.X, b.picture.Y).Cells}
	nth := map[pictures.Role]int{}
	var bounds []pictures.Series
	for _, s := range b.picture.Series {
		if s.Role.Bound() {
			bounds = append(bounds, s)
			continue
		}
		l := line{role: s.Role, nth: nth[s.Role]}
		from := len(b.rows)
		for _, point := range s.Points {
			r := p.pointRow(s, point)
			if b.picture.Shows == pictures.WoodMoisture {
				r[2] = number(float64(len(b.rows)), 0)
			}
			b.rows = append(b.rows, r)
			l.labels = append(l.labels, point.Name)
		}
		b.draw(l, from)
		nth[s.Role]++
	}
	drawn := stretch{2, 1, len(b.rows) - 1}
	for _, s := range bounds {
		p.bound(b, s, drawn)
	}
}

// draw adds a line over the rows from one on.
func (b *block) draw(l line, from int) {
	last := len(b.rows) - 1
	l.name, l.x, l.y = one(0, from), stretch{2, from, last}, stretch{3, from, last}
	b.lines = append(b.lines, l)
}

func (p *Plots) pointRow(s pictures.Series, point pictures.Point) []writer.Cell {
	if !point.Y.Shown() {
		return []writer.Cell{writer.Text(s.Name)}
	}
	x := lists.If(point.X.Shown(), p.find.figure(point.X), p.find.moment(point.At))
	return []writer.Cell{writer.Text(s.Name), writer.Text(point.Name), x, p.find.figure(point.Y)}
}

// bound is an end of a limit over the whole width of a picture.
func (p *Plots) bound(b *block, s pictures.Series, drawn stretch) {
	from, level := len(b.rows), p.find.figure(s.Points[0].Y)
	if s.Role == pictures.LotMean {
		level.Formula = meanOf(strings.TrimPrefix(strings.TrimPrefix(s.Name, "mean of "), "the "), level, []*block{b})
	}
	for _, end := range []string{"MIN", "MAX"} {
		b.rows = append(b.rows, []writer.Cell{writer.Text(s.Name), writer.Text(""), b.extreme(end, drawn), level})
	}
	name := b.naming(s, one(3, from))
	b.rows[from][0], b.rows[from+1][0] = name, name
	b.draw(line{role: s.Role}, from)
}

// extreme is the least or the greatest of cells, as a formula.
func (b *block) extreme(function string, s stretch) writer.Cell {
	var out writer.Cell
	var best float64
	for _, r := range b.rows[s.from : s.to+1] {
		if s.column >= len(r) {
			continue
		}
		x, ok := plotted(r[s.column])
		if ok && (out.Value == nil || (function == "MIN") == (x < best)) {
			out, best = r[s.column], x
		}
	}
	if _, isTime := out.Value.(time.Time); !isTime {
		out.Value = best
	}
	out.Formula = function + "(" + b.at(s) + ")"
	return out
}
