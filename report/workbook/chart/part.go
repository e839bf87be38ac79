package chart

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"strings"

	"firstboard/report/lists"
)

// The workbook library places charts, and writes them without the values they
// show, so that no preview can draw them, and points without labels. The charts
// are therefore written here, in the order of the standard's schema.

// Part is an area's picture as the chart part of a workbook (ISO/IEC 29500-1,
// DrawingML charts), drawn so many points wide and high.
func (p *Plots) Part(area, nth int, wide, tall float64) string {
	b := p.areas[area][nth]
	x, y := b.titles()
	f := b.frame(x, y, wide, tall)
	b.scale(&x, &y, f.plot())
	var lines strings.Builder
	for i, l := range b.lines {
		lines.WriteString(p.seriesOf(b, i, l))
	}
	return xml.Header + `<c:chartSpace xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main">` +
		`<c:date1904 val="0"/><c:roundedCorners val="0"/><c:chart>` +
		titled(b.title(), "", true) + `<c:autoTitleDeleted val="0"/><c:plotArea>` +
		f.markup(f.plot(), `<c:layoutTarget val="inner"/>`) +
		group(x, lines.String()) + x.markup("b", true) + y.markup("l", false) +
		`<c:spPr><a:noFill/></c:spPr></c:plotArea>` + f.legendMarkup() +
		`<c:plotVisOnly val="0"/><c:dispBlanksAs val="gap"/></c:chart>` +
		`<c:spPr>` + solid(paper) + lined(0.75, "9A9A9A", "solid") + `</c:spPr>` + lettered() + `</c:chartSpace>`
}

// group are the series, over names or over figures.
func group(x axis, lines string) string {
	const axes = `<c:axId val="1"/><c:axId val="2"/>`
	if x.names {
		return `<c:lineChart><c:grouping val="standard"/><c:varyColors val="0"/>` + lines + `<c:marker val="1"/>` +
			axes + `</c:lineChart>`
	}
	return `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>` + lines + axes +
		`</c:scatterChart>`
}

// markup is an axis, across for the one below the picture.
func (x axis) markup(at string, across bool) string {
	id, name := lists.If(across, 1, 2), lists.If(x.names, "c:catAx", "c:valAx")
	s := fmt.Sprintf(`<%s><c:axId val="%d"/><c:scaling><c:orientation val="minMax"/>%s%s</c:scaling><c:delete val="0"/><c:axPos val="%s"/>`,
		name, id, end("max", x.most), end("min", x.least), at)
	if !across || x.ruled {
		s += `<c:majorGridlines><c:spPr>` + lined(0.5, "D0D0D0", "solid") + `</c:spPr></c:majorGridlines>`
	}
	s += sideTitle(x.title, across) + fmt.Sprintf(`<c:numFmt formatCode="%s" sourceLinked="0"/>`,
		cmp.Or(x.format, "General")) +
		`<c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/><c:spPr>` +
		lined(0.75, darkGrey, "solid") + `</c:spPr>` +
		lettered() + fmt.Sprintf(`<c:crossAx val="%d"/><c:crosses val="min"/>`, 3-id)
	if x.names {
		return s + `<c:auto val="0"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:noMultiLvlLbl val="1"/></` +
			name + `>`
	}
	s += `<c:crossBetween val="` + lists.If(x.between, "between", "midCat") + `"/>`
	return s + lists.If(x.unit > 0, `<c:majorUnit val="`+exactly(x.unit)+`"/>`, "") + `</` + name + `>`
}

func end(name string, x *float64) string {
	if x == nil {
		return ""
	}
	return `<c:` + name + ` val="` + exactly(*x) + `"/>`
}

// Parts of a chart that are written the same way everywhere.
