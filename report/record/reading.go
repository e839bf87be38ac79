package record

import (
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/cell"
	"firstboard/report/record/faults"
)

// shownNumber is a number as it stands in a cell.
type shownNumber struct {
	text   string
	kind   grid.CellKind
	places uint8
}

// mostKnown is how many numbers of a column are kept: a logger writes the same
// ones over and over.
const mostKnown = 4096

// number reads the number of a cell, in the unit of its column.
func (d *decoder) number(c *grid.Cell, rule rule) evidence.Reading {
	is := shownNumber{c.Text, c.Kind, c.Places}
	r, known := d.known[is]
	if !known {
		var wrong faults.Complaint
		if r, wrong = cell.Number(c, d.unit, d.src.Comma, rule(d.unit)); wrong.Text != "" {
			d.complain(wrong)
			return evidence.Reading{}
		}
		if len(d.known) < mostKnown && d.known != nil {
			d.known[is] = r
		}
	}
	r.Place = d.kept(d.cell())
	c.Kind, c.Text, c.Places = grid.NumberCell, r.Written, uint8(min(Decimals(r.Written), 255))
	return r
}

// Decimals is how many figures stand behind the point of a number.
func Decimals(written string) int {
	_, after, _ := strings.Cut(written, ".")
	return len(after)
}

// date reads the calendar day of a cell.
func (d *decoder) date(c *grid.Cell, from cell.Era) evidence.Date {
	read, wrong := cell.Date(c, from, d.installs)
	if wrong.Text != "" {
		d.complain(wrong)
		return evidence.Date{}
	}
	c.Kind, c.Text = grid.DayCell, read.Written
	read.Place = d.kept(d.cell())
	return read
}

// time reads the day and time of a cell.
func (d *decoder) time(c *grid.Cell, from cell.Era) evidence.Time {
	clock, wrong := cell.Clock(c, from, d.installs)
	if wrong.Text != "" {
		d.complain(wrong)
		return evidence.Time{}
	}
	first, last, ok := d.clocks.Instants(clock, d.job.Zone)
	if !ok {
		d.wrong(c.Text, "never was in %s, where clocks went forward over it; write the time the clock showed",
			d.job.ZoneName)
		return evidence.Time{}
	}
	c.Kind = grid.TimeCell
	if text := c.Text; len(text) != len(cell.Minute) {
		c.Text = evidence.ClockText(clock)
	}
	return evidence.Time{Written: c.Text, First: first, Last: last, Place: d.kept(d.cell())}
}

// endOf is the instant that ends a day.
func (d *decoder) endOf(day evidence.Date) evidence.Time {
	if !day.Shown() {
		return evidence.Time{}
	}
	end := (day.Day + 1).Begins(d.job.Zone)
	return evidence.Time{Written: day.Written, First: end, Last: end, Place: day.Place}
}
