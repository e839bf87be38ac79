package wood_test

import (
	"testing"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// 40, 20 and 5 on 1000 ft2, never fewer than 3; the size is converted exactly.
func TestNeeded(t *testing.T) {
	for _, c := range []struct {
		size string
		unit evidence.Unit
		per  int
		want int
	}{
		{"1", evidence.SquareFoot, wood.PerFlooring, 3},
		{"75", evidence.SquareFoot, wood.PerFlooring, 3},
		{"75.01", evidence.SquareFoot, wood.PerFlooring, 4},
		{"100", evidence.SquareFoot, wood.PerFlooring, 4},
		{"1000", evidence.SquareFoot, wood.PerFlooring, 40},
		{"1000.1", evidence.SquareFoot, wood.PerFlooring, 41},
		{"150", evidence.SquareFoot, wood.PerSubfloor, 3},
		{"150.01", evidence.SquareFoot, wood.PerSubfloor, 4},
		{"600", evidence.SquareFoot, wood.PerJoist, 3},
		{"600.01", evidence.SquareFoot, wood.PerJoist, 4},
		{"9.290304", evidence.SquareM, wood.PerFlooring, 4},
		{"9.290305", evidence.SquareM, wood.PerFlooring, 5},
	} {
		if got := wood.Needed(evidence.Typed(c.size, c.unit), c.per); got.Value.Ceil() != c.want {
			t.Errorf("%d on 1000 ft2 are %s on %s %s, want %d", c.per, got.Value.Text(), c.size, c.unit, c.want)
		}
	}
	if wood.Needed(evidence.Reading{}, wood.PerFlooring).Shown() {
		t.Error("how many are needed on an unknown size cannot be told")
	}
}

// Ten boards of each of several lots; one lot alone needs no ten.
func TestEachLotOfSeveral(t *testing.T) {
	expect(t, gathered(boards("K1", 9, 0, "7")...), "flooring-count", evidence.Met, "9")
	expect(t, gathered(append(boards("K1", 10, 0, "7"), boards("K2", 10, 0, "7")...)...), "flooring-count", evidence.Met, "20")
	few := gathered(append(boards("K1", 10, 0, "7"), boards("K2", 9, 0, "7")...)...)
	expect(t, few, "flooring-count", evidence.NotMet, "9")
	says(t, few, "flooring-count", "lot K2: 9 boards usable")
	blank := append(append(boards("K1", 10, 0, "7"), boards("K2", 9, 0, "7")...), of("K2", board("K2x", 0, "")))
	expect(t, gathered(blank...), "flooring-count", evidence.NotShown, "9")
}

// No more than 1 in 10 of a visit set aside.
func TestSetAside(t *testing.T) {
	for _, c := range []struct {
		boards, aside int
		want          evidence.Outcome
	}{{9, 1, evidence.Met}, {8, 1, evidence.NotMet}, {18, 2, evidence.Met}, {17, 2, evidence.NotMet}, {3, 0, evidence.Met}} {
		rows := boards("", c.boards, 0, "7")
		for i := range c.aside {
			rows = append(rows, aside(board("x"+string(rune('a'+i)), 0, "12"), "cull"))
		}
		expect(t, gathered(rows...), "flooring-count", c.want, "")
	}
	f := gathered(append(boards("", 8, 0, "7"), aside(board("x", 0, "12"), "cull"))...)
	if found := finds(t, f, "flooring-count"); found.Value != "1" || found.Limit != "0" || len(found.Evidence) != 1 {
		t.Errorf("1 of 9 set aside gives %+v", found)
	}
}

func TestCountsOfSubfloor(t *testing.T) {
	rows := []wood.Row{panel("P1", 0, "9"), panel("P2", 0, "9"), panel("P3", 0, "9")}
	expect(t, gathered(rows...), "subfloor-count", evidence.Met, "3")
	expect(t, gathered(rows[:2]...), "subfloor-count", evidence.NotMet, "2")
	expect(t, gathered(append(rows[:2:2], panel("P3", 0, ""))...), "subfloor-count", evidence.NotShown, "2")
	expect(t, gathered(), "subfloor-count", evidence.NotShown, "")
	f := gathered(rows...)
	f.Size = evidence.Reading{}
	expect(t, f, "subfloor-count", evidence.NotShown, "3")
	if found := finds(t, gathered(rows...), "subfloor-count"); len(found.Evidence) != 3 {
		t.Errorf("its evidence is %v", found.Evidence)
	}
}

// A group of checks that is not needed says why.
func TestNotNeeded(t *testing.T) {
	f := gathered(panel("P1", 0, "50"), board("B1", 0, "50"), read(wood.OfJoist, "J1", 0, "50"))
	f.NoFlooring, f.NoSubfloor, f.NoDifference, f.NoBelow = "no wood", "a slab", "floating", "a room below"
	for id, why := range map[string]string{
		"flooring-count": "no wood", "flooring-mc": "no wood", "subfloor-count": "a slab", "subfloor-mc": "a slab",
		"subfloor-spots": "a slab", "wood-difference": "floating", "joists-dry": "a room below",
	} {
		expect(t, f, id, evidence.NotNeeded, "")
		says(t, f, id, why)
	}
	f = gathered(board("B1", 0, "50"))
	f.Flooring = evidence.Limit{}
	expect(t, f, "flooring-mc", evidence.NotNeeded, "")
}

// Rows that no check judges are counted by reason.
func TestUnusedRowsOfWood(t *testing.T) {
	rows := []wood.Row{
		of("K1", board("B1", 0, "7")), of("K1", board("B1", -minute, "7")), of("K1", board("B1", -80*hour, "7")),
		of("K1", board("B2", -900*hour, "7")),
		of("K2", aside(board("C1", 0, "7"), "wet")),
		panel("P1", 0, "9"), panel("P1", -day, "9"), panel("P1", -day-minute, "9"), panel("P1", -900*hour, "9"),
		read(wood.OfJoist, "J1", 0, "9"), read(wood.OfJoist, "J1", -minute, "9"), read(wood.OfJoist, "J1", -900*hour, "9"),
	}
	f := wood.Gather(rows, "red oak", rows[0].ReadAt.First.AddDate(0, 0, -30))
	unused := map[string]int{}
	for _, u := range f.Unused() {
		unused[u.Why] += u.Rows
		if u.Table != "Wood" {
			t.Errorf("the table is %s", u.Table)
		}
	}
	want := map[string]int{
		"before water": 3, "an earlier visit to a lot": 1, "a board read again later in the same visit": 1,
		"lot K2, which was set aside whole": 1, "history of a subfloor piece": 1, "history of a joist piece": 1,
	}
	for why, n := range want {
		if unused[why] != n {
			t.Errorf("%s: %d, want %d", why, unused[why], n)
		}
	}
	if len(unused) != len(want) {
		t.Errorf("unused are %v", unused)
	}
	f.NoFlooring, f.NoSubfloor, f.NoBelow = "a", "b", "c"
	if all := f.Unused(); len(all) != 3 || all[0].Rows != 5 || all[1].Rows != 4 || all[2].Rows != 3 {
		t.Errorf("where nothing is asked unused are %v", all)
	}
}
