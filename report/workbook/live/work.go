package live

import (
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// Answer is what a check's formulas give: references into the working sheet.
// Limit is empty where it is not worked out.
type Answer struct{ Value, Limit, Outcome formula.Expr }

// work is the working of one area while it is written.
type work struct {
	*Sheet
	rec       *Record
	job       report.Job
	d         report.Decision
	basis     report.AirBasis
	area      place
	same      formula.Expr // 1 while what is taken for granted stands
	airStands formula.Expr // 1 while the air log stands, empty where there is none
	dewStands formula.Expr // 1 while the surfaces stand, empty where there are none
	wet       formula.Expr // the latest wetting, the empty text where there was none
	covered   formula.Expr // the day the slab was covered, the same
	layOn     formula.Expr
	changes   clockChanges
	fixed     []fixed
	limits    map[string]limit
	uses      []use
	answers   map[string]Answer
	seen      map[string]formula.Expr // readings that stand in the working, by row and column
}

// blank is the empty text: nothing is known.
func blank() formula.Expr { return formula.Text("") }

func num(x float64) formula.Expr { return formula.Number(x) }

// missing says whether an expression gives the empty text.
func missing(e formula.Expr) formula.Expr { return e.Says("") }

// known is e where all the others are known, else the empty text.
func known(e formula.Expr, needs ...formula.Expr) formula.Expr {
	var gone []formula.Expr
	for _, n := range needs {
		gone = append(gone, missing(n))
	}
	return formula.If(formula.Any(gone...), blank(), e)
}

// flag is 1 where a condition holds, else 0.
func flag(condition formula.Expr) formula.Expr { return formula.If(condition, num(1), num(0)) }

// begin writes the head of the working and what every part of it needs.
func (w *work) begin() {
	a := w.d.Area
	w.Rows = append(w.Rows, Row{Heading: true, Cells: labels([]string{"Area " + a.ID + ": how its figures are worked out"})})
	for _, s := range []string{
		"Every figure below is a formula over the record's own sheets of this workbook. Change a reading or a limit there, and outcome and verdict follow.",
		"Rows added to the record, changed names or fixed words, and what firstboard judged and no formula tells again, are noticed at the foot of this sheet: the outcome is then \"judge again\".",
	} {
		w.Rows = append(w.Rows, Row{Cells: labels([]string{s})})
	}
	w.same = w.add(label("What is taken for granted stands (1) or not (0)"), label(""), plain(num(1)))[2]
	w.list("Areas", []place{w.area}, "Size", "Slab thickness", "Drying faces", "Heat run from", "Covered on", "Lay on")
	w.heading("Days and events")
	w.covered, w.wet = blank(), w.wetted()
	w.layOn = w.figure(w.area, "Lay on")
	typed := w.figure(w.area, "Covered on")
	counts := formula.If(formula.Any(missing(typed), missing(w.wet)), typed,
		formula.If(w.wet.Down().Above(typed), blank(), typed))
	w.covered = typed
	if !w.wet.Is("") {
		w.covered = w.add(label("Covered on, unless wetted on a later day"), label(""), formed(counts, Day))[2]
	}
	w.changes = w.clockChanges()
}

// wetted is the latest wetting of the area or the site.
func (w *work) wetted() formula.Expr {
	var times []formula.Expr
	for _, e := range w.job.Events {
		p := placeOf(e.Place)
		w.fix(p, "Area", "What")
		if e.What == "wetted" && (e.Area == "" || evidence.Same(e.Area, w.d.Area.ID)) {
			times = append(times, w.add(label("Wetted"), label(p.String()), formed(w.figure(p, "At"), Minute))[2])
		}
	}
	w.fixLength("Events", "What")
	if len(times) == 0 {
		return blank()
	}
	last := formula.Of(times...).Max()
	return w.add(label("Latest wetting"), label(""), formed(formula.If(last.Same(num(0)), blank(), last), Minute))[2]
}

// figure is a reading of the record: where it stands in the working, else in
// the record itself.
func (w *work) figure(p place, column string) formula.Expr {
	if e, known := w.seen[p.String()+"\x00"+column]; known {
		return e
	}
	return w.rec.figure(p, column)
}

// list writes columns of some rows as they stand in the record: numbers, days
// and times, empty where there is none.
func (w *work) list(table string, places []place, columns ...string) {
	if len(places) == 0 {
		return
	}
	w.heading(table + ": readings as they stand in the record")
	names := []string{"Row of the record", ""}
	for _, c := range columns {
		names = append(names, w.rec.header(table, c))
	}
	w.header(names...)
	for _, p := range places {
		cells := []Cell{label(p.String()), label("")}
		for _, c := range columns {
			form := Plain
			switch {
			case strings.HasSuffix(c, " at") || strings.HasSuffix(c, " from"):
				form = Minute
			case strings.HasSuffix(c, " on"):
				form = Day
			}
			cells = append(cells, formed(w.rec.figure(p, c), form))
		}
		refs := w.add(cells...)
		for i, c := range columns {
			w.seen[p.String()+"\x00"+c] = refs[2+i]
		}
	}
}

// places are the rows of some taken ones.
func places(rows []taken) []place {
	var all []place
	for _, r := range rows {
		all = append(all, r.place)
	}
	return all
}
