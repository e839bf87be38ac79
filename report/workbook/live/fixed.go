package live

import (
	"strings"

	"firstboard/report/workbook/formula"
)

// fixed is one thing that the formulas take for granted, and whether it still
// stands.
type fixed struct {
	what   string
	stands formula.Expr
}

// fix takes cells of a row of the record as they stand: names, fixed words,
// and numbers that no formula follows.
func (w *work) fix(p place, columns ...string) {
	var stand []formula.Expr
	var named []string
	for _, c := range columns {
		cell := w.rec.cell(p, c)
		if strings.HasPrefix(cell.String(), `"`) { // the record has no such column
			continue
		}
		named = append(named, c)
		stand = append(stand, unchanged(cell))
	}
	what := p.String() + ": " + strings.Join(named, ", ")
	if len(stand) > 0 && !w.granted(what) {
		w.fixed = append(w.fixed, fixed{what, formula.All(stand...)})
	}
}

// unchanged says whether a cell holds what it holds now.
func unchanged(cell formula.Expr) formula.Expr {
	switch v := cell.Value().(type) {
	case float64:
		near := cell.Minus(num(v)).Abs().Below(num(0.000001))
		return formula.If(cell.Figure().Shown(), flag(near), num(0))
	case string:
		const longest = 250
		if r := []rune(v); len(r) > longest {
			return flag(cell.Shown())
		}
		return cell.Says(v)
	}
	return cell.Says("")
}

// fixLength takes for granted that a table has no more rows than it had (its
// column of that name holds as many entries), and no more columns.
func (w *work) fixLength(table, column string) {
	what := table + ": the number of rows and columns"
	if w.granted(what) {
		return
	}
	rows, ok := w.rec.entries(table, column)
	if !ok {
		return
	}
	columns := w.rec.columns(table)
	stands := formula.All(asNow(rows), asNow(columns))
	w.fixed = append(w.fixed, fixed{what, stands})
}

// asNow says whether a count is what it is now.
func asNow(n formula.Expr) formula.Expr {
	x, _ := n.Float()
	return n.Same(num(x))
}

// finish writes what is taken for granted, and its sum at the head.
func (w *work) finish() {
	w.heading("Taken for granted: names, fixed words and the number of rows, as they stood when firstboard judged")
	from := w.next()
	for _, f := range w.fixed {
		w.add(label(f.what), label(""), plain(flag(f.stands)))
	}
	if len(w.fixed) == 0 {
		return
	}
	head := w.headRow()
	w.Rows[head-1].Cells[2].Formula = w.column(2, from, w.next()-1).Min()
}

// headRow is the number of the row that says whether all of it stands.
func (w *work) headRow() int { return 4 }
