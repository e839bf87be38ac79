package acclimate_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

func spotAt(name string, hours float64, temp string) acclimate.Surface {
	return acclimate.Surface{Spot: name, ReadAt: at(hours), Temp: num(temp, evidence.Fahrenheit), Instrument: "IR1", Place: line(100)}
}

// surfaces is a room with surfaces, its air at 70 F and 40 % RH: a dew point of
// 44.57 F (dewpoint-checkpoints.csv gives 21 C and 40 %; recalculated here by the
// equation that those rows hold).
func surfaces(rows ...acclimate.Surface) acclimate.Room {
	r := room(steady(-24, 48, 4))
	r.Surfaces = rows
	r.SurfaceMax = evidence.AtMost(evidence.Bound{Number: num("80", evidence.Fahrenheit)})
	r.Instruments = evidence.Instruments{"ir1": {ID: "IR1", Kinds: []string{evidence.Surface}}}
	return r
}

func TestSurfacesAreHeldAgainstTheHighest(t *testing.T) {
	for temp, o := range map[string]evidence.Outcome{"80": met, "80.1": notMet, "": notShown} {
		want(t, temp, "surface-max", surfaces(spotAt("S1", 40, temp)), o)
	}
	for temp, o := range map[string]evidence.Outcome{"78": met, "78.1": notMet} {
		r := surfaces(spotAt("S1", 40, temp))
		r.Acceptance = evidence.Acceptance{Guarded: true}
		want(t, temp+" guarded", "surface-max", r, o)
	}
	cool := spotAt("S1", 40, "")
	for temp, o := range map[string]evidence.Outcome{"25.5": met, "25.6": notMet} { // 77.9 and 78.08 F, with 2 F
		cool.Temp = num(temp, evidence.Celsius)
		r := surfaces(cool)
		r.Acceptance = evidence.Acceptance{Guarded: true}
		want(t, temp+" C guarded", "surface-max", r, o)
	}
	want(t, "the latest row", "surface-max", surfaces(spotAt("S1", 39, "99"), spotAt(" s1", 40, "70")), met)
	want(t, "of two at one time the worse", "surface-max", surfaces(spotAt("S1", 40, "99"), spotAt("S1", 40, "70")), notMet)
	none := spotAt("S1", 40, "70")
	none.ReadAt = evidence.Time{}
	want(t, "no time", "surface-max", surfaces(none, spotAt("S1", 41, "70")), notShown, "no time")
	want(t, "no row", "surface-max", surfaces(), notShown, "no surface temperature")
	want(t, "no row", "surface-dew", surfaces(), notShown, "no surface temperature")
	r := surfaces(spotAt("S1", 40, "99"))
	r.NoMax, r.NoDew = "not heated", "nothing is glued"
	want(t, "not needed", "surface-max", r, unneeded, "not heated")
	want(t, "not needed", "surface-dew", r, unneeded, "nothing is glued")
}

// Air at 70 F and 100 % has its dew point at 70 F; a surface in F needs 5 F, one
// in C needs 3 C.
func TestSurfacesKeepTheirMarginAboveTheDewPoint(t *testing.T) {
	for _, c := range []struct {
		temp string
		unit evidence.Unit
		want evidence.Outcome
	}{
		{"75", evidence.Fahrenheit, met},
		{"74.99", evidence.Fahrenheit, notMet},
		{"69", evidence.Fahrenheit, notMet},
		{"24.11", evidence.Celsius, met},
		{"24.10", evidence.Celsius, notMet},
		{"", evidence.Celsius, notShown},
	} {
		s := spotAt("S1", 40, "")
		s.Temp = num(c.temp, c.unit)
		r := surfaces(s)
		r.Air = acclimate.NewLog([]acclimate.Air{airAt(40, "70", "100", "AL1")}).Of("A1", evidence.Date{})
		f := find(t, "surface-dew", r)
		if f.Outcome != c.want {
			t.Errorf("%s %s: %s (%s)", c.temp, c.unit, f.Outcome, f.Reason)
		}
		if c.temp != "" && f.Worked.Outcome() != f.Outcome {
			t.Errorf("%s %s: the figures say %s", c.temp, c.unit, f.Worked.Outcome())
		}
	}
	hot := surfaces(spotAt("S1", 40, "70"))
	hot.Air = acclimate.NewLog([]acclimate.Air{airAt(40, "400", "40", "AL1")}).Of("A1", evidence.Date{})
	want(t, "no dew point", "surface-dew", hot, notShown, "the air at "+at(40).Written+": temperature 204.44 C (400 F) is outside")
	r := surfaces(spotAt("S1", 40, "77"), spotAt("S2", 40, "76.9"))
	r.Air = acclimate.NewLog([]acclimate.Air{airAt(40, "70", "100", "AL1")}).Of("A1", evidence.Date{})
	want(t, "as read", "surface-dew", r, met, "6.9 F above the dew point of 70 F")
	r.Acceptance = evidence.Acceptance{Guarded: true}
	want(t, "guarded", "surface-dew", r, notMet, "S2")
}

// The margin is a tree: the surface's cell less the dew point of two cells,
// rounded once.
func TestTheMarginIsWorkedOut(t *testing.T) {
	s := spotAt("S1", 40, "60")
	s.Temp.Place = line(7)
	air := airAt(40, "70", "40", "AL1")
	air.Temp.Place, air.RH.Place = line(8), line(9)
	r := surfaces(s)
	r.Air = acclimate.NewLog([]acclimate.Air{air}).Of("A1", evidence.Date{})
	w := find(t, "surface-dew", r).Worked.Value
	dew := w.Args[1]
	if w.Op != evidence.OpLess || w.Args[0].Place != line(7) || dew.Op != evidence.OpRound || dew.Places != 2 ||
		dew.Args[0].Op != evidence.OpDewPoint {
		t.Fatalf("%+v", w)
	}
	if from := dew.Args[0].Args; from[0].Place != line(8) || from[1].Place != line(9) {
		t.Errorf("the dew point comes from %+v", from)
	}
	// ASHRAE's psychrometric equations give 44.6 F for 70 F and 40 % (from memory).
	if got := dew.Value.Float(); got < 44.5 || got > 44.7 || dew.Value.Round(2).Cmp(dew.Value) != 0 {
		t.Errorf("the dew point is %v F", got)
	}
}

func TestTheNearestAirCounts(t *testing.T) {
	dew := func(rows ...acclimate.Air) acclimate.Room {
		r := surfaces(spotAt("S1", 40, "60"))
		r.Air = acclimate.NewLog(rows).Of("A1", evidence.Date{})
		return r
	}
	dry, wet := "40", "99"
	for _, c := range []struct {
		name string
		r    acclimate.Room
		want evidence.Outcome
	}{
		{"2 h before", dew(airAt(38, "70", dry, "")), met},
		{"more than 2 h before", dew(airAt(37.99, "70", dry, "")), notShown},
		{"2 h after", dew(airAt(42, "70", dry, "")), met},
		{"more than 2 h after", dew(airAt(42.01, "70", dry, "")), notShown},
		{"the nearer", dew(airAt(39, "70", wet, ""), airAt(40.5, "70", dry, "")), met},
		{"the nearer, wet", dew(airAt(39, "70", dry, ""), airAt(40.5, "70", wet, "")), notMet},
		{"equally near, wet before", dew(airAt(39, "70", wet, ""), airAt(41, "70", dry, "")), notMet},
		{"equally near, wet after", dew(airAt(39, "70", dry, ""), airAt(41, "70", wet, "")), notMet},
		{"two at one time", dew(airAt(39, "70", dry, "AL1"), airAt(39, "70", wet, "AL2")), notMet},
		{"at the very time", dew(airAt(40, "70", dry, ""), airAt(40, "70", wet, ""), airAt(40.01, "70", dry, "")), notMet},
		{"no humidity", dew(airAt(40, "70", "", "")), notShown},
		{"no temperature", dew(airAt(40, "", dry, "")), notShown},
		{"too dry to be true", dew(airAt(40, "70", "4", "")), notShown},
		{"one equally near without a humidity", dew(airAt(39, "70", dry, ""), airAt(41, "70", "", "")), notShown},
		{"no air", dew(), notShown},
		{"an untimed row", dew(airAt(40, "70", dry, ""), acclimate.Air{}), notShown},
		{"an untimed row beside a wet one", dew(airAt(40, "70", wet, ""), acclimate.Air{}), notMet},
	} {
		want(t, c.name, "surface-dew", c.r, c.want)
	}
	own := airAt(41, "70", wet, "")
	own.Area = "A1"
	want(t, "the area's own row beside the site's", "surface-dew", dew(own, airAt(39, "70", dry, "")), notMet)
	none := spotAt("S1", 40, "60")
	none.ReadAt = evidence.Time{}
	want(t, "a surface without a time", "surface-dew", surfaces(none), notShown, "no time")
	if near, untimed := surfaces().AirNear(none); near != nil || untimed {
		t.Error("air is near a surface without a time")
	}
}

func TestALevelerHidesTheSurfacesBefore(t *testing.T) {
	for hour, o := range map[float64]evidence.Outcome{40: met, 40.01: notShown} {
		r := surfaces(spotAt("S1", 40, "60"), spotAt("S2", 41, "60"))
		r.Leveled = at(hour).First
		want(t, fmt.Sprint(hour), "surface-max", r, o)
		want(t, fmt.Sprint(hour), "surface-dew", r, o)
	}
	r := surfaces(spotAt("S1", 40, "60"), spotAt("S2", 41, "90"))
	r.Leveled = at(40.5).First
	want(t, "a breach stays", "surface-max", r, notMet)
}

// Rows that are not judged are counted by reason.
func TestUnusedRows(t *testing.T) {
	log := acclimate.NewLog(append(steady(-24, 72, 4), acclimate.Air{}, acclimate.Air{Area: "A2"}))
	day := evidence.DayOf(at(0).First) + 1
	r := surfaces(spotAt("S1", 40, "60"), spotAt("S1", 30, "60"), spotAt("S1", 29, "60"), spotAt("S2", 10, "60"))
	r.Air = log.Of("A1", evidence.Date{Written: day.String(), Day: day})
	r.LaterSurfaces, r.Leveled = 3, at(20).First
	r.HeldFor = []evidence.Time{at(40)} // held from hour -8; the log up to hour 44
	got := r.Unused()
	want := []evidence.Unused{
		{Table: "Air", Rows: 7, Why: "after the day of installing"},
		{Table: "Air", Rows: 4, Why: "outside the hours that are judged"},
		{Table: "Surface", Rows: 3, Why: "after the day of installing"},
		{Table: "Surface", Rows: 1, Why: "before a leveler was placed"},
		{Table: "Surface", Rows: 2, Why: "history of a spot"},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("unused are %+v", got)
	}
	all := room(steady(0, 48, 4))
	if got := all.Unused(); len(got) != 0 {
		t.Errorf("unused are %+v", got)
	}
}

// Judged are the rows of both windows, the last before each, and those that a
// dew point comes from; of a day and an instrument the first and the last.
func TestJudgedAir(t *testing.T) {
	rows := append(steady(-50, 90, 1), airAt(-0.5, "70", "40", "AL2"), airAt(10, "70", "40", "AL2"), airAt(-30, "70", "40", "AL3"),
		acclimate.Air{Instrument: "AL4"})
	r := room(rows)
	r.NoDew = "nothing is glued"
	says := func(r acclimate.Room) string {
		var all []string
		for _, a := range r.JudgedAir() {
			hour := ""
			if a.ReadAt.Shown() {
				hour = fmt.Sprint(a.ReadAt.First.Sub(at(0).First).Hours())
			}
			all = append(all, a.Instrument+":"+hour)
		}
		return strings.Join(all, " ")
	}
	// Held from 0 to 48, and the day up to 90 from 66; the last at or before 0 is 0.
	if got := says(r); got != "AL4: AL1:0 AL2:10 AL1:23 AL1:24 AL1:47 AL1:48 AL1:71 AL1:72 AL1:90" {
		t.Error(got)
	}
	r.NoDew = ""
	r.Surfaces = []acclimate.Surface{spotAt("S1", -40, "60")}
	if got := says(r); !strings.Contains(got, "AL1:-40 ") {
		t.Error(got)
	}
	r = room([]acclimate.Air{
		airAt(-3, "70", "40", "AL1"), airAt(-3, "70", "40", "AL2"), airAt(-4, "70", "40", "AL3"),
		airAt(48, "70", "40", "AL1"),
	})
	if got := says(r); got != "AL1:-3 AL2:-3 AL1:48" {
		t.Error(got)
	}
	r = room(steady(0, 48, 12))
	r.NoHeld = "no slab"
	if got := says(r); got != "AL1:24 AL1:36 AL1:48" {
		t.Error(got)
	}
	r.NoHeld, r.HeldFor = "", nil
	if got := says(r); got != "AL1:24 AL1:36 AL1:48" {
		t.Error(got)
	}
	r.NoDew = ""
	r.Surfaces = []acclimate.Surface{spotAt("S1", 30, "60")}
	r.Air = acclimate.NewLog(append(steady(0, 48, 12), airAt(30, "70", "40", "AL1"))).Of("A1", evidence.Date{})
	if got := says(r); got != "AL1:24 AL1:36 AL1:48" {
		t.Error(got)
	}
}

// Of each instrument and day the first and the last row stand for all, whatever
// other instruments were read between them.
func TestSinceGivesTheEndsOfEachDay(t *testing.T) {
	rows := []acclimate.Air{
		airAt(7, "70", "40", "AL1"), airAt(8, "70", "40", "AL1"), airAt(8.5, "70", "40", "AL2"),
		airAt(9, "70", "40", "AL1"), airAt(9.5, "70", "40", "AL2"), airAt(10, "70", "40", "AL1"),
		airAt(10.5, "70", "40", "AL2"), airAt(32, "70", "40", "AL1"),
	}
	var got []string
	for _, a := range acclimate.NewLog(rows).Of("A1", evidence.Date{}).Since(at(8.2).First) {
		got = append(got, a.Instrument+" "+a.ReadAt.Written)
	}
	want := []string{
		"AL1 2026-03-02 08:00:00", "AL2 2026-03-02 08:30:00", "AL1 2026-03-02 10:00:00", "AL2 2026-03-02 10:30:00",
		"AL1 2026-03-03 08:00:00",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	if none := acclimate.NewLog(nil).Of("A1", evidence.Date{}).Since(at(8).First); none != nil {
		t.Errorf("an empty log gives %v", none)
	}
}
