package chart

import (
	"math"
	"strconv"

	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/writer"
)

// block is one picture's columns on the sheet of what is plotted, and the
// lines drawn over them.
type block struct {
	picture pictures.Picture
	rows    [][]writer.Cell // the first names the columns
	lines   []line
	column  int // of its upper left cell on the sheet, from 1
	row     int
}

// line is one series of a picture: where its name and its values stand.
type line struct {
	role   pictures.Role
	nth    int // of its role
	name   stretch
	x, y   stretch
	labels []string // at its points
}

// stretch is cells of one column of a block, counted from 0.
type stretch struct{ column, from, to int }

func one(column, row int) stretch { return stretch{column, row, row} }

// at is a stretch as a formula of the block's own sheet refers to it.
func (b *block) at(s stretch) string {
	from, to := formula.Fixed(b.column+s.column, b.row+s.from), formula.Fixed(b.column+s.column, b.row+s.to)
	return from + lists.If(s.from == s.to, "", ":"+to)
}

// wide is how many columns a block takes.
func (b *block) wide() int {
	n := 0
	for _, r := range b.rows {
		n = max(n, len(r))
	}
	return n
}

// block lays out one picture at a place of the sheet.
func (p *Plots) block(picture pictures.Picture, column, row int, before []*block) *block {
	b := &block{picture: picture, column: column, row: row}
	if b.byNames() {
		p.byName(b, before)
	} else {
		p.byPoint(b)
	}
	return b
}

// naming is a cell that names a limit or a mean and tells its number, which may
// change.
func (b *block) naming(s pictures.Series, level stretch) writer.Cell {
	c := writer.Text(s.Name)
	value, number := b.rows[level.from][level.column], b.at(level)
	x, ok := plotted(value)
	if !ok {
		return c
	}
	if writer.Decimals(x) > 2 {
		x, number = math.Round(x*100)/100, "ROUND("+number+",2)"
	}
	unit := " " + string(b.picture.Unit)
	c.Value = s.Name + ": " + strconv.FormatFloat(x, 'f', writer.Decimals(x), 64) + unit
	c.Formula = formula.Text(s.Name+": ") + "&" + number + "&" + formula.Text(unit)
	return c
}
