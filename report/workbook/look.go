package workbook

import (
	"strings"

	"github.com/xuri/excelize/v2"
)

// look is how a cell stands on the page. Its zero value is plain wrapped text.
type look struct {
	form   form
	places int // decimals of a number
	size   Size
	tone   tone
	bold   bool
	boxed  bool
	gray   bool
	link   bool
	stands stand
	top    bool // not at half height
	turned bool // upright, from below
}

// stand is where a text stands in its column: at the left, a little in from
// it (so that it does not touch a number to its left), or at the right.
type stand int

// The places of a text in its column.
const (
	atLeft stand = iota
	indented
	atRight
)

// form is what a cell's number format shows.
type form int

// The forms of a cell.
const (
	general form = iota
	literal      // text that stays text when somebody edits it
	number
	day
	minute
	second
)

// Size is the height of the letters.
type Size int

// The sizes: 10 points, 14 and 8.
const (
	normal Size = iota
	large
	small
)

// tone is the ground a cell stands on: blue for GO, orange for what stops an
// area. Blue is dark with white letters and orange is light with black ones,
// so that the two also differ without color.
type tone int

// The tones.
const (
	plain tone = iota
	heading
	dark // a heading of what must be filled in
	blue
	orange
)

// style is the look as the library takes it.
func (l look) style() *excelize.Style {
	s := &excelize.Style{
		Font:      &excelize.Font{Family: fontName, Size: l.points(), Bold: l.heavy(), Color: l.ink()},
		Alignment: l.alignment(),
		Border:    l.border(),
	}
	if l.link {
		s.Font.Underline = "single"
	}
	if ground := l.ground(); ground != "" {
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{ground}}
	}
	if f := l.format(); f != "" {
		s.CustomNumFmt = &f
	}
	return s
}

func (l look) heavy() bool { return l.bold || l.tone != plain }

// alignment wraps texts and centers in height: what sticks to the line above
// it is hard to read in print.
func (l look) alignment() *excelize.Alignment {
	a := &excelize.Alignment{Vertical: "center", WrapText: l.form == general || l.form == literal, Horizontal: "left"}
	if l.top {
		a.Vertical = "top"
	}
	if l.turned {
		a.TextRotation = 90
	}
	switch l.stands {
	case indented:
		a.Indent = 1
	case atRight:
		a.Horizontal = "right"
	}
	return a
}

// fontName is the family of all letters.
const fontName = "Arial"

func (l look) points() float64 {
	switch l.size {
	case large:
		return 14
	case small:
		return 8
	}
	return 10
}

// ink is the color of the letters.
func (l look) ink() string {
	switch {
	case l.tone == blue, l.tone == dark:
		return "FFFFFF"
	case l.gray:
		return "707070"
	}
	return "000000"
}

// The grounds of cells.
const (
	deepBlue   = "1F4E8C"
	paleOrange = "F6B26B"
	paleGrey   = "E4E4E4"
)

func (l look) ground() string {
	switch l.tone {
	case heading:
		return paleGrey
	case dark:
		return "404040"
	case blue:
		return deepBlue
	case orange:
		return paleOrange
	}
	return ""
}

func (l look) border() []excelize.Border {
	const thin, medium = 1, 2
	weight, ink := thin, "9A9A9A"
	switch {
	case l.tone == blue, l.tone == orange:
		weight, ink = medium, "000000"
	case !l.boxed && l.tone == plain:
		return nil
	}
	var sides []excelize.Border
	for _, side := range []string{"left", "right", "top", "bottom"} {
		sides = append(sides, excelize.Border{Type: side, Style: weight, Color: ink})
	}
	return sides
}

func (l look) format() string {
	switch l.form {
	case literal:
		return "@"
	case number:
		if l.places == 0 {
			return "0"
		}
		return "0." + strings.Repeat("0", l.places)
	case day:
		return "yyyy-mm-dd"
	case minute:
		return "yyyy-mm-dd hh:mm"
	case second:
		return "yyyy-mm-dd hh:mm:ss"
	}
	return ""
}
