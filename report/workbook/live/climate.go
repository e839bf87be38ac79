package live

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// service are the periods of the area's climate.
func (w *work) service() []acclimate.Period {
	var all []acclimate.Period
	for _, p := range w.job.Climates {
		if evidence.Same(p.Climate, w.d.Area.Climate) {
			all = append(all, p)
		}
	}
	return all
}

// target writes the EMC of each period and the target midway: Wood Handbook
// eq. 4-5, each rounded once, to 0.1. It is the empty text where it is unknown.
func (w *work) target() formula.Expr {
	for _, p := range w.job.Climates {
		w.fix(placeOf(p.Place), "Climate")
	}
	w.fixLength("Climates", "Period")
	service := w.service()
	if len(service) == 0 {
		return blank()
	}
	w.heading("Service climate: equilibrium moisture content of wood (Wood Handbook eq. 4-5) and the target midway")
	w.header("Period", "Row of the record", "Temperature (C)", "RH (fraction)", "W", "K", "K1", "K2", "EMC (%)")
	unit := w.rec.unit("Climates", "Temp")
	from := w.next()
	for _, p := range service {
		w.period(p, unit)
	}
	emc := w.column(8, from, w.next()-1)
	all := emc.Count().Same(num(float64(len(service))))
	r := w.add(label("Lowest, highest and target"), label(""), plain(formula.If(all, emc.Min(), blank())), plain(formula.If(all, emc.Max(), blank())),
		plain(formula.If(all, emc.Min().Plus(emc.Max()).Over(num(2)).Round(9), blank())))
	return r[4]
}

func (w *work) period(p acclimate.Period, unit evidence.Unit) {
	at := placeOf(p.Place)
	r := w.add(label(p.Name), label(at.String()), plain(in(w.figure(at, "Temp"), unit, evidence.Celsius)),
		plain(known(w.figure(at, "RH").Over(num(100)), w.figure(at, "RH"))))
	t, h := r[2], r[3]
	poly := func(a, b, c float64) formula.Expr {
		return known(num(a).Plus(num(b).Times(t)).Plus(num(c).Times(t).Times(t)), t)
	}
	row := w.next() - 1
	for _, e := range []formula.Expr{poly(349, 1.29, 0.0135), poly(0.805, 0.000736, -0.00000273), poly(6.27, -0.00938, -0.000303), poly(1.91, 0.0407, -0.000293)} {
		w.extend(row, plain(e))
	}
	big, k, k1, k2 := w.ref(4, row), w.ref(5, row), w.ref(6, row), w.ref(7, row)
	kh := k.Times(h)
	both := k1.Times(k2).Times(kh).Times(kh)
	fraction := kh.Over(num(1).Minus(kh)).Plus(k1.Times(kh).Plus(num(2).Times(both)).Over(num(1).Plus(k1.Times(kh)).Plus(both)))
	w.extend(row, plain(known(num(1800).Over(big).Times(fraction).Round(1), t, h)))
}

// onTarget answers the checks of lots against the target.
func (w *work) onTarget(lots []lot) {
	if !w.needed("flooring-target") {
		return
	}
	mid := w.target()
	tolerance := w.setting("Target tolerance (points)", w.job.Settings.TargetTolerance)
	r := w.add(label("Tolerance around the target: from, to"), label(""), plain(known(mid.Minus(tolerance).Round(9), mid)), plain(known(mid.Plus(tolerance).Round(9), mid)),
		plain(known(mid.Times(num(0.7)).Round(9), mid)), plain(known(mid.Times(num(1.3)).Round(9), mid)))
	var items []item
	for _, l := range lots {
		u := formula.Expr{}
		if w.job.Guarded {
			u = num(1)
		}
		for _, mean := range []formula.Expr{l.low, l.high} {
			items = append(items, item{name: l.title(), counts: num(1), value: mean, least: r[2], most: r[3], u: u})
		}
	}
	w.answers["flooring-target"] = w.weigh("flooring-target: each lot's mean", items, nil)
	var each []Answer
	for _, l := range lots {
		each = append(each, w.spread(l, limit{least: r[4], most: r[5]}, mid))
	}
	w.answers["flooring-spread"] = w.worst("flooring-spread: all lots", each...)
}

// spread counts a lot's boards outside 0.7 to 1.3 of the target.
func (w *work) spread(l lot, around limit, mid formula.Expr) Answer {
	v := l.values
	weighed := w.weigh("flooring-spread: each board of "+l.title(), w.woodItems(v, around, false), nil)
	w.heading("flooring-spread: boards of " + l.title() + " outside the limits, boards with an unusable reading")
	w.header("Board", "", "Judged rows", "Outside", "Unusable")
	from := w.next()
	for i := 0; i < len(v.rows); {
		k := i
		var counts, out, bad []formula.Expr
		for ; k < len(v.rows) && sameThing(v.rows[k], v.rows[i]); k++ {
			c, m := v.rows[k].counts, v.moist[k]
			usable := formula.All(m.Shown(), v.rows[k].read.Shown())
			beyond := formula.If(usable, flag(formula.Any(m.Below(around.least), m.Above(around.most))), num(0))
			counts = append(counts, c)
			out = append(out, formula.If(c.Same(num(0)), num(0), beyond))
			bad = append(bad, formula.If(c.Same(num(0)), num(0), formula.If(usable, num(0), num(1))))
		}
		r := w.add(label(v.rows[i].thing), label(""), plain(formula.Of(counts...).Max()), plain(formula.Of(out...).Max()))
		w.extend(w.next()-1, plain(formula.If(r[3].Same(num(1)), num(0), formula.Of(bad...).Max())))
		i = k
	}
	boards, outside, unusable := num(0), num(0), num(0)
	if to := w.next() - 1; to >= from {
		boards, outside, unusable = w.column(2, from, to).Sum(), w.column(3, from, to).Sum(), w.column(4, from, to).Sum()
	}
	r := w.add(label("Boards, outside, unusable"), label(""), plain(boards), plain(outside), plain(unusable))
	outcome := formula.If(r[3].Times(num(20)).Above(r[2]), formula.Text("not met"),
		formula.If(formula.Any(r[4].Above(num(0)), r[2].Same(num(0))), formula.Text("not shown"), formula.Text("met")))
	w.extend(w.next()-1, plain(formula.If(missing(mid), formula.Text("not shown"), outcome)))
	return Answer{Value: weighed.Value, Outcome: w.ref(5, w.next()-1)}
}

// periods answers whether the floor may live in its climate.
func (w *work) periods() {
	if !w.needed("climate-range") {
		return
	}
	w.heading("climate-range: what the covering states")
	products, covering, _ := w.stack()
	p := products[covering]
	ends := func(low, high string, unit evidence.Unit) limit {
		l := limit{unit: unit}
		end := func(column string) formula.Expr {
			cell := w.rec.cell(placeOf(p.Place), column)
			if cell.Figure().Is("") {
				return formula.Expr{}
			}
			return in(cell.Figure(), w.statedUnit(column), unit)
		}
		l.least, l.most = end(low), end(high)
		return l
	}
	unit := p.AirTempMax.Number.Unit
	if unit == "" {
		unit = p.AirTempMin.Number.Unit
	}
	temp, rh := ends("Air temp min", "Air temp max", unit), ends("Air RH min", "Air RH max", evidence.RH)
	var items []item
	for _, period := range w.service() {
		at := placeOf(period.Place)
		for _, side := range []struct {
			column string
			l      limit
			unit   evidence.Unit
		}{{"Temp", temp, w.rec.unit("Climates", "Temp")}, {"RH", rh, evidence.RH}} {
			if is(side.l.least) || is(side.l.most) {
				items = append(items, item{name: "period " + period.Name, row: at.String(), counts: num(1), value: in(w.figure(at, side.column), side.unit, side.l.unit), least: side.l.least, most: side.l.most})
			}
		}
	}
	w.answers["climate-range"] = w.weigh("climate-range: each period of the service climate", items, nil)
}
