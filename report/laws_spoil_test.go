package report_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/evidence"
)

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

// spoilt draws a good record and spoils it in a few ways.
func spoilt(t *rapid.T) report.Job {
	j := made(t)
	j.Areas = slices.Clone(j.Areas)
	ways := []func(*rapid.T, *report.Job){
		nearLimit, nearLimit, blankOne, blankOne, moveOne, repeat, repeat, repeat, discard, discard, wet, cover,
		setAside, lapse, gusts, gusts, gusts, dropOne, otherMeter, otherMeter, change, restate, reshape, laterDay,
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
		"Holes.RH": {74.9, 75, 75.1, 78, 78.5, 80, 80.1, 85.1, 90.1, 99}, "Holes.Temp": {59.9, 64.9, 65, 80.1, 95.1},
		"Holes.Depth": {1.1, 1.75, 2.2, 2.3, 3}, "Holes.ToWall": {3, 3.1, 20}, "Holes.X": {1, 5, 5.1, 30},
		"Dishes.End": {29, 30, 31.9, 32.8, 33.5, 40}, "PHs.PH": {6.9, 7, 9.9, 10, 10.1, 11.1, 13},
		"Carbides.CM": {1.9, 1.95, 2, 2.1, 5}, "Others.Result": {29, 30, 30.5, 299.5, 300, 301},
		"Air.Temp": {59, 60.5, 64, 65, 80, 81, 90}, "Air.RH": {25, 31.9, 33, 49, 50, 50.1, 54, 60, 65.1, 90},
		"Surfaces.Temp": {49, 50, 52, 81, 82, 84, 85.5, 90},
		"Wood.Reading":  {3.9, 5.5, 6, 6.5, 9.4, 9.6, 10.5, 11.9, 12, 12.1, 13.9, 14.1, 16, 24, 26, 31}, "Wood.WoodTemp": {-10, 40, 60, 90, 130},
		"Checks.Read": {73.2, 73.3, 77.3, 77.4, 90}, "Scans.Reading": {10, 60},
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
