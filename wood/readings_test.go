package wood_test

import (
	"testing"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// by is the row read by a method and an instrument.
func by(method, instrument string, r wood.Row) wood.Row {
	r.Method, r.Instrument, r.Scale, r.Species = method, instrument, "red oak", "red oak"
	return r
}

// Every subfloor reading is at or under 12 %; a row within 24 h before the
// judged one counts for that alone.
func TestSubfloorMC(t *testing.T) {
	if found := finds(t, gathered(panel("P1", 0, "12.0")), "subfloor-mc"); found.Outcome != evidence.Met || found.Value != "12.0" ||
		found.Limit != "12" {
		t.Errorf("at the limit it is %+v", found)
	}
	expect(t, gathered(panel("P1", 0, "12.1")), "subfloor-mc", evidence.NotMet, "12.1")
	again := gathered(panel("P1", 0, "9"), panel("P1", -day, "12.1"), panel("P2", 0, "9"), panel("P3", 0, "9"), board("B1", 0, "7"))
	expect(t, again, "subfloor-mc", evidence.NotMet, "12.1")
	expect(t, again, "subfloor-spots", evidence.Met, "9")
	expect(t, again, "wood-difference", evidence.Met, "2")
	expect(t, gathered(panel("P1", 0, "9"), panel("P1", -day-minute, "12.1")), "subfloor-mc", evidence.Met, "9")
	blank := gathered(panel("P1", 0, "9"), panel("P1", -day, ""), panel("P2", 0, "9"), panel("P3", 0, "9"))
	expect(t, blank, "subfloor-mc", evidence.NotShown, "")
	expect(t, blank, "subfloor-count", evidence.Met, "3")
	expect(t, gathered(), "subfloor-mc", evidence.NotShown, "")
}

// Guarded, the uncertainty of the method counts: pin 2 points, oven-dry 0.2,
// what the instrument states, and none of a pinless meter.
func TestGuardedReadings(t *testing.T) {
	for _, c := range []struct {
		method, instrument, reading string
		want                        evidence.Outcome
	}{
		{wood.OvenDry, "O1", "11.8", evidence.Met},
		{wood.OvenDry, "O1", "11.9", evidence.NotMet},
		{wood.Pin, "P1", "10", evidence.Met},
		{wood.Pin, "P1", "10.1", evidence.NotMet},
		{wood.Pin, "P2", "11.5", evidence.Met},
		{wood.Pin, "P2", "11.6", evidence.NotMet},
		{wood.Pinless, "P1", "9", evidence.NotShown},
		{wood.Pin, "", "9", evidence.NotShown},
		{wood.OvenDry, "P1", "9", evidence.NotShown},
	} {
		f := gathered(by(c.method, c.instrument, panel("P1", 0, c.reading)))
		f.Acceptance.Guarded = true
		expect(t, f, "subfloor-mc", c.want, "")
	}
	f := gathered(board("B1", 0, "8.8"))
	f.Acceptance.Guarded = true
	expect(t, f, "flooring-mc", evidence.Met, "8.8")
	f = gathered(board("B1", 0, "6.1"))
	f.Acceptance.Guarded = true
	expect(t, f, "flooring-mc", evidence.NotMet, "6.1")
}

// Not more than 3 points over the median, of an even number the mean of two;
// as read even where acceptance is guarded.
func TestSubfloorSpots(t *testing.T) {
	for _, c := range []struct {
		readings []string
		want     evidence.Outcome
		limit    string
	}{
		{[]string{"8", "8.4", "11.4"}, evidence.Met, "11.4"},
		{[]string{"8", "8.4", "11.5"}, evidence.NotMet, "11.4"},
		{[]string{"8", "9", "10", "12.5"}, evidence.Met, "12.5"},
		{[]string{"8", "9", "10", "12.6"}, evidence.NotMet, "12.5"},
		{[]string{"12.6", "10", "9", "8"}, evidence.NotMet, "12.5"},
		{[]string{"20"}, evidence.Met, "23"},
		{[]string{"8", "", "9"}, evidence.NotShown, "11.5"},
		{[]string{""}, evidence.NotShown, ""},
	} {
		var rows []wood.Row
		for i, n := range c.readings {
			rows = append(rows, panel("P"+string(rune('1'+i)), 0, n))
		}
		f := gathered(rows...)
		f.Acceptance.Guarded = true
		expect(t, f, "subfloor-spots", c.want, "")
		if found := finds(t, f, "subfloor-spots"); found.Limit != c.limit {
			t.Errorf("of %v the limit is %q, want %q", c.readings, found.Limit, c.limit)
		}
	}
	expect(t, gathered(), "subfloor-spots", evidence.NotShown, "")
}

// Joists: 2 points over the subfloor's limit, three of them, covered ground.
func TestJoists(t *testing.T) {
	joists := func(readings ...string) wood.Floor {
		var rows []wood.Row
		for i, n := range readings {
			rows = append(rows, read(wood.OfJoist, "J"+string(rune('1'+i)), 0, n))
		}
		f := gathered(rows...)
		f.Acceptance.Guarded, f.CrawlSpace, f.GroundCover = true, true, "yes"
		return f
	}
	expect(t, joists("14", "14", "14.0"), "joists-dry", evidence.Met, "")
	expect(t, joists("14", "14", "14.1"), "joists-dry", evidence.NotMet, "14.1")
	expect(t, joists("14", "14"), "joists-dry", evidence.NotMet, "2")
	expect(t, joists(), "joists-dry", evidence.NotShown, "")
	if found := finds(t, joists("14", "14", "14.1"), "joists-dry"); found.Limit != "14" || found.Cite.Standing != evidence.Practice {
		t.Errorf("its limit is %s, %v", found.Limit, found.Cite)
	}
	f := joists("9", "9", "9")
	f.GroundCover = "no"
	expect(t, f, "joists-dry", evidence.NotMet, "no")
	f.GroundCover = ""
	expect(t, f, "joists-dry", evidence.NotShown, "")
	f.CrawlSpace = false
	expect(t, f, "joists-dry", evidence.Met, "")
	f.BelowUnknown = true
	expect(t, f, "joists-dry", evidence.NotShown, "")
}

// 4 points for a face under 3 in, 2 from there on and where it is not known.
func TestDefaultDifference(t *testing.T) {
	for _, c := range []struct {
		face evidence.Reading
		want string
	}{
		{evidence.Typed("2.999", evidence.Inch), "4"},
		{evidence.Typed("3", evidence.Inch), "2"},
		{evidence.Typed("3.001", evidence.Inch), "2"},
		{evidence.Typed("76.19", evidence.Millimeter), "4"},
		{evidence.Typed("76.2", evidence.Millimeter), "2"},
		{evidence.Reading{}, "2"},
	} {
		if got := wood.DefaultDifference(c.face, true); got.Number.Written != c.want || got.Cite.Standing != evidence.Published {
			t.Errorf("a face of %s gives %v, want %s", c.face, got, c.want)
		}
	}
	if got := wood.DefaultDifference(evidence.Reading{}, false); got.Cite.Standing != evidence.Practice {
		t.Errorf("for other boards it is %v", got)
	}
}

// The difference of the means without its sign, guarded by 0.5 point where one
// instrument read both, by 1.4 where several did or none is named.
func TestWoodDifference(t *testing.T) {
	for _, c := range []struct {
		boards, boards2, sub, meter, meter2 string
		guarded                             bool
		want                                evidence.Outcome
		value                               string
	}{
		{"8", "8", "12", "O1", "O1", false, evidence.Met, "4"},
		{"8", "8", "12.1", "O1", "O1", false, evidence.NotMet, "4.1"},
		{"12", "12", "8", "O1", "O1", false, evidence.Met, "4"},
		{"12.1", "12.1", "8", "O1", "O1", false, evidence.NotMet, "4.1"},
		{"8", "8.1", "12.1", "O1", "O1", false, evidence.NotMet, "4.05"},
		{"8", "8", "11.5", "O1", "O1", true, evidence.Met, "3.5"},
		{"8", "8", "11.6", "O1", "O1", true, evidence.NotMet, "3.6"},
		{"8", "8", "10.6", "O1", "O2", true, evidence.Met, "2.6"},
		{"8", "8", "10.7", "O1", "O2", true, evidence.NotMet, "2.7"},
		{"8", "8", "10.7", "", "", true, evidence.NotMet, "2.7"},
		{"8", "", "10", "O1", "O1", false, evidence.NotShown, ""},
		{"8", "8", "", "O1", "O1", false, evidence.NotShown, ""},
	} {
		b1, b2, p := board("B1", 0, c.boards), board("B2", 0, c.boards2), panel("P1", 0, c.sub)
		b1.Instrument, b2.Instrument, p.Instrument = c.meter, c.meter, c.meter2
		f := gathered(b1, b2, p)
		f.Acceptance.Guarded = c.guarded
		expect(t, f, "wood-difference", c.want, c.value)
	}
	two := gathered(by(wood.OvenDry, "O1", board("B1", 0, "8")), by(wood.OvenDry, "O2", board("B2", 0, "8")), panel("P1", 0, "10.7"))
	two.Acceptance.Guarded = true
	expect(t, two, "wood-difference", evidence.NotMet, "2.7")
	one := gathered(board("B1", 0, "8"), panel("P1", 0, "10"))
	if found := finds(t, one, "wood-difference"); len(found.Worked.Value.Args) != 1 || found.Worked.Value.Op != evidence.OpUnsigned {
		t.Errorf("one pair of means is worked out as %v", found.Worked.Value)
	}
	none := gathered(board("B1", 0, "8"))
	expect(t, none, "wood-difference", evidence.NotShown, "")
	says(t, none, "wood-difference", "no subfloor piece was read")
}

// Two lots are judged each by its own mean.
func TestEachLotByItsOwnMean(t *testing.T) {
	f := gathered(of("K1", board("B1", 0, "8")), of("K2", board("C1", 0, "7")), panel("P1", 0, "11.5"))
	expect(t, f, "wood-difference", evidence.NotMet, "4.5")
	says(t, f, "wood-difference", "lot K2")
	if place := f.Lots()[0].FirstPlace(); place.String() != "flooring B1 8" {
		t.Errorf("its first board was read at %v", place)
	}
	if place := (wood.Lot{}).FirstPlace(); place != nil {
		t.Errorf("a lot without boards was read at %v", place)
	}
}
