package formula

import (
	"cmp"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Printer prints workings. Find is the cell of the workbook that holds what was
// typed there, where one does. Near are cells beside the formula that give a
// part of it already.
type Printer struct {
	Find    func(evidence.Working) (Cell, bool)
	Figures *Figures
	Near    map[string]Cell
}

// longest is how long a formula grows before its parts get cells of their own;
// a cell takes 8192 letters.
const longest = 1000

// most is how many cells a working may rest on and still be followed by hand.
const most = 20_000

// Rests says whether a working rests on cells of the record, and on no more of
// them than a spreadsheet should follow.
func Rests(w evidence.Working) bool {
	n := cellsOf(w)
	return n > 0 && n <= most
}

func cellsOf(w evidence.Working) int {
	if w.Op == evidence.OpTyped || w.Op == evidence.OpMoment {
		return 1
	}
	n := 0
	for _, a := range w.Args {
		n += cellsOf(a)
	}
	return n
}

// Print is a working as a formula without its equals sign; ok is false where it
// has no form.
func (p *Printer) Print(w evidence.Working) (text string, ok bool) {
	before := len(p.Figures.Rows)
	e, ok := p.expr(w)
	if !ok {
		p.Figures.undo(before)
	}
	return e.text, ok
}

// expr is a working as a formula, or the cell that gives it already.
func (p *Printer) expr(w evidence.Working) (expr, bool) {
	e, ok := p.form(w)
	if !ok || e.cell != nil {
		return e, ok
	}
	if near, found := p.Near[e.text]; found {
		return reference(near), true
	}
	if known, found := p.Figures.find(e.text); found {
		return known, true
	}
	if len(e.text) > longest {
		return p.own(w, e), true
	}
	return e, true
}

// own gives a formula a cell of its own.
func (p *Printer) own(w evidence.Working, e expr) expr {
	if e.cell != nil {
		return e
	}
	if known, found := p.Figures.find(e.text); found {
		return known
	}
	return p.Figures.add(what(w), Figure{e.text, w.Value.Float()})[0]
}

// what names a figure.
func what(w evidence.Working) string {
	return cmp.Or(w.Label, string(w.Op)) + lists.If(w.Unit == evidence.None, "", " ("+string(w.Unit)+")")
}

// form is a working as a formula by its last step.
func (p *Printer) form(w evidence.Working) (expr, bool) {
	switch w.Op {
	case evidence.OpTyped:
		return p.typed(w)
	case evidence.OpStated:
		return expr{text: literal(w.Value)}, true
	case evidence.OpMoment:
		day, ok := p.serial(w)
		return expr{text: "((" + day.text + "-25569)*24)"}, ok
	case evidence.OpHours, evidence.OpDays:
		return p.between(w)
	case evidence.OpSum, evidence.OpHighest, evidence.OpLowest, evidence.OpMean, evidence.OpCount:
		return p.together(w)
	case evidence.OpInside:
		return p.inside(w)
	case evidence.OpNearest:
		return p.nearest(w)
	}
	args, ok := p.args(w.Args)
	if !ok {
		return expr{}, false
	}
	return p.onFigures(w, args)
}

// args are workings as formulas, if each has a form.
func (p *Printer) args(workings []evidence.Working) (all []expr, ok bool) {
	for _, a := range workings {
		e, ok := p.expr(a)
		if !ok {
			return nil, false
		}
		all = append(all, e)
	}
	return all, true
}

// onFigures is a step on one or two figures.
func (p *Printer) onFigures(w evidence.Working, args []expr) (expr, bool) {
	a := args[0].text
	b := args[len(args)-1].text
	signs := map[evidence.Op]string{evidence.OpLess: "-", evidence.OpTimes: "*", evidence.OpOver: "/"}
	switch w.Op {
	case evidence.OpLess, evidence.OpTimes, evidence.OpOver:
		return expr{text: "(" + a + signs[w.Op] + b + ")"}, true
	case evidence.OpUnsigned:
		return expr{text: "ABS(" + a + ")"}, true
	case evidence.OpUp:
		return expr{text: "(-INT(-ROUND(" + a + ",9)))"}, true
	case evidence.OpRound:
		return p.halfToEven(w, args[0]), true
	case evidence.OpConvert:
		return expr{text: converted(a, w.Args[0].Unit, w.Unit)}, true
	case evidence.OpEMC:
		return p.emc(w, args), true
	case evidence.OpDewPoint:
		return p.dewPoint(w, args), true
	}
	return expr{}, false
}

// typed is a number in a cell; one that the workbook keeps as text is read as
// the number it is.
func (p *Printer) typed(w evidence.Working) (expr, bool) {
	c, ok := p.Find(w)
	switch {
	case !ok || c.Number:
		return reference(c), ok
	case c.Fraction:
		return expr{text: fraction(c.Ref())}, true
	}
	return expr{text: valueOf(c.Ref())}, true
}

func valueOf(text string) string { return `_xlfn.NUMBERVALUE(` + text + `,".")` }

// fraction is a fraction of the trade as a number: 5/8, 2 1/4 or 2-1/4.
func fraction(cell string) string {
	text := `TRIM(SUBSTITUTE(` + cell + `,"-"," "))`
	whole := `IFERROR(` + valueOf(`LEFT(`+text+`,FIND(" ",`+text+`)-1)`) + `,0)`
	part := `IFERROR(MID(` + text + `,FIND(" ",` + text + `)+1,99),` + text + `)`
	above, below := `LEFT(`+part+`,FIND("/",`+part+`)-1)`, `MID(`+part+`,FIND("/",`+part+`)+1,99)`
	return `(` + whole + `+` + valueOf(above) + `/` + valueOf(below) + `)`
}

// serial is a moment as spreadsheets count it, in days.
func (p *Printer) serial(w evidence.Working) (expr, bool) {
	if w.Op == evidence.OpMoment {
		c, ok := p.Find(w)
		return reference(c), ok && c.Number
	}
	e, ok := p.expr(w)
	return expr{text: "(" + e.text + "/24+25569)"}, ok
}

// between is the time from one moment to another, to the second, or the days of
// the calendar.
func (p *Printer) between(w evidence.Working) (expr, bool) {
	from, ok := p.serial(w.Args[0])
	to, known := p.serial(w.Args[1])
	if w.Op == evidence.OpDays {
		return expr{text: "(INT(ROUND(" + to.text + ",6))-INT(ROUND(" + from.text + ",6)))"}, ok && known
	}
	return expr{text: "(ROUND((" + to.text + "-" + from.text + ")*86400,0)/3600)"}, ok && known
}

// converted takes a formula from one unit to another of the same quantity.
func converted(a string, from, to evidence.Unit) string {
	base := evidence.Convert(evidence.Whole(0), from, to)
	factor := evidence.Convert(evidence.Whole(1), from, to).Sub(base)
	return "(" + a + "*" + literal(factor) + lists.If(base.Sign() != 0, "+"+literal(base), "") + ")"
}

// halfToEven rounds to so many places, a half to the even neighbor.
func (p *Printer) halfToEven(w evidence.Working, a expr) expr {
	scale := "1" + strings.Repeat("0", w.Places)
	s := "ROUND(" + a.text + "*" + scale + ",9)"
	if a.cell == nil {
		s = p.Figures.add(what(w.Args[0])+" before it is rounded", Figure{s, scaled(w)})[0].text
	}
	return expr{text: "(IF(" + s + "-INT(" + s + ")=0.5,2*ROUND(" + s + "/2,0),ROUND(" + s + ",0))/" + scale + ")"}
}

func scaled(w evidence.Working) float64 {
	x := w.Args[0].Value
	for range w.Places {
		x = x.Mul(evidence.Whole(10))
	}
	return x.Round(9).Float()
}
