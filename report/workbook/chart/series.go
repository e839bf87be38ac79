package chart

import (
	"cmp"
	"fmt"
	"strings"

	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/formula"
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
