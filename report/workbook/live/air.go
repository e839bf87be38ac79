package live

import (
	"fmt"
	"strings"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// The checks of the air are judged over windows of a log: no formula tells
// that. Their outcomes stand while the log, its bounds and the rows it was held
// for are as they were, or lie within what was judged as well.

// air answers the checks of the air.
func (w *work) air() {
	w.heading("The air: what its checks rest on, judged by firstboard and not recalculated")
	w.header("What", "", "Now", "As judged", "Stands")
	var rows []int
	compare := func(what string, now formula.Expr, judged float64, form Form, stands func(now, judged formula.Expr) formula.Expr) {
		r := w.add(label(what), label(""), formed(now, form), formed(num(judged), form))
		w.extend(w.next()-1, plain(formula.If(missing(r[2]), num(0), flag(stands(r[2], r[3])))))
		rows = append(rows, w.next()-1)
	}
	near := func(now, judged formula.Expr) formula.Expr { return now.Minus(judged).Abs().Below(num(0.5)) }
	w.fixUncertainty(w.ownMeters())
	for _, p := range w.rec.fingerprints(w.ownAir(), w.d.Area.ID) {
		compare(p.what, p.sum, p.sum.Value().(float64), Plain, near)
	}
	if n, ok := w.rec.upTo(w.ownAir(), w.d.Area.ID, w.layOn); ok {
		compare("rows up to the day of laying", n, n.Value().(float64), Plain, near)
	} else {
		w.fix(w.area, "Lay on")
	}
	w.fixLength("Air", "Read at")
	w.airBounds(compare)
	if len(rows) == 0 {
		return
	}
	all := w.column(4, rows[0], rows[len(rows)-1]).Min()
	r := w.add(label("The air stands as judged (1) or not (0)"), label(""), plain(all))
	w.airStands = r[2]
	w.held()
}

// ownAir are the rows of the log that are the area's or the whole site's.
func (w *work) ownAir() []acclimate.Air {
	var own []acclimate.Air
	for _, a := range w.job.Air {
		if a.Area == "" || evidence.Same(a.Area, w.d.Area.ID) {
			own = append(own, a)
		}
	}
	return own
}

// ownMeters are the instruments behind the area's air.
func (w *work) ownMeters() []string {
	var all []string
	for _, u := range w.basis.Used {
		all = append(all, u.Instrument)
	}
	return all
}

// fixUncertainty takes the uncertainty of instruments for granted, where it
// counts in what is judged and not recalculated.
func (w *work) fixUncertainty(instruments []string) {
	if !w.job.Guarded {
		return
	}
	for _, id := range instruments {
		if meter, listed := w.job.Instruments.Find(id); listed {
			w.fix(placeOf(meter.Place), "Uncertainty", "Uncertainty temp")
		}
	}
}

// airBounds compare the bounds of the air: looser ones keep what was in range
// in range, unless an excursion had to be excused.
func (w *work) airBounds(compare func(string, formula.Expr, float64, Form, func(now, judged formula.Expr) formula.Expr)) {
	loose := true
	for _, f := range w.d.Findings {
		if strings.HasPrefix(f.ID, "air-") && f.ID != "air-usual" {
			loose = loose && f.Outcome == evidence.Met && !strings.Contains(f.Reason, "excused")
		}
	}
	for _, what := range []string{"air temperature", "air humidity"} {
		l := w.limits[what]
		for _, end := range []struct {
			word   string
			now    formula.Expr
			looser func(now, judged formula.Expr) formula.Expr
		}{{"at least", l.least, formula.Expr.AtMost}, {"at most", l.most, func(now, judged formula.Expr) formula.Expr { return judged.AtMost(now) }}} {
			x, ok := end.now.Float()
			if !is(end.now) || !ok {
				continue
			}
			stands := end.looser
			if !loose {
				stands = func(now, judged formula.Expr) formula.Expr { return now.Same(judged) }
			}
			compare(what+", "+end.word, end.now, x, Plain, stands)
		}
	}
}

// held compares the window of the rows that the air was held for with the one
// that was judged: within it the air was held as well.
func (w *work) held() {
	b := w.basis
	if !w.needed("air-held") || !b.Held {
		return
	}
	w.heading("air-held: the rows the air was held for")
	w.header("What", "Row of the record", "Judged", "From", "To", "Without a time")
	first := w.next()
	for _, u := range w.uses {
		if u.kind == slabKind || u.kind == woodKind && strings.HasPrefix(u.what, "board") {
			r := w.add(label(u.what), label(u.row.place.String()), plain(u.row.counts))
			row := w.next() - 1
			w.extend(row, formed(formula.If(r[2].Same(num(0)), blank(), u.fromTime), Minute))
			w.extend(row, formed(formula.If(r[2].Same(num(0)), blank(), u.row.read), Minute))
			w.extend(row, plain(formula.If(r[2].Same(num(0)), num(0), flag(formula.Any(missing(u.fromTime), missing(u.row.read))))))
		}
	}
	last := w.next() - 1
	if last < first {
		return
	}
	starts, ends := w.column(3, first, last), w.column(4, first, last)
	day := num(24)
	hold := w.setting("Held conditions (h)", w.job.Settings.HeldConditions)
	r := w.add(label("Window"), label("begins, ends, rows without a time"), plain(w.column(5, first, last).Sum()),
		formed(formula.Of(starts.Min(), ends.Min()).Min().Minus(hold.Over(day)).Round(9), Minute), formed(ends.Max().Round(9), Minute))
	was := w.add(label("Window that was judged"), label("begins, ends"), label(""), formed(w.instant(b.From), Minute), formed(w.instant(b.To), Minute))
	within := formula.All(r[3].Minus(was[3]).Above(num(-0.000001)), was[4].Minus(r[4]).Above(num(-0.000001)))
	stored := w.found("air-held").Outcome.String()
	outcome := formula.If(within, formula.Text(stored), formula.Text(again))
	if stored == "met" {
		outcome = formula.If(r[2].Above(num(0)), formula.Text("not shown"), outcome)
	}
	o := w.add(label("Answer"), label("judged by firstboard over the window"), plain(outcome))
	w.answers["air-held"] = Answer{Outcome: o[2]}
}

// instant is a time of the log as the working counts it.
func (w *work) instant(t time.Time) formula.Expr { return w.first(num(serial(t.In(w.job.Zone)))) }

// fingerprint is a sum over the rows of one instrument that changes with every time,
// temperature and humidity of them.
type fingerprint struct {
	what string
	sum  formula.Expr
}

// span is where the rows of the air log stand: its columns as ranges.
func (r *Record) span(column string) (string, bool) {
	e, ok := r.entries("Air", column)
	if !ok {
		return "", false
	}
	text := strings.TrimSuffix(strings.TrimPrefix(e.String(), "COUNTA("), ")")
	t := r.Tables[r.index["Air"]]
	return strings.Replace(text, "1048576", fmt.Sprint(t.Rows[len(t.Rows)-1].Number), 1), true
}

// ofArea is the condition that a row is the area's or the whole site's.
func (r *Record) ofArea(area string) string {
	areas, ok := r.span("Area")
	if !ok {
		return "1"
	}
	return "((" + areas + "=" + formula.Text(area).String() + ")+(" + areas + `=""))`
}

func (r *Record) fingerprints(own []acclimate.Air, area string) []fingerprint {
	if len(own) == 0 {
		return nil
	}
	times, ok1 := r.span("Read at")
	temps, ok2 := r.span("Temp")
	rhs, ok3 := r.span("RH")
	meters, ok4 := r.span("Instrument")
	if !ok1 || !ok2 || !ok3 || !ok4 {
		return nil
	}
	start := 0.0
	sums := map[string]float64{}
	var names []string
	for i, a := range own {
		p := placeOf(a.Place)
		at, _ := r.cell(p, "Read at").Float()
		if i == 0 {
			start = float64(int(at))
		}
		temp, _ := r.cell(p, "Temp").Float()
		rh, _ := r.cell(p, "RH").Float()
		if _, known := sums[evidence.Key(a.Instrument)]; !known {
			names = append(names, a.Instrument)
		}
		sums[evidence.Key(a.Instrument)] += ((at-start)*1440 + 1000) * (temp + 1.7*rh + 1)
	}
	var all []fingerprint
	for _, name := range names {
		text := fmt.Sprintf("SUMPRODUCT(%s*(%s=%s)*((%s-%v)*1440+1000)*(%s+1.7*%s+1))", r.ofArea(area), meters, formula.Text(name), times, start, temps, rhs)
		all = append(all, fingerprint{"a sum over the rows of " + orNone(name), formula.Cell(text, sums[evidence.Key(name)])})
	}
	return all
}

func orNone(instrument string) string {
	if instrument == "" {
		return "no instrument"
	}
	return instrument
}

// upTo counts the rows up to the end of the day of laying.
func (r *Record) upTo(own []acclimate.Air, area string, layOn formula.Expr) (formula.Expr, bool) {
	times, ok := r.span("Read at")
	day, known := layOn.Float()
	if !ok || !known || len(own) == 0 || layOn.Is("") {
		return formula.Expr{}, false
	}
	n := 0.0
	for _, a := range own {
		if at, _ := r.cell(placeOf(a.Place), "Read at").Float(); at < day+1 {
			n++
		}
	}
	return formula.Cell(fmt.Sprintf("SUMPRODUCT(%s*(%s<%s+1))", r.ofArea(area), times, layOn), n), true
}
