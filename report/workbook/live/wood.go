package live

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/wood"
)

// woodRows are the area's rows of flooring, subfloor or joists.
func (w *work) woodRows(of string) []wood.Row {
	return slices.DeleteFunc(slices.Clone(w.job.Wood), func(r wood.Row) bool {
		return r.Of != of || !evidence.Same(r.Area, w.d.Area.ID)
	})
}

// fixWood takes the names and words of all the area's wood rows for granted.
func (w *work) fixWood() {
	for _, r := range w.job.Wood {
		if evidence.Same(r.Area, w.d.Area.ID) {
			w.fix(placeOf(r.Place), "Area", "Of", "Piece", "Lot", "Method", "Scale", "Species", "Temp corrected", "Set aside", "Instrument")
		}
	}
	w.fixLength("Wood", "Piece")
}

// moisture is the moisture content that a row is judged by. A reading that the
// tables corrected stands for as long as it and the wood's temperature do.
func (w *work) moisture(r wood.Row) formula.Expr {
	species := ""
	if products, covering, _ := w.stack(); covering >= 0 {
		species = products[covering].Species
	}
	p := placeOf(r.Place)
	cell := w.figure(p, "Reading")
	usual := r
	usual.Reading = evidence.Typed("12", evidence.MC)
	now, then := wood.MoistureOf(r, species), wood.MoistureOf(usual, species)
	switch {
	case now.How != "":
		stands := formula.All(unchanged(w.rec.cell(p, "Reading")), unchanged(w.rec.cell(p, "Wood temp")))
		return formula.If(stands, num(now.Value.Float()), blank())
	case then.Lack != "" || then.How != "" && now.Lack != "":
		return blank()
	case then.How != "": // over the tables: it stands as read
		return formula.If(unchanged(w.rec.cell(p, "Reading")), cell, blank())
	}
	if r.Method == wood.Pin && r.TempCorrected == "no" { // a temperature filled in would correct it
		cell = formula.If(unchanged(w.rec.cell(p, "Wood temp")), cell, blank())
	}
	lowest := map[string]float64{wood.Pin: 6, wood.Pinless: 4}[r.Method]
	if lowest == 0 {
		return cell
	}
	return formula.If(missing(cell), blank(), formula.If(cell.Below(num(lowest)), blank(), cell))
}

// values writes the moisture content of each row, empty where it is not judged
// or cannot be used, and the least and the most of each thing.
type values struct {
	things
	moist []formula.Expr // of each row, the empty text where it cannot be used
	ok    []formula.Expr
	lows  formula.List // of each thing that can be used
	highs formula.List
	bad   formula.Expr // how many judged rows cannot be used
	count formula.Expr // of things with judged rows
}

func (w *work) values(title string, t things, rows []wood.Row) values {
	v := values{things: t, bad: num(0), count: num(0)}
	if len(t.rows) == 0 {
		return v
	}
	byRow := map[int]wood.Row{}
	for _, r := range rows {
		byRow[placeOf(r.Place).number] = r
	}
	w.heading(title)
	w.header("What", "Row of the record", "Judged", "Moisture content (%)", "Judged value", "Unusable", "Least of the piece", "Most of it", "Piece there")
	from := w.next()
	for i := 0; i < len(t.rows); {
		first, k := w.next(), i
		for ; k < len(t.rows) && sameThing(t.rows[k], t.rows[i]); k++ {
			j := t.rows[k]
			r := w.add(label(j.thing), label(j.place.String()), plain(j.counts), plain(w.moisture(byRow[j.place.number])))
			use := formula.If(formula.Any(r[2].Same(num(0)), missing(r[3]), missing(j.read)), blank(), r[3])
			w.extend(w.next()-1, plain(use))
			w.extend(w.next()-1, plain(formula.If(r[2].Same(num(0)), num(0), flag(missing(w.ref(4, w.next()-1))))))
			v.moist = append(v.moist, r[3])
			v.ok = append(v.ok, formula.All(r[3].Shown(), j.read.Shown()))
		}
		use, counts := w.column(4, first, w.next()-1), w.column(2, first, w.next()-1)
		none := use.Count().Same(num(0))
		w.extend(first, plain(formula.If(none, blank(), use.Min())))
		w.extend(first, plain(formula.If(none, blank(), use.Max())))
		w.extend(first, plain(counts.Max()))
		i = k
	}
	to := w.next() - 1
	v.lows, v.highs = w.column(6, from, to), w.column(7, from, to)
	r := w.add(label("Unusable rows and pieces there"), label(""), plain(w.column(5, from, to).Sum()), plain(w.column(8, from, to).Sum()))
	v.bad, v.count = r[2], r[3]
	return v
}

// woodItems are the moisture contents of judged rows against a limit.
func (w *work) woodItems(v values, l limit, uncertain bool) []item {
	var all []item
	for i, j := range v.rows {
		it := item{name: j.thing, row: j.place.String(), counts: j.counts, value: known(v.moist[i], j.read), least: l.least, most: l.most}
		if uncertain {
			it.u = w.uncertainty(j.instrument, evidence.MC)
		}
		all = append(all, it)
	}
	return all
}

// piecesOf writes subfloor pieces or joists.
func (w *work) piecesOf(of string) values {
	rows := w.woodRows(of)
	var all []taken
	for _, r := range rows {
		all = append(all, taken{thing: r.Piece, place: placeOf(r.Place), at: "Read at", instrument: r.Instrument})
	}
	w.list("Wood", places(all), "Read at", "Reading")
	t := w.latest("Wood, "+of+": which rows are judged", all, choice{water: true})
	return w.values("Wood, "+of+": moisture content", t, rows)
}

// woodNeeded is how many pieces an area asks for.
func (w *work) woodNeeded(per1000 float64) formula.Expr {
	size := in(w.figure(w.area, "Size"), w.rec.unit("Areas", "Size"), evidence.SquareFoot)
	return known(formula.Of(num(3), size.Times(num(per1000)).Over(num(1000)).Round(9).Up()).Max(), size)
}

// subfloor answers the checks of the subfloor and of joists below.
func (w *work) subfloor() (v values, judged bool) {
	l := w.limits["subfloor moisture content"]
	if w.needed("below-dry") {
		w.joists(l)
	}
	if !w.needed("subfloor-count") {
		return v, false
	}
	v = w.piecesOf(wood.OfSubfloor)
	w.answers["subfloor-count"] = w.tally("subfloor-count: pieces that were read", v.things, v.ok, w.woodNeeded(20))
	w.answers["subfloor-mc"] = w.weigh("subfloor-mc: each reading of the subfloor", w.woodItems(v, l, true), v.lost)
	if len(v.rows) > 0 {
		none := v.lows.Count().Same(num(0))
		over := formula.If(none, blank(), v.lows.Median().Plus(num(3)).Round(9))
		r := w.add(label("3 points over the median"), label(""), label(""), plain(over))
		w.answers["subfloor-spots"] = w.weigh("subfloor-spots: each reading against the median", w.woodItems(v, limit{most: r[3]}, false), v.lost)
	}
	w.use(woodKind, "subfloor piece", v.things)
	return v, true
}

func (w *work) joists(l limit) {
	v := w.piecesOf(wood.OfJoist)
	dry := w.weigh("below-dry: each joist", w.woodItems(v, limit{most: l.most.Plus(num(2))}, false), v.lost)
	enough := w.tally("below-dry: joists that were read", v.things, v.ok, w.woodNeeded(5))
	w.fix(w.area, "Ground cover")
	ground := "met"
	if a := w.d.Area; a.Below == "crawl space" && a.GroundCover != "yes" {
		ground = "not shown"
		if a.GroundCover == "no" {
			ground = "not met"
		}
	}
	value := blank()
	if ground == "not met" {
		value = formula.Text("no")
	}
	r := w.add(label("the ground of a crawl space is covered"), label(""), plain(formula.Text(ground)), plain(value))
	w.answers["below-dry"] = w.worst("below-dry: all of it", dry, enough, Answer{Value: r[3], Outcome: r[2]})
	w.use(woodKind, "joist", v.things)
}
