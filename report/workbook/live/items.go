package live

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// item is one judged value against its limit. Least, Most and U are empty
// expressions where there is none; U is the empty text where it is not known.
type item struct {
	name, row   string
	counts      formula.Expr // 1 where it is judged
	value       formula.Expr // the empty text where it cannot be used
	least, most formula.Expr
	u           formula.Expr
}

func is(e formula.Expr) bool { return e.String() != "" }

// weigh writes items with the state of each, and answers as the judge weighs:
// not met if any breaks its limit, otherwise not shown if any is unusable or
// there is none, otherwise met. The worst value is the one nearest to its
// limit, or farthest beyond it, as read.
func (w *work) weigh(title string, items []item, alsoLost []lost) Answer {
	w.heading(title)
	if len(items)+len(alsoLost) == 0 {
		r := w.add(label("Nothing is there to be judged"), label(""), label(""), plain(blank()), label(""), label(""), label(""), label(""), plain(formula.Text("not shown")))
		return Answer{Value: r[3], Outcome: r[8]}
	}
	w.header("What", "Row of the record", "Judged", "Value", "At least", "At most", "Uncertainty", "Margin as read", "State", "Rank")
	slices.SortStableFunc(items, func(a, b item) int {
		if c := evidence.Order(a.name, b.name); c != 0 {
			return c
		}
		return strings.Compare(fmt.Sprint(a.value.Value()), fmt.Sprint(b.value.Value()))
	})
	from := w.next()
	for _, it := range items {
		w.item(it)
	}
	for _, l := range alsoLost {
		state := formula.If(l.is.Same(num(1)), formula.Text("unusable"), blank())
		w.add(label(l.thing), label("none since water"), plain(l.is), plain(blank()), label(""), label(""), label(""), plain(blank()), plain(state), plain(blank()))
	}
	to := w.next() - 1
	states, ranks := w.column(8, from, to), w.column(9, from, to)
	worst := formula.If(ranks.Count().Same(num(0)), blank(), w.column(3, from, to).At(ranks.Min(), ranks))
	breaks, unusable, meets := states.Times("breaks"), states.Times("unusable"), states.Times("meets")
	outcome := formula.If(breaks.Above(num(0)), formula.Text("not met"),
		formula.If(formula.Any(unusable.Above(num(0)), meets.Same(num(0))), formula.Text("not shown"), formula.Text("met")))
	cells := []Cell{label("Answer"), label("the worst value, its limit, and the outcome"), label(""), plain(worst), label(""), label(""), label(""), label(""), plain(outcome)}
	end := func(column int, stated func(item) formula.Expr) {
		if len(items) > 0 && is(stated(items[0])) {
			at := w.column(column, from, to)
			cells[column] = plain(formula.If(ranks.Count().Same(num(0)), w.ref(column, from), at.At(ranks.Min(), ranks)))
		}
	}
	end(4, func(it item) formula.Expr { return it.least })
	end(5, func(it item) formula.Expr { return it.most })
	r := w.add(cells...)
	return Answer{Value: r[3], Limit: limitText(cells, r), Outcome: r[8]}
}

// limitText is a limit as the judge writes it: its highest, its lowest, or both.
func limitText(cells []Cell, r []formula.Expr) formula.Expr {
	switch least, most := cells[4].Live(), cells[5].Live(); {
	case least && most:
		return formula.Joined(r[4], formula.Text(" to "), r[5])
	case least:
		return formula.Joined(formula.Text("at least "), r[4])
	case most:
		return r[5]
	}
	return formula.Expr{}
}

// item writes one item and gives its row.
func (w *work) item(it item) int {
	row := w.next()
	cells := []Cell{label(it.name), label(it.row), plain(it.counts), plain(it.value)}
	for _, e := range []formula.Expr{it.least, it.most, it.u} {
		if is(e) {
			cells = append(cells, plain(e))
		} else {
			cells = append(cells, label(""))
		}
	}
	w.Rows = append(w.Rows, Row{Cells: cells})
	w.extend(row, plain(w.margin(it, row, w.ref(3, row))))
	margin := w.ref(7, row)
	room := margin
	unusable := missing(margin)
	if is(it.u) {
		u := w.ref(6, row)
		unusable, room = formula.Any(unusable, missing(u)), margin.Minus(u).Round(9)
	}
	state := formula.If(w.ref(2, row).Same(num(0)), blank(), formula.If(unusable, formula.Text("unusable"),
		formula.If(room.Below(num(0)), formula.Text("breaks"), formula.Text("meets"))))
	w.extend(row, plain(state))
	const first = 1000000 // breaking values come before all others
	w.extend(row, plain(formula.If(w.ref(8, row).Says("breaks"), margin.Minus(num(first)),
		formula.If(w.ref(8, row).Says("meets"), margin, blank()))))
	return row
}

// margin is the distance to the nearer end of the limit, below nought beyond it.
func (w *work) margin(it item, row int, value formula.Expr) formula.Expr {
	var needs, rooms []formula.Expr
	needs = append(needs, value)
	if is(it.most) {
		needs, rooms = append(needs, w.ref(5, row)), append(rooms, w.ref(5, row).Minus(value))
	}
	if is(it.least) {
		needs, rooms = append(needs, w.ref(4, row)), append(rooms, value.Minus(w.ref(4, row)))
	}
	switch len(rooms) {
	case 0:
		return known(num(0), value)
	case 1:
		return known(rooms[0].Round(9), needs...)
	}
	return known(formula.Of(rooms...).Min().Round(9), needs...)
}

// tally answers whether enough things are usable: ok holds, for each judged
// row, whether it is usable.
func (w *work) tally(title string, t things, ok []formula.Expr, needed formula.Expr) Answer {
	w.heading(title)
	w.header("What", "", "Judged rows", "Usable rows", "Counts", "Is there")
	from := w.next()
	for i := 0; i < len(t.rows); {
		k := i
		var rows, good []formula.Expr
		for k < len(t.rows) && sameThing(t.rows[k], t.rows[i]) {
			rows = append(rows, t.rows[k].counts)
			good = append(good, formula.If(ok[k], t.rows[k].counts, num(0)))
			k++
		}
		r := w.add(label(t.rows[i].thing), label(""), plain(formula.Of(rows...).Sum()), plain(formula.Of(good...).Sum()))
		there := flag(r[2].Above(num(0)))
		if j := t.lostOf(t.rows[i].thing); is(j) {
			there = formula.Of(there, j).Max()
		}
		w.extend(w.next()-1, plain(flag(formula.All(r[2].Above(num(0)), r[3].Same(r[2])))))
		w.extend(w.next()-1, plain(there))
		i = k
	}
	return w.enough(from, needed)
}

func (w *work) enough(from int, needed formula.Expr) Answer {
	usable, all := num(0), num(0)
	if to := w.next() - 1; to >= from {
		usable, all = w.column(4, from, to).Sum(), w.column(5, from, to).Sum()
	}
	r := w.add(label("Answer"), label("usable, all, needed, outcome"), label(""), plain(usable), plain(all), plain(needed))
	outcome := formula.If(formula.Any(missing(r[5]), r[4].Same(num(0))), formula.Text("not shown"),
		formula.If(r[5].AtMost(r[3]), formula.Text("met"), formula.If(r[5].AtMost(r[4]), formula.Text("not shown"), formula.Text("not met"))))
	w.extend(w.next()-1, plain(outcome))
	return Answer{Value: r[3], Limit: r[5], Outcome: w.ref(6, w.next()-1)}
}

func sameThing(a, b judged) bool { return keyOf(a.thing) == keyOf(b.thing) }

func (t things) lostOf(thing string) formula.Expr {
	for _, l := range t.lost {
		if keyOf(l.thing) == keyOf(thing) {
			return l.is
		}
	}
	return formula.Expr{}
}

// worst is the answer to a check that asks several things: the first that is
// not met, else the first not shown, else the first.
func (w *work) worst(title string, all ...Answer) Answer {
	w.heading(title)
	w.header("Part", "", "Outcome", "Value", "Limit")
	from := w.next()
	for _, a := range all {
		cells := []Cell{label("part"), label(""), plain(a.Outcome), plain(a.Value)}
		if is(a.Limit) {
			cells = append(cells, plain(a.Limit))
		}
		w.add(cells...)
	}
	to := w.next() - 1
	outs, values := w.column(2, from, to), w.column(3, from, to)
	no, lack := formula.Text("not met"), formula.Text("not shown")
	first := func(of formula.List) formula.Expr {
		return formula.If(outs.Times("not met").Above(num(0)), of.At(no, outs), formula.If(outs.Times("not shown").Above(num(0)), of.At(lack, outs), w.ref(3, from)))
	}
	outcome := formula.If(outs.Times("not met").Above(num(0)), no, formula.If(outs.Times("not shown").Above(num(0)), lack, formula.Text("met")))
	r := w.add(label("Answer"), label(""), plain(outcome), plain(first(values)))
	return Answer{Value: r[3], Outcome: r[2]}
}
