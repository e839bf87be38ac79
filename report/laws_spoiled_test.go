package report_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/limits"
)

// filter keeps the rows of a table for which keep answers yes.
func filter(rows reflect.Value, keep func(i int) bool) {
	kept := reflect.MakeSlice(rows.Type(), 0, rows.Len())
	for i := range rows.Len() {
		if keep(i) {
			kept = reflect.Append(kept, rows.Index(i))
		}
	}
	rows.Set(kept)
}

// spoiled draws a good record and spoils it in a few ways.
func spoiled(t *rapid.T) report.Job {
	j := made(t)
	j.Areas = slices.Clone(j.Areas)
	ways := []func(*rapid.T, *report.Job){
		nearLimit, nearLimit, blankOne, blankOne, moveOne, repeat, repeat, repeat, discard, discard, wet, cover,
		setAside, lapse, gusts, gusts, gusts, dropOne, otherMeter, otherMeter, change, restate, reshape, laterDay, happening, standard,
	}
	for range rapid.SampledFrom([]int{0, 1, 1, 2, 2, 3, 3, 4}).Draw(t, "ways") {
		ways[rapid.IntRange(0, len(ways)-1).Draw(t, "way")](t, &j)
	}
	return j
}

func pick(t *rapid.T, what string, n int) int { return rapid.IntRange(0, n-1).Draw(t, what) }

// anyRow picks a table by name with at least one row, and a row of it.
func anyRow(t *rapid.T, j *report.Job, names ...string) (rows reflect.Value, i int, ok bool) {
	rows = tables(j)[names[pick(t, "table", len(names))]]
	if rows.Len() == 0 {
		return rows, 0, false
	}
	return rows, pick(t, "row", rows.Len()), true
}

func anyTable() []string {
	return []string{"Air", "Carbides", "Checks", "Dishes", "Holes", "Others", "PHs", "Scans", "Surfaces", "Wood"}
}

// limitsNear are the values that stand at, just under and just over a limit,
// or far off, by the field they are typed in.
func limitsNear() map[string][]float64 {
	return map[string][]float64{
		"Holes.RH": {29.9, 30, 74.9, 75, 75.1, 78, 78.5, 80, 80.1, 85.1, 90.1, 99}, "Holes.Temp": {59.9, 64.9, 65, 80.1, 95.1},
		"Holes.Depth": {1.1, 1.75, 2.2, 2.3, 3}, "Holes.ToWall": {3, 3.1, 20}, "Holes.X": {1, 5, 5.1, 30},
		"Dishes.End": {29, 30, 31.9, 32.8, 33.5, 40}, "PHs.PH": {6.9, 7, 9.9, 10, 10.1, 11.1, 13},
		"Carbides.CM": {1.9, 1.95, 2, 2.1, 5}, "Others.Result": {29, 30, 30.5, 299.5, 300, 301},
		"Air.Temp": {59, 60.5, 64, 65, 80, 81, 90}, "Air.RH": {25, 31.9, 33, 49, 50, 50.1, 54, 60, 65.1, 90},
		"Surfaces.Temp": {49, 50, 52, 80, 80.1, 81, 82, 84, 85.5, 90},
		"Wood.Reading":  {3.9, 5.5, 6, 6.5, 9.4, 9.6, 10.5, 11.9, 12, 12.1, 13.9, 14.1, 16, 24, 26, 31},
		"Wood.WoodTemp": {-10, 40, 60, 90, 130},
		"Checks.Read":   {73.2, 73.3, 77.3, 77.4, 90}, "Scans.Reading": {10, 60},
	}
}

// nearLimit moves one value to a limit's edge.
func nearLimit(t *rapid.T, j *report.Job) {
	var fields []string
	for field := range limitsNear() {
		fields = append(fields, field)
	}
	slices.Sort(fields)
	field := fields[pick(t, "field", len(fields))]
	table, column, _ := strings.Cut(field, ".")
	rows, i, ok := anyRow(t, j, table)
	if !ok {
		return
	}
	values := limitsNear()[field]
	setTo(rows.Index(i).FieldByName(column), values[pick(t, "value", len(values))])
}

// setTo types another number where one was typed.
func setTo(field reflect.Value, x float64) {
	r := field.Interface().(evidence.Reading)
	r.Value = decimal.NewFromFloat(x).Round(4)
	r.Written = r.Value.String()
	field.Set(reflect.ValueOf(r))
}

// blankOne blanks a cell.
func blankOne(t *rapid.T, j *report.Job) {
	cells := measured(j)
	empty(cells[pick(t, "blank", len(cells))].of(j))
}

// moveOne shifts a time of a row.
func moveOne(t *rapid.T, j *report.Job) {
	cells := slices.DeleteFunc(measured(j), func(c cell) bool { return c.of(j).Type() != reflect.TypeFor[evidence.Time]() })
	shift(t, cells[pick(t, "moved", len(cells))].of(j))
}

func shift(t *rapid.T, field reflect.Value) {
	if x := field.Interface().(evidence.Time); x.Shown() {
		field.Set(reflect.ValueOf(shifted(t, x)))
	}
}

// repeat copies a row: at the same time with another value, without a time,
// or at another time, of the same thing or another.
func repeat(t *rapid.T, j *report.Job) {
	rows, i, ok := anyRow(t, j, "Air", "Carbides", "Checks", "Dishes", "Holes", "Holes", "Others", "PHs", "Surfaces", "Wood", "Wood")
	if !ok {
		return
	}
	again := reflect.New(rows.Type().Elem()).Elem()
	again.Set(rows.Index(i))
	for _, name := range []string{"RH", "End", "PH", "CM", "Result", "Temp", "Reading", "Read"} {
		if field := again.FieldByName(name); field.IsValid() && pick(t, "other value", 2) == 1 {
			if r := field.Interface().(evidence.Reading); r.Shown() {
				setTo(field, r.Value.InexactFloat64()*[]float64{0.9, 0.95, 1.02, 1.1, 1.3}[pick(t, "times", 5)])
			}
			break
		}
	}
	for _, name := range []string{"ReadAt", "RetrievedAt", "CheckedAt"} {
		if field := again.FieldByName(name); field.IsValid() {
			switch pick(t, "time", 3) {
			case 0:
				empty(field)
			case 1:
				shift(t, field)
			}
		}
	}
	put(again, fmt.Sprintf("%s again %d", rows.Type().Elem().Name(), rows.Len()+1))
	rows.Set(reflect.Append(rows, again))
}

// discard puts a hole out of use, with or without another beside it.
func discard(t *rapid.T, j *report.Job) {
	if len(j.Holes) == 0 {
		return
	}
	i := pick(t, "discarded", len(j.Holes))
	h := j.Holes[i]
	j.Holes[i].Discarded = "crack"
	if pick(t, "over", 2) == 1 {
		setTo(reflect.ValueOf(&j.Holes[i].RH).Elem(), 95)
	}
	if pick(t, "its meter", 4) == 0 {
		j.Holes[i].Instrument = []string{"", "XX1", "RP1"}[pick(t, "meter", 3)]
	}
	if pick(t, "replaced", 3) == 0 {
		return
	}
	h.Hole += "R"
	h.X = num(h.X.Value.InexactFloat64()+[]float64{1, 3, 4}[pick(t, "beside", 3)], evidence.Foot)
	h.SealedAt, h.ReadAt = later(h.ReadAt, 1), later(h.ReadAt, float64([]int{20, 26, 30}[pick(t, "replacement read", 3)]))
	put(reflect.ValueOf(&h).Elem(), fmt.Sprintf("replacement %d", len(j.Holes)))
	j.Holes = append(j.Holes, h)
}

func later(at evidence.Time, hours float64) evidence.Time {
	if !at.Shown() {
		return at
	}
	return since(hours + at.First.Sub(since(0).First).Hours())
}

// areaOrSite is an area's name, or a blank for the whole site.
func areaOrSite(t *rapid.T, j *report.Job) string {
	if i := pick(t, "where", len(j.Areas)+1); i < len(j.Areas) {
		return j.Areas[i].ID
	}
	return ""
}

// wet brings water.
func wet(t *rapid.T, j *report.Job) {
	at := []float64{-300, -100, -71, -39.5, -30, 10}[pick(t, "water", 6)]
	j.Events = append(j.Events, report.Event{Area: areaOrSite(t, j), At: since(at), What: "water"})
}

// happening brings another event.
func happening(t *rapid.T, j *report.Job) {
	what := []string{"HVAC off", "building open", "leveler placed", "other"}[pick(t, "event", 4)]
	at := []float64{-300, -60, -20, -3, 30}[pick(t, "when", 5)]
	j.Events = append(j.Events, report.Event{Area: areaOrSite(t, j), At: since(at), What: what})
}

// standard checks an instrument against its standard once more.
func standard(t *rapid.T, j *report.Job) {
	id := []string{"AL1", "PM1", "IR1", "PH1", "RP1", "BAL"}[pick(t, "checked", 6)]
	off := []float64{0, 0.5, 2.1, 4}[pick(t, "off", 4)]
	j.Checks = append(slices.Clone(j.Checks), check(id, []float64{-500, -45, -20, 300}[pick(t, "at", 4)], 10, 10+off))
}

// cover says when the slab was covered, or nothing.
func cover(t *rapid.T, j *report.Job) {
	a := &j.Areas[pick(t, "area", len(j.Areas))]
	a.CoveredOn = evidence.Date{}
	if n := pick(t, "covered", 4); n > 0 {
		a.CoveredOn = day(installed - evidence.Day(2*n))
	}
}

// setAside culls boards.
func setAside(t *rapid.T, j *report.Job) {
	for i := range j.Wood {
		if j.Wood[i].Of == "flooring" && pick(t, "culled", 12) == 0 {
			j.Wood[i].SetAside = true
			if pick(t, "why", 2) == 1 {
				j.Wood[i].Note = "split"
			}
		}
	}
}

// lapse spoils what is known of an instrument.
func lapse(t *rapid.T, j *report.Job) {
	ids := []string{"rp1", "rp2", "al1", "al2", "ir1", "pm1", "pm2", "pl1", "bal", "ph1", "cm1", "ot1"}
	id := ids[pick(t, "lapsed", len(ids))]
	i := j.Instruments[id]
	switch pick(t, "how", 6) {
	case 0:
		i.CalibratedOn = evidence.Date{}
	case 1:
		i.CalibratedOn, i.DueOn = day(installed-500), evidence.Date{}
	case 2:
		i.DueOn = day(installed - 3)
	case 3:
		i.CalibratedOn = day(installed - 2)
	case 4:
		i.Uncertainty = evidence.Reading{}
	default:
		i.Uncertainty, i.UncertaintyTemp = num(6, evidence.None), num(4, evidence.Fahrenheit)
	}
	j.Instruments[id] = i
}

// gusts are rows half an hour apart in and out of range, and near its edge.
func gusts(t *rapid.T, j *report.Job) {
	by, area := []string{"AL1", "AL2", "AL2"}[pick(t, "log", 3)], areaOrSite(t, j)
	from := rapid.SampledFrom([]float64{-130, -100, -75, -50, -42, -34, -30, -26, -10}).Draw(t, "from")
	log := func(from float64, rhs []float64) {
		for i, rh := range rhs {
			a := acclimate.Air{
				Area: area, ReadAt: since(from + 0.5*float64(i)), Temp: num(70, evidence.Fahrenheit),
				RH: num(rh, evidence.RH), Instrument: by,
			}
			put(reflect.ValueOf(&a).Elem(), fmt.Sprintf("gust %d", len(j.Air)))
			j.Air = append(j.Air, a)
		}
	}
	var rhs []float64
	for range rapid.IntRange(3, 7).Draw(t, "gusts") {
		rhs = append(rhs, rapid.SampledFrom([]float64{41, 41, 48.5, 51, 63.5, 70, 70}).Draw(t, "rh"))
	}
	log(from, rhs)
	if pick(t, "earlier", 2) == 1 {
		log(from-20, []float64{41, 70, 41})
	}
}

// dropOne loses a row.
func dropOne(t *rapid.T, j *report.Job) {
	if rows, gone, ok := anyRow(t, j, anyTable()...); ok {
		filter(rows, func(i int) bool { return i != gone })
	}
}

// otherMeter names another instrument behind a row, of any kind.
func otherMeter(t *rapid.T, j *report.Job) {
	var ids []string
	for id := range j.Instruments {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	if rows, i, ok := anyRow(t, j, "Air", "Dishes", "Holes", "Holes", "Others", "PHs", "Surfaces", "Wood"); ok {
		rows.Index(i).FieldByName("Instrument").SetString(ids[pick(t, "meter", len(ids))])
	}
}

// change changes a setting.
func change(t *rapid.T, j *report.Job) {
	items := j.Settings.Items()
	it := items[pick(t, "setting", len(items))]
	setTo(reflect.ValueOf(it.Value).Elem(), it.Value.Value.InexactFloat64()*[]float64{0.25, 0.5, 2, 3}[pick(t, "of it", 4)])
}

// restate states another limit of a product, or none, or leaves it blank.
func restate(t *rapid.T, j *report.Job) {
	p := reflect.ValueOf(&j.Products[pick(t, "product", len(j.Products))]).Elem()
	var stated []int
	for i := range p.NumField() {
		if p.Field(i).Type() == reflect.TypeFor[limits.Stated]() {
			stated = append(stated, i)
		}
	}
	field := p.Field(stated[pick(t, "limit", len(stated))])
	s := field.Interface().(limits.Stated)
	switch pick(t, "to", 3) {
	case 0:
		s = limits.Stated{}
	case 1:
		s = none()
	default:
		if s.Number.Shown() {
			setTo(reflect.ValueOf(&s.Number).Elem(), s.Number.Value.InexactFloat64()*[]float64{0.9, 1.1}[pick(t, "times", 2)])
		}
	}
	field.Set(reflect.ValueOf(s))
}

// reshape changes a word or a size of an area.
func reshape(t *rapid.T, j *report.Job) {
	a := &j.Areas[pick(t, "area", len(j.Areas))]
	switch pick(t, "what", 9) {
	case 0:
		a.MadeOf = []string{"lightweight", "gypsum", "calcium sulfate"}[pick(t, "made of", 3)]
	case 1:
		a.Installation = []string{"", "glue-down", "nail-down", "floating", "loose-lay"}[pick(t, "fixing", 5)]
	case 2:
		a.RadiantHeat, a.HeatOnSince = "yes", since(-150)
	case 3:
		a.Size = evidence.Reading{}
	case 4:
		a.Size = num(1001, evidence.SquareFoot)
	case 5:
		a.ExteriorWalls = num(0, evidence.None)
	case 6:
		a.Membrane = []string{"", "MEM", "SEAL"}[pick(t, "membrane", 3)]
	case 7:
		a.Thickness = evidence.Reading{}
	default:
		a.GroundCover = ""
	}
}

// laterDay moves the day of installing.
func laterDay(t *rapid.T, j *report.Job) {
	a := &j.Areas[pick(t, "area", len(j.Areas))]
	a.InstallOn = day(installed + evidence.Day([]int{-2, -1, 1, 2, 3, 40}[pick(t, "days", 6)]))
}
