package chart

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/writer"
)

// seriesOf is a line of a picture, with the cells it is drawn from and the
// values they hold.
func (p *Plots) seriesOf(b *block, nth int, l line) string {
	look := strokeOf(l, b.picture.Shows)
	s := fmt.Sprintf(`<c:ser><c:idx val="%d"/><c:order val="%d"/><c:tx>%s</c:tx>`, nth, nth, p.texts(b, l.name))
	s += look.markup(l) + p.labels(b, l)
	if b.byNames() {
		s += `<c:cat>` + p.texts(b, l.x) + `</c:cat><c:val>` + p.numbers(b, l.y) + `</c:val>`
	} else {
		s += `<c:xVal>` + p.numbers(b, l.x) + `</c:xVal><c:yVal>` + p.numbers(b, l.y) + `</c:yVal>`
	}
	return s + `<c:smooth val="0"/></c:ser>`
}

// byNames says whether a picture has names along its foot and no figures.
func (b *block) byNames() bool {
	return b.picture.Shows == pictures.HoleReadings || b.picture.Shows == pictures.ServiceEMC
}

// markup is a stroke. A line over one name alone would not be seen, and is a
// dash there.
func (k stroke) markup(l line) string {
	if l.role.Bound() && k.mark == "" && l.y.from == l.y.to {
		k.mark, k.size = "dash", 20
	}
	s := `<c:spPr>` + lined(k.width, k.ink, k.dash) + `</c:spPr><c:marker>`
	if k.mark == "" {
		return s + `<c:symbol val="none"/></c:marker>`
	}
	ground := solid(cmp.Or(k.fill, k.ink))
	weight := 0.75
	if k.mark == "x" || k.mark == "plus" {
		ground, weight = `<a:noFill/>`, 2
	}
	return s + fmt.Sprintf(`<c:symbol val="%s"/><c:size val="%d"/><c:spPr>%s%s</c:spPr></c:marker>`, k.mark, k.size,
		ground, lined(weight, k.ink, "solid"))
}

// labels are the values of few holes and periods, and the names of points on
// the plan.
func (p *Plots) labels(b *block, l line) string {
	const few, places = 16, 16
	side := lists.If(b.picture.Shows == pictures.ServiceEMC, "t", "r")
	switch shows := b.picture.Shows; {
	case b.byNames() && !l.role.Bound() && len(b.rows) <= few:
		return `<c:dLbls><c:numFmt formatCode="General" sourceLinked="0"/><c:spPr><a:noFill/></c:spPr>` + lettered() +
			`<c:dLblPos val="` + side + `"/>` + showing(true) + `</c:dLbls>`
	case shows == pictures.Positions && (len(b.rows) <= places || l.role == pictures.Judged || l.role == pictures.Dish):
		return namesAt(l)
	}
	return ""
}

// namesAt puts names beside points, on another side for other things: they may
// lie close together.
func namesAt(l line) string {
	side := cmp.Or(map[pictures.Role]string{
		pictures.Subfloor: "l", pictures.Joist: "l", pictures.Scan: "b", pictures.Flooring: "t", pictures.Dish: "t",
	}[l.role], "r")
	s := `<c:dLbls>`
	for i, name := range l.labels {
		s += fmt.Sprintf(`<c:dLbl><c:idx val="%d"/><c:tx><c:rich><a:bodyPr/>%s</c:rich></c:tx><c:dLblPos val="%s"/>%s</c:dLbl>`,
			i, paragraph(name, false), side, showing(true))
	}
	return s + showing(false) + `</c:dLbls>`
}

// showing says whether a label shows a value; it shows nothing else.
func showing(value bool) string {
	return `<c:showLegendKey val="0"/><c:showVal val="` + truth(value) +
		`"/><c:showCatName val="0"/><c:showSerName val="0"/><c:showPercent val="0"/><c:showBubbleSize val="0"/>`
}

// ref is cells as a chart refers to them.
func (p *Plots) ref(b *block, s stretch) string {
	return escaped(formula.Quoted(p.sheet) + "!" + b.at(s))
}

func (p *Plots) texts(b *block, s stretch) string {
	var points strings.Builder
	for i, r := range b.rows[s.from : s.to+1] {
		if value, _ := r[s.column].Value.(string); value != "" {
			fmt.Fprintf(&points, `<c:pt idx="%d"><c:v>%s</c:v></c:pt>`, i, escaped(value))
		}
	}
	return fmt.Sprintf(`<c:strRef><c:f>%s</c:f><c:strCache><c:ptCount val="%d"/>%s</c:strCache></c:strRef>`,
		p.ref(b, s), s.to-s.from+1, &points)
}

func (p *Plots) numbers(b *block, s stretch) string {
	var points strings.Builder
	for i, r := range b.rows[s.from : s.to+1] {
		if s.column >= len(r) {
			continue
		}
		if x, ok := plotted(r[s.column]); ok {
			fmt.Fprintf(&points, `<c:pt idx="%d"><c:v>%s</c:v></c:pt>`, i, exactly(x))
		}
	}
	return fmt.Sprintf(`<c:numRef><c:f>%s</c:f><c:numCache><c:formatCode>General</c:formatCode><c:ptCount val="%d"/>%s</c:numCache></c:numRef>`, p.ref(b, s), s.to-s.from+1, &points)
}

// The inks of pictures. Blues are dark and oranges light,
// or lines that differ in their dashes and marks as well.
const (
	deepBlue   = "1F4E8C"
	paleOrange = "F6B26B"
	deepOrange = "C55A11"
	darkGrey   = "404040"
	midGrey    = "7F7F7F"
	black      = "000000"
	paper      = "FFFFFF"
)

// stroke is how a line of a picture is drawn: lines differ by dash and mark
// besides their ink.
type stroke struct {
	ink   string
	fill  string  // of a mark or a bar; empty for its ink
	width float64 // in points, 0 for no line
	dash  string
	mark  string // none where empty
	size  int    // of the mark, in points
}

// strokeOf is the stroke of a line in its picture.
func strokeOf(l line, shows pictures.Shows) stroke {
	switch {
	case l.role.Bound():
		return boundStroke(l)
	case shows == pictures.HoleReadings, shows == pictures.Positions, shows == pictures.WoodMoisture:
		return markStroke(l.role)
	case shows == pictures.ServiceEMC:
		return stroke{ink: deepBlue, width: 1.5, dash: "solid", mark: "circle", size: 8}
	}
	return lineStroke(l)
}

// lineStroke tells many lines apart; one of very many points has small marks.
func lineStroke(l line) stroke {
	switch l.role {
	case pictures.Others:
		return stroke{ink: midGrey, width: 0.75, dash: "solid", mark: "circle", size: 2}
	case pictures.Expected:
		return stroke{ink: darkGrey, width: 1.5, dash: "lgDash"}
	case pictures.ExpectedEnd:
		return stroke{ink: midGrey, width: 1, dash: "sysDot"}
	}
	const crowded = 60
	s := stroke{
		ink: pick(l.nth, deepBlue, deepOrange, darkGrey), dash: pick(l.nth/3, "solid", "dash", "sysDot"),
		mark: pick(l.nth, "circle", "square", "triangle", "diamond"), width: 1.5, size: 6,
	}
	switch {
	case l.role == pictures.Discarded:
		s.ink, s.dash, s.mark, s.size = deepOrange, "sysDash", "x", 8
	case l.y.to-l.y.from > crowded:
		s.size, s.width = 2, 1
	}
	return s
}

func boundStroke(l line) stroke {
	switch l.role {
	case pictures.LotMean:
		return stroke{ink: darkGrey, width: 2, dash: pick(l.nth, "solid", "sysDot", "lgDash", "dashDot")}
	case pictures.TargetEMC:
		return stroke{ink: deepOrange, width: 2.25, dash: "dash"}
	case pictures.Lowest:
		return stroke{ink: black, width: 1.75, dash: "sysDot"}
	}
	return stroke{ink: black, width: 1.75, dash: "dash"}
}

func markStroke(r pictures.Role) stroke {
	return cmp.Or(map[pictures.Role]stroke{
		pictures.Discarded: {ink: deepOrange, mark: "x", size: 9},
		pictures.Dish:      {ink: deepOrange, mark: "square", size: 9},
		pictures.Flooring:  {ink: darkGrey, mark: "triangle", size: 7},
		pictures.Subfloor:  {ink: deepOrange, fill: paleOrange, mark: "diamond", size: 8},
		pictures.Joist:     {ink: darkGrey, mark: "plus", size: 8},
		pictures.Scan:      {ink: midGrey, mark: "circle", size: 5},
	}[r], stroke{ink: deepBlue, mark: "circle", size: 9})
}

func pick(n int, of ...string) string { return of[n%len(of)] }

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
