package record

import (
	"fmt"
	"time"
	"unicode/utf8"

	"firstboard/report"
	"firstboard/report/evidence"
)

// decoder turns tables into a job and gathers every fault on its way.
type decoder struct {
	position
	job    report.Job
	faults Faults
	last   []func() // what can be checked only when every table is read

	items, areas, products, climates, instruments index
}

// position is the cell the decoder stands at.
type position struct {
	src    *source
	order  int // of the table
	row    *report.TableRow
	nth    int // of the rows read, from 0
	column int // from 0
	unit   evidence.Unit
	place  map[string]int // columns of the table by their names in the schema
}

func newDecoder() *decoder {
	d := &decoder{
		items:       listing("Job"),
		areas:       listing("Areas"),
		products:    listing("Products"),
		climates:    listing("Climates"),
		instruments: listing("Instruments"),
	}
	d.job.Zone = time.UTC
	d.job.Settings = report.DefaultSettings()
	d.job.Instruments = evidence.Instruments{}
	return d
}

// read reads one table, the order-th of the design.
func (d *decoder) read(order int, s schema, src *source) {
	d.position = position{src: src, order: order, row: &report.TableRow{Number: max(src.top, 1)}, place: map[string]int{}}
	if len(src.Header) == 0 {
		if len(src.strays) > 0 {
			d.fault("has no header; write the names of the columns in row 1")
		}
		return
	}
	s.read(d, src)
	for _, x := range src.strays {
		d.row, d.column = &report.TableRow{Number: x.row}, x.column
		d.faultIn("", saying(x.text, "stands in column %d, which has no header; name the column or clear the cell", x.column+1))
	}
}

// finish checks what had to wait and gives the job, or every fault.
func (d *decoder) finish() (report.Job, error) {
	for _, check := range d.last {
		check()
	}
	if len(d.faults) > 0 {
		d.faults.sort()
		return report.Job{}, d.faults
	}
	return d.job, nil
}

// later puts off a check of the cell the decoder stands at until every table
// is read.
func (d *decoder) later(check func()) {
	at := d.position
	d.last = append(d.last, func() {
		d.position = at
		check()
	})
}

// fault says what is wrong with the cell the decoder stands at.
func (d *decoder) fault(format string, args ...any) {
	header := ""
	if d.column < len(d.src.Header) {
		header = d.src.Header[d.column]
	}
	d.faultIn(header, fmt.Sprintf(format, args...))
}

// faultAt says what is wrong with another cell of the row, by the name of its
// column in the schema.
func (d *decoder) faultAt(name, format string, args ...any) {
	d.column = d.place[name]
	d.fault(format, args...)
}

// mostFaults is how many faults are kept: nobody mends more in one go.
const mostFaults = 1_000_000

func (d *decoder) faultIn(header, text string) {
	if len(d.faults) == mostFaults {
		return
	}
	d.faults = append(d.faults, Fault{d.cell(), header, text, d.order})
}

// cell is the place the decoder stands at; here is its row.
func (d *decoder) cell() Place {
	p := d.here()
	p.Column = d.column + 1
	return p
}

func (d *decoder) here() Place {
	return Place{File: d.src.file, Sheet: d.src.sheet, Table: d.src.Name, Number: d.row.Number}
}

// typed is what a cell of the row holds, by the name of its column.
func (d *decoder) typed(name string) report.Cell {
	if at, ok := d.place[name]; ok {
		return d.row.Cells[at]
	}
	return report.Cell{}
}

// usable says whether a cell holds something a table can use.
func (d *decoder) usable(c *report.Cell) bool {
	switch c.Kind {
	case truthCell:
		d.fault("%s is a truth value; write yes, no, a number or words", c.Text)
	case errorCell:
		d.fault("%s", saying(c.Text, "is an error value; write what was observed, or clear the cell"))
	case noResultCell:
		d.fault("is a formula without a stored result; open the workbook in a spreadsheet program, let it calculate and save it, or write the value")
	case coveredCell:
		d.fault("%s", saying(c.Text, "lies under a merged cell, where nobody sees it; split the merged cell and write what was observed, or clear this one"))
	default:
		return d.holdable(c)
	}
	return false
}

// holdable says whether a spreadsheet's cell can hold a text.
func (d *decoder) holdable(c *report.Cell) bool {
	const longest = 32767
	if len(c.Text) <= longest || utf8.RuneCountInString(c.Text) <= longest {
		return true
	}
	d.fault("%s", saying(c.Text, "is longer than a cell of a spreadsheet can be; write at most %d letters", longest))
	return false
}
