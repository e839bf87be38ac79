package hints

import (
	"fmt"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/slab"
)

// Questions ask whether one slip stands behind a finding that is not met: a unit
// that none of a table's temperatures fits, or a wrong year. The verdict stays
// what the record says.
func (a Area) Questions() []string {
	var all []string
	ask := func(q string, ids ...string) {
		for _, id := range ids {
			if q != "" && a.Outcome(id) == evidence.NotMet {
				all = append(all, q)
				return
			}
		}
	}
	air := func(r acclimate.Air) bool { return r.Area == "" || evidence.Same(r.Area, a.ID) }
	ask(otherUnit("Air", a.Air, air, func(r acclimate.Air) evidence.Reading { return r.Temp }), "air-range",
		"air-held")
	ask(otherUnit("Slab RH", a.Slab.Holes, nil, func(h slab.Hole) evidence.Reading { return h.Temp }), "slab-temp")
	ask(otherUnit("Surface", a.Room.Surfaces, nil, func(f acclimate.Surface) evidence.Reading { return f.Temp }),
		"surface-dew", "surface-max")
	ask(a.otherYear("Air", a.Room.Latest()), "reading-age")
	ask(a.otherYear("Slab RH", evidence.Last(a.Slab.Holes, func(h slab.Hole) evidence.Time { return h.ReadAt })),
		"reading-age")
	return all
}

// otherUnit asks about temperatures of which none is one of a room in the unit of
// their column, and every one in the other.
func otherUnit[T any](table string, rows []T, counts func(T) bool, temp func(T) evidence.Reading) string {
	var first evidence.Reading
	for _, r := range rows {
		t := temp(r)
		if !t.Shown() || counts != nil && !counts(r) {
			continue
		}
		other := t
		if other.Unit = evidence.Celsius; t.Unit == evidence.Celsius {
			other.Unit = evidence.Fahrenheit
		}
		if ofARoom(t) || !ofARoom(other) {
			return ""
		}
		if !first.Shown() {
			first = other
		}
	}
	if !first.Shown() {
		return ""
	}
	return fmt.Sprintf("every temperature of %s%s reads like one in %s: are these %s? Then name the column %s",
		table, standing(first.Place), first.Unit, first.Unit, evidence.Heading("Temp", first.Unit))
}

// ofARoom says whether a temperature is one that rooms under construction and
// their floors have: 46 to 110 F (common practice, no source).
func ofARoom(t evidence.Reading) bool {
	f := t.In(evidence.Fahrenheit)
	return f.Cmp(evidence.Whole(46)) >= 0 && f.Cmp(evidence.Whole(110)) <= 0
}

// standing is where something stands, in brackets.
func standing(at evidence.Place) string {
	if at == nil {
		return ""
	}
	return " (" + at.String() + ")"
}

// otherYear asks about a last reading that lies a year before the day of
// installing, give or take two months.
func (a Area) otherYear(table string, last evidence.Time) string {
	const year, months = 365, 60
	on := a.Slab.InstallOn
	if !last.Shown() || !on.Shown() {
		return ""
	}
	if days := int(on.Day - last.Day()); days < year-months || days > year+months {
		return ""
	}
	return fmt.Sprintf("the last row of %s%s, %s, is about a year before the day of installing, %s: is the year right?",
		table, standing(last.Place), last.Written, on.Written)
}

// Area is an area that was judged.
type Area struct {
	ID   string
	Size evidence.Reading
	instruments.Readings
	Air     []acclimate.Air // of the whole record
	Points  Points          // the same
	Outcome func(check string) evidence.Outcome
}
