package live

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/wood"
)

// lot is one delivery: its judged boards, and the mean of what they read (the
// lowest and the highest it can be; the empty text where it cannot be told).
type lot struct {
	name      string
	values    values
	low, high formula.Expr
	seen      formula.Expr // boards of the visit, those set aside too
	aside     formula.Expr
}

func (l lot) title() string {
	if l.name == "" {
		return "the lot without a name"
	}
	return "lot " + l.name
}

// lots writes the last visit of each lot.
func (w *work) lots() []lot {
	byLot := map[string][]wood.Row{}
	var names []string
	for _, r := range w.woodRows(wood.OfFlooring) {
		key := evidence.Key(r.Lot)
		if _, known := byLot[key]; !known {
			names = append(names, r.Lot)
		}
		byLot[key] = append(byLot[key], r)
	}
	slices.SortStableFunc(names, evidence.Order)
	var all []lot
	for _, name := range names {
		all = append(all, w.lot(name, byLot[evidence.Key(name)]))
	}
	return all
}

func (w *work) lot(name string, rows []wood.Row) lot {
	l := lot{name: evidence.Tidy(name)}
	slices.SortStableFunc(rows, func(a, b wood.Row) int {
		if c := evidence.Order(a.Piece, b.Piece); c != 0 {
			return c
		}
		return placeOf(a.Place).number - placeOf(b.Place).number
	})
	var at []place
	for _, r := range rows {
		at = append(at, placeOf(r.Place))
	}
	w.list("Wood", at, "Read at", "Reading")
	w.heading("Flooring, " + l.title() + ": the last visit, 72 h up to its latest reading")
	w.header("Board", "Row of the record", "Read at", "Day", "Dropped", "Time that counts", "Judged", "In the visit", "Latest", "Set aside")
	first := w.next()
	for _, r := range rows {
		w.visited(r)
	}
	t := w.visit(rows, first)
	last := w.next() - 1
	r := w.add(label("Boards of the visit, and set aside"), label(""), plain(w.column(10, first, last).Sum()), plain(w.column(11, first, last).Sum()))
	l.seen, l.aside = r[2], r[3]
	l.values = w.values("Flooring, "+l.title()+": moisture content", t, rows)
	v := l.values
	unknown := formula.Any(v.bad.Above(num(0)), v.count.Same(num(0)))
	r = w.add(label("Mean of "+l.title()), label("lowest and highest it can be"), plain(formula.If(unknown, blank(), v.lows.Average().Round(12))),
		plain(formula.If(unknown, blank(), v.highs.Average().Round(12))))
	l.low, l.high = r[2], r[3]
	return l
}

// visited writes the times of a board's row.
func (w *work) visited(r wood.Row) {
	p := placeOf(r.Place)
	at := w.figure(p, "Read at")
	w.Rows = append(w.Rows, Row{Cells: []Cell{label(r.Piece), label(p.String()), formed(w.first(at), Minute), formed(known(at.Down(), at), Day)}})
	row := w.next() - 1
	read := w.ref(2, row)
	w.extend(row, plain(w.dropped(judged{read: read}, choice{water: true})))
	w.extend(row, formed(formula.If(formula.Any(missing(read), w.ref(4, row).Above(num(0))), blank(), read), Minute))
}

// visit says which rows are of the visit, which of them are the latest of their
// board, and which set it aside; the rest is judged.
func (w *work) visit(rows []wood.Row, first int) things {
	last := first + len(rows) - 1
	latest := w.column(5, first, last).Max()
	for row := first; row <= last; row++ {
		in := formula.If(w.ref(4, row).Above(num(0)), num(0), formula.If(missing(w.ref(2, row)), num(1),
			flag(latest.Minus(w.ref(2, row)).Round(9).AtMost(num(3)))))
		w.extend(row, label("")) // judged, when the rest is known
		w.extend(row, plain(in))
		w.extend(row, formed(formula.If(formula.Any(w.ref(7, row).Same(num(0)), missing(w.ref(2, row))), blank(), w.ref(2, row)), Minute))
	}
	var t things
	for i := 0; i < len(rows); {
		k := i
		for k < len(rows) && evidence.Same(rows[k].Piece, rows[i].Piece) {
			k++
		}
		w.boardOf(&t, rows[i:k], first+i)
		i = k
	}
	return t
}

// boardOf chooses among the rows of one board.
func (w *work) boardOf(t *things, rows []wood.Row, first int) {
	last := first + len(rows) - 1
	times := w.column(8, first, last)
	for i, r := range rows {
		row := first + i
		latest := formula.If(w.ref(7, row).Same(num(0)), num(0), formula.If(missing(w.ref(2, row)), num(1), flag(w.ref(8, row).Same(times.Max()))))
		aside := num(0)
		if r.SetAside {
			aside = formula.If(missing(w.ref(2, row)), num(0), latest)
		}
		w.extend(row, plain(aside))
		w.Rows[row-1].Cells[6] = plain(latest.Minus(w.ref(9, row)))
		p := placeOf(r.Place)
		t.rows = append(t.rows, judged{
			taken: taken{thing: r.Piece, place: p, at: "Read at", instrument: r.Instrument},
			read:  w.ref(2, row), day: w.ref(3, row), counts: w.ref(6, row), row: row,
		})
	}
	judgedRows, asides := w.column(6, first, last), w.column(9, first, last)
	w.extend(first, plain(formula.Of(judgedRows.Max(), asides.Max()).Max()))
	w.extend(first, plain(asides.Max()))
}

// flooring answers the checks of the flooring.
func (w *work) flooring(sub values, onWood bool) {
	if !w.needed("flooring-count") {
		return
	}
	lots := w.lots()
	if len(lots) == 0 {
		return
	}
	for _, l := range lots {
		w.use(woodKind, "board", l.values.things)
	}
	w.countBoards(lots)
	if w.needed("flooring-mc") {
		var items []item
		for _, l := range lots {
			items = append(items, w.woodItems(l.values, w.limits["flooring moisture content"], true)...)
			items = append(items, w.emptied(l))
		}
		w.answers["flooring-mc"] = w.weigh("flooring-mc: each board", items, nil)
	}
	w.onTarget(lots)
	if onWood && w.needed("wood-difference") {
		w.difference(lots, sub)
	}
}

// emptied is unusable where nothing is left of a lot, set aside or judged.
func (w *work) emptied(l lot) item {
	return item{name: l.title(), row: "none left since water", counts: flag(l.seen.Same(num(0))), value: blank()}
}

// countBoards: enough boards in all and of each lot, and not too many set aside.
func (w *work) countBoards(lots []lot) {
	var all things
	var ok, seen []formula.Expr
	for _, l := range lots {
		for i, j := range l.values.rows {
			j.thing = l.title() + ", " + j.thing
			all.rows, ok = append(all.rows, j), append(ok, l.values.ok[i])
		}
		seen = append(seen, l.seen)
	}
	parts := []Answer{w.tally("flooring-count: boards that were read", all, ok, w.woodNeeded(40))}
	for _, l := range lots {
		share := formula.If(l.aside.Times(num(10)).Above(l.seen), formula.Text("not met"), formula.Text("met"))
		share = formula.If(l.seen.Same(num(0)), formula.Text("not shown"), share)
		r := w.add(label(l.title()+": set aside"), label(""), plain(formula.If(l.seen.Same(num(0)), blank(), l.aside)), plain(share))
		parts = append(parts, Answer{Value: r[2], Outcome: r[3]})
		if len(lots) > 1 {
			enough := w.tally("flooring-count: boards of "+l.title(), l.values.things, l.values.ok, num(10))
			outcome := formula.If(l.seen.Same(num(0)), formula.Text("met"), enough.Outcome)
			r := w.add(label("Answer, where any is left"), label(""), plain(outcome))
			parts = append(parts, Answer{Value: enough.Value, Outcome: r[2]})
		}
	}
	a := w.worst("flooring-count: all of it", parts...)
	left := formula.Of(seen...).Sum()
	r := w.add(label("Answer, where any is left since water"), label(""), plain(formula.If(left.Same(num(0)), formula.Text("not shown"), a.Outcome)),
		plain(formula.If(left.Same(num(0)), blank(), a.Value)))
	w.answers["flooring-count"] = Answer{Value: r[3], Outcome: r[2]}
}

// difference is each lot's mean less the subfloor's, without sign.
func (w *work) difference(lots []lot, sub values) {
	lacks := []formula.Expr{sub.bad.Above(num(0)), sub.count.Same(num(0))}
	for _, l := range sub.lost {
		lacks = append(lacks, l.is.Above(num(0)))
	}
	unknown := formula.Any(lacks...)
	low, high := blank(), blank()
	if len(sub.rows) > 0 {
		r := w.add(label("Mean of the subfloor"), label("lowest and highest it can be"), plain(formula.If(unknown, blank(), sub.lows.Average().Round(12))),
			plain(formula.If(unknown, blank(), sub.highs.Average().Round(12))))
		low, high = r[2], r[3]
	}
	var items []item
	for _, l := range lots {
		u := formula.Expr{}
		if w.job.Guarded {
			u = num(w.meansApart(l, sub))
		}
		for _, pair := range [][2]formula.Expr{{l.high, low}, {l.low, high}} {
			apart := known(pair[0].Minus(pair[1]).Abs().Round(9), pair[0], pair[1])
			items = append(items, item{name: l.title(), counts: num(1), value: apart, most: w.limits["flooring less subfloor"].most, u: u})
		}
	}
	w.answers["wood-difference"] = w.weigh("wood-difference: each lot's mean less the subfloor's", items, nil)
}

// meansApart is the uncertainty of a difference of means: by one instrument or
// by several.
func (w *work) meansApart(l lot, sub values) float64 {
	used := map[string]bool{}
	for _, v := range []values{l.values, sub} {
		for _, j := range v.rows {
			if j.counts.Is(1.0) {
				used[evidence.Key(j.instrument)] = true
			}
		}
	}
	if len(used) == 1 && !used[""] {
		return 0.5
	}
	return 1.4
}
