package acclimate_test

import (
	"testing"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// log is a good log, a row an hour from a day before the window to a day after
// it, less the hours given, and with the rows given.
func log(less []float64, more ...acclimate.Air) acclimate.Room {
	var rows []acclimate.Air
	for _, a := range steady(-48, 96, 1) {
		keep := true
		for _, h := range less {
			keep = keep && !a.ReadAt.First.Equal(at(h).First)
		}
		if keep {
			rows = append(rows, a)
		}
	}
	return room(append(rows, more...))
}

func one(hours float64, temp string) acclimate.Air { return airAt(hours, temp, "40", "AL1") }

// A run is excused where the instrument's own rows in range on either side lie
// at most 2 h apart.
func TestShortExcursionsAreExcused(t *testing.T) {
	want(t, "one row", "air-held", log([]float64{20}, one(20, "85")), met,
		"excused: 1 excursion of at most 2 h, the worst value 85 F at 2026-03-02 20:00:00 (row 146)")
	want(t, "two rows", "air-held", log([]float64{20}, one(20, "85"), one(20.5, "84")), met, "85 F")
	want(t, "three hours", "air-held", log([]float64{20, 21}, one(20, "85"), one(21, "85")), notMet, "2 of them out of range")
	want(t, "just over 2 h", "air-held", log([]float64{20, 21}, one(20, "85"), one(21.01, "70")), notMet)
	want(t, "at the first row", "air-held",
		log(nil, airAt(20, "85", "40", "AL2"), airAt(20.5, "85", "40", "AL2"), airAt(21, "70", "40", "AL2")), notMet)
	want(t, "just 2 h", "air-held", log([]float64{20, 21}, one(19.5, "85"), one(20, "85"), one(20.5, "85"), one(21, "70")), met)
	want(t, "other instrument's rows", "air-held", log(nil, airAt(20, "85", "40", "AL2")), notMet)
	want(t, "of its own rows", "air-held", log(nil,
		airAt(19, "70", "40", "AL2"), airAt(20, "85", "40", "AL2"), airAt(21, "70", "40", "AL2")), met)
	want(t, "humidity", "air-held", log([]float64{20}, airAt(20, "70", "55", "AL1")), met, "the worst value 55 % RH")
	want(t, "none", "air-held", log(nil), met,
		"40 % RH at 2026-03-02 00:00:00 by AL1 (limit 30 to 50 %); judged from 2026-03-02 00:00 to 2026-03-04 00:00, 49 rows")
}

// The latest row of each instrument in the window is in range.
func TestTheLatestRowIsInRange(t *testing.T) {
	want(t, "at the end", "air-held", log([]float64{48}, one(48, "85")), notMet)
	want(t, "just before", "air-held", log([]float64{47}, one(47, "85")), met)
	want(t, "after it", "air-held", log([]float64{49}, one(49, "85")), met)
	want(t, "of another instrument", "air-held", log(nil, airAt(10, "70", "40", "AL2"), airAt(11, "85", "40", "AL2")), notMet)
}

// The last row at or before the start is judged, of all instruments together.
func TestTheRowBeforeTheStartIsJudged(t *testing.T) {
	less := []float64{-1, 0}
	want(t, "out of range", "air-held", log([]float64{0}, one(-0.5, "85")), met, "1 excursion")
	want(t, "out of range for long", "air-held", log([]float64{-2, -1, 0}, one(-0.5, "85"), one(-2, "85")), notMet)
	want(t, "not the one before it", "air-held", log(less, one(-1, "99"), one(-0.5, "70")), met, "49 rows")
	want(t, "of another instrument", "air-held", log(less, airAt(-0.5, "85", "40", "AL2")), notMet)
	want(t, "of another instrument, earlier", "air-held", log([]float64{0}, airAt(-1.5, "85", "40", "AL2")), met)
	want(t, "both at one time", "air-held", log([]float64{0}, airAt(-1, "85", "40", "AL2")), notMet)
}

// No value lies more than 10 F or 15 % RH outside, as read.
func TestDeepExcursionsAreNotExcused(t *testing.T) {
	for temp, o := range map[string]evidence.Outcome{"90": met, "90.1": notMet, "50": met, "49.9": notMet} {
		want(t, temp, "air-held", log([]float64{20}, one(20, temp)), o)
	}
	for rh, o := range map[string]evidence.Outcome{"65": met, "65.1": notMet, "15": met, "14.9": notMet} {
		want(t, rh, "air-held", log([]float64{20}, airAt(20, "70", rh, "AL1")), o)
	}
	want(t, "one of two", "air-held", log([]float64{20}, one(20, "85"), one(20.5, "91")), notMet)
	r := log([]float64{20}, one(20, "90.9"))
	r.Temp = both("15.5", "27.5", evidence.Celsius) // to 81.5 F, and 91.5 F at the farthest
	want(t, "limits in C", "air-held", r, met, "90.9 F")
	r = log([]float64{20}, one(20, "91.6"))
	r.Temp = both("15.5", "27.5", evidence.Celsius)
	want(t, "limits in C", "air-held", r, notMet)
	guarded := log([]float64{20}, one(20, "90"))
	guarded.Instruments = evidence.Instruments{"al1": {ID: "AL1", Kinds: []string{evidence.AirMeter}}}
	guarded.Acceptance = evidence.Acceptance{Guarded: true}
	want(t, "as read", "air-held", guarded, met)
}

// The worst value in excused runs is the one farthest outside, as a part of
// what may be excused.
func TestTheWorstExcusedValueIsShown(t *testing.T) {
	less := []float64{10, 36}
	want(t, "5 F and 9 %", "air-held", log(less, one(10, "85"), airAt(36, "70", "59", "AL1")), met, "2 excursions",
		"the worst value 59 % RH")
	want(t, "5 F and 7 %", "air-held", log(less, one(10, "85"), airAt(36, "70", "57", "AL1")), met, "the worst value 85 F")
	want(t, "two alike", "air-held", log(less, one(10, "85"), one(36, "55")), met, "the worst value 85 F")
	want(t, "two of one", "air-held", log(less, one(10, "55"), one(36, "86")), met, "the worst value 86 F")
	f := find(t, "air-held", log(less, one(10, "55")))
	if n := len(f.Evidence); f.Evidence[n-1].String() != "air.csv row 145" {
		t.Errorf("the evidence is %v", f.Evidence)
	}
}

// No other run of the instrument begins within 24 h, in the window or outside.
func TestExcursionsLieApart(t *testing.T) {
	two := func(a, b float64) acclimate.Room { return log([]float64{a, b}, one(a, "85"), one(b, "85")) }
	want(t, "24 h apart", "air-held", two(10, 34), notMet)
	want(t, "more than 24 h apart", "air-held", two(10, 35), met, "2 excursions")
	want(t, "just more", "air-held", log([]float64{10}, one(10, "85"), one(34.01, "85"), one(34.5, "70")), met)
	want(t, "24 h before, outside", "air-held", two(-14, 10), notMet)
	want(t, "25 h before, outside", "air-held", two(-15, 10), met, "1 excursion")
	want(t, "24 h after, outside", "air-held", two(40, 64), notMet)
	want(t, "25 h after, outside", "air-held", two(40, 65), met, "1 excursion")
	want(t, "just before the window's end, and a day on", "air-held", two(47, 71), notMet)
	want(t, "of another instrument", "air-held", log([]float64{10}, one(10, "85"),
		airAt(13, "70", "40", "AL2"), airAt(14, "85", "40", "AL2"), airAt(15, "70", "40", "AL2")), met, "2 excursions")
	want(t, "of no instrument", "air-held", log([]float64{10}, one(10, "85"),
		airAt(60, "70", "40", ""), airAt(34, "85", "40", ""), airAt(33, "70", "40", ""), airAt(35, "70", "40", "")), notMet)
	before := func(hours float64) acclimate.Room { // one of no instrument, and later one of AL1 at 40 h
		return log([]float64{40}, one(40, "85"),
			airAt(hours-1, "70", "40", ""), airAt(hours, "85", "40", ""), airAt(hours+1, "70", "40", ""))
	}
	want(t, "of no instrument, a day before", "air-held", before(16), notMet)
	want(t, "of no instrument, over a day before", "air-held", before(15.9), met, "2 excursions")
	want(t, "a day before, at the edge", "air-held", two(-23, 1), notMet)
	nameless := []acclimate.Air{airAt(63, "70", "40", ""), airAt(64, "85", "40", ""), airAt(65, "70", "40", "")}
	want(t, "of no instrument, outside", "air-held", log([]float64{40}, append(nameless, one(40, "85"))...), notMet)
	want(t, "of no instrument alone", "air-held", log(nil, airAt(19, "70", "40", ""), airAt(20, "85", "40", ""), airAt(21, "70", "40", "")),
		met, "1 excursion")
	want(t, "a long one that began long before", "air-held", log([]float64{10, -15, -14, -13}, one(10, "85"),
		one(-15, "85"), one(-14, "85"), one(-13, "85")), met)
}

// An instrument is the same however its name is typed.
func TestAnInstrumentIsOneHoweverItIsTyped(t *testing.T) {
	want(t, "typed otherwise", "air-held", log([]float64{10}, airAt(10, "85", "40", " al1")), met, "1 excursion")
}

// A blank may be anything: nothing with a blank in it is excused, and it may
// begin a run of its own.
func TestBlanksExcuseNothing(t *testing.T) {
	want(t, "one blank", "air-held", log([]float64{20}, one(20, "")), notShown, "no reading")
	want(t, "a breach beside it", "air-held", log([]float64{20}, one(20, "85"), one(20.5, "")), notMet)
	want(t, "a blank elsewhere within a day", "air-held", log([]float64{20, 60}, one(20, "85"), one(43, "")), notMet)
	want(t, "a blank outside the window, within a day", "air-held", log([]float64{40, 60}, one(40, "85"), one(60, "")), notMet)
	want(t, "a blank outside the window, two days on", "air-held", log([]float64{20, 60}, one(20, "85"), one(60, "")), met)
	want(t, "a blank behind a long run", "air-held", log([]float64{-13, -15, -16, -17}, one(10.5, "85"),
		one(-15, "85"), one(-16, "85"), one(-17, "85"), one(-13, "")), notMet)
}

// Guarded acceptance never excuses what simple acceptance does not: two runs
// that the uncertainty joins to one are two.
func TestGuardedExcusesNoMore(t *testing.T) {
	guard := func(r acclimate.Room) acclimate.Room {
		r.Instruments = evidence.Instruments{"al1": {ID: "AL1", Kinds: []string{evidence.AirMeter}}}
		r.Acceptance = evidence.Acceptance{Guarded: true}
		return r
	}
	joined := []acclimate.Air{one(20, "82"), one(20.25, "79.5"), one(20.5, "82")}
	want(t, "simple", "air-held", log([]float64{20}, joined...), notMet)
	want(t, "guarded", "air-held", guard(log([]float64{20}, joined...)), notMet)
	within := []acclimate.Air{one(20, "79.5"), one(20.25, "82"), one(20.5, "79.5")}
	want(t, "simple", "air-held", log([]float64{20}, within...), met, "1 excursion")
	want(t, "guarded", "air-held", guard(log([]float64{20}, within...)), met, "1 excursion")
	band := []acclimate.Air{one(20, "79.5"), one(43, "79.5")}
	want(t, "simple", "air-held", log([]float64{20, 43}, band...), met)
	want(t, "guarded", "air-held", guard(log([]float64{20, 43}, band...)), notMet)
	shifted := []acclimate.Air{one(20, "79.5"), one(20.5, "82"), one(44.25, "82"), one(44.5, "70")}
	want(t, "begun later as read", "air-held", guard(log([]float64{20, 45}, shifted...)), notMet)
}

// The setting of an excursion counts; at zero nothing is excused.
func TestExcursionSetting(t *testing.T) {
	r := log([]float64{20, 21}, one(20, "85"), one(21, "85"))
	r.Excursion = num("3", evidence.Hour)
	want(t, "3 h", "air-held", r, met, "at most 3 h")
	r = log([]float64{20}, one(20, "85"))
	r.Excursion = num("0", evidence.Hour)
	want(t, "0 h", "air-held", r, notMet)
}

// Of two rows of one instrument at one time the worse counts.
func TestTwoRowsAtOneTime(t *testing.T) {
	want(t, "excused", "air-held", log(nil, one(20, "85")), met, "1 excursion")
	want(t, "at the end", "air-held", log(nil, one(48, "85")), notMet, "50 rows, 1 of them out of range")
	want(t, "at the end, typed first", "air-held", room(append([]acclimate.Air{one(48, "85")}, steady(-1, 50, 1)...)), notMet)
	first := []acclimate.Air{airAt(20, "70", "40", "AL2"), airAt(20, "85", "40", "AL2"), airAt(21, "70", "40", "AL2")}
	want(t, "at the beginning", "air-held", log(nil, first...), notMet)
	want(t, "on either side", "air-held", log(nil, one(20, "85"), one(21, "85")), notMet)
}
