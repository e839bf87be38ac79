package live

import (
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// sortedMeters are a job's instruments in the order of their rows.
func sortedMeters(all evidence.Instruments) []evidence.Instrument {
	var meters []evidence.Instrument
	for _, m := range all {
		meters = append(meters, m)
	}
	slices.SortFunc(meters, func(a, b evidence.Instrument) int {
		return placeOf(a.Place).number - placeOf(b.Place).number
	})
	return meters
}

// ages are the ages of judged rows on the day of laying.
func (w *work) ages() {
	set := w.job.Settings
	slabLife := w.setting("Slab reading life (days)", set.SlabReadingLife)
	woodLife := w.setting("Wood reading life (days)", set.WoodReadingLife)
	airLife := w.setting("Air reading life (h)", set.AirReadingLife)
	hours := func(read formula.Expr) formula.Expr {
		return known(w.first(w.layOn).Minus(read).Times(num(24)).Round(6), w.layOn, read)
	}
	var items []item
	for _, u := range w.uses {
		it := item{name: u.what, row: u.row.place.String(), counts: u.row.counts, least: num(0)}
		switch u.kind {
		case slabKind:
			to := formula.If(w.covered.Shown(), w.covered, w.layOn)
			it.value, it.most = known(to.Minus(u.row.day), w.layOn, u.row.day), slabLife
		case otherKind:
			it.value, it.most = known(w.layOn.Minus(u.row.day), w.layOn, u.row.day), slabLife
		case woodKind:
			it.value, it.most = known(w.layOn.Minus(u.row.day), w.layOn, u.row.day), woodLife
		case surfaceKind:
			it.value, it.most, it.least = hours(u.row.read), airLife, formula.Expr{}
		}
		items = append(items, it)
	}
	latest := blank()
	if at := w.basis.Latest; at.Shown() {
		latest = w.first(num(serial(at.First)))
	}
	items = append(items, item{name: "the latest air reading", row: "Air", counts: num(1), value: hours(latest), most: airLife})
	if w.basis.Untimed {
		items = append(items, item{name: "an air row without a time", row: "Air", counts: num(1), value: blank()})
	}
	a := w.weigh("reading-age: days, for air and surfaces hours, from the reading to the day of laying", items, nil)
	r := w.add(label("Answer, where the day of laying is known"), label(""), plain(formula.If(missing(w.layOn), formula.Text("not shown"), a.Outcome)),
		plain(formula.If(missing(w.layOn), blank(), a.Value)))
	w.answers["reading-age"] = Answer{Value: r[3], Outcome: r[2]}
}

// heat is how long the heating had run when each row began.
func (w *work) heat() {
	if !w.needed("heat-run") {
		return
	}
	least := w.setting("Heat run (h)", w.job.Settings.HeatRun)
	typed := w.figure(w.area, "Heat run from")
	from := typed
	if x, ok := typed.Float(); ok && x == float64(int(x)) {
		from = known(typed.Plus(num(1)), typed) // a plain day means its end
	}
	var items []item
	for _, u := range w.uses {
		if u.kind == slabKind || u.kind == woodKind && u.what[:5] != "joist" {
			ran := known(u.fromTime.Minus(w.last(from)).Times(num(24)).Round(6), u.fromTime, from)
			items = append(items, item{name: u.what, row: u.row.place.String(), counts: u.row.counts, value: ran, least: least})
		}
	}
	w.fix(w.area, "Heated")
	w.answers["heat-run"] = w.weigh("heat-run: hours the heating had run", items, nil)
	if w.d.Area.HeatRunFrom.Shown() {
		return
	}
	r := w.add(label("Answer while its start is not recorded"), label(""), plain(formula.If(missing(from), formula.Text("not shown"), w.answers["heat-run"].Outcome)))
	w.answers["heat-run"] = Answer{Value: w.answers["heat-run"].Value, Outcome: r[2]}
}
