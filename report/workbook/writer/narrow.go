package writer

import (
	"math"
	"slices"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/workbook/style"
)

// MostPrinted is how many rows of a table are printed.
const MostPrinted = 500

// Narrowed are the columns of a table as it is printed: narrower, each down to
// its longest word, where that saves a page of the paper lying; and where that
// does not do, headers that are wider than all that stands below them turned
// upright.
func Narrowed(t grid.Table) Columns {
	c := ColumnsOf(t)
	if len(t.Rows) > MostPrinted {
		return c
	}
	words := c.wordWidths(t)
	heads, turned := make([]float64, len(words)), make([]float64, len(words))
	for i, h := range t.Header {
		heads[i] = min(max(style.HeadWidth(h), words[i]), c.widths[i])
		if turned[i] = max(upright, words[i]); heads[i]-turned[i] < saved {
			turned[i] = heads[i]
		}
	}
	switch full := 0.99 * paperWide / (paperUnit * tableScale / 100); {
	case math.Ceil(Total(turned)/full) < math.Ceil(Total(heads)/full):
		for i := range turned {
			c.turned[i] = turned[i] < heads[i]
		}
		c.widths = fitted(c.widths, turned, full)
	default:
		c.widths = fitted(c.widths, heads, full)
	}
	return c
}

// A header in two lines that stand upright takes so much, and is turned where it
// saves as much.
const (
	upright = 4.7
	saved   = 1.5
)

// fitted are widths taken in evenly, none under its least, to as few pages as
// can be; as they are where that saves none.
func fitted(widths, least []float64, full float64) []float64 {
	wide, narrow := Total(widths), Total(least)
	room := math.Ceil(narrow/full) * full
	if room >= wide {
		return widths
	}
	all := make([]float64, len(widths))
	for i := range all {
		all[i] = least[i] + (room-narrow)/(wide-narrow)*(widths[i]-least[i])
	}
	return all
}

func Total(widths []float64) float64 {
	sum := 0.0
	for _, w := range widths {
		sum += w
	}
	return sum
}

// wordWidths are the widths under which a word of a column's entries would be
// broken, or in a long table more than one row in ten.
func (c Columns) wordWidths(t grid.Table) []float64 {
	const short = 20
	least := make([]float64, len(c.widths))
	for i := range least {
		var whole []float64
		for _, r := range t.Rows {
			if i < len(r.Cells) {
				least[i] = max(least[i], wordWidth(r.Cells[i]))
				whole = append(whole, entryWidth(r.Cells[i]))
			}
		}
		if slices.Sort(whole); len(whole) > short {
			least[i] = max(least[i], whole[len(whole)*9/10])
		}
		if c.stands(i) == style.Indented {
			least[i] += style.IndentWidth
		}
	}
	return least
}

// wordWidth is the width of the longest word of an entry; a word may be broken
// at a hyphen.
func wordWidth(c grid.Cell) float64 {
	if c.Kind != grid.TextCell {
		return entryWidth(c)
	}
	widest := 0.0
	for word := range strings.FieldsSeq(strings.ReplaceAll(c.Text, "-", "- ")) {
		widest = max(widest, entryWidth(grid.Cell{Kind: c.Kind, Text: word}))
	}
	return widest
}
