package chart

import (
	"fmt"
	"math"
	"strconv"

	"firstboard/report"
)

// Columns of a block of classes: the readings at its left, what is counted of
// them at its right.
const (
	valueColumn = 2 // of boards; of the subfloor the next
	classColumn = 5
	edgeColumn  = 6
)

// byClass lists readings, counts them in classes, and marks the classes in
// which target and limits lie.
func (p *Plots) byClass(b *block) {
	b.rows = [][]Cell{head("Lot", "Piece", "Boards (% MC)", "Subfloor (% MC)")}
	for _, s := range b.picture.Series {
		if s.Role.Bound() {
			continue
		}
		for _, point := range s.Points {
			r := []Cell{text(s.Name), text(point.Name), {}, {}}
			r[valueColumn+sideOf(s.Role)] = p.find.figure(point.Y)
			b.rows = append(b.rows, r)
		}
	}
	listed := len(b.rows) - 1
	edges := b.classes()
	b.put(0, classColumn, head("Class", "From (% MC)"))
	for i, from := range edges {
		b.put(i+1, classColumn, []Cell{text(className(edges, i)), {Value: from, Form: Number, Places: decimals(from)}})
	}
	for _, role := range []report.Role{report.Flooring, report.Subfloor} {
		if b.holds(role) {
			b.count(role, listed, edges)
		}
	}
	for _, s := range b.picture.Series {
		if s.Role.Bound() {
			b.mark(s, edges)
		}
	}
}

func sideOf(r report.Role) int {
	if r == report.Subfloor {
		return 1
	}
	return 0
}

func (b *block) holds(r report.Role) bool {
	for _, s := range b.picture.Series {
		if s.Role == r {
			return true
		}
	}
	return false
}

// put sets cells of a row from a column on.
func (b *block) put(n, column int, cells []Cell) {
	for n >= len(b.rows) {
		b.rows = append(b.rows, nil)
	}
	for len(b.rows[n]) < column {
		b.rows[n] = append(b.rows[n], Cell{})
	}
	b.rows[n] = append(b.rows[n][:column], cells...)
}

// values are the listed readings of a block of classes, lot by lot.
func (b *block) values() []stretch {
	if b.picture.Shows != report.WoodMoisture {
		return nil
	}
	var all []stretch
	row := 1
	for _, s := range b.picture.Series {
		if !s.Role.Bound() {
			all = append(all, stretch{valueColumn + sideOf(s.Role), row, row + len(s.Points) - 1})
			row += len(s.Points)
		}
	}
	return all
}

// classes are the lower edges of the classes: half a point wide, or as much
// more as keeps them few. The first and the last are open.
func (b *block) classes() []float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range b.picture.Series {
		for _, point := range s.Points {
			x := point.Y.Exact().Float()
			low, high = min(low, x), max(high, x)
		}
	}
	const most = 22
	wide := 0.5
	for _, w := range []float64{1, 2, 5, 10, 20} {
		if (high-low)/wide > most {
			wide = w
		}
	}
	var edges []float64
	for from := math.Floor(low/wide)*wide - wide; from <= high+wide; from += wide {
		edges = append(edges, from)
	}
	return edges
}

func className(edges []float64, i int) string {
	switch i {
	case 0:
		return "under " + short(edges[1])
	case len(edges) - 1:
		return short(edges[i]) + " and over"
	}
	return strconv.FormatFloat(edges[i], 'f', decimals(edges[1]-edges[0]), 64)
}

// inClass says whether a class holds a value.
func inClass(edges []float64, i int, x float64) bool {
	return (i == 0 || x >= edges[i]) && (i == len(edges)-1 || x < edges[i+1])
}

// count adds the number of readings in each class, as formulas.
func (b *block) count(r report.Role, listed int, edges []float64) {
	column := len(b.rows[0])
	b.put(0, column, head(map[report.Role]string{report.Flooring: "boards", report.Subfloor: "subfloor"}[r]))
	values := stretch{valueColumn + sideOf(r), 1, listed}
	for i := range edges {
		n := 0
		for _, cells := range b.rows[values.from : values.to+1] {
			if x, ok := cells[values.column].plotted(); ok && inClass(edges, i, x) {
				n++
			}
		}
		asks := ""
		if i > 0 {
			asks += fmt.Sprintf(`,%s,">="&%s`, b.at(values), b.at(one(edgeColumn, i+1)))
		}
		if i < len(edges)-1 {
			asks += fmt.Sprintf(`,%s,"<"&%s`, b.at(values), b.at(one(edgeColumn, i+2)))
		}
		b.put(i+1, column, []Cell{{Value: float64(n), Formula: "COUNTIFS(" + asks[1:] + ")", Form: Number}})
	}
	b.class(line{role: r}, column, edges)
}

// mark puts a mark at the foot of the class in which a target or a limit lies.
func (b *block) mark(s report.Series, edges []float64) {
	column := len(b.rows[0])
	x := s.Points[0].Y.Exact().Float()
	name := head(s.Name + ": " + short(x) + " % MC")
	b.put(0, column, name)
	for i := range edges {
		c := Cell{}
		if inClass(edges, i, x) {
			c = Cell{Value: 0.0, Form: Number}
		}
		b.put(i+1, column, []Cell{c})
	}
	b.class(line{role: s.Role, nth: len(b.lines)}, column, edges)
}

// class draws a column of the classes.
func (b *block) class(l line, column int, edges []float64) {
	l.name, l.x, l.y = one(column, 0), stretch{classColumn, 1, len(edges)}, stretch{column, 1, len(edges)}
	b.lines = append(b.lines, l)
}
