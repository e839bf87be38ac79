package record

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/cell"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// decoder turns tables into a job and gathers every fault on its way.
type decoder struct {
	position
	job    report.Job
	faults faults.List
	wrongs int // faults so far, the same mistake in many rows counted in each
	gaveUp bool
	same   map[sameFault]int // of the faults, where each mistake was first made
	apart  bool              // a fault for each row
	last   []func()          // what can be checked only when every table is read
	zones  map[string]int    // of the areas, the first of each zone
	spare  []sheet.Place     // for evidence to come
	clocks cell.Clocks

	installs evidence.Date // the last Install on
	depths   evidence.Unit // the one that the depths of all holes fit, and not their own; else none

	items, areas, products, climates, instruments index
}

// sameFault is what two rows with one mistake have in common.
type sameFault struct {
	order, column int
	key           string
}

// position is the cell the decoder stands at.
type position struct {
	src    *sheet.Table
	in     *sheet.Holder
	order  int // of the table
	row    *grid.Row
	nth    int // of the rows read, from 0
	column int // from 0
	unit   evidence.Unit
	place  map[string]int                   // columns of the table by their names in the schema
	known  map[shownNumber]evidence.Reading // numbers of the column that were sound
}

func newDecoder() *decoder {
	d := &decoder{
		items:       listing("Job"),
		areas:       listing("Areas"),
		products:    listing("Products"),
		climates:    listing("Climates"),
		instruments: listing("Instruments"),
		same:        map[sameFault]int{},
		zones:       map[string]int{},
	}
	d.job.Zone = time.UTC
	d.job.Settings = report.DefaultSettings()
	d.job.Instruments = evidence.Instruments{}
	return d
}

// read reads one table, the order-th of the design.
func (d *decoder) read(order int, s schema, src *sheet.Table) {
	d.position = position{
		src: src, in: &sheet.Holder{File: src.File, Sheet: src.Sheet, Table: src.Name}, order: order,
		row: &grid.Row{Number: 1}, place: map[string]int{},
	}
	if at := headerBelow(s, src); at > 0 {
		d.row = &grid.Row{Number: at}
		d.faultIn("", faults.Told(fmt.Sprintf("the header is in row %d; delete the rows above it", at)))
		d.unknown(s.title())
		return
	}
	if len(src.Header) == 0 {
		if len(src.Strays) > 0 {
			d.fault("has no header; write the names of the columns in row 1")
			d.unknown(s.title())
		}
		return
	}
	s.read(d, src)
	d.shape(src)
}

// shape finds what is wrong with a table whatever its cells mean: values
// without a column, merged cells and line breaks.
func (d *decoder) shape(src *sheet.Table) {
	for _, x := range src.Strays {
		d.row, d.column = &grid.Row{Number: x.Row}, x.Column
		d.faultIn("", faults.Mistake(x.Text, "stands in column %d, which has no header; name the column or clear the cell",
			x.Column+1))
	}
	for _, b := range src.Merged {
		if !src.Holds(b) {
			continue
		}
		d.row, d.column = &grid.Row{Number: b.Top}, b.Left-1
		d.fault("the cells %s are merged; split them, and write an entry into each row", b)
	}
	for _, x := range src.Broken {
		d.row, d.column = &grid.Row{Number: x.Row}, x.Column
		d.wrong(x.Text, "holds a line break, as a stray quote gives one that swallows rows; write the entry on one line")
	}
}

// indexes are the tables that list what others name.
func (d *decoder) indexes() []*index {
	return []*index{&d.items, &d.areas, &d.products, &d.climates, &d.instruments}
}

// unknown notes that what a table lists is not known, so that nobody is told of
// names that it may list.
func (d *decoder) unknown(table string) {
	for _, x := range d.indexes() {
		if x.table == table {
			x.unread = true
		}
	}
}

// finish checks what had to wait and gives the job, or every fault.
func (d *decoder) finish() (report.Job, error) {
	if len(d.faults) == 0 {
		d.misfit()
	}
	for _, check := range d.last {
		check()
	}
	if len(d.faults) > 0 {
		d.faults.Sort()
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
	d.complain(faults.Complaint{Key: format, Text: fmt.Sprintf(format, args...)})
}

// wrong says what is wrong with what was typed in the cell the decoder stands at.
func (d *decoder) wrong(typed, format string, args ...any) {
	d.complain(faults.Mistake(typed, format, args...))
}

// complain is fault for a complaint, where there is one.
func (d *decoder) complain(c faults.Complaint) {
	if c.Text == "" {
		return
	}
	header := ""
	if d.column < len(d.src.Header) {
		header = d.src.Header[d.column]
	}
	d.faultIn(header, c)
}

// faultAt says what is wrong with another cell of the row, by the name of its
// column in the schema; wrongAt, with what was typed there.
func (d *decoder) faultAt(name, format string, args ...any) {
	d.column = d.place[name]
	d.fault(format, args...)
}

func (d *decoder) wrongAt(name, typed, format string, args ...any) {
	d.column = d.place[name]
	d.wrong(typed, format, args...)
}

// mostFaults is how many faults are looked for: nobody mends more in one go.
const mostFaults = 100_000

// giveUp says where the record has so many faults that nothing else is read.
func (d *decoder) giveUp(row int) {
	if d.gaveUp {
		return
	}
	d.gaveUp = true
	text := fmt.Sprintf("the record has %d faults up to here; correct the first ones and check again, for nothing was read from here on",
		mostFaults)
	d.faults = append(d.faults, faults.Fault{Place: sheet.Place{In: d.in, Number: int32(row)}, Text: text, Order: -1})
}

func (d *decoder) faultIn(header string, c faults.Complaint) {
	d.wrongs++
	key := sameFault{d.order, d.column, c.Key}
	if at, again := d.same[key]; again {
		d.faults[at].Also(d.row.Number)
		return
	}
	if !d.apart {
		d.same[key] = len(d.faults)
	}
	d.faults = append(d.faults, faults.Fault{Place: d.cell(), Column: header, Text: c.Text, Order: d.order})
}

// cell is the place the decoder stands at.
func (d *decoder) cell() sheet.Place {
	return sheet.Place{In: d.in, Number: int32(d.row.Number), Column: int32(d.column + 1)}
}

// kept is a place for evidence to point to. Places are cut from larger pieces:
// a long log has a million of them.
func (d *decoder) kept(p sheet.Place) *sheet.Place {
	const piece = 1024
	if len(d.spare) == 0 {
		d.spare = make([]sheet.Place, piece)
	}
	at := &d.spare[0]
	d.spare = d.spare[1:]
	*at = p
	return at
}

// typed is what a cell of the row holds, by the name of its column.
func (d *decoder) typed(name string) grid.Cell {
	if at, ok := d.place[name]; ok {
		return d.row.Cells[at]
	}
	return grid.Cell{}
}

// usable says whether a cell holds something a table can use.
func (d *decoder) usable(c *grid.Cell) bool {
	switch c.Kind {
	case sheet.Truth:
		d.fault("%s is a truth value; write yes, no, a number or words", c.Text)
	case sheet.Failure:
		d.wrong(c.Text, "is an error value; write what was observed, or clear the cell")
	case sheet.NoResult:
		d.fault("is a formula without a stored result; open the workbook in a spreadsheet program, let it calculate and save it, or write the value")
	default:
		return d.holdable(c)
	}
	return false
}

// holdable says whether a spreadsheet's cell can hold a text.
func (d *decoder) holdable(c *grid.Cell) bool {
	const longest = 32767
	switch {
	case len(c.Text) > longest && utf8.RuneCountInString(c.Text) > longest:
		d.wrong(c.Text, "is longer than a cell of a spreadsheet can be; write at most %d letters", longest)
	case strings.ContainsFunc(c.Text, noLetter):
		d.wrong(c.Text, "holds a control character, which no workbook can; type the entry again")
	default:
		return true
	}
	return false
}

// noLetter says whether a character can stand in no workbook, or would do
// something to a terminal.
func noLetter(r rune) bool {
	const last = '\uFFFD' // of those of 16 bits; the two above it are none
	return r < ' ' && r != '\t' && r != '\n' && r != '\r' || r >= 0x7f && r < 0xa0 || r > last && r <= 0xffff
}
