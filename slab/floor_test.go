package slab_test

import (
	"testing"
	"time"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// cell is the place of a made-up row.
type cell string

func (c cell) String() string { return string(c) }

func num(written string, u evidence.Unit) evidence.Reading {
	if written == "" {
		return evidence.Reading{Unit: u}
	}
	return evidence.Typed(written, u)
}

// clock is a time of 2026, "03-02 08:00" or with seconds; blank for a blank.
func clock(written string) evidence.Time {
	if written == "" {
		return evidence.Time{}
	}
	layout := "2006-01-02 15:04"
	if len(written) > len("03-02 08:00") {
		layout += ":05"
	}
	t, err := time.Parse(layout, "2026-"+written)
	if err != nil {
		panic(err)
	}
	return evidence.Time{Written: "2026-" + written, First: t, Last: t}
}

func day(written string) evidence.Date {
	t := clock(written + " 00:00")
	return evidence.Date{Written: "2026-" + written, Day: t.Day()}
}

// holed is one row of a hole of the area A1, sealed for 25 h, that meets all.
func holed(name, rh string) slab.Hole {
	return slab.Hole{
		Area: "A1", Hole: name, SealedAt: clock("03-02 08:00"), ReadAt: clock("03-03 09:00"),
		Depth: num("1.6", evidence.Inch), ToWall: num("2", evidence.Foot),
		RH: num(rh, evidence.RH), Temp: num("70", evidence.Fahrenheit), Instrument: "RP1", Place: cell(name + " " + rh),
	}
}

// sound is a floor that meets every check that is made of it.
func sound() slab.Floor {
	most := func(n string, u evidence.Unit) evidence.Bound { return evidence.Bound{Number: num(n, u)} }
	spot := func(name string) (slab.PH, slab.Carbide) {
		return slab.PH{Area: "A1", Spot: name, ReadAt: clock("03-03 09:00"), PH: num("9", evidence.PH), Place: cell("pH " + name)},
			slab.Carbide{Area: "A1", Spot: name, ReadAt: clock("03-03 09:00"), CM: num("1.5", evidence.CM), Place: cell("CM " + name)}
	}
	f := slab.Floor{
		Area: "A1", Place: cell("Areas row 2"), Sizes: []evidence.Reading{num("500", evidence.SquareFoot)},
		Thickness: num("4", evidence.Inch), ExteriorWalls: num("1", evidence.None), Under: "retarder",
		PlacedOn: day("01-01"), InstallOn: day("03-05"), Wood: true, StatesRH: true,
		Holes: []slab.Hole{holed("H1", "70"), holed("H2", "71"), holed("H3", "72")},
		RH:    evidence.AtMost(most("75", evidence.RH)),
		Temp:  evidence.Limit{Least: most("60", evidence.Fahrenheit), Most: most("80", evidence.Fahrenheit)},
		MVER:  evidence.AtMost(most("3", evidence.Pounds)),
		PH:    evidence.Limit{Least: most("7", evidence.PH), Most: most("10", evidence.PH)},
		CM:    evidence.AtMost(most("2", evidence.CM)),
		Wait:  most("24", evidence.Hour), DepthTolerance: num("10", evidence.Percent),
		Instruments: evidence.Instruments{"rp1": {ID: "RP1", Kinds: []string{evidence.Probe}}},
	}
	for _, name := range []string{"P1", "P2"} {
		ph, cm := spot(name)
		f.PHs, f.Carbides = append(f.PHs, ph), append(f.Carbides, cm)
	}
	for _, name := range []string{"D1", "D2", "D3"} {
		f.Dishes = append(f.Dishes, slab.Dish{
			Area: "A1", Dish: name, SetAt: clock("02-28 09:00"), RetrievedAt: clock("03-02 21:00"),
			Start: num("30", evidence.Gram), End: num("31", evidence.Gram), TestArea: num("0.5", evidence.SquareFoot), Place: cell(name),
		})
	}
	return f
}

// find is the finding of one check, which its figures must bear out.
func find(t *testing.T, f slab.Floor, id string) evidence.Finding {
	t.Helper()
	for _, check := range slab.Checks() {
		if check.ID != id {
			continue
		}
		found, again := check.Find(f), check.Find(f.Sorted())
		if found.Outcome != again.Outcome || found.Reason != again.Reason {
			t.Errorf("%s: %s (%s), and sorted %s (%s)", id, found.Outcome, found.Reason, again.Outcome, again.Reason)
		}
		if figured(id) && found.Outcome != evidence.NotNeeded && found.Worked.Outcome() != found.Outcome {
			t.Errorf("%s is %s (%s), and its figures say %s", id, found.Outcome, found.Reason, found.Worked.Outcome())
		}
		return found
	}
	t.Fatalf("there is no check %s", id)
	return evidence.Finding{}
}

// figured says whether a check answers by figures.
func figured(id string) bool { return id != "grade" && id != "retarder" && id != "scan-probed" }

// outcomes holds a check to an outcome after each change of a sound floor.
type outcomes []struct {
	says   string
	change func(*slab.Floor)
	want   evidence.Outcome
}

func (all outcomes) hold(t *testing.T, id string) {
	t.Helper()
	for _, c := range all {
		f := sound()
		c.change(&f)
		if got := find(t, f, id); got.Outcome != c.want {
			t.Errorf("%s, %s: %s (%s), want %s", id, c.says, got.Outcome, got.Reason, c.want)
		}
	}
}

// A sound floor meets every check, and every answer is borne out by figures.
func TestSoundFloor(t *testing.T) {
	for _, check := range slab.Checks() {
		want := evidence.Met
		switch check.ID {
		case "grade", "other-tests", "scan-probed":
			want = evidence.NotNeeded
		}
		if got := find(t, sound(), check.ID); got.Outcome != want {
			t.Errorf("%s is %s (%s)", check.ID, got.Outcome, got.Reason)
		}
	}
}

// A test that is not needed asks for nothing; one that is and has no rows shows
// nothing.
func TestNoRows(t *testing.T) {
	bare := func(f *slab.Floor) { f.Holes, f.Dishes, f.PHs, f.Carbides = nil, nil, nil, nil }
	unneeded := func(f *slab.Floor) { f.NoHoles, f.NoDishes, f.NoPH, f.NoCM = "no", "no", "no", "no" }
	for _, check := range slab.Checks() {
		switch check.ID {
		case "grade", "retarder", "slab-age", "other-tests", "scan-probed":
			continue
		}
		outcomes{{"no rows", bare, evidence.NotShown}, {"not needed", unneeded, evidence.NotNeeded}}.hold(t, check.ID)
	}
}

// Gypsum is no concrete, and lightweight concrete has no dish method.
func TestMadeOf(t *testing.T) {
	for _, c := range []struct {
		made          string
		holes, dishes evidence.Outcome
	}{
		{"normal", evidence.Met, evidence.Met},
		{slab.Lightweight, evidence.Met, evidence.NotShown},
		{slab.Gypsum, evidence.NotShown, evidence.NotShown},
		{slab.CalciumSulfate, evidence.NotShown, evidence.NotShown},
	} {
		f := sound()
		f.MadeOf = c.made
		for _, id := range []string{"slab-holes", "slab-edge", "slab-depth", "slab-wait", "slab-temp", "slab-rh"} {
			if got := find(t, f, id); got.Outcome != c.holes {
				t.Errorf("%s in %s is %s", id, c.made, got.Outcome)
			}
		}
		for _, id := range []string{"mver-dishes", "mver-time", "mver-rate"} {
			if got := find(t, f, id); got.Outcome != c.dishes {
				t.Errorf("%s on %s is %s", id, c.made, got.Outcome)
			}
		}
	}
}

// Flooring laid loose leaves those checks advice whose limit no product states;
// a membrane that needs no limit leaves the checks of holes so.
func TestAdvice(t *testing.T) {
	for _, c := range []struct {
		loose, isolated, states, stated bool
		holes, others, age              bool
	}{
		{states: true, stated: true, holes: true, others: true, age: true},
		{states: false, stated: false, holes: true, others: true, age: true},
		{isolated: true, states: true, stated: true, others: true, age: true},
		{loose: true, states: true, stated: true, holes: true, others: true, age: true},
		{loose: true, states: true, stated: false, holes: true, others: false, age: true},
		{loose: true, states: false, stated: true, holes: false, others: true},
	} {
		f := sound()
		f.Loose, f.Isolated, f.StatesRH = c.loose, c.isolated, c.states
		if !c.stated {
			f.NoDishes, f.NoPH, f.NoCM = "none", "none", "none"
		}
		for id, want := range map[string]bool{
			"slab-holes": c.holes, "slab-edge": c.holes, "slab-depth": c.holes, "slab-wait": c.holes, "slab-temp": c.holes,
			"slab-rh":     c.holes,
			"mver-dishes": c.others, "mver-time": c.others, "mver-rate": c.others, "slab-ph": c.others, "slab-cm": c.others,
			"slab-age": c.age, "grade": true, "retarder": true, "other-tests": true, "scan-probed": false,
		} {
			if got := find(t, f, id).Deciding; got != want {
				t.Errorf("%+v: %s decides: %v, want %v", c, id, got, want)
			}
		}
	}
}
