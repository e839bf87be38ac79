package acclimate_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// The states are the first whole row of each hour, on an axis of days since 1970.
func TestStatesOfTheAir(t *testing.T) {
	rows := []acclimate.Air{
		airAt(0, "50", "40", "AL1"), airAt(0.9, "59", "41", "AL1"), // one hour
		airAt(1, "", "42", "AL1"), airAt(1.2, "68", "", "AL1"), airAt(1.5, "68", "43", "AL1"),
		airAt(12, "77", "44", "AL1"),
	}
	const monday = 20514 // 2 March 2026, by the calendar
	want := []evidence.AirState{
		{Day: monday, TempC: 10, RHPct: 40}, {Day: monday + 1.5/24, TempC: 20, RHPct: 43}, {Day: monday + 0.5, TempC: 25, RHPct: 44},
	}
	if diff := cmp.Diff(want, room(rows).Air.States()); diff != "" {
		t.Errorf("- want, + got:\n%s", diff)
	}
}

func TestFirstAndLastOfTheAir(t *testing.T) {
	r := room(steady(3, 9, 2))
	if first, last := r.Earliest(), r.Latest(); first != at(3) || last != at(9) {
		t.Errorf("from %s to %s", first.Written, last.Written)
	}
	if none := room(nil); none.Earliest().Shown() || none.Latest().Shown() {
		t.Error("there is none")
	}
}

// Air is held alike over one stretch, asked for in one way.
func TestHeldAlike(t *testing.T) {
	like := room(steady(0, 48, 1))
	for name, change := range map[string]func(*acclimate.Room){
		"a later last row":   func(r *acclimate.Room) { r.HeldFor = append(r.HeldFor[:1:1], at(49)) },
		"an earlier first":   func(r *acclimate.Room) { r.HeldFor = append(r.HeldFor[:1:1], at(47)) },
		"a longer wait":      func(r *acclimate.Room) { r.Held = num("49", evidence.Hour) },
		"not asked for":      func(r *acclimate.Room) { r.NoHeld = "nothing is to be held" },
		"nothing to hold":    func(r *acclimate.Room) { r.HeldFor = nil },
		"a row without time": func(r *acclimate.Room) { r.HeldLack = "a row has no time" },
	} {
		r := like
		if change(&r); r.HeldLike(like) || like.HeldLike(r) {
			t.Errorf("%s: held alike", name)
		}
	}
	another := room(steady(0, 48, 6))
	another.HeldFor = append(another.HeldFor, at(48))
	if !another.HeldLike(like) {
		t.Error("another log over the same stretch: not held alike")
	}
}

// 7000 grains are a pound.
func TestGrains(t *testing.T) {
	if got := acclimate.GrainsPerPound(0.01); got != 70 {
		t.Errorf("0.01 kg/kg are %v grains a pound", got)
	}
}
