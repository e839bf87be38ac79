package chart

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"

	"firstboard/report/lists"
	"firstboard/report/workbook/style"
)

// letters are the properties of letters under the name of an element.
func letters(name string, bold bool) string {
	return fmt.Sprintf(`<a:%s lang="en-US" sz="%d" b="%s"><a:solidFill><a:srgbClr val="%s"/></a:solidFill><a:latin typeface="%s"/><a:cs typeface="%s"/></a:%s>`,
		name, letterSize*100, truth(bold), black, style.FontName, style.FontName, name)
}

// letterSize is that of all letters, in points: a sheet printed at 80 % shows
// them at 8.
const letterSize = 10

func truth(yes bool) string { return lists.If(yes, "1", "0") }

// lettered are the letters of an axis or a legend.
func lettered() string {
	return `<c:txPr><a:bodyPr/><a:p><a:pPr>` + letters("defRPr", false) +
		`</a:pPr><a:endParaRPr lang="en-US"/></a:p></c:txPr>`
}

func paragraph(s string, bold bool) string {
	return `<a:p><a:pPr>` + letters("defRPr", bold) + `</a:pPr><a:r>` + letters("rPr", bold) +
		`<a:t>` + escaped(s) + `</a:t></a:r></a:p>`
}

// titled is a title, turned as these attributes tell.
func titled(title, turn string, bold bool) string {
	return `<c:title><c:tx><c:rich><a:bodyPr` + turn + `/>` + paragraph(title, bold) +
		`</c:rich></c:tx><c:overlay val="0"/></c:title>`
}

// sideTitle is the title of an axis, upright at the left of a picture.
func sideTitle(title string, across bool) string {
	if title == "" {
		return ""
	}
	return titled(title, lists.If(across, "", ` rot="-5400000" vert="horz"`), false)
}

// folded are notes in lines that fit a width in points.
func folded(notes []string, wide float64) []string {
	var all []string
	for _, note := range notes {
		line := ""
		for word := range strings.FieldsSeq(note) {
			if line != "" && style.Span(line+" "+word) > wide {
				all, line = append(all, line), ""
			}
			line = strings.TrimSpace(line + " " + word)
		}
		all = append(all, line)
	}
	return all
}

func solid(ink string) string { return `<a:solidFill><a:srgbClr val="` + ink + `"/></a:solidFill>` }

// lined is a line so many points wide; none of no width.
func lined(width float64, ink, dash string) string {
	const emu = 12700 // a point
	if width == 0 {
		return `<a:ln><a:noFill/></a:ln>`
	}
	return fmt.Sprintf(`<a:ln w="%d" cap="flat">%s<a:prstDash val="%s"/><a:round/></a:ln>`, int(width*emu), solid(ink),
		cmp.Or(dash, "solid"))
}

func escaped(s string) string {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		return ""
	}
	return b.String()
}

// exactly is a number as a chart part holds it.
func exactly(x float64) string { return strconv.FormatFloat(x, 'g', 15, 64) }
