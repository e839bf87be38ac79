package report_test

import (
	"fmt"
	"reflect"
	"slices"
	"time"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/evidence"
)

// What the laws change a record by: its tables, its cells, its rows.

// tables are the slices of measured rows of a job, by name.
func tables(j *report.Job) map[string]reflect.Value {
	v := reflect.ValueOf(j).Elem()
	all := map[string]reflect.Value{}
	for _, name := range []string{"Air", "Carbides", "Checks", "Dishes", "Holes", "Others", "PHs", "Scans", "Surfaces", "Wood"} {
		all[name] = v.FieldByName(name)
	}
	return all
}

// copied is a job whose rows can be changed without changing the first.
func copied(j report.Job) report.Job {
	for _, rows := range tables(&j) {
		rows.Set(reflect.AppendSlice(reflect.MakeSlice(rows.Type(), 0, rows.Len()), rows))
	}
	return j
}

// cell is one field of one row.
type cell struct {
	table, field string
	row          int
}

func (c cell) of(j *report.Job) reflect.Value {
	return tables(j)[c.table].Index(c.row).FieldByName(c.field)
}

// measured are the cells that hold a measured value, a time, an instrument or
// a depth: all that a law lets nobody gain by blanking.
func measured(j *report.Job) []cell {
	var cells []cell
	all := tables(j)
	var names []string
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		rows := all[name]
		for i := range rows.Len() {
			for f := range rows.Type().Elem().NumField() {
				if field := rows.Type().Elem().Field(f); counts(name, field) {
					cells = append(cells, cell{name, field.Name, i})
				}
			}
		}
	}
	return cells
}

// counts leaves out what a law lets a blank of stand for: the temperature of
// the wood, a hole's own thickness, coordinates, the bounds of a further test,
// and the instrument of one, which counts only where it is named.
func counts(table string, field reflect.StructField) bool {
	switch field.Name {
	case "WoodTemp", "Thickness", "X", "Y", "AtLeast", "AtMost":
		return false
	case "Instrument":
		return table != "Others" && table != "Checks"
	case "Scale", "Walls":
		return true
	}
	return field.Type == reflect.TypeFor[evidence.Reading]() || field.Type == reflect.TypeFor[evidence.Time]()
}

func shifted(t *rapid.T, at evidence.Time) evidence.Time {
	by := time.Duration(rapid.SampledFrom([]int{-2000, -100, -24, -1, 1, 24, 100, 2000}).Draw(t, "hours")) * time.Hour
	at.First, at.Last = at.First.Add(by), at.Last.Add(by)
	at.Written = at.First.Format("2006-01-02 15:04")
	return at
}

func empty(v reflect.Value) {
	switch x := v.Interface().(type) {
	case evidence.Reading:
		v.Set(reflect.ValueOf(evidence.Reading{Unit: x.Unit, Place: x.Place}))
	case evidence.Time:
		v.Set(reflect.ValueOf(evidence.Time{Place: x.Place}))
	default:
		v.SetZero()
	}
}

func raise(r *evidence.Reading, by decimal.Decimal) {
	if r.Shown() {
		r.Value = r.Value.Add(by)
		r.Written = r.Value.String()
	}
}

// put gives a row and all that was typed in it one place.
func put(row reflect.Value, name string) {
	for i := range row.NumField() {
		if !row.Field(i).CanInterface() {
			continue // worked out, not typed
		}
		switch x := row.Field(i).Interface().(type) {
		case evidence.Reading:
			x.Place = spot(name)
			row.Field(i).Set(reflect.ValueOf(x))
		case evidence.Time:
			x.Place = spot(name)
			row.Field(i).Set(reflect.ValueOf(x))
		}
	}
	row.FieldByName("Place").Set(reflect.ValueOf(spot(name)))
}

// placed gives every row of a record a place of its own.
func placed(j report.Job) report.Job {
	for name, rows := range tables(&j) {
		for i := range rows.Len() {
			put(rows.Index(i), fmt.Sprintf("%s %d", name, i+1))
		}
	}
	return j
}
