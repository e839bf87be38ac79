package style

import (
	"strings"

	"github.com/xuri/excelize/v2"
)

// Look is how a cell stands on the page. Its zero value is plain wrapped text.
type Look struct {
	Form   Form
	Places int // decimals of a number
	Size   Size
	Tone   Tone
	Bold   bool
	Boxed  bool
	Gray   bool
	Link   bool
	Stands Stand
	Top    bool // not at half height
	Turned bool // upright, from below
}

// Stand is where a text stands in its column: at the left, a little in from
// it (so that it does not touch a number to its left), or at the right.
type Stand int

// The places of a text in its column.
const (
	AtLeft Stand = iota
	Indented
	AtRight
)

// Form is what a cell's number format shows.
type Form int

// The forms of a cell.
const (
	General Form = iota
	Literal      // text that stays text when somebody edits it
	Number
	Day
	Minute
	Second
)

// Size is the height of the letters.
type Size int

// The sizes: 10 points, 14 and 8.
const (
	Normal Size = iota
	Large
	Small
)

// Tone is the ground a cell stands on: blue for GO, orange for what stops an
// area. Blue is dark with white letters and orange is light with black ones,
// so that the two also differ without color.
type Tone int

// The tones.
const (
	plain Tone = iota
	Heading
	Dark // a heading of what must be filled in
	Blue
	Orange
)

// Style is the look as the library takes it.
func (l Look) Style() *excelize.Style {
	s := &excelize.Style{
		Font:      &excelize.Font{Family: FontName, Size: l.points(), Bold: l.heavy(), Color: l.Ink()},
		Alignment: l.alignment(),
		Border:    l.border(),
	}
	if l.Link {
		s.Font.Underline = "single"
	}
	// A pale and a dark gray, a deep blue, a pale orange.
	ground := [...]string{Heading: "E4E4E4", Dark: "404040", Blue: "1F4E8C", Orange: "F6B26B"}[l.Tone]
	if ground != "" {
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{ground}}
	}
	if f := l.format(); f != "" {
		s.CustomNumFmt = &f
	}
	return s
}

func (l Look) heavy() bool { return l.Bold || l.Tone != plain }

// alignment wraps texts and centers in height: what sticks to the line above
// it is hard to read in print.
func (l Look) alignment() *excelize.Alignment {
	a := &excelize.Alignment{Vertical: "center", WrapText: l.Form == General || l.Form == Literal, Horizontal: "left"}
	if l.Top {
		a.Vertical = "top"
	}
	if l.Turned {
		a.TextRotation = 90
	}
	switch l.Stands {
	case Indented:
		a.Indent = 1
	case AtRight:
		a.Horizontal = "right"
	}
	return a
}

// FontName is the family of all letters.
const FontName = "Arial"

func (l Look) points() float64 {
	return [...]float64{Normal: 10, Large: 14, Small: 8}[l.Size]
}

// Ink is the color of the letters.
func (l Look) Ink() string {
	switch {
	case l.Tone == Blue, l.Tone == Dark:
		return "FFFFFF"
	case l.Gray:
		return "707070"
	}
	return "000000"
}

func (l Look) border() []excelize.Border {
	const thin, medium = 1, 2
	weight, ink := thin, "9A9A9A"
	switch {
	case l.Tone == Blue, l.Tone == Orange:
		weight, ink = medium, "000000"
	case !l.Boxed && l.Tone == plain:
		return nil
	}
	var sides []excelize.Border
	for _, side := range []string{"left", "right", "top", "bottom"} {
		sides = append(sides, excelize.Border{Type: side, Style: weight, Color: ink})
	}
	return sides
}

func (l Look) format() string {
	if l.Form == Number && l.Places > 0 {
		return "0." + strings.Repeat("0", l.Places)
	}
	return [...]string{
		Literal: "@", Number: "0", Day: "yyyy-mm-dd", Minute: "yyyy-mm-dd hh:mm", Second: "yyyy-mm-dd hh:mm:ss",
	}[l.Form]
}
