package chart

import (
	"fmt"
	"slices"

	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/style"
)

// frame is where the parts of a picture stand in it, in points: the plot within
// the figures of its axes, and the legend below it or at its right. It is told
// here so that no program squeezes a plot, and a plan has one scale both ways.
type frame struct {
	wide, tall               float64 // of the picture
	left, top, right, bottom float64 // margins about the plot
	legend                   box
}

// box is a part of a picture, of no width where there is none.
type box struct{ x, y, wide, tall float64 }

// The heights and widths of what stands about a plot, in points.
const (
	lineTall   = 12.5 // of a line of letters
	figureWide = 34   // of the figures at the left
	keyWide    = 44   // of a stroke in the legend, with the room about it
	edge       = 5
)

func (b *block) frame(x, y axis, wide, tall float64) frame {
	f := frame{wide: wide, tall: tall, left: figureWide, right: 12}
	f.top = lineTall*float64(len(folded([]string{b.title()}, (wide-20)/1.1))) + 2*edge
	f.bottom = lineTall + 2*edge
	if x.title != "" {
		f.bottom += lineTall
	}
	if y.title != "" {
		f.left += lineTall
	}
	if b.picture.Shows == pictures.ServiceEMC {
		f.top += edge // figures stand above its points
	}
	if len(b.lines) < 2 && b.picture.Shows != pictures.Positions {
		return f
	}
	return f.named(b.keys())
}

// keys are how wide the names of a picture's lines stand in its legend.
func (b *block) keys() []float64 {
	return lists.Each(b.lines, func(l line) float64 {
		name, _ := b.rows[l.name.from][l.name.column].Value.(string)
		return style.Span(name) + keyWide
	})
}

// named has a legend for names of these widths: below the plot, or at its right
// where that leaves more of it.
func (f frame) named(wide []float64) frame {
	widest := slices.Max(wide)
	right, below := f, f
	right.legend = box{f.wide - widest - edge, f.top, widest, min(lineTall*float64(len(wide))+edge, f.tall-f.top)}
	right.right = widest + 2*edge
	tall := lineTall*float64(legendLines(wide, f.wide-2*edge)) + edge
	below.legend = box{edge, f.tall - tall - 2, f.wide - 2*edge, tall}
	below.bottom += tall
	if right.plot().area() > below.plot().area() {
		return right
	}
	return below
}

// area is that of a box, none where it has no room.
func (b box) area() float64 { return max(b.wide, 0) * max(b.tall, 0) }

// legendLines is how many lines names of these widths take: in as many columns
// as fit, each as wide as its widest.
func legendLines(wide []float64, room float64) int {
	for columns := len(wide); columns > 1; columns-- {
		all := 0.0
		for first := range columns {
			widest := 0.0
			for i := first; i < len(wide); i += columns {
				widest = max(widest, wide[i])
			}
			all += widest
		}
		if all <= room {
			return (len(wide) + columns - 1) / columns
		}
	}
	return len(wide)
}

// plot is what is left for the lines.
func (f frame) plot() box {
	return box{f.left, f.top, f.wide - f.left - f.right, f.tall - f.top - f.bottom}
}

// markup places a box in the picture.
func (f frame) markup(b box, inner string) string {
	s := `<c:layout><c:manualLayout>` + inner + `<c:xMode val="edge"/><c:yMode val="edge"/>`
	for _, part := range []struct {
		name       string
		part, full float64
	}{{"x", b.x, f.wide}, {"y", b.y, f.tall}, {"w", b.wide, f.wide}, {"h", b.tall, f.tall}} {
		s += fmt.Sprintf(`<c:%s val="%.4f"/>`, part.name, part.part/part.full)
	}
	return s + `</c:manualLayout></c:layout>`
}

func (f frame) legendMarkup() string {
	if f.legend.wide == 0 {
		return ""
	}
	at := lists.If(f.legend.x > edge, "r", "b")
	return `<c:legend><c:legendPos val="` + at + `"/>` + f.markup(f.legend, "") + `<c:overlay val="0"/>` + lettered() +
		`</c:legend>`
}
