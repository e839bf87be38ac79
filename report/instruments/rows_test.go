package instruments_test

import (
	"testing"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/slab"
	"firstboard/wood"
)

// Whoever makes a row of a reading, to judge it or to plan it, names the kind of
// instrument that takes it.
func TestRowsNameTheKindOfTheirInstrument(t *testing.T) {
	board := func(method string) wood.Row { return wood.Row{Method: method} }
	for _, c := range []struct {
		row  instruments.Row
		want string
	}{
		{instruments.HoleRow("hole H1", slab.Hole{}), evidence.Probe},
		{instruments.DishRow("dish D1", slab.Dish{}), evidence.Balance},
		{instruments.PHRow("pH spot P1", slab.PH{}), evidence.PHMeter},
		{instruments.CarbideRow("carbide spot C1", slab.Carbide{}), evidence.CMMeter},
		{instruments.OtherRow("test of bond", slab.Other{}), ""},
		{instruments.SurfaceRow("surface spot S1", acclimate.Surface{}), evidence.Surface},
		{instruments.AirRow(&acclimate.Air{}), evidence.AirMeter},
		{instruments.WoodRow("board B1", board(wood.Pin)), evidence.PinMeter},
		{instruments.WoodRow("board B1", board(wood.Pinless)), evidence.Pinless},
		{instruments.WoodRow("board B1", board(wood.OvenDry)), evidence.OvenMeter},
		{instruments.WoodRow("board B1", board("")), ""},
	} {
		if c.row.As != c.want {
			t.Errorf("%s is read with %q, want %q", c.row.What, c.row.As, c.want)
		}
	}
}

// A dish counts from the time it was set; anything else from when it was read.
func TestRowsBegin(t *testing.T) {
	at := func(hour int) evidence.Time {
		clock := time.Date(2026, time.March, 3, hour, 0, 0, 0, time.UTC)
		return evidence.Time{Written: evidence.ClockText(clock), First: clock, Last: clock}
	}
	dish := instruments.DishRow("dish D1", slab.Dish{SetAt: at(8), RetrievedAt: at(20)})
	if !dish.From.First.Equal(at(8).First) || !dish.At.First.Equal(at(20).First) || dish.Untimed() {
		t.Errorf("a dish counts from %s to %s", dish.From.Written, dish.At.Written)
	}
	if unset := instruments.DishRow("dish D1", slab.Dish{RetrievedAt: at(20)}); unset.Began() == "" || !unset.Untimed() {
		t.Error("a dish without a time of setting has one")
	}
	hole := instruments.HoleRow("hole H1", slab.Hole{SealedAt: at(8), ReadAt: at(20)})
	if !hole.From.First.Equal(at(20).First) || hole.Untimed() {
		t.Errorf("a hole counts from %s", hole.From.Written)
	}
	if air := instruments.AirRow(&acclimate.Air{}); air.Lack != evidence.NoTime || !air.Untimed() {
		t.Errorf("air without a time lacks %q", air.Lack)
	}
}
