package chart

import (
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/pictures"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// byName lays a picture out a name a row and a series a column.
func (p *Plots) byName(b *block, before []*block) {
	b.rows = [][]writer.Cell{writer.Header(b.picture.X).Cells}
	names := namesOf(b.picture)
	for _, n := range names {
		b.rows = append(b.rows, []writer.Cell{writer.Text(n.Name)})
	}
	nth := map[pictures.Role]int{}
	for i, s := range b.picture.Series {
		for k, n := range names {
			c := writer.Cell{}
			switch {
			case s.Role.Bound():
				c = p.level(s, before, k, b, i+1)
			case n.series == i:
				c = p.find.figure(n.Y)
			}
			b.rows[k+1] = append(b.rows[k+1], c)
		}
		name := writer.Text(s.Name)
		if s.Role.Bound() {
			name = b.naming(s, one(i+1, 1))
		}
		name.Look = style.Look{Tone: style.Heading}
		b.rows[0] = append(b.rows[0], name)
		b.lines = append(b.lines, line{
			role: s.Role, nth: nth[s.Role], name: one(i+1, 0), x: stretch{0, 1, len(names)},
			y: stretch{i + 1, 1, len(names)},
		})
		nth[s.Role]++
	}
}

// namesOf are the points of a picture, holes in the order a person lists them.
func namesOf(p pictures.Picture) []placedName {
	var all []placedName
	for i, s := range p.Series {
		if s.Role.Bound() {
			continue
		}
		for _, point := range s.Points {
			all = append(all, placedName{point, i})
		}
	}
	if p.Shows == pictures.HoleReadings {
		slices.SortStableFunc(all, func(x, y placedName) int { return evidence.Order(x.Name, y.Name) })
	}
	return all
}

// placedName is a point and the series it belongs to.
type placedName struct {
	pictures.Point
	series int
}

// level is a limit or a mean, the same in every row: in the first row where it
// comes from, below that a reference to it.
func (p *Plots) level(s pictures.Series, before []*block, row int, b *block, column int) writer.Cell {
	c := p.find.figure(s.Points[0].Y)
	switch {
	case row > 0:
		c.Formula = b.at(one(column, 1))
	case s.Role == pictures.LotMean:
		c.Formula = meanOf(strings.TrimPrefix(s.Name, "mean of "), c, before)
	}
	return c
}

// meanOf is a lot's mean as a formula over its plotted boards, where that gives
// what was judged.
func meanOf(lot string, mean writer.Cell, before []*block) string {
	for _, b := range before {
		for _, l := range b.lines {
			s := l.y
			if b.picture.Shows != pictures.WoodMoisture || l.role.Bound() || b.rows[s.from][0].Value != lot {
				continue
			}
			sum := 0.0
			for _, r := range b.rows[s.from : s.to+1] {
				x, _ := plotted(r[s.column])
				sum += x
			}
			const near = 1e-9
			got := sum / float64(s.to-s.from+1)
			if want, ok := plotted(mean); ok && got-want < near && want-got < near {
				return "AVERAGE(" + b.at(s) + ")"
			}
		}
	}
	return ""
}
