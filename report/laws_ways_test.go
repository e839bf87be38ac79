package report_test

import (
	"fmt"
	"reflect"
	"slices"

	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
)

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
			a := acclimate.Air{Area: area, ReadAt: since(from + 0.5*float64(i)), Temp: num(70, evidence.Fahrenheit), RH: num(rh, evidence.RH), Instrument: by}
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
		if p.Field(i).Type() == reflect.TypeFor[report.Stated]() {
			stated = append(stated, i)
		}
	}
	field := p.Field(stated[pick(t, "limit", len(stated))])
	s := field.Interface().(report.Stated)
	switch pick(t, "to", 3) {
	case 0:
		s = report.Stated{}
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
