package slab_test

import (
	"strings"
	"testing"
	"time"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// A dish lies for 60 to 72 h, to the second; where clocks went back, both ways.
func TestExposure(t *testing.T) {
	lay := func(from, to string) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Dishes[1].SetAt, f.Dishes[1].RetrievedAt = clock(from), clock(to) }
	}
	twice := func(from, to string) func(*slab.Floor) {
		return func(f *slab.Floor) {
			lay(from, to)(f)
			f.Dishes[1].RetrievedAt.Last = f.Dishes[1].RetrievedAt.First.Add(time.Hour)
		}
	}
	outcomes{
		{"60 h", lay("03-01 08:00", "03-03 20:00"), evidence.Met},
		{"a second less", lay("03-01 08:00:01", "03-03 20:00"), evidence.NotMet},
		{"72 h", lay("03-01 08:00", "03-04 08:00"), evidence.Met},
		{"a second more", lay("03-01 07:59:59", "03-04 08:00"), evidence.NotMet},
		{"not known when set", lay("", "03-04 08:00"), evidence.NotShown},
		{"not known when retrieved", lay("03-01 08:00", ""), evidence.NotShown},
		{"71 h or 72 h", twice("03-01 08:00", "03-04 07:00"), evidence.Met},
		{"72 h or 73 h", twice("03-01 08:00", "03-04 08:00"), evidence.NotMet},
		{"59 h or 60 h", twice("03-01 08:00", "03-03 19:00"), evidence.NotMet},
	}.hold(t, "mver-time")
}

// Worked by hand: 0.449 ft2, 66 h and 3 lb are 453.59237 x 3 x 0.449 x 66 /
// 24000 g, 1.6802195365725; in g/m2 the limit is its own.
func TestEmissionRate(t *testing.T) {
	gain := func(end string) func(*slab.Floor) {
		return func(f *slab.Floor) {
			f.Dishes[0].SetAt, f.Dishes[0].RetrievedAt = clock("03-01 08:00"), clock("03-04 02:00")
			f.Dishes[0].TestArea, f.Dishes[0].End = num("0.449", evidence.SquareFoot), num(end, evidence.Gram)
		}
	}
	metric := func(end string) func(*slab.Floor) {
		return func(f *slab.Floor) {
			f.MVER = evidence.AtMost(evidence.Bound{Number: num("15", evidence.Grams)})
			f.Dishes[0].TestArea, f.Dishes[0].End = num("400", evidence.SquareCM), num(end, evidence.Gram)
		}
	}
	guarded := func(end string) func(*slab.Floor) {
		return func(f *slab.Floor) {
			f.Acceptance.Guarded = true
			f.Instruments = evidence.Instruments{"bal": {ID: "BAL", Kinds: []string{"balance"}, Uncertainty: num("0.1", evidence.Gram)}}
			for i := range f.Dishes {
				f.Dishes[i].Instrument = "BAL"
			}
			gain(end)(f)
		}
	}
	outcomes{
		{"3 lb", gain("31.6802195365725"), evidence.Met},
		{"one last digit over", gain("31.6802195365726"), evidence.NotMet},
		{"1.58 g and 0.1 g", guarded("31.5801"), evidence.Met},
		{"1.5803 g and 0.1 g", guarded("31.5803"), evidence.NotMet},
		{"no uncertainty", func(f *slab.Floor) { f.Acceptance.Guarded = true }, evidence.NotShown},
		{"15 g/m2", metric("31.5"), evidence.Met},
		{"15.01 g/m2", metric("31.501"), evidence.NotMet},
		{"no gain", gain("30"), evidence.NotShown},
		{"a loss", gain("29"), evidence.NotShown},
		{"no end mass", gain(""), evidence.NotShown},
		{"no start mass", func(f *slab.Floor) { f.Dishes[0].Start = evidence.Reading{} }, evidence.NotShown},
		{"no area", func(f *slab.Floor) { f.Dishes[0].TestArea = evidence.Reading{} }, evidence.NotShown},
		{"not known when set", func(f *slab.Floor) { f.Dishes[0].SetAt = evidence.Time{} }, evidence.NotShown},
		{"no time passed", func(f *slab.Floor) { f.Dishes[0].SetAt = f.Dishes[0].RetrievedAt }, evidence.NotShown},
		{"water while it lay", func(f *slab.Floor) { f.Wet = clock("02-28 09:01").First }, evidence.NotShown},
		{"water before it was set", func(f *slab.Floor) { f.Wet = clock("02-28 09:00").First }, evidence.Met},
		{"an earlier dish of that name", func(f *slab.Floor) {
			d := f.Dishes[0]
			d.End, d.SetAt, d.RetrievedAt = num("39", evidence.Gram), clock("02-27 09:00"), clock("03-02 09:00")
			f.Dishes = append(f.Dishes, d)
		}, evidence.Met},
	}.hold(t, "mver-rate")
	f := sound()
	gain("34")(&f)
	if got := find(t, f, "mver-rate"); got.Value != "7.14" {
		t.Errorf("4 g on 0.449 ft2 in 66 h: %s", got.Value)
	}
}

// As many dishes as holes; a dish is usable with every starred cell.
func TestEnoughDishes(t *testing.T) {
	outcomes{
		{"1000.1 ft2", func(f *slab.Floor) { f.Sizes[0] = num("1000.1", evidence.SquareFoot) }, evidence.NotMet},
		{"two", func(f *slab.Floor) { f.Dishes = f.Dishes[:2] }, evidence.NotMet},
		{"no start mass", func(f *slab.Floor) { f.Dishes[2].Start = evidence.Reading{} }, evidence.NotShown},
		{"no end mass", func(f *slab.Floor) { f.Dishes[2].End = evidence.Reading{} }, evidence.NotShown},
		{"no area", func(f *slab.Floor) { f.Dishes[2].TestArea = evidence.Reading{} }, evidence.NotShown},
		{"not known when set", func(f *slab.Floor) { f.Dishes[2].SetAt = evidence.Time{} }, evidence.NotShown},
		{"not known when retrieved", func(f *slab.Floor) { f.Dishes[2].RetrievedAt = evidence.Time{} }, evidence.NotShown},
	}.hold(t, "mver-dishes")
}

// Every pH in its range, at two spots; none under 5; a leveler undoes them.
func TestPH(t *testing.T) {
	read := func(n string) func(*slab.Floor) {
		return func(f *slab.Floor) { f.PHs[0].PH = num(n, evidence.PH) }
	}
	before := func(n, when string) func(*slab.Floor) {
		return func(f *slab.Floor) {
			r := f.PHs[0]
			r.PH, r.ReadAt = num(n, evidence.PH), clock(when)
			f.PHs = append(f.PHs, r)
		}
	}
	outcomes{
		{"7", read("7"), evidence.Met},
		{"6.99", read("6.99"), evidence.NotMet},
		{"10", read("10"), evidence.Met},
		{"10.01", read("10.01"), evidence.NotMet},
		{"5", read("5"), evidence.NotMet},
		{"4.99", read("4.99"), evidence.NotShown},
		{"blank", read(""), evidence.NotShown},
		{"one spot", func(f *slab.Floor) { f.PHs = f.PHs[:1] }, evidence.NotShown},
		{"one spot over", func(f *slab.Floor) { read("11")(f); f.PHs = f.PHs[:1] }, evidence.NotMet},
		{"one spot untimed", func(f *slab.Floor) { f.PHs[0].ReadAt = evidence.Time{} }, evidence.NotShown},
		{"24 h before", before("11", "03-02 09:00"), evidence.NotMet},
		{"a second more", before("11", "03-02 08:59:59"), evidence.Met},
		{"a blank 24 h before", before("", "03-02 09:00"), evidence.NotShown},
		{"a leveler after", func(f *slab.Floor) { f.Leveled = clock("03-03 09:01").First }, evidence.NotShown},
		{"a leveler at that time", func(f *slab.Floor) { f.Leveled = clock("03-03 09:00").First }, evidence.Met},
		{"water after", func(f *slab.Floor) { f.Wet = clock("03-03 09:01").First }, evidence.NotShown},
		{"no uncertainty", func(f *slab.Floor) { f.Acceptance.Guarded = true }, evidence.NotShown},
	}.hold(t, "slab-ph")
	f := sound()
	f.Leveled, f.Wet = clock("03-03 09:01").First, clock("03-03 09:02").First
	if got := find(t, f, "slab-ph"); got.Reason != "spot P1 and spot P2: not read again since water came" {
		t.Errorf("water after the leveler: %s", got.Reason)
	}
	f.Leveled = clock("03-03 09:03").First
	if got := find(t, f, "slab-ph"); got.Reason != "spot P1 and spot P2: not read again since a leveler was placed" {
		t.Errorf("a leveler after water: %s", got.Reason)
	}
	outcomes{{"a leveler", func(f *slab.Floor) { f.Leveled = clock("03-04 09:01").First }, evidence.Met}}.hold(t, "slab-cm")
}

// Every carbide reading within its limit, at two spots, or three above 50 m2.
func TestCarbide(t *testing.T) {
	read := func(n string) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Carbides[0].CM = num(n, evidence.CM) }
	}
	before := func(n, when string) func(*slab.Floor) {
		return func(f *slab.Floor) {
			r := f.Carbides[0]
			r.CM, r.ReadAt = num(n, evidence.CM), clock(when)
			f.Carbides = append(f.Carbides, r)
		}
	}
	wide := func(sizes ...evidence.Reading) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Sizes = sizes }
	}
	outcomes{
		{"2", read("2"), evidence.Met},
		{"2.01", read("2.01"), evidence.NotMet},
		{"blank", read(""), evidence.NotShown},
		{"one spot", func(f *slab.Floor) { f.Carbides = f.Carbides[:1] }, evidence.NotShown},
		{"one spot untimed", func(f *slab.Floor) { f.Carbides[0].ReadAt = evidence.Time{} }, evidence.NotShown},
		{"50 m2", wide(num("50", evidence.SquareM)), evidence.Met},
		{"50.1 m2", wide(num("50.1", evidence.SquareM)), evidence.NotShown},
		{"50 m2 in two", wide(num("25", evidence.SquareM), num("25", evidence.SquareM)), evidence.Met},
		{"more in two", wide(num("25", evidence.SquareM), num("25.1", evidence.SquareM)), evidence.NotShown},
		{"no size", wide(num("", evidence.SquareM)), evidence.NotShown},
		{"no size and over", func(f *slab.Floor) { wide(num("", evidence.SquareM))(f); read("3")(f) }, evidence.NotMet},
		{"three spots", func(f *slab.Floor) {
			wide(num("50.1", evidence.SquareM))(f)
			r := f.Carbides[0]
			r.Spot = "P3"
			f.Carbides = append(f.Carbides, r)
		}, evidence.Met},
		{"24 h before", before("3", "03-02 09:00"), evidence.NotMet},
		{"a second more", before("3", "03-02 08:59:59"), evidence.Met},
		{"a blank 24 h before", before("", "03-02 09:00"), evidence.NotShown},
	}.hold(t, "slab-cm")
}

// What lies below grade is for floorings whose manufacturer says so.
func TestGrade(t *testing.T) {
	for _, c := range []struct {
		kind, allowed string
		solid         bool
		want          evidence.Outcome
	}{
		{"", "", true, evidence.NotShown},
		{"", "", false, evidence.NotNeeded},
		{slab.OnGrade, "no", true, evidence.NotNeeded},
		{"suspended", "no", true, evidence.NotNeeded},
		{slab.BelowGrade, "yes", true, evidence.Met},
		{slab.BelowGrade, "no", true, evidence.NotMet},
		{slab.BelowGrade, "", true, evidence.NotMet},
		{slab.BelowGrade, "yes", false, evidence.Met},
		{slab.BelowGrade, "no", false, evidence.NotMet},
		{slab.BelowGrade, "", false, evidence.NotShown},
	} {
		f := sound()
		f.Kind, f.BelowGrade, f.SolidWood = c.kind, c.allowed, c.solid
		if got := find(t, f, "grade"); got.Outcome != c.want {
			t.Errorf("%+v: %s (%s)", c, got.Outcome, got.Reason)
		}
		f.NoSlab = "wood"
		if got := find(t, f, "grade"); got.Outcome != evidence.NotNeeded {
			t.Errorf("%+v without a slab: %s (%s)", c, got.Outcome, got.Reason)
		}
	}
}

// On or below grade a retarder lies under the slab, or a membrane over it.
func TestRetarder(t *testing.T) {
	for _, c := range []struct {
		kind, under, membrane string
		want                  evidence.Outcome
		says                  string
	}{
		{"", "retarder", "", evidence.Met, "there is a vapor retarder"},
		{"", "none", "", evidence.NotMet, "there is no vapor retarder"},
		{"", "none", "MEM", evidence.Met, "the flooring system has a membrane, MEM"},
		{"", "", "MEM", evidence.Met, "the flooring system has a membrane, MEM"},
		{"", "unknown", "", evidence.Met, "it is not known"},
		{"", "", "", evidence.NotShown, "what lies under the slab is not recorded"},
		{slab.BelowGrade, "none", "", evidence.NotMet, "there is no vapor retarder"},
		{slab.OnGrade, "none", "", evidence.NotMet, "there is no vapor retarder"},
		{"metal deck", "none", "", evidence.NotNeeded, "the slab is of the kind metal deck"},
	} {
		f := sound()
		f.Kind, f.Under, f.Membrane = c.kind, c.under, c.membrane
		if got := find(t, f, "retarder"); got.Outcome != c.want || !strings.HasPrefix(got.Reason, c.says) {
			t.Errorf("%+v: %s (%s)", c, got.Outcome, got.Reason)
		}
		f.NoSlab = "wood"
		if got := find(t, f, "retarder"); got.Outcome != evidence.NotNeeded {
			t.Errorf("%+v without a slab: %s (%s)", c, got.Outcome, got.Reason)
		}
	}
}

// A finding about the area names its row, where that is known.
func TestRowOfArea(t *testing.T) {
	for _, place := range []evidence.Place{nil, cell("Areas row 2")} {
		f := sound()
		f.Place, f.ExteriorWalls = place, evidence.Reading{}
		for _, id := range []string{"retarder", "slab-edge"} {
			if got := find(t, f, id); (len(got.Evidence) == 1) != (place != nil) {
				t.Errorf("%s of an area at %v names %v", id, place, got.Evidence)
			}
		}
	}
}

// Wood goes over a slab that is 30 days old.
func TestSlabAge(t *testing.T) {
	outcomes{
		{"30 days", func(f *slab.Floor) { f.PlacedOn = day("02-03") }, evidence.Met},
		{"29 days", func(f *slab.Floor) { f.PlacedOn = day("02-04") }, evidence.NotMet},
		{"not known when placed", func(f *slab.Floor) { f.PlacedOn = evidence.Date{} }, evidence.NotNeeded},
		{"not known when installed", func(f *slab.Floor) { f.InstallOn = evidence.Date{} }, evidence.NotShown},
		{"not wood", func(f *slab.Floor) { f.Wood = false }, evidence.NotNeeded},
		{"no slab", func(f *slab.Floor) { f.NoSlab = "wood" }, evidence.NotNeeded},
	}.hold(t, "slab-age")
}
