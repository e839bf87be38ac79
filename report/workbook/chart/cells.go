package chart

import (
	"math"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// Find gives the cell of the workbook that holds what was typed at a place of
// the record, by a formula; known is false where there is none.
type Find func(evidence.Place) (c writer.Cell, known bool)

// figure is a number: the cell it was typed in, where that holds it.
func (f Find) figure(r evidence.Reading) writer.Cell {
	if !r.Shown() {
		return writer.Cell{}
	}
	x := r.Exact().Float()
	c, known := f(r.Place)
	if y, isNumber := c.Value.(float64); known && isNumber && x == y {
		return boxed(c)
	}
	return number(x, writer.Decimals(x))
}

// number is a cell that holds a number with so many decimals.
func number(x float64, places int) writer.Cell {
	return writer.Cell{Value: x, Look: style.Look{Boxed: true, Form: style.Number, Places: places}}
}

func boxed(c writer.Cell) writer.Cell {
	c.Look.Boxed = true
	return c
}

// moment is a clock time: the cell it was typed in, where that holds one.
func (f Find) moment(at evidence.Time) writer.Cell {
	c, known := f(at.Place)
	if _, isTime := c.Value.(time.Time); known && isTime {
		return boxed(c)
	}
	y, m, d := at.First.Date()
	onWall := time.Date(y, m, d, at.First.Hour(), at.First.Minute(), at.First.Second(), 0, time.UTC)
	return writer.Cell{Value: onWall, Look: style.Look{Boxed: true, Form: style.Minute}}
}

// epoch is the day 1970-01-01 as spreadsheets count it.
const epoch = 25569

// clock is the wall clock of a day so counted.
func clock(day float64) time.Time {
	return time.Unix(int64(math.Round((day-epoch)*86400)), 0).UTC()
}

// plotted is the number that a cell puts in a picture.
func plotted(c writer.Cell) (x float64, ok bool) {
	switch v := c.Value.(type) {
	case float64:
		return v, true
	case time.Time:
		return float64(v.Unix())/86400 + epoch, true
	}
	return 0, false
}
