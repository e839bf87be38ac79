package live

import (
	"math"
	"strconv"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// again is the outcome of a check whose record was changed in a way that no
// formula follows.
const again = "judge again"

// Working is the working of one area: its sheet, and what its formulas give for
// each check, as another sheet writes it.
type Working struct {
	Sheet    *Sheet
	findings map[string]Finding
}

// Finding is a check's formulas. Live says whether value and outcome are worked
// out again; where they are not, Outcome still says "judge again" once what it
// rests on is changed. Value and Limit are empty where they are not worked out.
type Finding struct {
	Live                  bool
	Value, Limit, Outcome formula.Expr
}

// Of is the check's formulas.
func (w Working) Of(id string) Finding { return w.findings[id] }

// For writes the working of an area on a sheet of that name.
func For(rec *Record, job report.Job, d report.Decision, sheet string) Working {
	w := &work{Sheet: &Sheet{Name: sheet}, rec: rec, job: job, d: d, basis: report.BasisOfAir(job, d.Area), area: placeOf(d.Area.Place), answers: map[string]Answer{}, seen: map[string]formula.Expr{}}
	w.begin()
	w.takeForGranted()
	w.meterDays()
	w.writeLimits()
	w.holes()
	w.dishes()
	w.spots()
	w.others()
	w.surfaces()
	w.fixWood()
	sub, onWood := w.subfloor()
	w.flooring(sub, onWood)
	w.periods()
	w.air()
	w.calibrations()
	w.ages()
	w.heat()
	w.finish()
	return w.working()
}

// takeForGranted fixes the words of the job, the area, its products and the
// instruments.
func (w *work) takeForGranted() {
	w.fix(w.area, "Area", "Base", "Made of", "Exterior wall", "Heated", "Below", "Covering", "Adhesive", "Membrane", "Fixing", "Climate")
	w.fixLength("Areas", "Area")
	products, _, _ := w.stack()
	for _, p := range products {
		w.fix(placeOf(p.Place), "Product", "Kind", "Species", "Data sheet")
	}
	w.fixLength("Products", "Product")
	w.fixMeters()
	w.fixLength("Instruments", "Instrument")
	w.fixJob()
}

// fixJob takes the job's rules for granted, but for settings that formulas
// follow.
func (w *work) fixJob() {
	i, known := w.rec.index["Job"]
	if !known {
		return
	}
	follows := map[string]bool{}
	for _, s := range []string{
		"Probe wait (h)", "Depth tolerance (%)", "Held conditions (h)", "Slab reading life (days)", "Wood reading life (days)",
		"Air reading life (h)", "Target tolerance (points)", "Heat run (h)",
	} {
		follows[evidence.Key(s)] = true
	}
	for _, r := range w.rec.Tables[i].Rows {
		p := place{"Job", r.Number}
		item, _ := w.rec.cell(p, "Item").Value().(string)
		_, number := w.rec.cell(p, "Entry").Value().(float64)
		switch {
		case follows[evidence.Key(item)] && number:
			w.fix(p, "Item")
		case rules(item):
			w.fix(p, "Item", "Entry")
		}
	}
	w.fixLength("Job", "Item")
}

// rules says whether a job item changes how anything is judged.
func rules(item string) bool {
	for _, name := range []string{"job", "site", "prepared by", "company", "general contractor", "elevation (ft)", "elevation (m)", "acceptance agreed by", "acceptance agreed on"} {
		if evidence.Same(item, name) {
			return false
		}
	}
	return item != ""
}

// working keeps the formulas that tell what the judge said, and leaves the
// other findings as judged.
func (w *work) working() Working {
	out := Working{Sheet: w.Sheet, findings: map[string]Finding{}}
	for _, f := range w.d.Findings {
		a, answered := w.answers[f.ID]
		live := Finding{Outcome: w.standing(f.ID, formula.Text(f.Outcome.String()))}
		if answered && a.Outcome.Is(f.Outcome.String()) {
			switch {
			case is(a.Value) && tells(a.Value, f.Value):
				live = Finding{Live: true, Value: w.Abroad(a.Value), Outcome: w.standing(f.ID, w.Abroad(a.Outcome))}
				if is(a.Limit) && tells(a.Limit, f.Limit) {
					live.Limit = w.Abroad(a.Limit)
				}
			case !is(a.Value):
				live.Outcome = w.standing(f.ID, w.Abroad(a.Outcome))
			}
		}
		out.findings[f.ID] = live
	}
	return out
}

// standing is an outcome while what it takes for granted stands.
func (w *work) standing(id string, outcome formula.Expr) formula.Expr {
	stands := []formula.Expr{w.Abroad(w.ref(2, w.headRow())).Same(num(1))}
	if is(w.airStands) && restsOnAir(id) {
		stands = append(stands, w.Abroad(w.airStands).Same(num(1)))
	}
	if is(w.dewStands) && id == "surface-dew" {
		stands = append(stands, w.Abroad(w.dewStands).Same(num(1)))
	}
	return formula.If(formula.All(stands...), outcome, formula.Text(again))
}

func restsOnAir(id string) bool {
	switch id {
	case "surface-dew", "calibration", "reading-age", "flooring-steady":
		return true
	}
	return strings.HasPrefix(id, "air-")
}

// tells says whether a formula gives what the judge wrote.
func tells(e formula.Expr, written string) bool {
	x, isNumber := e.Value().(float64)
	if !isNumber {
		return e.Is(written)
	}
	y, err := strconv.ParseFloat(written, 64)
	_, fraction, _ := strings.Cut(written, ".")
	return err == nil && math.Abs(x-y) <= 0.5*math.Pow10(-len(fraction))+1e-9
}
