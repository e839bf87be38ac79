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
	highest  bool                     // the strictest is the highest: a lowest bound
	needs    func(covering bool) bool // whose number makes a check needed
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

// end is one end of a limit as a formula: the product's own numbers, the default
// where a blank cell brings it, nothing where the data sheet states none.
func (w *work) end(what string, r ruling) formula.Expr {
	products, covering, membrane := w.stack()
	from := w.next()
	alone := formula.Expr{}
	for i, p := range products {
		cell := w.rec.cell(placeOf(p.Place), r.column)
		brings := blank()
		if is(r.fallback) && (r.everyone || r.coverers && i == covering) {
			brings = r.fallback
		}
		stated := formula.If(cell.Figure().Shown(), in(cell.Figure(), w.statedUnit(r.column), r.unit), formula.If(missing(cell), brings, blank()))
		ref := w.add(label(what+": "+p.ID), label(placeOf(p.Place).String()+", "+r.column), plain(stated))[2]
		if r.between && i == membrane {
			alone = formula.If(cell.Figure().Shown(), ref, num(0))
		}
		if r.needs != nil && r.needs(i == covering) {
			w.fixStated(placeOf(p.Place), r.column)
		}
	}
	if w.next() == from {
		return r.fallback
	}
	all := w.column(2, from, w.next()-1)
	strictest := all.Min()
	if r.highest {
		strictest = all.Max()
	}
	none := r.fallback
	if !is(none) {
		none = blank()
	}
	strictest = formula.If(all.Count().Same(num(0)), none, strictest)
	if is(alone) {
		at := placeOf(products[membrane].Place)
		strictest = formula.If(w.rec.cell(at, r.column).Figure().Shown(), alone, strictest)
	}
	if strictest.Is("") { // nobody states one, and there is no default
		return formula.Expr{}
	}
	return strictest
}

// statedUnit is the unit that the products' column stands in.
func (w *work) statedUnit(column string) evidence.Unit {
	switch u := w.rec.unit("Products", column); u {
	case "lb":
		return evidence.Pounds
	case evidence.Gram:
		return evidence.Grams
	case evidence.Fahrenheit, evidence.Celsius:
		return u
	}
	return ""
}

// fixStated takes for granted whether a product states a number: on that hangs
// which checks are needed.
func (w *work) fixStated(at place, column string) {
	what := at.String() + ": whether " + column + " states a number"
	cell := w.rec.cell(at, column)
	if w.granted(what) || cell.String()[0] == '"' {
		return
	}
	stands := cell.Figure().Shown()
	if cell.Figure().Is("") {
		stands = missing(cell.Figure())
	}
	if text, isText := cell.Value().(string); isText || cell.Value() == nil {
		stands = formula.All(stands, flag(cell.Says(text)))
	}
	w.fixed = append(w.fixed, fixed{what, stands})
}

func (w *work) granted(what string) bool {
	for _, f := range w.fixed {
		if f.what == what {
			return true
		}
	}
	return false
}

func anybody(bool) bool              { return true }
func theCovering(covering bool) bool { return covering }

// writeLimits writes the limits in force.
func (w *work) writeLimits() {
	w.limits = map[string]limit{}
	var periods []place
	for _, p := range w.service() {
		periods = append(periods, placeOf(p.Place))
	}
	w.list("Climates", periods, "Temp", "RH")
	w.heading("Limits in force")
	w.header("What", "Cell of the record", "At least, or stated", "At most", "Unit")
	isWood := w.isWood()
	usual := acclimate.UsualTemp(isWood)
	temp := evidence.Fahrenheit
	if w.found("slab-temp").Unit == evidence.Celsius {
		temp = evidence.Celsius
	}
	bound := func(b evidence.Bound, u evidence.Unit) formula.Expr { return num(b.Number.In(u).Float()) }
	w.limit("air temperature", temp,
		ruling{column: "Air temp min", needs: theCovering, of: func(p report.Product) report.Stated { return p.AirTempMin }, fallback: bound(usual.Least, temp), highest: true},
		ruling{column: "Air temp max", needs: theCovering, of: func(p report.Product) report.Stated { return p.AirTempMax }, fallback: bound(usual.Most, temp)})
	low, high := w.usualHumidity()
	w.limit("air humidity", evidence.RH,
		ruling{column: "Air RH min", needs: theCovering, of: func(p report.Product) report.Stated { return p.AirRHMin }, fallback: low, highest: true},
		ruling{column: "Air RH max", needs: theCovering, of: func(p report.Product) report.Stated { return p.AirRHMax }, fallback: high})
	w.limit("slab relative humidity", evidence.RH, ruling{},
		ruling{column: "Slab RH max", of: func(p report.Product) report.Stated { return p.SlabRH }, fallback: bound(slab.DefaultRH(), evidence.RH), everyone: true, between: true, needs: anybody})
	emission := func(p report.Product) report.Stated { return p.Emission }
	w.limit("slab moisture emission", w.unitOf(emission, emission, evidence.Pounds), ruling{},
		ruling{column: "Emission max", of: emission, between: true, needs: anybody})
	w.limit("slab pH", evidence.PH,
		ruling{column: "pH min", of: func(p report.Product) report.Stated { return p.PHMin }, between: true, needs: anybody, highest: true},
		ruling{column: "pH max", of: func(p report.Product) report.Stated { return p.PHMax }, between: true, needs: anybody})
	w.limit("slab carbide (CM)", evidence.CM, ruling{},
		ruling{column: "CM max", of: func(p report.Product) report.Stated { return p.CM }, between: true, needs: anybody})
	w.limit("subfloor moisture content", evidence.MC, ruling{},
		ruling{column: "Subfloor MC max", of: func(p report.Product) report.Stated { return p.SubfloorMC }, fallback: bound(wood.DefaultSubfloorMC(), evidence.MC), coverers: true})
	w.limit("flooring moisture content", evidence.MC,
		ruling{column: "Flooring MC min", needs: anybody, of: func(p report.Product) report.Stated { return p.FlooringMin }, highest: true},
		ruling{column: "Flooring MC max", needs: anybody, of: func(p report.Product) report.Stated { return p.FlooringMax }})
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
		if e := w.end(what, r); is(e) {
			cells[2+i] = plain(e)
		}
	}
	cells[0] = label(what + ": in force")
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
	cell := w.figure(placeOf(p.Place), "Face width")
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
		rh = append(rh, w.figure(placeOf(p.Place), "RH"))
	}
	if len(rh) == 0 {
		return formula.Expr{}, formula.Expr{}
	}
	all := formula.Of(rh...)
	middle := all.Min().Plus(all.Max()).Over(num(2))
	return formula.Of(all.Min(), middle.Minus(num(5))).Min().Round(9), formula.Of(all.Max(), middle.Plus(num(5))).Max().Round(9)
}
