package record

import (
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record/alike"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// schema is what the decoder knows of a table.
type schema interface {
	title() string
	heads() []Column
	read(d *decoder, src *sheet.Table)
	names(header string) bool // one of its columns, by its old name or its new one
}

// table is a table whose rows become values of T: its columns, where the rows
// go, and what more is asked of a row once its cells are read.
type table[T any] struct {
	name    string
	columns []column[T]
	rows    func(*report.Job) *[]T   // nil where more keeps them itself
	place   func(*T) *evidence.Place // nil where they have none
	more    func(d *decoder, row *T) // nil where nothing is
}

// tableOf is a table with its columns, whose rows go into a list of the job and
// have a place, where they do.
func tableOf[T any](
	name string, rows func(*report.Job) *[]T, place func(*T) *evidence.Place, columns ...column[T],
) table[T] {
	return table[T]{name: name, columns: columns, rows: rows, place: place}
}

// asking is the table with more asked of its rows.
func (t table[T]) asking(more func(d *decoder, row *T)) table[T] { t.more = more; return t }

// column is one column and how it is read into its row.
type column[T any] struct {
	Column
	read func(d *decoder, c *grid.Cell, row *T)
}

// must is the column with a star: it may not be missing.
func (c column[T]) must() column[T] { c.Star = true; return c }

// always is the column with a star and never a blank.
func (c column[T]) always() column[T] { c.Star, c.Key = true, true; return c }

// then is the column with more done once a cell of it is read.
func (c column[T]) then(more func(d *decoder, c *grid.Cell, row *T)) column[T] {
	store := c.read
	c.read = func(d *decoder, cell *grid.Cell, row *T) {
		store(d, cell, row)
		more(d, cell, row)
	}
	return c
}

// bound is a column that the header names, and where.
type bound[T any] struct {
	column[T]
	at    int
	unit  evidence.Unit
	known map[shownNumber]evidence.Reading
}

func (t table[T]) title() string { return t.name }

func (t table[T]) heads() []Column { return headsOf(t.columns) }

// headsOf are columns without the way they are read.
func headsOf[T any](columns []column[T]) []Column {
	return lists.Each(columns, func(c column[T]) Column { return c.Column })
}

func (t table[T]) read(d *decoder, src *sheet.Table) {
	columns := t.header(d, src)
	if len(src.Rows) == 0 {
		return
	}
	into := new([]T)
	if t.rows != nil {
		into = t.rows(&d.job)
	}
	const few = 4096 // until it is known that the rows are worth more
	*into = make([]T, min(len(src.Rows), few))
	for i := range src.Rows {
		if d.wrongs >= mostFaults {
			d.giveUp(src.Rows[i].Number)
			return
		}
		if i == len(*into) {
			more := len(src.Rows) - i
			if d.wrongs > 0 {
				more = min(more, i)
			}
			*into = append(*into, make([]T, more)...)
		}
		d.row, d.nth = &src.Rows[i], i
		t.row(d, columns, &(*into)[i])
	}
}

// blank faults the blanks of a row that must be filled in: several of them are
// one mistake.
func (d *decoder) blank(columns []int) {
	if len(columns) == 0 {
		return
	}
	others := lists.Each(columns[1:], func(at int) string { return d.src.Header[at] })
	d.column = columns[0]
	switch list := evidence.List(others); len(others) {
	case 0:
		d.fault("is blank; fill it in, or clear the whole row")
	case 1:
		d.complain(faults.Told("is blank, and so is " + list + "; fill both in, or clear the whole row"))
	default:
		d.complain(faults.Told("is blank, and so are " + list + "; fill them in, or clear the whole row"))
	}
}

func (t table[T]) row(d *decoder, columns []bound[T], row *T) {
	var blank []int
	for _, c := range columns {
		d.column, d.unit, d.known = c.at, c.unit, c.known
		switch cell := &d.row.Cells[c.at]; {
		case cell.Kind != grid.BlankCell && d.usable(cell):
			c.read(d, cell, row)
		case cell.Kind == grid.BlankCell && c.Key:
			blank = append(blank, c.at)
		}
	}
	d.blank(blank)
	if t.place != nil {
		*t.place(row) = d.kept(sheet.Place{In: d.in, Number: int32(d.row.Number)})
	}
	if t.more != nil {
		t.more(d, row)
	}
}

// names says whether a header names a column of the table, with any unit.
func (t table[T]) names(header string) bool {
	name, _ := evidence.Parted(header)
	now := alike.ColumnNow(t.name, name)
	return slices.ContainsFunc(t.columns,
		func(c column[T]) bool { return evidence.Same(name, c.Name) || now == c.Name })
}

// header binds the columns that the header names and finds what is wrong
// with it.
func (t table[T]) header(d *decoder, src *sheet.Table) []bound[T] {
	var columns []bound[T]
	heads := t.heads()
	first := make([]int, len(t.columns)) // where each was found, from 1
	for i, header := range src.Header {
		if d.column = i; header == "" {
			continue
		}
		m := match(t.name, header, heads)
		switch {
		case m.complaint == "" && first[m.column] > 0:
			d.fault("is given twice, first as %q; keep one of the two", src.Header[first[m.column]-1])
			continue
		case m.complaint != "":
			d.complain(faults.Told(m.complaint))
		default:
			columns = append(columns, bound[T]{t.columns[m.column], i, m.unit, map[shownNumber]evidence.Reading{}})
			d.place[heads[m.column].Name] = i
		}
		if m.meant >= 0 && first[m.meant] == 0 {
			first[m.meant] = i + 1
		}
	}
	t.missing(d, src, first)
	if _, ok := d.place[t.columns[0].Name]; !ok {
		d.unknown(t.name)
	}
	return columns
}

// missing finds the starred columns that a table with rows lacks.
func (t table[T]) missing(d *decoder, src *sheet.Table, first []int) {
	if len(src.Rows) == 0 {
		return
	}
	for i, c := range t.columns {
		if c.Star && first[i] == 0 {
			d.column = len(src.Header) + i
			d.faultIn(c.Title(), faults.Told("is missing; add a column "+evidence.Either(c.Titles())))
		}
	}
}
