package plan_test

import (
	"slices"
	"time"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/slab"
	"firstboard/wood"
)

// lacking is a base to which a few things happened: rows lost, cells blank,
// readings beyond their limits, days moved, water, instruments in doubt.
func lacking(t *rapid.T, from []report.Job) report.Job {
	j := copied(from[rapid.IntRange(0, len(from)-1).Draw(t, "base")])
	all := mishaps()
	var names []string
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	for range rapid.IntRange(0, 4).Draw(t, "mishaps") {
		name := rapid.SampledFrom(names).Draw(t, "mishap")
		all[name](t, &j)
	}
	return j
}

type mishap func(t *rapid.T, j *report.Job)

// mishaps are what may happen to a record, by name.
func mishaps() map[string]mishap {
	all := map[string]mishap{
		"water": func(t *rapid.T, j *report.Job) {
			j.Events = append(j.Events, report.Event{What: "water", At: clockTime(j.Zone, "2026-03-03 12:00")})
		},
		"size": func(t *rapid.T, j *report.Job) {
			j.Areas[0].Size = drawn(t, evidence.SquareFoot, "", "60", "300", "1100")
		},
		"walls": func(t *rapid.T, j *report.Job) {
			j.Areas[0].ExteriorWalls = drawn(t, evidence.Walls, "", "0", "1", "2")
		},
		"thickness": func(t *rapid.T, j *report.Job) {
			j.Areas[0].Thickness = evidence.Reading{}
			for i := range j.Holes { // whatever it is found to be, the holes fit it
				if j.Holes[i].Depth.Shown() {
					j.Holes[i].Depth = evidence.Typed("1.6", evidence.Inch)
				}
			}
		},
		"under":  func(t *rapid.T, j *report.Job) { j.Areas[0].UnderSlab = "" },
		"no day": func(t *rapid.T, j *report.Job) { j.Areas[0].InstallOn = evidence.Date{} },
		"heat":   func(t *rapid.T, j *report.Job) { j.Areas[0].HeatOnSince = evidence.Time{} },
		"warm late": func(t *rapid.T, j *report.Job) {
			if j.Areas[0].RadiantHeat == "yes" {
				j.Areas[0].HeatOnSince = clockTime(j.Zone, "2026-03-02 08:00")
			}
		},
		"another day": func(t *rapid.T, j *report.Job) {
			a := &j.Areas[0]
			a.InstallOn = dated(a.InstallOn.Day + evidence.Day(rapid.SampledFrom([]int{-3, -1, 1, 4, 9, 40}).Draw(t, "days")))
		},
		"limits": func(t *rapid.T, j *report.Job) {
			p := &j.Products[rapid.IntRange(0, len(j.Products)-1).Draw(t, "product")]
			p.SlabRH, p.PHMin, p.FlooringMin, p.DataSheet = limits.Stated{}, limits.Stated{}, limits.Stated{}, ""
		},
	}
	for _, more := range []map[string]mishap{losses(), blankings(), excesses(), doubts()} {
		for name, m := range more {
			all[name] = m
		}
	}
	return all
}

func drawn(t *rapid.T, u evidence.Unit, of ...string) evidence.Reading {
	text := rapid.SampledFrom(of).Draw(t, "number")
	if text == "" {
		return evidence.Reading{Unit: u}
	}
	return evidence.Typed(text, u)
}

// one does something to one of the rows, or to several of them.
func one[T any](t *rapid.T, rows []T, do func(r *T)) {
	if len(rows) == 0 {
		return
	}
	first := rapid.IntRange(0, len(rows)-1).Draw(t, "row")
	for i := range rapid.SampledFrom([]int{1, 1, 2, 50}).Draw(t, "rows") {
		if first+i < len(rows) {
			do(&rows[first+i])
		}
	}
}

// losses drop rows.
func losses() map[string]mishap {
	return map[string]mishap{
		"no hole":    func(t *rapid.T, j *report.Job) { j.Holes = lost(t, j.Holes) },
		"no dish":    func(t *rapid.T, j *report.Job) { j.Dishes = lost(t, j.Dishes) },
		"no pH":      func(t *rapid.T, j *report.Job) { j.PHs = lost(t, j.PHs) },
		"no CM":      func(t *rapid.T, j *report.Job) { j.Carbides = lost(t, j.Carbides) },
		"no air":     func(t *rapid.T, j *report.Job) { j.Air = lost(t, j.Air) },
		"no surface": func(t *rapid.T, j *report.Job) { j.Surfaces = lost(t, j.Surfaces) },
		"no wood":    func(t *rapid.T, j *report.Job) { j.Wood = lost(t, j.Wood) },
		"no check":   func(t *rapid.T, j *report.Job) { j.Checks = lost(t, j.Checks) },
	}
}

func lost[T any](t *rapid.T, rows []T) []T {
	if len(rows) == 0 {
		return rows
	}
	first := rapid.IntRange(0, len(rows)-1).Draw(t, "first")
	end := rapid.IntRange(first, len(rows)-1).Draw(t, "last")
	return slices.Delete(rows, first, end+1)
}

func clear(r *evidence.Reading) { *r = evidence.Reading{Unit: r.Unit, Place: r.Place} }
func unset(at *evidence.Time)   { *at = evidence.Time{Place: at.Place} }

// blankings empty cells.
func blankings() map[string]mishap {
	hole := func(do func(h *slab.Hole)) mishap { return func(t *rapid.T, j *report.Job) { one(t, j.Holes, do) } }
	dish := func(do func(d *slab.Dish)) mishap { return func(t *rapid.T, j *report.Job) { one(t, j.Dishes, do) } }
	ph := func(do func(r *slab.PH)) mishap { return func(t *rapid.T, j *report.Job) { one(t, j.PHs, do) } }
	timber := func(do func(r *wood.Row)) mishap { return func(t *rapid.T, j *report.Job) { one(t, j.Wood, do) } }
	air := func(do func(r *acclimate.Air)) mishap { return func(t *rapid.T, j *report.Job) { one(t, j.Air, do) } }
	return map[string]mishap{
		"blank RH":        hole(func(h *slab.Hole) { clear(&h.RH) }),
		"blank temp":      hole(func(h *slab.Hole) { clear(&h.Temp) }),
		"blank depth":     hole(func(h *slab.Hole) { clear(&h.Depth) }),
		"blank wall":      hole(func(h *slab.Hole) { clear(&h.ToWall) }),
		"blank sealed":    hole(func(h *slab.Hole) { unset(&h.SealedAt) }),
		"blank read":      hole(func(h *slab.Hole) { unset(&h.ReadAt) }),
		"unread":          hole(func(h *slab.Hole) { clear(&h.RH); clear(&h.Temp); unset(&h.ReadAt) }),
		"unsealed":        hole(func(h *slab.Hole) { clear(&h.RH); clear(&h.Temp); unset(&h.ReadAt); unset(&h.SealedAt) }),
		"blank probe":     hole(func(h *slab.Hole) { h.Instrument = "" }),
		"blank start":     dish(func(d *slab.Dish) { clear(&d.Start) }),
		"blank area":      dish(func(d *slab.Dish) { clear(&d.TestArea) }),
		"not lifted":      dish(func(d *slab.Dish) { clear(&d.End); unset(&d.RetrievedAt) }),
		"blank pH":        ph(func(r *slab.PH) { clear(&r.PH) }),
		"blank pH time":   ph(func(r *slab.PH) { unset(&r.ReadAt) }),
		"blank MC":        timber(func(r *wood.Row) { clear(&r.Reading) }),
		"blank wood time": timber(func(r *wood.Row) { unset(&r.ReadAt) }),
		"blank scale":     timber(func(r *wood.Row) { r.Scale = "" }),
		"blank method":    timber(func(r *wood.Row) { r.Method = "" }),
		"blank pin":       timber(func(r *wood.Row) { r.Instrument = "" }),
		"blank logger":    air(func(r *acclimate.Air) { r.Instrument = "" }),
		"blank air RH":    air(func(r *acclimate.Air) { clear(&r.RH) }),
		"blank air time":  air(func(r *acclimate.Air) { unset(&r.ReadAt) }),
		"blank surface": func(t *rapid.T, j *report.Job) {
			one(t, j.Surfaces, func(s *acclimate.Surface) { clear(&s.Temp) })
		},
	}
}

func times(r *evidence.Reading, by string) {
	if r.Shown() {
		*r = evidence.Reading{Value: r.Value.Mul(decimal.RequireFromString(by)).Round(1), Unit: r.Unit, Place: r.Place}
		r.Written = r.Value.String()
	}
}

// excesses move readings beyond their limits.
func excesses() map[string]mishap {
	hole := func(do func(h *slab.Hole)) mishap { return func(t *rapid.T, j *report.Job) { one(t, j.Holes, do) } }
	return map[string]mishap{
		"high RH": hole(func(h *slab.Hole) { times(&h.RH, "1.3") }),
		"low RH":  hole(func(h *slab.Hole) { times(&h.RH, "0.3") }),
		"deep": func(t *rapid.T, j *report.Job) {
			if j.Areas[0].Thickness.Shown() {
				one(t, j.Holes, func(h *slab.Hole) { times(&h.Depth, "1.5") })
			}
		},
		"hot hole": hole(func(h *slab.Hole) { times(&h.Temp, "1.4") }),
		"early": hole(func(h *slab.Hole) {
			if h.ReadAt.Shown() {
				h.SealedAt = moment(h.ReadAt.First.Add(-20 * time.Hour))
			}
		}),
		"long wait": func(_ *rapid.T, j *report.Job) { j.Settings.ProbeWait = evidence.Typed("72", evidence.Hour) },
		"cold surface": func(t *rapid.T, j *report.Job) {
			one(t, j.Surfaces, func(s *acclimate.Surface) { times(&s.Temp, "0.7") })
		},
		"hot surface": func(t *rapid.T, j *report.Job) {
			one(t, j.Surfaces, func(s *acclimate.Surface) { times(&s.Temp, "1.4") })
		},
		"wet boards": func(t *rapid.T, j *report.Job) {
			one(t, j.Wood, func(r *wood.Row) {
				if r.Of == wood.OfFlooring {
					times(&r.Reading, "1.5")
				}
			})
		},
		"dry pin": func(t *rapid.T, j *report.Job) {
			one(t, j.Wood, func(r *wood.Row) { times(&r.Reading, "0.5") })
		},
		"damp air": func(t *rapid.T, j *report.Job) {
			one(t, j.Air, func(a *acclimate.Air) {
				if a.RH.Shown() && a.RH.Value.LessThan(decimal.NewFromInt(50)) {
					times(&a.RH, "2")
				}
			})
		},
	}
}

// doubts take calibrations and checks of instruments away.
func doubts() map[string]mishap {
	meter := func(do func(m *evidence.Instrument)) mishap {
		return func(t *rapid.T, j *report.Job) {
			var keys []string
			for k := range j.Instruments {
				keys = append(keys, k)
			}
			slices.Sort(keys)
			k := rapid.SampledFrom(keys).Draw(t, "meter")
			m := j.Instruments[k]
			do(&m)
			j.Instruments[k] = m
		}
	}
	check := func(do func(c *instruments.Comparison)) mishap {
		return func(t *rapid.T, j *report.Job) { one(t, j.Checks, do) }
	}
	return map[string]mishap{
		"uncalibrated":  meter(func(m *evidence.Instrument) { m.CalibratedOn = evidence.Date{} }),
		"past due":      meter(func(m *evidence.Instrument) { m.DueOn = dated(m.CalibratedOn.Day + 30) }),
		"check off":     check(func(c *instruments.Comparison) { c.Read = evidence.Typed("81", evidence.RH) }),
		"check blank":   check(func(c *instruments.Comparison) { clear(&c.Expected) }),
		"check untimed": check(func(c *instruments.Comparison) { unset(&c.CheckedAt) }),
		"check old": check(func(c *instruments.Comparison) {
			if c.CheckedAt.Shown() {
				c.CheckedAt = moment(c.CheckedAt.First.Add(-2000 * time.Hour))
			}
		}),
	}
}
