package pictures

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Picture is one picture of an area: what it shows, and its points with the
// cells they were typed in. It judges nothing: which rows count was decided by
// the checks.
type Picture struct {
	Shows  Shows
	Title  string
	X, Y   string        // what the axes show, with their units
	Unit   evidence.Unit // of the values
	Series []Series
	Notes  []string // what it leaves out, and what it cannot tell

	HeldFrom, HeldTo time.Time // the stretch that air-held asks for; zero where there is none
}

// Shows is what a picture is of.
type Shows int

// The pictures, in the order they stand in.
const (
	HoleReadings   Shows = iota // a point a judged reading, by the hole's name
	DryingHistory               // a line a hole over time
	AirTemperature              // a line an instrument over time
	AirHumidity
	WoodMoisture // values to be counted by class
	ServiceEMC   // a point a period, by its name
	Positions    // places on the floor
)

// Series are points that belong together.
type Series struct {
	Name   string
	Role   Role
	Points []Point
}

// Role is what a series stands for.
type Role int

// The roles of series.
const (
	Judged    Role = iota // counts for a check
	Discarded             // is out of use
	Flooring
	Subfloor
	Joist
	Dish
	Scan
	Others   // lines too many to be told apart
	Expected // of a forecast, and the ends of its interval
	ExpectedEnd
	LotMean
	TargetEMC // of the service climate
	Lowest    // end of a limit
	Highest
)

// Bound says whether a series is one value that holds everywhere.
func (r Role) Bound() bool { return r >= LotMean }

// Point is one value: by a name, over time, or on the plan. A blank Y breaks
// a line.
type Point struct {
	Name string
	At   evidence.Time
	X, Y evidence.Reading
}

// Of are those of an area of which the record holds something.
func Of(s report.Site) []Picture {
	all := []Picture{holesOf(s), dryingOf(s), airTempOf(s), airRHOf(s), moistureOf(s), serviceOf(s), planOf(s)}
	return lists.Where(all, func(p Picture) bool {
		return slices.ContainsFunc(p.Series, func(s Series) bool { return !s.Role.Bound() })
	})
}

// with adds a series that has points.
func (p *Picture) with(name string, r Role, points []Point) {
	if len(points) > 0 {
		p.Series = append(p.Series, Series{name, r, points})
	}
}

// ends adds the ends of a limit, in a unit; of is what it is a limit for.
func (p *Picture) ends(of string, l evidence.Limit, u evidence.Unit) {
	least, most := of+"lowest", of+"highest"
	if !l.Least.Shown() {
		most = of + "limit"
	}
	p.level(bounded(least, l.Least), Lowest, l.Least.Number, u)
	p.level(bounded(most, l.Most), Highest, l.Most.Number, u)
	if l.Lack != "" {
		p.Notes = append(p.Notes, "the limit is not known: "+l.Lack)
	}
}

func bounded(end string, b evidence.Bound) string {
	return end + lists.If(b.Whose == "", "", " of "+b.Whose)
}

// level adds one value that holds everywhere.
func (p *Picture) level(name string, r Role, value evidence.Reading, u evidence.Unit) {
	if value.Shown() {
		p.with(name, r, []Point{{Y: inUnit(value, u)}})
	}
}

// inUnit is a reading in another unit, at the place where it was typed.
func inUnit(r evidence.Reading, u evidence.Unit) evidence.Reading {
	if r.Unit == u || !r.Shown() {
		return r
	}
	return evidence.Reading{Written: r.WrittenIn(u), Value: r.In(u).Decimal(), Unit: u, Place: r.Place}
}

// leftOut notes what is not drawn, each thing with its reason.
func (p *Picture) leftOut(things []string) {
	if len(things) > 0 {
		slices.Sort(things)
		p.Notes = append(p.Notes, "not drawn: "+evidence.List(slices.Compact(things)))
	}
}

// inTime orders the points of a line, whatever order their rows stood in.
func inTime(a, b Point) int {
	if c := cmp.Or(a.At.First.Compare(b.At.First), a.Y.Value.Cmp(b.Y.Value)); c != 0 {
		return c
	}
	return strings.Compare(fmt.Sprint(a.Y.Place), fmt.Sprint(b.Y.Place))
}

// linesOf are series over time, one a name, of the rows that have a time and
// a value.
func linesOf[T any](rows []T, name func(T) string, point func(T) Point) []Series {
	asTyped, index, rowsOf := map[string]int{}, map[string]int{}, map[string]int{}
	for _, r := range rows {
		rowsOf[name(r)]++
	}
	var all []Series
	for _, r := range rows {
		x := point(r)
		if !x.At.Shown() || !x.Y.Shown() {
			continue
		}
		i, known := asTyped[name(r)]
		if !known {
			key, tidy := evidence.Key(name(r)), evidence.Tidy(name(r))
			if i, known = index[key]; !known {
				i = len(all)
				index[key], all = i, append(all, Series{Name: tidy, Points: make([]Point, 0, rowsOf[name(r)])})
			}
			all[i].Name = min(all[i].Name, tidy)
			asTyped[name(r)] = i
		}
		all[i].Points = append(all[i].Points, x)
	}
	for _, s := range all {
		if !slices.IsSortedFunc(s.Points, inTime) {
			slices.SortStableFunc(s.Points, inTime)
		}
	}
	slices.SortFunc(all, func(a, b Series) int { return evidence.Order(a.Name, b.Name) })
	return all
}

// told keeps the lines that can be told apart, those first that lie highest at
// their end, and joins all others to one.
func told(all []Series, most int, what string) []Series {
	if len(all) <= most {
		return all
	}
	last := func(s Series) evidence.Reading { return s.Points[len(s.Points)-1].Y }
	byEnd := slices.Clone(all)
	slices.SortStableFunc(byEnd, func(a, b Series) int { return last(b).Value.Cmp(last(a).Value) })
	floor := last(byEnd[most-1]).Value
	others := Series{Role: Others}
	var named []Series
	for _, s := range all {
		if !last(s).Value.LessThan(floor) && len(named) < most {
			named = append(named, s)
			continue
		}
		others.Points = append(append(others.Points, s.Points...), Point{})
	}
	others.Name = evidence.Count(len(all)-len(named), "other "+what, "other "+what+"s")
	return append(named, others)
}
