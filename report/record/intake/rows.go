package intake

import (
	"fmt"
	"strings"
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// arrival brings the rows of an export into a table. They go through the
// same decoder as the record's own, a batch at a time.
type arrival struct {
	export
	matcher
	look    survey
	order   dateOrder
	job     report.Job
	settler record.Settler
	batch   *sheet.Table
	spread  []grid.Cell    // of the batch
	faults  []faults.Fault // of the batch, found before it is decoded
	goal    goal
	seen    seen
	left    *sheet.Room
	cut     int // times that lost a part of a second
	rounded int // numbers that do not end in the other unit
	blanks  []int
	out     Logged
}

const batchRows = 4096

func newArrival(
	rec record.Record, table string, text export, b matcher, look survey, order dateOrder,
) (*arrival, error) {
	x := &arrival{
		export: text, matcher: b, look: look, order: order, job: rec.Job,
		settler: record.NewSettler(rec.Job), left: sheet.NewRoom(), blanks: make([]int, len(b.heads)),
	}
	x.goal = goalOf(rec, table, b)
	x.out.Table = x.goal.table
	for _, t := range rec.Tables {
		for range t.Rows {
			width := len(t.Header)
			if t.Name == table {
				width = len(x.goal.table.Header)
			}
			if err := x.left.Take(width); err != nil {
				return nil, fmt.Errorf("%s: %w", rec.Name, err)
			}
		}
	}
	x.batch = &sheet.Table{Table: grid.Table{Name: table}, File: text.name, Comma: look.comma.line > 0}
	x.batch.Header = lists.Each(b.ties, func(t tie) string { return evidence.Heading(t.Name, t.unit) })
	for _, c := range b.heads {
		if c.Star && !b.tied(c.Name) {
			x.batch.Header = append(x.batch.Header, c.Title())
		}
	}
	x.spread = make([]grid.Cell, batchRows*len(x.batch.Header))
	x.seen = newSeen(x.goal, b)
	return x, nil
}

func (x *arrival) read() (Logged, error) {
	from := x.lines()
	var cells []string
	for from.next() {
		if from.number < x.first {
			continue
		}
		cells = x.line(from.number, from.Text(), cells)
		if len(x.batch.Rows) == batchRows || len(x.faults) == batchRows {
			if err := x.settleBatch(); err != nil {
				return Logged{}, err
			}
			if x.out.Added+x.out.Repeated == 0 && x.out.Unread >= hopeless {
				return Logged{}, x.nothing("first ")
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
		return Logged{}, x.nothing("")
	}
	x.say()
	return x.out, nil
}

// hopeless is how many rows are tried where none can be read.
const hopeless = 100_000

// nothing is the error of a file none of whose rows, or first rows, can be read.
func (x *arrival) nothing(which string) error {
	if x.out.Unread == 0 {
		return fmt.Errorf("%s: has no row below its header in line %d; export the readings again", x.name, x.header)
	}
	rows := lists.If(x.out.Unread == 1, "its only row cannot", fmt.Sprintf("none of its %s%d rows can", which, x.out.Unread))
	return fmt.Errorf("%s: %s be read, so nothing is written:\n%s", x.name, rows, strings.Join(x.out.Faults, "\n"))
}

// line puts one row into the batch, or faults it.
func (x *arrival) line(number int, text string, into []string) []string {
	cells, ok := parted(text, x.sep, into)
	wide := x.beyond(cells)
	switch {
	case !ok:
		x.fault(number, "", "a quote is out of place; put an entry that holds a quote in quotes and double the quotes inside it")
	case strings.IndexByte(text, 0) >= 0:
		x.fault(number, "", "holds bytes that are no text")
	case wide > 0:
		x.fault(number, "", evidence.Saying(cells[wide-1], "stands beyond the last column that has a name"))
	case strings.Join(cells, "") != "":
		x.row(number, cells)
	}
	return cells
}

func (x *arrival) fault(line int, column, text string) {
	x.faults = append(x.faults, faults.Fault{Place: sheet.Place{Number: int32(line)}, Column: column, Text: text})
}

// row puts the cells of a row that are tied into the batch.
func (x *arrival) row(number int, cells []string) {
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
		read = read || isReading(t.Column)
		row[i] = grid.Cell{Kind: grid.TextCell, Text: text}
	}
	if !read {
		x.fault(number, "", "holds no reading")
		return
	}
	x.batch.Rows = append(x.batch.Rows, grid.Row{Number: number, Cells: row})
}

// cell is what the record is to hold for a tie, or a complaint.
func (x *arrival) cell(t tie, text string) (string, string) {
	switch {
	case t.at < 0:
		return text, ""
	case isTime(t.Column):
		return x.time(t, text)
	case text == "":
		return "", ""
	case len(t.Units) > 0:
		number, unit := measure(text)
		if u, ok := evidence.UnitMeant(unit, t.Units); unit != "" && number != "" && (!ok || u != t.unit) {
			return "", evidence.Saying(text, "is not in %s, as the others are", t.unit.Short())
		}
		if number == "" {
			number = text
		}
		return strings.Clone(number), ""
	}
	return strings.Clone(text), ""
}

// time is a time on the site's clock as a record writes it.
func (x *arrival) time(t tie, text string) (string, string) {
	if text == "" {
		if t.Name == "Read at" {
			return "", "is blank, and a reading needs its time"
		}
		return "", ""
	}
	st, ok := parseStamp(text)
	first := x.look.style
	switch {
	case !ok:
		return "", evidence.Saying(text, "is not a day and a time of day")
	case !st.dated:
		return "", evidence.Saying(text, "holds no day")
	case !st.timed:
		return "", evidence.Saying(text, "holds no time of day")
	case st.counted != first.counted, st.half != first.half, st.zoned != first.zoned:
		return "", evidence.Saying(text, "is not written as the first time is, %s", x.look.first)
	case !st.counted && st.fits&x.order == 0:
		return "", evidence.Saying(text, "is no day with the %s", x.order)
	}
	if st.cut {
		x.cut++
	}
	return evidence.ClockText(x.site(t, st)), ""
}

// site is a time as the clock of the site showed it, told as in UTC.
func (x *arrival) site(t tie, st stamp) time.Time {
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
	local := at.In(x.job.Zone)
	_, offset := local.Zone()
	return at.Add(time.Duration(offset) * time.Second)
}
