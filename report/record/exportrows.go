package record

import (
	"fmt"
	"strings"
	"time"

	"firstboard/report"
)

// exportRows brings the rows of an export into a table. They go through the
// same decoder as the record's own, a batch at a time.
type exportRows struct {
	exportText
	binder
	look    exportLook
	order   dateOrder
	schema  schema
	d       *decoder
	batch   *source
	spread  []report.Cell // of the batch
	faults  []Fault       // of the batch, found before it is decoded
	goal    goal
	seen    seen
	left    room
	cut     int // times that lost a part of a second
	rounded int // numbers that do not end in the other unit
	blanks  []int
	out     Logged
}

const batchRows = 4096

func newExportRows(rec Record, s schema, text exportText, b binder, look exportLook, order dateOrder) (*exportRows, error) {
	x := &exportRows{
		exportText: text, binder: b, look: look, order: order, schema: s,
		d: primed(rec.Job), left: room{mostRows, mostCells}, blanks: make([]int, len(b.heads)),
	}
	x.goal = goalOf(rec, s, b)
	x.out.Table = x.goal.table
	for _, t := range rec.Tables {
		for range t.Rows {
			width := len(t.Header)
			if t.Name == s.title() {
				width = len(x.goal.table.Header)
			}
			if err := x.left.take(width); err != nil {
				return nil, fmt.Errorf("%s: %w", rec.Name, err)
			}
		}
	}
	x.batch = &source{file: text.name, comma: look.comma.line > 0}
	for _, t := range b.ties {
		x.batch.Header = append(x.batch.Header, spelled(t.name, t.unit))
	}
	for _, c := range b.heads {
		if c.star && !b.tied(c.name) {
			x.batch.Header = append(x.batch.Header, c.title())
		}
	}
	x.spread = make([]report.Cell, batchRows*len(x.batch.Header))
	x.seen = newSeen(x.goal, b)
	return x, nil
}

// primed is a decoder that knows what a job lists.
func primed(job report.Job) *decoder {
	d := newDecoder()
	d.apart = true
	d.job.Zone, d.job.ZoneName, d.job.Areas, d.job.Instruments = job.Zone, job.ZoneName, job.Areas, job.Instruments
	for i, a := range job.Areas {
		d.areas.add(a.ID, i)
		if a.InstallOn.Shown() && (!d.installs.Shown() || a.InstallOn.Day > d.installs.Day) {
			d.installs = a.InstallOn
		}
	}
	for _, m := range job.Instruments {
		d.instruments.add(m.ID, 0)
	}
	return d
}

func (x *exportRows) read() (Logged, error) {
	from, err := x.lines()
	if err != nil {
		return Logged{}, err
	}
	var cells []string
	for from.next() {
		if from.number < x.first {
			continue
		}
		cells = x.line(from.number, from.text(), cells)
		if len(x.batch.Rows) == batchRows || len(x.faults) == batchRows {
			if err := x.settleBatch(); err != nil {
				return Logged{}, err
			}
		}
	}
	if err := from.err(); err != nil {
		return Logged{}, err
	}
	if err := x.settleBatch(); err != nil {
		return Logged{}, err
	}
	if x.out.Added+x.out.Repeated == 0 {
		return Logged{}, x.nothing()
	}
	x.say()
	return x.out, nil
}

// nothing is the error of a file none of whose rows can be read.
func (x *exportRows) nothing() error {
	if x.out.Unread == 0 {
		return fmt.Errorf("%s: has no row below its header in line %d; export the readings again", x.name, x.header)
	}
	return fmt.Errorf("%s: none of its %d rows can be read, so nothing is written:\n%s", x.name, x.out.Unread, strings.Join(x.out.Faults, "\n"))
}

// line puts one row into the batch, or faults it.
func (x *exportRows) line(number int, text string, into []string) []string {
	cells, ok := parted(text, x.sep, into)
	wide := x.beyond(cells)
	switch {
	case !ok:
		x.fault(number, "", "a quote is out of place; put an entry that holds a quote in quotes and double the quotes inside it")
	case strings.IndexByte(text, 0) >= 0:
		x.fault(number, "", "holds bytes that are no text")
	case wide > 0:
		x.fault(number, "", saying(cells[wide-1], "stands beyond the last column that has a name"))
	case strings.Join(cells, "") != "":
		x.row(number, cells)
	}
	return cells
}

func (x *exportRows) fault(line int, column, text string) {
	x.faults = append(x.faults, Fault{Place: Place{Number: line}, Column: column, Text: text})
}

// row puts the cells of a row that are tied into the batch.
func (x *exportRows) row(number int, cells []string) {
	n, width := len(x.batch.Rows), len(x.batch.Header)
	row := x.spread[n*width : (n+1)*width]
	clear(row)
	read := false
	for i, t := range x.ties {
		text, complaint := x.cell(t, t.text(cells))
		if complaint != "" {
			x.fault(number, x.names[t.at], complaint)
			return
		}
		if text == "" {
			continue
		}
		read = read || isReading(t.column)
		row[i] = report.Cell{Kind: report.TextCell, Text: text}
	}
	if !read {
		x.fault(number, "", "holds no reading")
		return
	}
	x.batch.Rows = append(x.batch.Rows, report.TableRow{Number: number, Cells: row})
}

// cell is what the record is to hold for a tie, or a complaint.
func (x *exportRows) cell(t tie, text string) (string, string) {
	switch {
	case t.at < 0:
		return text, ""
	case isTime(t.column):
		return x.time(t, text)
	case text == "":
		return "", ""
	case len(t.units) > 0:
		number, unit := measure(text)
		if u, ok := t.stands(unit); unit != "" && number != "" && (!ok || u != t.unit) {
			return "", saying(text, "is not in %s, as the others are", bracket(t.unit))
		}
		if number == "" {
			number = text
		}
		return strings.Clone(number), ""
	}
	return strings.Clone(text), ""
}

// time is a time on the site's clock as a record writes it.
func (x *exportRows) time(t tie, text string) (string, string) {
	if text == "" {
		if t.name == "Read at" {
			return "", "is blank, and a reading needs its time"
		}
		return "", ""
	}
	st, ok := parseStamp(text)
	first := x.look.style
	switch {
	case !ok:
		return "", saying(text, "is not a day and a time of day")
	case !st.dated:
		return "", saying(text, "holds no day")
	case !st.timed:
		return "", saying(text, "holds no time of day")
	case st.counted != first.counted, st.half != first.half, st.zoned != first.zoned:
		return "", saying(text, "is not written as the first time is, %s", x.look.first)
	case !st.counted && st.fits&x.order == 0:
		return "", saying(text, "is no day with the %s", x.order)
	}
	if st.cut {
		x.cut++
	}
	return writeTime(x.site(t, st)), ""
}

// site is a time as the clock of the site showed it, told as in UTC.
func (x *exportRows) site(t tie, st stamp) time.Time {
	at := st.epoch
	if !st.counted {
		y, m, d := st.day(x.order)
		at = time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC).Add(st.clock)
	}
	switch {
	case st.counted:
	case st.zoned:
		at = at.Add(-st.ahead)
	case t.zone != nil:
		at = at.Add(-*t.zone)
	default:
		return at
	}
	local := at.In(x.d.job.Zone)
	_, offset := local.Zone()
	return at.Add(time.Duration(offset) * time.Second)
}

// settleBatch decodes the batch, keeps its sound rows and lists the others.
func (x *exportRows) settleBatch() error {
	x.d.read(0, x.schema, x.batch)
	for _, f := range x.d.faults {
		x.faults = append(x.faults, Fault{Place: f.Place, Column: x.fileColumn(f), Text: f.Text})
	}
	Faults(x.faults).sort()
	unsound := map[int]bool{}
	for _, f := range x.faults {
		if line := f.Place.Number; !unsound[line] {
			unsound[line] = true
			x.unread(f)
		}
	}
	for _, row := range x.batch.Rows {
		if unsound[row.Number] {
			continue
		}
		if err := x.keep(row); err != nil {
			return fmt.Errorf("%s: with these rows the record %w", x.name, err)
		}
	}
	x.batch.Rows, x.faults, x.d.faults = x.batch.Rows[:0], x.faults[:0], nil
	return nil
}

// fileColumn is the file's name of the column that a fault of the decoder
// lies in, or the record's where the file has none.
func (x *exportRows) fileColumn(f Fault) string {
	if i := f.Place.Column - 1; i < len(x.ties) && x.ties[i].at >= 0 {
		return x.names[x.ties[i].at]
	}
	return f.Column
}

func (x *exportRows) unread(f Fault) {
	if x.out.Unread++; x.out.Unread > mostUnread {
		return
	}
	at := fmt.Sprintf("%s line %d", x.name, f.Place.Number)
	if f.Column != "" {
		at += " column " + quote(f.Column)
	}
	x.out.Faults = append(x.out.Faults, at+": "+f.Text)
}

// keep adds a row to the table, unless it stands there already.
func (x *exportRows) keep(row report.TableRow) error {
	cells := x.goal.cells()
	for i, t := range x.ties {
		c := row.Cells[i]
		if x.goal.convert(&c, t) {
			x.rounded++
		}
		cells[x.goal.at[t.head]] = c
	}
	repeats, doubles := x.seen.add(cells)
	if repeats {
		x.out.Repeated++
		return nil
	}
	if err := x.left.take(len(cells)); err != nil {
		return err
	}
	if doubles {
		x.out.Doubled++
	}
	for i, at := range x.goal.at {
		if at >= 0 && x.heads[i].star && cells[at].Kind == report.BlankCell {
			x.blanks[i]++
		}
	}
	t, last := &x.out.Table, 1
	if n := len(t.Rows); n > 0 {
		last = t.Rows[n-1].Number
	}
	if last == mostRows {
		return tooBig("has more rows in one table than a spreadsheet can hold; split the record or thin its logger rows")
	}
	t.Rows = append(t.Rows, report.TableRow{Number: last + 1, Cells: cells})
	x.out.Added++
	return nil
}
