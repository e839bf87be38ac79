package live

import (
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/slab"
)

// dishes answers the checks of moisture emission.
func (w *work) dishes() {
	var rows []taken
	for _, d := range w.job.Dishes {
		if evidence.Same(d.Area, w.d.Area.ID) {
			p := placeOf(d.Place)
			w.fix(p, "Area", "Dish", "Instrument")
			rows = append(rows, taken{thing: d.Dish, place: p, at: "Lifted at", from: "Set at", instrument: d.Instrument})
		}
	}
	w.fixLength("Slab emission", "Dish")
	if !w.needed("emission-dishes") {
		return
	}
	w.list("Slab emission", places(rows), "Set at", "Lifted at", "Start mass", "End mass", "Test area")
	t := w.latest("Dishes: which rows are judged", rows, choice{history: true, water: true})
	rate := w.rates(t)
	w.answers["emission-dishes"] = w.tally("emission-dishes: dishes that were set", t, w.each(t, func(j judged) formula.Expr {
		var all []formula.Expr
		for _, c := range []string{"Set at", "Lifted at", "Start mass", "End mass", "Test area"} {
			all = append(all, w.figure(j.place, c).Shown())
		}
		return formula.All(all...)
	}), w.holesNeeded())
	w.answers["emission-time"] = w.weigh("emission-time: hours of exposure", w.exposures(t), t.lost)
	w.answers["emission-rate"] = w.weigh("emission-rate: rate of moisture emission", rate, t.lost)
	w.use(slabKind, "dish", t)
}

// passed are the hours from the setting of a dish to its lifting: the least or
// the most that can have passed.
func (w *work) passed(j judged, least bool) formula.Expr {
	set, lifted := w.figure(j.place, "Set at"), w.figure(j.place, "Lifted at")
	from, to := w.first(set), w.last(lifted)
	if least {
		from, to = w.last(set), w.first(lifted)
	}
	return known(to.Minus(from).Times(num(24)).Round(6), set, lifted)
}

func (w *work) exposures(t things) []item {
	var all []item
	for _, least := range []bool{true, false} {
		for _, j := range t.rows {
			all = append(all, item{name: j.thing, row: j.place.String(), counts: j.counts, value: w.passed(j, least), least: num(60), most: num(72)})
		}
	}
	return all
}

// rates are the rates of emission by exact factors.
func (w *work) rates(t things) []item {
	l := w.limits["slab moisture emission"]
	var all []item
	for _, j := range t.rows {
		start, end := w.figure(j.place, "Start mass"), w.figure(j.place, "End mass")
		area := in(w.figure(j.place, "Test area"), w.rec.unit(j.place.table, "Test area"), evidence.SquareFoot)
		hours := w.passed(j, true)
		perGram := evidence.Convert(slab.Rate(evidence.Whole(1), evidence.Whole(1), evidence.Whole(1)), evidence.Pounds, l.unit).Float()
		rate := func(grams formula.Expr) formula.Expr {
			return known(grams.Times(num(perGram)).Over(area).Over(hours).Round(9), grams, area, hours)
		}
		gain := known(end.Minus(start).Round(9), start, end)
		gained := formula.If(missing(gain), blank(), formula.If(gain.Above(num(0)), gain, blank()))
		it := item{name: j.thing, row: j.place.String(), counts: j.counts, value: rate(gained), most: l.most}
		if u := w.uncertainty(j.instrument, evidence.Gram); is(u) {
			it.u = rate(u)
		}
		all = append(all, it)
	}
	return all
}

// spots answers the checks of pH, carbide and other tests.
func (w *work) spots() {
	var ph, cm []taken
	for _, r := range w.job.PHs {
		if evidence.Same(r.Area, w.d.Area.ID) {
			ph = append(ph, taken{thing: r.Spot, place: placeOf(r.Place), at: "Read at", instrument: r.Instrument})
		}
	}
	for _, r := range w.job.Carbides {
		if evidence.Same(r.Area, w.d.Area.ID) {
			cm = append(cm, taken{thing: r.Spot, place: placeOf(r.Place), at: "Read at", instrument: r.Instrument})
		}
	}
	w.spot("slab-ph", "pH", "Slab pH", "slab pH", ph, num(2))
	size := in(w.figure(w.area, "Size"), w.rec.unit("Areas", "Size"), evidence.SquareM)
	w.spot("slab-cm", "CM", "Slab CM", "slab carbide (CM)", cm, known(formula.If(size.Round(9).Above(num(50)), num(3), num(2)), size))
}

func (w *work) spot(id, column, table, limit string, rows []taken, needed formula.Expr) {
	for _, r := range rows {
		w.fix(r.place, "Area", "Spot", "Instrument")
	}
	w.fixLength(table, "Spot")
	if !w.needed(id) {
		return
	}
	w.list(table, places(rows), "Read at", column)
	t := w.latest(table+": which rows are judged", rows, choice{history: true, water: true})
	weighed := w.weigh(id+": each spot", w.items(t, column, w.limits[limit], true), t.lost)
	enough := w.tally(id+": how many spots", t, w.each(t, func(j judged) formula.Expr {
		return formula.All(w.figure(j.place, column).Shown(), j.read.Shown())
	}), needed)
	few := formula.If(formula.All(weighed.Outcome.Says("met"), enough.Outcome.Says("met").Same(num(0))), formula.Text("not shown"), weighed.Outcome)
	r := w.add(label("Answer, with the number of spots"), label(""), plain(few))
	w.answers[id] = Answer{Value: weighed.Value, Outcome: r[2]}
	w.use(slabKind, map[string]string{"slab-ph": "pH spot", "slab-cm": "carbide spot"}[id], t)
}

// others answers the further tests, each against the bounds of its own row.
func (w *work) others() {
	var rows []taken
	for _, r := range w.job.Others {
		if evidence.Same(r.Area, w.d.Area.ID) {
			p := placeOf(r.Place)
			w.fix(p, "Area", "Test", "Spot", "Instrument")
			rows = append(rows, taken{thing: evidence.Tidy(r.Test) + " at " + evidence.Tidy(r.Spot), place: p, at: "Read at", instrument: r.Instrument})
		}
	}
	w.fixLength("Other tests", "Test")
	if !w.needed("other-tests") {
		return
	}
	w.list("Other tests", places(rows), "Read at", "Result", "At least", "At most")
	t := w.latest("Other tests: which rows are judged", rows, choice{})
	var items []item
	for _, j := range t.rows {
		low, high := w.figure(j.place, "At least"), w.figure(j.place, "At most")
		value := known(w.figure(j.place, "Result"), j.read)
		it := item{name: j.thing, row: j.place.String(), counts: j.counts, u: w.uncertainty(j.instrument, "")}
		it.value = formula.If(formula.All(missing(low), missing(high)), blank(), value)
		if !low.Is("") {
			it.least = low
		}
		if !high.Is("") {
			it.most = high
		}
		w.fixBounds(j.place)
		items = append(items, it)
	}
	w.answers["other-tests"] = w.weigh("other-tests: each test against its own bounds", items, nil)
	w.use(otherKind, "test", t)
}

// fixBounds takes for granted which bounds a test has.
func (w *work) fixBounds(p place) {
	for _, c := range []string{"At least", "At most"} {
		cell := w.figure(p, c)
		stands := cell.Shown()
		if cell.Is("") {
			stands = missing(cell)
		}
		w.fixed = append(w.fixed, fixed{p.String() + ": whether " + c + " is stated", stands})
	}
}

// surfaces answers the check of a heated floor's surfaces.
func (w *work) surfaces() {
	var rows []taken
	for _, r := range w.job.Surfaces {
		if evidence.Same(r.Area, w.d.Area.ID) {
			w.fix(placeOf(r.Place), "Area", "Spot", "Instrument")
			rows = append(rows, taken{thing: r.Spot, place: placeOf(r.Place), at: "Read at", instrument: r.Instrument})
		}
	}
	if !w.needed("heated-surface") && !w.needed("surface-dew") {
		return
	}
	w.fixLength("Surface", "Spot")
	w.list("Surface", places(rows), "Read at", "Temp")
	t := w.latest("Surfaces: which rows are judged", rows, choice{laying: true})
	for _, r := range rows {
		w.fixUncertainty([]string{r.instrument})
	}
	w.use(surfaceKind, "surface spot", t)
	if w.needed("heated-surface") {
		w.heated(t)
	}
	if w.needed("surface-dew") && len(rows) > 0 {
		w.surfacesStand(rows)
	}
}

// heated weighs the surfaces of a heated floor. The uncertainty that is counted
// is the instrument's as it stands: a changed one asks to be judged again.
func (w *work) heated(t things) {
	l, unit := w.limits["heated surface"], w.rec.unit("Surface", "Temp")
	items := w.items(t, "Temp", l, false)
	for i, j := range t.rows {
		if !w.job.Guarded {
			break
		}
		items[i].u = blank()
		if u := w.job.Instruments.USurface(j.instrument, unit); u.Known {
			items[i].u = num(evidence.ConvertSpan(u.Value, unit, l.unit).Float())
		}
	}
	w.answers["heated-surface"] = w.weigh("heated-surface: temperature of each surface", items, nil)
}

// surfacesStand says whether the surfaces stand as they were held against the
// dew point: 1 or 0.
func (w *work) surfacesStand(rows []taken) {
	w.heading("surface-dew: judged by firstboard and not recalculated, on surfaces that stand as judged (1) or not (0)")
	from := w.next()
	for _, r := range rows {
		same := formula.All(unchanged(w.rec.cell(r.place, "Read at")), unchanged(w.rec.cell(r.place, "Temp")))
		w.add(label(r.thing), label(r.place.String()), plain(flag(same)))
	}
	w.dewStands = w.add(label("Answer"), label(""), plain(w.column(2, from, w.next()-1).Min()))[2]
}
