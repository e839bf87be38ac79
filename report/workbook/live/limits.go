package live

import (
	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
	"firstboard/slab"
	"firstboard/wood"
)

// limit is a limit in force: its ends, empty where there is none, in a unit.
type limit struct {
	least, most formula.Expr
	unit        evidence.Unit
}

// ruling is how an end of a limit is made: its column, the check's default, who
// brings that where the cell is blank, and whether a membrane's own stands
// alone.
type ruling struct {
	column   string
	of       func(report.Product) report.Stated
	unit     evidence.Unit
	fallback formula.Expr
	coverers bool // the covering's blank brings the default
	everyone bool // every blank does
	between  bool
	highest  bool // the strictest is the highest: a lowest bound
}

// stack are the products of the area: covering, adhesive, membrane.
func (w *work) stack() (all []report.Product, covering, membrane int) {
	covering, membrane = -1, -1
	for i, id := range []string{w.d.Area.Covering, w.d.Area.Adhesive, w.d.Area.Membrane} {
		for _, p := range w.job.Products {
			if id != "" && evidence.Same(p.ID, id) {
				switch i {
				case 0:
					covering = len(all)
				case 2:
					membrane = len(all)
				}
				all = append(all, p)
			}
		}
	}
	return all, covering, membrane
}

// end is one end of a limit as a formula: which cells hold a number is taken
// for granted, what they hold is not.
func (w *work) end(r ruling) formula.Expr {
	products, covering, membrane := w.stack()
	var stated []formula.Expr
	for i, p := range products {
		s := r.of(p)
		cell := w.stated(p, r)
		switch {
		case s.Number.Shown() && r.between && i == membrane:
			return cell
		case s.Number.Shown():
			stated = append(stated, cell)
		case s.Blank() && is(r.fallback) && (r.everyone || r.coverers && i == covering):
			stated = append(stated, r.fallback)
		}
	}
	switch {
	case len(stated) == 0:
		return r.fallback
	case len(stated) == 1:
		return stated[0]
	case r.highest:
		return formula.Of(stated...).Max()
	}
	return formula.Of(stated...).Min()
}

// stated is a product's own number in the limit's unit; that its cell holds a
// number, none or nothing is taken for granted.
func (w *work) stated(p report.Product, r ruling) formula.Expr {
	at := placeOf(p.Place)
	cell := w.rec.cell(at, r.column)
	what := at.String() + ": " + r.column + " holds a number, none or nothing"
	stands := cell.Figure().Shown()
	if !r.of(p).Number.Shown() {
		stands = unchanged(cell)
	}
	if !w.granted(what) && cell.String()[0] != '"' {
		w.fixed = append(w.fixed, fixed{what, stands})
	}
	return in(cell.Figure(), r.of(p).Number.Unit, r.unit)
}

func (w *work) granted(what string) bool {
	for _, f := range w.fixed {
		if f.what == what {
			return true
		}
	}
	return false
}

// writeLimits writes the limits in force.
func (w *work) writeLimits() {
	w.limits = map[string]limit{}
	w.heading("Limits in force")
	w.header("What", "", "At least", "At most", "Unit")
	isWood := w.isWood()
	usual := acclimate.UsualTemp(isWood)
	temp := w.unitOf(func(p report.Product) report.Stated { return p.AirTempMax }, func(p report.Product) report.Stated { return p.AirTempMin }, evidence.Fahrenheit)
	bound := func(b evidence.Bound, u evidence.Unit) formula.Expr { return num(b.Number.In(u).Float()) }
	w.limit("air temperature", temp,
		ruling{column: "Air temp min", of: func(p report.Product) report.Stated { return p.AirTempMin }, fallback: bound(usual.Least, temp), highest: true},
		ruling{column: "Air temp max", of: func(p report.Product) report.Stated { return p.AirTempMax }, fallback: bound(usual.Most, temp)})
	low, high := w.usualHumidity()
	w.limit("air humidity", evidence.RH,
		ruling{column: "Air RH min", of: func(p report.Product) report.Stated { return p.AirRHMin }, fallback: low, highest: true},
		ruling{column: "Air RH max", of: func(p report.Product) report.Stated { return p.AirRHMax }, fallback: high})
	w.limit("slab relative humidity", evidence.RH, ruling{},
		ruling{column: "Slab RH max", of: func(p report.Product) report.Stated { return p.SlabRH }, fallback: bound(slab.DefaultRH(), evidence.RH), everyone: true, between: true})
	emission := func(p report.Product) report.Stated { return p.Emission }
	w.limit("slab moisture emission", w.unitOf(emission, emission, evidence.Pounds), ruling{},
		ruling{column: "Emission max", of: emission, between: true})
	w.limit("slab pH", evidence.PH,
		ruling{column: "pH min", of: func(p report.Product) report.Stated { return p.PHMin }, between: true, highest: true},
		ruling{column: "pH max", of: func(p report.Product) report.Stated { return p.PHMax }, between: true})
	w.limit("slab carbide (CM)", evidence.CM, ruling{},
		ruling{column: "CM max", of: func(p report.Product) report.Stated { return p.CM }, between: true})
	w.limit("subfloor moisture content", evidence.MC, ruling{},
		ruling{column: "Subfloor MC max", of: func(p report.Product) report.Stated { return p.SubfloorMC }, fallback: bound(wood.DefaultSubfloorMC(), evidence.MC), coverers: true})
	w.limit("flooring moisture content", evidence.MC,
		ruling{column: "Flooring MC min", of: func(p report.Product) report.Stated { return p.FlooringMin }, highest: true},
		ruling{column: "Flooring MC max", of: func(p report.Product) report.Stated { return p.FlooringMax }})
	w.limit("flooring less subfloor", evidence.Points, ruling{},
		ruling{column: "Difference max", of: func(p report.Product) report.Stated { return p.Difference }, fallback: w.usualDifference(), coverers: true})
	surface := func(p report.Product) report.Stated { return p.SurfaceTemp }
	warm := w.unitOf(surface, surface, evidence.Fahrenheit)
	w.limit("heated surface", warm, ruling{},
		ruling{column: "Surface temp max", of: surface, fallback: bound(acclimate.DefaultSurfaceMax(), warm), coverers: true})
}

func (w *work) limit(what string, unit evidence.Unit, least, most ruling) {
	least.unit, most.unit = unit, unit
	cells := []Cell{label(what), label(""), label(""), label(""), label(string(unit))}
	l := limit{unit: unit}
	for i, r := range []ruling{least, most} {
		if r.of == nil {
			continue
		}
		if e := w.end(r); is(e) {
			cells[2+i] = plain(e)
		}
	}
	refs := w.add(cells...)
	if cells[2].Live() {
		l.least = refs[2]
	}
	if cells[3].Live() {
		l.most = refs[3]
	}
	w.limits[what] = l
}

// unitOf is the unit that the stack states a limit in, else the usual one.
func (w *work) unitOf(of, or func(report.Product) report.Stated, usual evidence.Unit) evidence.Unit {
	products, _, _ := w.stack()
	for _, end := range []func(report.Product) report.Stated{of, or} {
		for _, p := range products {
			if n := end(p).Number; n.Shown() {
				return n.Unit
			}
		}
	}
	return usual
}

func (w *work) isWood() bool {
	products, covering, _ := w.stack()
	if covering < 0 {
		return false
	}
	k := products[covering].Kind
	return k == "solid wood" || k == "engineered wood" || k == "bamboo"
}

// usualDifference follows the width of the covering's face.
func (w *work) usualDifference() formula.Expr {
	products, covering, _ := w.stack()
	if covering < 0 {
		return num(2)
	}
	p := products[covering]
	cell := w.rec.figure(placeOf(p.Place), "Face width")
	unit := w.rec.unit("Products", "Face width")
	return formula.If(missing(cell), num(2), formula.If(in(cell, unit, evidence.Inch).Below(num(3)), num(4), num(2)))
}

// usualHumidity is the air's humidity where no product states it: over wood
// that of the service climate, never narrower than 5 points either side of its
// middle; over others at most 65 %.
func (w *work) usualHumidity() (low, high formula.Expr) {
	if !w.isWood() {
		return formula.Expr{}, num(65)
	}
	var rh []formula.Expr
	for _, p := range w.service() {
		rh = append(rh, w.rec.figure(placeOf(p.Place), "RH"))
	}
	if len(rh) == 0 {
		return formula.Expr{}, formula.Expr{}
	}
	all := formula.Of(rh...)
	middle := all.Min().Plus(all.Max()).Over(num(2))
	return formula.Of(all.Min(), middle.Minus(num(5))).Min().Round(9), formula.Of(all.Max(), middle.Plus(num(5))).Max().Round(9)
}
