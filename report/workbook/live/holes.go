package live

import (
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/slab"
)

const holesTable = "Slab RH"

// holes answers the checks of probe holes.
func (w *work) holes() {
	var in, out []slab.Hole
	gone := map[string]bool{}
	for _, h := range w.job.Holes {
		if evidence.Same(h.Area, w.d.Area.ID) && h.Discarded != "" {
			gone[evidence.Key(h.Hole)] = true
		}
	}
	for _, h := range w.job.Holes {
		if !evidence.Same(h.Area, w.d.Area.ID) {
			continue
		}
		w.fix(placeOf(h.Place), "Area", "Hole", "Instrument", "Discarded")
		if gone[evidence.Key(h.Hole)] {
			out = append(out, h)
		} else {
			in = append(in, h)
		}
	}
	w.fixLength(holesTable, "Hole")
	if !w.needed("slab-holes") {
		return
	}
	rows := append(rowsOf(in), rowsOf(out)...)
	w.list(holesTable, places(rows), "X", "Y", "To exterior wall", "Thickness", "Depth", "Sealed at", "Read at", "RH", "Temp")
	t := w.latest("Holes: which rows are judged", rowsOf(in), choice{history: true, water: true})
	w.answers["slab-holes"] = w.tally("slab-holes: holes that were read", t, w.each(t, func(j judged) formula.Expr {
		return formula.All(w.figure(j.place, "RH").Shown(), j.read.Shown())
	}), w.holesNeeded())
	w.edge(t)
	w.answers["slab-depth"] = w.weigh("slab-depth: depth of each hole", w.depths(t), t.lost)
	w.answers["slab-wait"] = w.weigh("slab-wait: hours from sealing to reading", w.waits(t), t.lost)
	temp := w.limits["air temperature"]
	w.answers["slab-temp"] = w.weigh("slab-temp: temperature of the concrete", w.items(t, "Temp", temp, false), t.lost)
	rh := w.items(t, "RH", w.limits["slab relative humidity"], true)
	w.answers["slab-rh"] = w.weigh("slab-rh: relative humidity", append(rh, w.unreplaced(out, t)...), t.lost)
	w.use(slabKind, "hole", t)
	w.probes(t)
}

func rowsOf(holes []slab.Hole) []taken {
	var rows []taken
	for _, h := range holes {
		rows = append(rows, taken{thing: h.Hole, place: placeOf(h.Place), at: "Read at", instrument: h.Instrument})
	}
	return rows
}

// each is one expression for every row.
func (w *work) each(t things, of func(judged) formula.Expr) []formula.Expr {
	var all []formula.Expr
	for _, j := range t.rows {
		all = append(all, of(j))
	}
	return all
}

// holesNeeded is 3 for the first 1000 ft2 or 100 m2 and 1 for each further.
func (w *work) holesNeeded() formula.Expr {
	size, per := w.figure(w.area, "Size"), 1000.0
	if w.rec.unit("Areas", "Size") == evidence.SquareM {
		per = 100
	}
	more := size.Over(num(per)).Round(9).Up()
	return known(num(2).Plus(formula.Of(num(1), more).Max()), size)
}

// items are the values of one column of judged rows against a limit. A row
// without a time is unusable.
func (w *work) items(t things, column string, l limit, uncertain bool) []item {
	var all []item
	for _, j := range t.rows {
		v := in(w.figure(j.place, column), w.rec.unit(j.place.table, column), l.unit)
		it := item{name: j.thing, row: j.place.String(), counts: j.counts, value: known(v, j.read), least: l.least, most: l.most}
		if uncertain {
			it.u = w.uncertainty(j.instrument, l.unit)
		}
		all = append(all, it)
	}
	return all
}

// uncertainty is counted where acceptance is guarded: as the instrument states
// it, else the usual one of its kind.
func (w *work) uncertainty(instrument string, unit evidence.Unit) formula.Expr {
	if !w.job.Guarded {
		return formula.Expr{}
	}
	usual := blank()
	meter, listed := w.job.Instruments.Find(instrument)
	if u := (evidence.Instruments{evidence.Key(instrument): withoutOwn(meter)}).U(instrument, unit); u.Known {
		usual = num(u.Value.Float())
	}
	if !listed {
		return usual
	}
	own := w.figure(placeOf(meter.Place), "Uncertainty")
	return formula.If(own.Shown(), own, usual)
}

func withoutOwn(m evidence.Instrument) evidence.Instrument {
	m.Uncertainty = evidence.Reading{}
	return m
}

// edge answers whether one hole lies near an exterior wall.
func (w *work) edge(t things) {
	if !w.needed("slab-edge") {
		return
	}
	w.heading("slab-edge: distance to an exterior wall")
	w.header("What", "Row of the record", "Judged", "Distance (ft)", "At most", "State", "Rank of the hole", "Its distance")
	unit := w.rec.unit(holesTable, "To exterior wall")
	var answers []int
	for i := 0; i < len(t.rows); {
		from := w.next()
		k := i
		for ; k < len(t.rows) && sameThing(t.rows[k], t.rows[i]); k++ {
			j := t.rows[k]
			far := in(w.figure(j.place, "To exterior wall"), unit, evidence.Foot)
			r := w.add(label(j.thing), label(j.place.String()), plain(j.counts), plain(known(far, j.read)), plain(num(3)))
			state := formula.If(r[2].Same(num(0)), blank(), formula.If(missing(r[3]), formula.Text("unusable"),
				formula.If(r[3].Round(9).Above(r[4]), formula.Text("breaks"),
					formula.If(missing(w.figure(j.place, "RH")), formula.Text("unusable"), formula.Text("meets")))))
			w.extend(w.next()-1, plain(state))
		}
		w.rankHole(from, t.rows[i].thing, t)
		answers = append(answers, from)
		i = k
	}
	if len(answers) == 0 {
		w.answers["slab-edge"] = w.weigh("slab-edge: no hole", nil, t.lost)
		return
	}
	var ranks []formula.Expr
	for _, row := range answers {
		ranks = append(ranks, w.ref(6, row))
	}
	best := formula.Of(ranks...).Max()
	outcome := formula.If(best.Same(num(3)), formula.Text("met"), formula.If(best.Same(num(1)), formula.Text("not met"), formula.Text("not shown")))
	last := w.next() - 1
	rankColumn, values := w.column(6, answers[0], last), w.column(7, answers[0], last)
	r := w.add(label("Answer"), label(""), label(""), plain(formula.If(best.Same(num(0)), blank(), values.At(best, rankColumn))), label(""), plain(outcome))
	w.answers["slab-edge"] = Answer{Value: r[3], Outcome: r[5]}
}

// rankHole is 3 for a hole that meets, 2 for one that cannot be told, 1 for one
// too far, 0 for none.
func (w *work) rankHole(from int, thing string, t things) {
	states, values := w.column(5, from, w.next()-1), w.column(3, from, w.next()-1)
	none := num(0)
	if gone := t.lostOf(thing); is(gone) {
		none = gone.Times(num(2))
	}
	rank := formula.If(states.Times("breaks").Above(num(0)), num(1), formula.If(states.Times("unusable").Above(num(0)), num(2),
		formula.If(states.Times("meets").Above(num(0)), num(3), none)))
	w.extend(from, plain(rank))
	told := formula.Any(w.ref(6, from).Same(num(1)), w.ref(6, from).Same(num(3)))
	w.extend(from, plain(formula.If(told, values.Max(), blank())))
}

// depths are the depths of holes against the wanted one and its tolerance.
func (w *work) depths(t things) []item {
	faces := w.figure(w.area, "Drying faces")
	share := formula.If(missing(faces), num(0.4), formula.If(faces.Same(num(2)), num(0.2), num(0.4)))
	tolerance := w.setting("Depth tolerance (%)", w.job.Settings.DepthTolerance)
	var all []item
	for _, j := range t.rows {
		own, areas := w.figure(j.place, "Thickness"), w.figure(w.area, "Slab thickness")
		ownUnit, areasUnit := w.rec.unit(holesTable, "Thickness"), w.rec.unit("Areas", "Slab thickness")
		unit := areasUnit
		if !own.Is("") {
			unit = ownUnit
		}
		if unit == evidence.Foot {
			unit = evidence.Inch
		}
		thick := formula.If(own.Shown(), in(own, ownUnit, unit), in(areas, areasUnit, unit))
		eighth := evidence.Convert(evidence.Ratio(1, 8), evidence.Inch, orInch(unit)).Float()
		want := thick.Times(share)
		slack := formula.Of(want.Times(tolerance).Over(num(100)), num(eighth)).Max()
		depth := in(w.figure(j.place, "Depth"), w.rec.unit(holesTable, "Depth"), unit)
		all = append(all, item{
			name: j.thing, row: j.place.String(), counts: j.counts, value: known(depth, j.read),
			least: known(want.Minus(slack).Round(12), thick), most: known(want.Plus(slack).Round(12), thick),
		})
	}
	return all
}

func orInch(u evidence.Unit) evidence.Unit {
	if u == "" {
		return evidence.Inch
	}
	return u
}

// waits are the hours from sealing to reading.
func (w *work) waits(t things) []item {
	least := w.setting("Probe wait (h)", w.job.Settings.ProbeWait)
	var all []item
	for _, j := range t.rows {
		sealed := w.figure(j.place, "Sealed at")
		hours := known(j.read.Minus(w.last(sealed)).Times(num(24)).Round(6), j.read, sealed)
		all = append(all, item{name: j.thing, row: j.place.String(), counts: j.counts, value: hours, least: least})
	}
	return all
}

// unreplaced are the discarded holes whose latest reading does not meet the
// limit, or cannot be told, without a hole beside them that was sealed after.
func (w *work) unreplaced(out []slab.Hole, holes things) []item {
	t := w.latest("Discarded holes: their latest rows", rowsOf(out), choice{history: true})
	limit := w.limits["slab relative humidity"].most
	var all []item
	for _, j := range t.rows {
		beside := w.beside(j, holes)
		rh := w.figure(j.place, "RH")
		u := w.uncertainty(j.instrument, evidence.RH)
		over := rh
		if is(u) {
			over = known(rh.Plus(u), rh, u)
		}
		open := formula.If(beside.Same(num(1)), num(0), formula.If(missing(over), num(1), flag(over.Round(9).Above(limit))))
		r := w.add(label("discarded "+j.thing), label(j.place.String()), plain(j.counts), plain(formula.If(j.counts.Same(num(0)), num(0), open)))
		all = append(all, item{name: "discarded hole " + j.thing + " and no hole beside it", row: j.place.String(), counts: r[3], value: blank()})
	}
	return all
}

// beside is 1 where an undiscarded hole, all of whose judged rows are usable,
// lies within 3 ft of a discarded one and was sealed after its reading.
func (w *work) beside(out judged, holes things) formula.Expr {
	x, y := w.position(out.place)
	w.heading("Holes beside discarded " + out.thing + ", " + out.place.String())
	w.header("What", "Row of the record", "Judged", "Distance squared (ft2)", "Near", "Sealed after", "Usable", "Fine, or not judged", "The hole is beside")
	from := w.next()
	for i := 0; i < len(holes.rows); {
		first, k := w.next(), i
		for ; k < len(holes.rows) && sameThing(holes.rows[k], holes.rows[i]); k++ {
			w.besides(out, holes.rows[k], x, y)
		}
		last := w.next() - 1
		w.extend(first, plain(formula.Of(w.column(2, first, last).Max(), w.column(7, first, last).Min()).Min()))
		i = k
	}
	if w.next() == from {
		return num(0)
	}
	return w.add(label("Answer"), label(""), plain(w.column(8, from, w.next()-1).Max()))[2]
}

// besides says whether one row of a hole lies beside a discarded one.
func (w *work) besides(out, j judged, x, y formula.Expr) {
	hx, hy := w.position(j.place)
	dx, dy := x.Minus(hx), y.Minus(hy)
	r := w.add(label(j.thing), label(j.place.String()), plain(j.counts), plain(known(dx.Times(dx).Plus(dy.Times(dy)).Round(9), x, y, hx, hy)))
	row := w.next() - 1
	sealed := w.figure(j.place, "Sealed at")
	w.extend(row, plain(formula.If(missing(r[3]), num(0), flag(r[3].AtMost(num(9))))))
	w.extend(row, plain(formula.If(formula.Any(missing(sealed), missing(out.read)), num(0), flag(w.first(sealed).Above(out.read)))))
	w.extend(row, plain(flag(formula.All(w.figure(j.place, "RH").Shown(), j.read.Shown()))))
	fine := formula.Of(w.ref(4, row), w.ref(5, row), w.ref(6, row)).Min()
	w.extend(row, plain(formula.If(r[2].Same(num(0)), num(1), fine)))
}

func (w *work) position(p place) (x, y formula.Expr) {
	return in(w.figure(p, "X"), w.rec.unit(p.table, "X"), evidence.Foot), in(w.figure(p, "Y"), w.rec.unit(p.table, "Y"), evidence.Foot)
}

// setting is a setting of the job: the cell it was typed in, else the default.
func (w *work) setting(item string, value evidence.Reading) formula.Expr {
	if p := placeOf(value.Place); p.table != "" {
		if cell := w.rec.cell(p, "Entry"); cell.Is(value.Exact().Float()) {
			return cell
		}
	}
	return num(value.Exact().Float())
}

// found is the judge's finding of a check.
func (w *work) found(id string) evidence.Finding {
	for _, f := range w.d.Findings {
		if f.ID == id {
			return f
		}
	}
	return evidence.Finding{Outcome: evidence.NotNeeded}
}

// needed says whether the judge asked a check of the area.
func (w *work) needed(id string) bool { return w.found(id).Outcome != evidence.NotNeeded }

func keyOf(s string) string { return evidence.Key(s) }
