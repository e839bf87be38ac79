package acclimate_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// at is a time so many hours from the start of the made-up log, Monday 2 March
// 2026 at midnight; below zero before it.
func at(hours float64) evidence.Time {
	t := time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC).Add(time.Duration(hours * float64(time.Hour)))
	return evidence.Time{Written: t.Format("2006-01-02 15:04:05"), First: t, Last: t}
}

func num(written string, u evidence.Unit) evidence.Reading {
	if written == "" {
		return evidence.Reading{Unit: u}
	}
	return evidence.Typed(written, u)
}

type line int

func (l line) String() string { return fmt.Sprintf("air.csv row %d", int(l)) }

// airAt is a row of one instrument, in F; an empty word is a blank cell.
func airAt(hours float64, temp, rh, by string) acclimate.Air {
	return acclimate.Air{ReadAt: at(hours), Temp: num(temp, evidence.Fahrenheit), RH: num(rh, evidence.RH), Instrument: by}
}

// steady is a good log, a row every so many hours, both ends included.
func steady(from, to, step float64) []acclimate.Air {
	var rows []acclimate.Air
	for h := from; h <= to; h += step {
		rows = append(rows, airAt(h, "70", "40", "AL1"))
	}
	return rows
}

// room is an area of wood flooring, 60 to 80 F and 30 to 50 % RH, whose only
// judged row was read at hour 48: the air had to be held from hour 0.
func room(rows []acclimate.Air) acclimate.Room {
	for i := range rows {
		if rows[i].Place == nil {
			rows[i].Place = line(i + 2)
		}
	}
	return acclimate.Room{
		Air: acclimate.NewLog(rows).Of("A1", evidence.Date{}), Wood: true,
		Temp: both("60", "80", evidence.Fahrenheit), RH: both("30", "50", evidence.RH),
		Held: num("48", evidence.Hour), Gap: num("26", evidence.Hour), Excursion: num("2", evidence.Hour),
		HeldFor: []evidence.Time{at(48)},
		DewF:    evidence.Bound{Number: num("5", evidence.Fahrenheit)}, DewC: evidence.Bound{Number: num("3", evidence.Celsius)},
		Instruments: evidence.Instruments{},
	}
}

func both(low, high string, u evidence.Unit) evidence.Limit {
	return evidence.Limit{Least: evidence.Bound{Number: num(low, u)}, Most: evidence.Bound{Number: num(high, u)}}
}

func find(t *testing.T, id string, r acclimate.Room) evidence.Finding {
	t.Helper()
	for _, c := range acclimate.Checks() {
		if c.ID == id {
			return c.Find(r)
		}
	}
	t.Fatalf("there is no check %s", id)
	return evidence.Finding{}
}

// want says what a check must answer, and words its reason must hold.
func want(t *testing.T, name, id string, r acclimate.Room, o evidence.Outcome, words ...string) {
	t.Helper()
	f := find(t, id, r)
	if f.Outcome != o {
		t.Errorf("%s: %s is %s, want %s (%s)", name, id, f.Outcome, o, f.Reason)
	}
	for _, w := range words {
		if !strings.Contains(f.Reason, w) {
			t.Errorf("%s: %s says %q, want %q in it", name, id, f.Reason, w)
		}
	}
}

const (
	met      = evidence.Met
	notMet   = evidence.NotMet
	notShown = evidence.NotShown
	unneeded = evidence.NotNeeded
)

func TestAirIsInRangeAtItsEnds(t *testing.T) {
	for _, c := range []struct {
		temp, rh string
		want     evidence.Outcome
	}{
		{"60", "40", met},
		{"59.9", "40", notMet},
		{"80", "40", met},
		{"80.1", "40", notMet},
		{"70", "30", met},
		{"70", "29.9", notMet},
		{"70", "50", met},
		{"70", "50.1", notMet},
		{"59.999999", "40", notMet},
		{"60.0000001", "40", met},
		{"59.9999999", "40", notMet},
		{"80.0000001", "40", notMet},
		{"79.9999999", "40", met},
		{"", "40", notShown},
		{"70", "", notShown},
		{"81", "", notMet},
		{"70", "4.9", notShown},
		{"70", "5", notMet},
		{"70", "0", notShown},
	} {
		rows := append(steady(-24, 48, 24), airAt(48.5, c.temp, c.rh, "AL1"))
		want(t, c.temp+" F "+c.rh+" %", "air-range", room(rows), c.want)
	}
}

// A limit stated in C is kept by readings in F exactly: 60.8 F is 16 C.
func TestAirIsComparedInTheLimitsUnit(t *testing.T) {
	for temp, o := range map[string]evidence.Outcome{"60.8": met, "60.79": notMet, "82.4": met, "82.41": notMet} {
		r := room(append(steady(-24, 48, 24), airAt(48.5, temp, "40", "AL1")))
		r.Temp = both("16", "28", evidence.Celsius)
		want(t, temp, "air-range", r, o)
	}
	for temp, o := range map[string]evidence.Outcome{"15.5": notMet, "15.6": met, "26.6": met, "26.7": notMet} {
		cold := airAt(48.5, "70", "40", "AL1")
		cold.Temp = num(temp, evidence.Celsius)
		want(t, temp+" C", "air-range", room(append(steady(-24, 48, 24), cold)), o)
	}
}

// The window of air-range is the 24 h up to the latest row, and the last row at
// or before its start.
func TestAirRangeLooksAtOneDay(t *testing.T) {
	for hour, o := range map[float64]evidence.Outcome{24.01: notMet, 24: notMet, 23.99: met, 10: met} {
		rows := append(steady(48, 48, 1), airAt(hour, "90", "40", "AL1"), airAt(23.995, "70", "40", "AL1"))
		want(t, fmt.Sprint(hour), "air-range", room(rows), o)
	}
	rows := append(steady(36, 48, 6), airAt(10, "90", "40", "AL1"))
	want(t, "the last row before it", "air-range", room(rows), notMet)
	want(t, "no row", "air-range", room(nil), notShown, "no air reading")
	want(t, "one row", "air-range", room(steady(48, 48, 1)), met)
}

// A row without a time may be any.
func TestAnUntimedRowShowsNothing(t *testing.T) {
	rows := append(steady(-24, 72, 4), acclimate.Air{Temp: num("70", evidence.Fahrenheit), RH: num("40", evidence.RH)})
	for _, id := range []string{"air-range", "air-held", "air-usual", "flooring-steady"} {
		f := find(t, id, room(rows))
		if f.Outcome != notShown {
			t.Errorf("%s is %s: %s", id, f.Outcome, f.Reason)
		}
	}
}

func TestHeldAirIsCovered(t *testing.T) {
	gap := func(hours ...float64) acclimate.Room {
		var rows []acclimate.Air
		for _, h := range hours {
			rows = append(rows, airAt(h, "70", "40", "AL1"))
		}
		return room(rows)
	}
	want(t, "26 h between", "air-held", gap(-2, 22, 48), met)
	want(t, "26 h between rows inside", "air-held", gap(0, 10, 36, 48), met)
	want(t, "more between rows inside", "air-held", gap(0, 10, 36.01, 48), notShown, "more than 26 h")
	want(t, "26 h before the start", "air-held", gap(-26, 0.5, 24, 48), notShown, "more than 26 h")
	want(t, "26 h before the start, and a row at it", "air-held", gap(-26, 0, 24, 48), met)
	want(t, "only just before the start", "air-held", gap(-0.01, 25, 48), met)
	want(t, "only after the start", "air-held", gap(0.01, 25, 48), notShown, "no reading at or before 2026-03-02 00:00")
	want(t, "26 h before the end", "air-held", gap(0, 22, 60), met)
	want(t, "more before the end", "air-held", gap(0, 21.99, 60), notShown, "no reading in the 26 h before 2026-03-04 00:00")
	want(t, "long before the start", "air-held", gap(-26.01, 24, 48), notShown, "from 2026-02-28 21:59 to 2026-03-03 00:00")
	want(t, "before the start alone", "air-held", gap(-1), notShown, "where the window ends")
	want(t, "no row", "air-held", gap(), notShown)
	want(t, "rows after the window alone", "air-held", gap(50), notShown)
}

func TestAirRangeIsCoveredButForItsStart(t *testing.T) {
	r := room(steady(0, 48, 24))
	r.Gap = num("10", evidence.Hour)
	want(t, "gaps", "air-range", r, notShown, "more than 10 h")
	r = room([]acclimate.Air{airAt(38, "70", "40", "AL1"), airAt(48, "70", "40", "AL1"), airAt(0, "70", "40", "AL1")})
	r.Gap = num("10", evidence.Hour)
	want(t, "nothing near its start", "air-range", r, met)
}

// The window runs from the wait before the first judged row to the last.
func TestHeldWindow(t *testing.T) {
	r := room(steady(-30, 100, 1))
	r.HeldFor = []evidence.Time{at(60), at(48), at(72)}
	from, to, known := r.HeldWindow()
	if !known || !from.Equal(at(0).First) || !to.Equal(at(72).First) {
		t.Errorf("from %s to %s (%v)", from, to, known)
	}
	for hour, o := range map[float64]evidence.Outcome{-1: met, 0: notMet, 72: notMet, 73: met} {
		rows := append(steady(-30, 100, 1), airAt(hour, "70", "60", "AL2"))
		r := room(rows)
		r.HeldFor = []evidence.Time{at(48), at(72)}
		want(t, fmt.Sprint(hour), "air-held", r, o)
	}
	r.HeldFor = nil
	want(t, "nothing to hold it for", "air-held", r, notShown)
	if _, _, known := r.HeldWindow(); known || r.WidestInterval() != 0 {
		t.Error("a window is known without a judged row")
	}
	r.NoHeld, r.HeldFor = "no slab", []evidence.Time{at(48)}
	want(t, "not needed", "air-held", r, unneeded, "no slab")
	if _, _, known := r.HeldWindow(); known || r.WidestInterval() != 0 {
		t.Error("a window is known where none is needed")
	}
	r.NoHeld, r.HeldLack = "", "hole H1: no time of reading"
	want(t, "a row without a time", "air-held", r, notShown, "hole H1")
}

func TestWidestIntervalOfTheHeldWindow(t *testing.T) {
	for want, hours := range map[time.Duration][]float64{
		32 * time.Hour: {-1, 3, 5, 8, 40, 48},
		45 * time.Hour: {-5, 40, 60},
		30 * time.Hour: {-9, -6, 24, 48, 99},
		0:              {3},
	} {
		var rows []acclimate.Air
		for _, h := range hours {
			rows = append(rows, airAt(h, "70", "40", "AL1"))
		}
		if got := room(rows).WidestInterval(); got != want {
			t.Errorf("rows at %v: the widest interval is %v, want %v", hours, got, want)
		}
	}
	if acclimate.LongInterval != 4*time.Hour { // common practice, no source
		t.Errorf("an interval is long from %s on", acclimate.LongInterval)
	}
}

func TestUsualAir(t *testing.T) {
	for rh, o := range map[string]evidence.Outcome{"30": met, "29.9": notMet, "50": met, "50.1": notMet, "": notShown} {
		r := room(append(steady(-24, 48, 24), airAt(48.5, "99", rh, "AL1")))
		r.RH, r.Acceptance = both("20", "60", evidence.RH), evidence.Acceptance{Guarded: true}
		want(t, rh, "air-usual", r, o)
	}
	r := room(steady(0, 48, 4))
	r.Wood = false
	want(t, "no wood", "air-usual", r, unneeded)
	want(t, "no air", "air-usual", room(nil), notShown, "no air reading")
}

// An event leaves the air unshown until it is read again; a breach stays one.
func TestEventsThatLetTheOutsideIn(t *testing.T) {
	for hour, o := range map[float64]evidence.Outcome{47.9: met, 48: notShown, 49: notShown} {
		r := room(steady(-24, 48, 4))
		r.Open = acclimate.Opened{What: "HVAC off", At: at(hour), Place: line(9)}
		for _, id := range []string{"air-range", "air-held"} {
			want(t, fmt.Sprint(hour), id, r, o)
		}
		want(t, fmt.Sprint(hour), "air-usual", r, met)
	}
	r := room(append(steady(-24, 44, 4), airAt(48, "81", "40", "AL1")))
	r.Open = acclimate.Opened{What: "building open", At: at(50)}
	want(t, "a breach", "air-range", r, notMet)
	want(t, "a breach", "air-held", r, notMet)
}

func TestUsualBoundsByFlooring(t *testing.T) {
	for c, w := range map[acclimate.Covering][3]string{
		acclimate.Wooden: {"60 to 80 F published", "30 to 50 % RH derived", "80 F published"},
		acclimate.Carpet: {"65 to 95 F published", "65 % RH published", "85 F published"},
		acclimate.Hard:   {"65 to 85 F recalled", "65 % RH published", "85 F published"},
	} {
		service := []acclimate.Period{{RH: num("30", evidence.RH)}, {RH: num("50", evidence.RH)}}
		rh := acclimate.UsualRH(c, service)
		got := [3]string{
			text(acclimate.UsualTemp(c)), text(rh), text(evidence.AtMost(acclimate.DefaultSurfaceMax(c))),
		}
		if got != w {
			t.Errorf("covering %d: %q, want %q", c, got, w)
		}
	}
}

func text(l evidence.Limit) string { return l.String() + " " + string(l.Most.Cite.Standing) }

// The service climate is never narrower than 5 points either side of its middle.
func TestServiceHumidity(t *testing.T) {
	for _, c := range [][3]string{
		{"30", "50", "30 to 50"},
		{"39", "42", "35.5 to 45.5"},
		{"35", "45", "35 to 45"},
		{"35", "45.2", "35 to 45.2"},
		{"42", "39", "35.5 to 45.5"},
	} {
		l := acclimate.ServiceRH([]acclimate.Period{{RH: num(c[0], evidence.RH)}, {RH: num(c[1], evidence.RH)}})
		if l.Text() != c[2] {
			t.Errorf("%s and %s give %s, want %s", c[0], c[1], l.Text(), c[2])
		}
	}
	if acclimate.ServiceRH(nil).Lack == "" || acclimate.ServiceRH([]acclimate.Period{{}}).Lack == "" {
		t.Error("a climate that says nothing gives a limit")
	}
	r := room(steady(0, 48, 4))
	r.RH = acclimate.ServiceRH(nil)
	want(t, "no climate", "air-range", r, notShown, "no periods")
}

// In guarded acceptance an instrument's uncertainty counts: usually 1 F and 2 %.
func TestGuardedAir(t *testing.T) {
	for _, c := range []struct {
		temp, rh, by string
		want         evidence.Outcome
	}{
		{"61", "40", "AL1", met},
		{"60.9", "40", "AL1", notMet},
		{"79", "40", "AL1", met},
		{"79.1", "40", "AL1", notMet},
		{"70", "32", "AL1", met},
		{"70", "31.9", "AL1", notMet},
		{"70", "48", "AL1", met},
		{"70", "48.1", "AL1", notMet},
		{"70", "40", "nobody's", notShown},
		{"90", "40", "nobody's", notShown},
	} {
		r := room(append(steady(-24, 48, 4), airAt(48.5, c.temp, c.rh, c.by)))
		r.Instruments = evidence.Instruments{"al1": {ID: "AL1", Kinds: []string{evidence.AirMeter}}}
		r.Acceptance = evidence.Acceptance{Guarded: true}
		want(t, fmt.Sprint(c), "air-range", r, c.want)
	}
}

// A made-up log of any length is put in order, whatever its rows' order.
func TestOrderOfAirRowsNeverMatters(t *testing.T) {
	rows := append(steady(-24, 48, 4), airAt(30, "82", "40", "AL1"), airAt(30, "84", "39", "AL2"), airAt(31, "70", "40", "AL1"))
	forth := find(t, "air-held", room(rows))
	back := make([]acclimate.Air, 0, len(rows))
	for i := range rows {
		back = append(back, rows[len(rows)-1-i])
	}
	if got := find(t, "air-held", room(back)); got.Outcome != forth.Outcome || got.Reason != forth.Reason || got.Value != forth.Value {
		t.Errorf("%s\n%s", forth.Reason, got.Reason)
	}
}

// Of equal values the first is told; of those at one time that of the first
// name; and of those of one name that which is written shorter.
func TestOfEqualValuesTheFirstIsTold(t *testing.T) {
	for _, c := range [][2]acclimate.Air{
		{airAt(48, "81", "40", "AL1"), airAt(48, "81", "40", "AL2")},
		{airAt(47, "81", "40", "AL2"), airAt(48, "81", "40", "AL1")},
		{airAt(48, "59", "40", "AL1"), airAt(48, "59", "40", "AL2")},
		{airAt(48, "81", "40", "AL1"), airAt(48, "81.0", "40", "AL1")},
		{airAt(48, "70", "50.5", "AL2"), airAt(48, "70", "50.50", "AL2")},
		{airAt(48, "82", "40", "AL2"), airAt(47, "81", "40", "AL1")},
		{airAt(48, "58", "40", "AL2"), airAt(47, "59", "40", "AL1")},
	} {
		want(t, "forth", "air-range", room([]acclimate.Air{c[0], c[1]}), notMet, "at "+c[0].ReadAt.Written+" by "+c[0].Instrument)
		back := find(t, "air-range", room([]acclimate.Air{c[1], c[0]}))
		if f := find(t, "air-range", room([]acclimate.Air{c[0], c[1]})); f.Reason != back.Reason || f.Value != back.Value {
			t.Errorf("%s\n%s", f.Reason, back.Reason)
		}
	}
	for _, c := range [][2]acclimate.Air{
		{airAt(47, "61", "40", "AL2"), airAt(48, "61", "40", "AL1")},
		{airAt(47, "61", "40", "AL1"), airAt(48, "61", "40", "AL2")},
		{airAt(47, "61.0", "40", "AL1"), airAt(48, "61", "40", "AL1")},
		{airAt(48, "61", "40", "AL1"), airAt(48, "61.0", "40", "AL1")},
		{airAt(48, "79", "40", "AL1"), airAt(48, "79.0", "40", "AL1")},
	} {
		for _, rows := range [][]acclimate.Air{{c[0], c[1]}, {c[1], c[0]}} {
			want(t, "in range", "air-range", room(rows), met, c[0].Temp.Written+" F at "+c[0].ReadAt.Written+" by "+c[0].Instrument)
		}
	}
	f := find(t, "air-range", room(steady(24, 48, 4)))
	if f.Reason != "40 % RH at 2026-03-03 00:00:00 by AL1 (limit 30 to 50 %); judged from 2026-03-03 00:00 to 2026-03-04 00:00, 7 rows" {
		t.Error(f.Reason)
	}
}

func TestRowsBelongToTheirAreaAndDay(t *testing.T) {
	rows := steady(0, 48, 12)
	rows[1].Area, rows[2].Area, rows[3].Area = "A2", " a1", ""
	log := acclimate.NewLog(append(rows, acclimate.Air{Area: "A2"}, acclimate.Air{}, acclimate.Air{Area: "A1"}))
	day := func(n int64) evidence.Date {
		d := evidence.DayOf(time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC)) + evidence.Day(n)
		return evidence.Date{Written: d.String(), Day: d}
	}
	for _, c := range []struct {
		area              string
		last              evidence.Date
		len, after, timed int
	}{
		{"A1", evidence.Date{}, 6, 0, 4},
		{"A2", evidence.Date{}, 6, 0, 4},
		{"A3", evidence.Date{}, 4, 0, 3},
		{"", evidence.Date{}, 4, 0, 3},
		{"A1", day(1), 5, 1, 3},
		{"A1", day(0), 3, 3, 1},
		{"A2", day(0), 4, 2, 2},
		{"A1", day(-1), 2, 4, 0},
		{"A1", day(2), 6, 0, 4},
	} {
		r := log.Of(c.area, c.last)
		if r.Len() != c.len || r.After() != c.after || len(r.Timed()) != c.timed {
			t.Errorf("area %q up to %s: %d rows, %d after, %d timed; want %+v", c.area, c.last.Written, r.Len(), r.After(), len(r.Timed()),
				c)
		}
	}
	r := log.Of("A1", evidence.Date{})
	if !r.Earliest().ReadAt.First.Equal(at(0).First) || !r.Latest().ReadAt.First.Equal(at(48).First) {
		t.Errorf("from %s to %s", r.Earliest().ReadAt.Written, r.Latest().ReadAt.Written)
	}
	rows = []acclimate.Air{
		airAt(1, "", "", ""), airAt(3, "", "", ""), airAt(6, "", "", ""), airAt(0, "", "", ""), airAt(2, "", "", ""),
		airAt(4, "", "", ""), airAt(5, "", "", ""),
	}
	for i := range 4 {
		rows[3+i].Area = "A1"
	}
	r = acclimate.NewLog(rows).Of("A1", evidence.Date{})
	if !r.Earliest().ReadAt.First.Equal(at(0).First) || !r.Latest().ReadAt.First.Equal(at(6).First) {
		t.Errorf("from %s to %s", r.Earliest().ReadAt.Written, r.Latest().ReadAt.Written)
	}
	for i, a := range r.Timed() {
		if !a.ReadAt.First.Equal(at(float64(i)).First) {
			t.Errorf("row %d of the area was read at %s", i, a.ReadAt.Written)
		}
	}
	if none := acclimate.NewLog(nil).Of("A1", day(0)); none.Earliest() != nil || none.Latest() != nil || none.Len() != 0 {
		t.Error("an empty log holds rows")
	}
}

// A number of more digits than fit is compared all the same.
func TestAnyNumberIsCompared(t *testing.T) {
	for _, c := range []struct {
		value, least, most string
		want               evidence.Outcome
	}{
		{"12345678901234", "0", "80", notMet},
		{"70", "0", "5000", met},
		{"5000", "0", "5000", met},
		{"5000.1", "0", "5000", notMet},
		{"4999", "5000", "6000", notMet},
		{"5000", "5000", "6000", met},
		{"2000", "2000", "2001", met},
		{"1999.9", "2000", "2001", notMet},
		{"-2000", "-2000", "0", met},
		{"-2000.1", "-2000", "0", notMet},
		{"-0.1", "0", "1", notMet},
	} {
		r := room([]acclimate.Air{airAt(48, c.value, "40", "AL1")})
		r.Temp = both(c.least, c.most, evidence.Fahrenheit)
		want(t, fmt.Sprint(c), "air-range", r, c.want)
	}
	e := airAt(48, "70", "40", "AL1")
	e.Temp = evidence.Reading{Written: "70", Value: decimal.New(7, 1), Unit: evidence.Fahrenheit}
	want(t, "7 tens", "air-range", room([]acclimate.Air{e}), met)
	e.Temp = evidence.Reading{Written: "90", Value: decimal.New(9, 1), Unit: evidence.Fahrenheit}
	want(t, "9 tens", "air-range", room([]acclimate.Air{e}), notMet)
}

// The worst value comes first, in its own unit and the limit's, by its
// instrument; the rows that say nothing are named.
func TestReasonsOfTheAir(t *testing.T) {
	cold := airAt(48, "70", "40", "AL1")
	cold.Temp = num("15", evidence.Celsius)
	r := room([]acclimate.Air{cold})
	want(t, "C", "air-range", r, notMet, "15 C at 2026-03-04 00:00:00, which is 59 F by AL1 (limit 60 to 80 F)")
	want(t, "nobody's", "air-range", room([]acclimate.Air{airAt(48, "59", "40", "")}), notMet,
		"59 F at 2026-03-04 00:00:00 (limit 60 to 80 F)")
	want(t, "blank", "air-range", room([]acclimate.Air{airAt(48, "", "40", "AL1")}), notShown,
		"the air at 2026-03-04 00:00:00 (AL1): no reading")
	want(t, "blank, nobody's", "air-range", room([]acclimate.Air{airAt(48, "", "4", "")}), notShown,
		"the air at 2026-03-04 00:00:00: no reading")
	want(t, "dry", "air-range", room([]acclimate.Air{airAt(48, "70", "4", "AL1")}), notShown, "the meter failed")
	f := find(t, "air-range", room([]acclimate.Air{airAt(48, "70", "", "AL1")}))
	if len(f.Evidence) != 1 || f.Evidence[0] != line(2) {
		t.Errorf("the evidence of a blank is %v", f.Evidence)
	}
	placed := airAt(48, "70", "", "AL1")
	placed.RH.Place = line(77)
	if f := find(t, "air-range", room([]acclimate.Air{placed})); f.Evidence[0] != line(77) {
		t.Errorf("the evidence of a blank cell is %v", f.Evidence)
	}
	if f.Worked.Value.Shown() || f.Worked.Room.Shown() {
		t.Error("a window has a form as figures")
	}
}

// Of many rows out of range the worst is told, and the evidence is short.
func TestALongBreachIsToldShortly(t *testing.T) {
	var rows []acclimate.Air
	for i := range 30 {
		rows = append(rows, airAt(20+float64(i), fmt.Sprint(81+(i*7)%30), "29", "AL1"))
	}
	f := find(t, "air-held", room(append(rows, steady(-24, 19, 1)...)))
	// The lowest and the highest of each, and the first eight.
	if f.Value != "110" || len(f.Evidence) != 9 || f.Evidence[0] != line(19) {
		t.Errorf("worst %s, evidence %v (%s)", f.Value, f.Evidence, f.Reason)
	}
	for i := range rows {
		rows[i].Temp, rows[i].RH, rows[i].ReadAt = num("70", evidence.Fahrenheit), num("", evidence.RH), at(20+float64(i))
	}
	f = find(t, "air-held", room(append(rows, steady(-24, 19, 1)...)))
	if len(f.Evidence) != 8 {
		t.Errorf("evidence %v (%s)", f.Evidence, f.Reason)
	}
}

// After the worst row of all stand the lowest and the highest of each unit, in this
// order.
func TestRowsOfEachUnit(t *testing.T) {
	rows := steady(24, 48, 6)
	for i, degrees := range []string{"25", "79", "66", "20", "22"} {
		unit := evidence.Celsius
		if i == 1 || i == 2 {
			unit = evidence.Fahrenheit
		}
		rows[i].Temp = num(degrees, unit)
	}
	var got []string
	for _, at := range find(t, "air-range", room(rows)).Evidence {
		got = append(got, at.String())
	}
	if want := "air.csv row 3, air.csv row 4, air.csv row 5, air.csv row 2"; strings.Join(got, ", ") != want {
		t.Errorf("told by %s, want %s", strings.Join(got, ", "), want)
	}
}
