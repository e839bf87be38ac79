package chart

import (
	"math"
	"strconv"
	"strings"
	"time"

	"firstboard/report/evidence"
)

// Cell is a cell of the sheet of numbers: a string, a float64, a time or
// nothing; with a formula, that is what the formula gives.
type Cell struct {
	Value   any
	Formula string
	Form    Form
	Places  int // decimals of a number
	Across  int // columns it takes, 0 for one
}

// Form is how a cell stands on the sheet.
type Form int

// The forms of cells.
const (
	Blank Form = iota
	Text
	Heading
	Title
	Number
	Day
	Minute
	Second
)

func text(s string) Cell { return Cell{Value: s, Form: Text} }

func head(names ...string) []Cell {
	var all []Cell
	for _, n := range names {
		all = append(all, Cell{Value: n, Form: Heading})
	}
	return all
}

// Find gives the cell of the workbook that holds what was typed at a place of
// the record, by a formula; known is false where there is none.
type Find func(evidence.Place) (c Cell, known bool)

// figure is a number: the cell it was typed in, where that holds it.
func (f Find) figure(r evidence.Reading) Cell {
	if !r.Shown() {
		return Cell{}
	}
	x := r.Exact().Float()
	c, known := f(r.Place)
	if y, isNumber := c.Value.(float64); known && isNumber && x == y {
		return c
	}
	return Cell{Value: x, Form: Number, Places: decimals(x)}
}

// moment is a clock time: the cell it was typed in, where that holds one.
func (f Find) moment(at evidence.Time) Cell {
	c, known := f(at.Place)
	if _, isTime := c.Value.(time.Time); known && isTime {
		return c
	}
	return Cell{Value: wallClock(at.First), Form: Minute}
}

// wallClock is what the clock on the wall showed.
func wallClock(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, t.Hour(), t.Minute(), t.Second(), 0, time.UTC)
}

// serial is a clock time as spreadsheets count it, in days.
func serial(t time.Time) float64 {
	return float64(t.Unix())/86400 + epoch
}

// epoch is the day 1970-01-01 as spreadsheets count it.
const epoch = 25569

// clock is the wall clock of a day so counted.
func clock(day float64) time.Time {
	return time.Unix(int64(math.Round((day-epoch)*86400)), 0).UTC()
}

// plotted is the number that a cell puts in a picture.
func (c Cell) plotted() (x float64, ok bool) {
	switch v := c.Value.(type) {
	case float64:
		return v, true
	case time.Time:
		return serial(v), true
	}
	return 0, false
}

// decimals are the places a number needs, six at most.
func decimals(x float64) int {
	const most = 6
	_, fraction, _ := strings.Cut(strings.TrimRight(strconv.FormatFloat(x, 'f', most, 64), "0"), ".")
	return len(fraction)
}

// short is a number with no more places than it needs.
func short(x float64) string { return strconv.FormatFloat(x, 'f', decimals(x), 64) }
