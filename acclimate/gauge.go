package acclimate

import "firstboard/report/evidence"

// gauge holds one quantity of the air, its temperature or its humidity,
// against the limit of a window.
type gauge struct {
	limit evidence.Limit
	far   evidence.Exact // how far outside a value may lie and be excused, in the limit's unit
	typed func(*Air) evidence.Reading
	read  func(*Air) evidence.Reading                   // blank where what was typed is not believed
	u     func(instrument string) *evidence.Uncertainty // nil: compared as read
	acc   evidence.Acceptance
	known map[meterUnit]*meterEnds
	last  *meterEnds // neighboring rows are mostly of one instrument
}

// meterUnit is an instrument, as typed, and the unit it was read in.
type meterUnit struct {
	instrument string
	unit       evidence.Unit
}

// meterEnds are the ends for one instrument's readings in one unit. Where its
// uncertainty is not known, guarded acceptance compares nothing.
type meterEnds struct {
	by                  meterUnit
	judged, asRead, far ends
	usable              bool
}

// FarTemp and FarRH are how far outside its limit a reading of an excused run
// may lie: 10 F and 15 % RH (common practice, no source).
const (
	FarTemp = 10
	FarRH   = 15
)

// gauges are the quantities that a window asks for.
func (r Room) gauges(w window) []*gauge {
	temp := &gauge{limit: w.temp, acc: w.acceptance, typed: (*Air).temperature, read: (*Air).temperature}
	temp.far = evidence.ConvertSpan(evidence.Whole(FarTemp), evidence.Fahrenheit, w.temp.Unit())
	rh := &gauge{
		limit: w.rh, acc: w.acceptance, far: evidence.Whole(FarRH), typed: (*Air).humidity,
		read: (*Air).Humidity,
	}
	if !w.asRead {
		temp.u = func(id string) *evidence.Uncertainty { return r.Instruments.UTemp(id, w.temp.Unit()) }
		rh.u = func(id string) *evidence.Uncertainty { return r.Instruments.U(id, evidence.RH) }
	}
	var all []*gauge
	for _, g := range []*gauge{temp, rh} {
		if g.limit.Shown() {
			g.known = map[meterUnit]*meterEnds{}
			all = append(all, g)
		}
	}
	return all
}

// mark says how one row stands to its limits.
type mark uint8

const (
	breaks  mark = 1 << iota // a value breaks its limit, as it is accepted
	exceeds                  // the same as read
	beyond                   // a value lies too far outside to be excused
	blank                    // a value is missing
	lacking                  // a value cannot be compared, being blank or for another reason
)

// mark is how a row's value stands to the limit.
func (g *gauge) mark(a *Air) mark {
	r := g.read(a)
	if !r.Shown() {
		return blank | lacking
	}
	e := g.ends(meterUnit{a.Instrument, r.Unit})
	var m mark
	if e.usable && !e.judged.hold(r.Value) {
		m |= breaks
	}
	if !e.asRead.hold(r.Value) {
		m |= exceeds
	}
	if !e.far.hold(r.Value) {
		m |= beyond
	}
	if m&breaks == 0 && (!e.usable || g.limit.Lack != "") {
		m |= lacking
	}
	return m
}

// ends are the ends for readings of an instrument in a unit.
func (g *gauge) ends(by meterUnit) *meterEnds {
	if g.last == nil || g.last.by != by {
		if g.known[by] == nil {
			g.known[by] = g.endsFor(by)
		}
		g.last = g.known[by]
	}
	return g.last
}

func (g *gauge) endsFor(by meterUnit) *meterEnds {
	wide := func(x evidence.Exact) ends {
		return endsOf(g.limit, by.unit, evidence.ConvertSpan(x, g.limit.Unit(), by.unit))
	}
	e := &meterEnds{by: by, asRead: wide(evidence.Exact{}), far: wide(g.far), usable: true}
	e.judged = e.asRead
	if u := g.uncertainty(by.instrument); g.acc.Guarded && u != nil {
		e.judged, e.usable = wide(evidence.Exact{}.Sub(u.Value)), u.Known
	}
	return e
}

func (g *gauge) uncertainty(instrument string) *evidence.Uncertainty {
	if g.u == nil {
		return nil
	}
	return g.u(instrument)
}

// held is a row's value against the limit, by the row's name.
func (g *gauge) held(a *Air) evidence.Item {
	it := evidence.Measure(airName(a), g.read(a), g.limit)
	it.U = g.uncertainty(a.Instrument)
	if it.Place == nil {
		it.Place = a.Place
	}
	if g.typed(a).Shown() && !g.read(a).Shown() {
		it.Lack = tooDry
	}
	return it
}

// told is item for a value that decides: one of all that the air showed.
func (g *gauge) told(a *Air) evidence.Item {
	it := g.held(a)
	it.Says = g.read(a).String() + " at " + a.ReadAt.Written
	if u := g.limit.Unit(); g.read(a).Unit != u {
		it.Says += ", which is " + it.Figure() + " " + string(u)
	}
	if a.Instrument != "" {
		it.Says += " by " + a.Instrument
	}
	it.Name = "the air"
	return it
}

// airName names a row by its time and its instrument.
func airName(a *Air) string {
	name := "the air at " + a.ReadAt.Written
	if a.Instrument != "" {
		name += " (" + a.Instrument + ")"
	}
	return name
}
