package live

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// taken is one row of the record that may be judged: what was measured, and the
// columns of its times. From is empty where the row took no time.
type taken struct {
	thing      string
	place      place
	at, from   string
	instrument string
}

// judged is a taken row with what the working says of it.
type judged struct {
	taken
	read   formula.Expr // time of reading without the changes of clocks
	day    formula.Expr
	counts formula.Expr // 1 where the row is judged
	row    int
}

// things are the rows of one kind, those of one thing together, and how many
// things water left without a row.
type things struct {
	rows []judged
	lost []lost
}

// lost says whether water left a thing without a row: 1 or 0.
type lost struct {
	thing string
	is    formula.Expr
}

// choice is how rows of a kind are chosen.
type choice struct {
	history bool // rows after the slab was covered are history
	water   bool // rows before water are dropped
	laying  bool // rows after the day of laying are history
}

// latest writes which rows of each thing are judged: its latest, every one that
// ties with it, and those without a time.
func (w *work) latest(title string, rows []taken, by choice) things {
	var all things
	if len(rows) == 0 {
		return all
	}
	slices.SortStableFunc(rows, func(a, b taken) int {
		if c := evidence.Order(a.thing, b.thing); c != 0 {
			return c
		}
		return a.place.number - b.place.number
	})
	w.heading(title)
	w.header("What", "Row of the record", "Read at", "Day", "Dropped", "Time that counts", "Judged")
	for from := 0; from < len(rows); {
		to := from
		for to < len(rows) && evidence.Same(rows[to].thing, rows[from].thing) {
			to++
		}
		w.thing(&all, rows[from:to], by)
		from = to
	}
	return all
}

// thing writes the rows of one thing.
func (w *work) thing(all *things, rows []taken, by choice) {
	first := w.next()
	last := first + len(rows) - 1
	start := len(all.rows)
	for i, r := range rows {
		at := w.figure(r.place, r.at)
		read, day := w.first(at), known(at.Down(), at)
		cells := []Cell{label(r.thing), label(r.place.String()), formed(read, Minute), formed(day, Day)}
		w.Rows = append(w.Rows, Row{Cells: cells})
		row := first + i
		j := judged{taken: r, read: w.ref(2, row), day: w.ref(3, row), row: row}
		dropped := w.dropped(j, by)
		w.extend(row, plain(dropped))
		w.extend(row, formed(formula.If(formula.Any(missing(j.read), w.ref(4, row).Above(num(0))), blank(), j.read), Minute))
		all.rows = append(all.rows, j)
	}
	times := w.column(5, first, last)
	for i := start; i < len(all.rows); i++ {
		row := all.rows[i].row
		is := formula.If(w.ref(4, row).Above(num(0)), num(0), formula.If(missing(w.ref(2, row)), num(1), flag(w.ref(5, row).Same(times.Max()))))
		w.extend(row, plain(is))
		all.rows[i].counts = w.ref(6, row)
	}
	if by.water && !w.wet.Is("") {
		gone := flag(w.column(4, first, last).Min().Same(num(1)))
		all.lost = append(all.lost, lost{rows[0].thing, gone})
	}
}

// extend adds a cell to a row that stands already.
func (w *work) extend(row int, c Cell) { w.Rows[row-1].Cells = append(w.Rows[row-1].Cells, c) }

// dropped is 2 for a row that is history, 1 for one read before water, else 0.
func (w *work) dropped(j judged, by choice) formula.Expr {
	var reasons []formula.Expr
	if by.history {
		reasons = append(reasons, formula.If(missing(w.covered), num(0), formula.If(j.day.Above(w.covered), num(2), num(0))))
	}
	if by.water && !w.wet.Is("") {
		reasons = append(reasons, flag(j.read.Below(w.first(w.wet))))
		if j.from != "" { // it lay in the water
			set := w.figure(j.place, j.from)
			reasons = append(reasons, formula.If(missing(set), num(0), flag(w.first(set).Below(w.first(w.wet)))))
		}
	}
	if by.laying {
		reasons = append(reasons, formula.If(missing(w.layOn), num(0), formula.If(j.day.Above(w.layOn), num(2), num(0))))
	}
	if len(reasons) == 0 {
		return num(0)
	}
	return formula.If(missing(j.read), num(0), formula.Of(reasons...).Max())
}
