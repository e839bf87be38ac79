package slab_test

import (
	"fmt"
	"slices"
	"testing"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// Each row of a further test is held against its own bounds; a row without a
// spot is one of its own.
func TestOtherTests(t *testing.T) {
	row := func(spot, when, result string) slab.Other {
		return slab.Other{
			Area: "A1", Test: "water drop", Spot: spot, ReadAt: clock(when), Result: num(result, "s"),
			AtLeast: num("60", "s"), AtMost: num("300", "s"), Place: cell("Other tests " + when),
		}
	}
	rows := func(all ...slab.Other) func(*slab.Floor) { return func(f *slab.Floor) { f.Others = all } }
	unbounded, half := row("W1", "03-03 09:00", "100"), row("W1", "03-03 09:00", "1000")
	unbounded.AtLeast, unbounded.AtMost, half.AtMost = evidence.Reading{}, evidence.Reading{}, evidence.Reading{}
	outcomes{
		{"60", rows(row("W1", "03-03 09:00", "60")), evidence.Met},
		{"59.9", rows(row("W1", "03-03 09:00", "59.9")), evidence.NotMet},
		{"300", rows(row("W1", "03-03 09:00", "300")), evidence.Met},
		{"300.1", rows(row("W1", "03-03 09:00", "300.1")), evidence.NotMet},
		{"no bound", rows(unbounded), evidence.NotShown},
		{"one bound", rows(half), evidence.Met},
		{"no result", rows(row("W1", "03-03 09:00", "")), evidence.NotShown},
		{"no time", rows(row("W1", "", "100")), evidence.NotShown},
		{"an earlier row", rows(row("W1", "03-03 09:00", "1"), row("w1", "03-03 10:00", "100")), evidence.Met},
		{"an earlier row without a spot", rows(row("", "03-03 09:00", "1"), row("", "03-03 10:00", "100")), evidence.NotMet},
		{"water", func(f *slab.Floor) {
			rows(row("W1", "03-03 09:00", "100"))(f)
			f.Wet = clock("03-04 00:00").First
		}, evidence.Met},
	}.hold(t, "other-tests")
	f := sound()
	sheet := row("W1", "03-03 09:00", "100")
	sheet.DataSheet = "TILE sheet, edition 4"
	for want, r := range map[evidence.Cite]slab.Other{
		{Source: "TILE sheet, edition 4", Standing: evidence.Manufacturer}:                  sheet,
		{Source: "the record: Other tests, no data sheet named", Standing: evidence.ByHand}: row("W1", "03-03 09:00", "100"),
	} {
		rows(r)(&f)
		if got := find(t, f, "other-tests").Cite; got != want {
			t.Errorf("cited is %+v, want %+v", got, want)
		}
	}
	rows(row("", "03-03 09:00", "1"), row(" ", "03-03 10:00", "1"), row("W1", "03-03 11:00", "1"))(&f)
	if got := len(f.JudgedOthers()); got != 3 {
		t.Errorf("%d tests are judged, want 3", got)
	}
}

// The highest scan of the bare slab has a judged hole within 3 ft.
func TestScanProbed(t *testing.T) {
	scan := func(x, reading, over string) slab.Scan {
		return slab.Scan{
			Area: "A1", Spot: "N" + x, X: num(x, evidence.Foot), Y: num("5", evidence.Foot),
			ReadAt: clock("03-01 09:00"), Reading: num(reading, evidence.None), Over: over, Place: cell("Scan " + x),
		}
	}
	placed := func(f *slab.Floor) {
		for i := range f.Holes {
			f.Holes[i].X, f.Holes[i].Y = num(fmt.Sprint(10*(i+1)), evidence.Foot), num("5", evidence.Foot)
		}
	}
	rows := func(all ...slab.Scan) func(*slab.Floor) {
		return func(f *slab.Floor) { placed(f); f.Scans = all }
	}
	with := func(change func(*slab.Floor), more func(*slab.Floor)) func(*slab.Floor) {
		return func(f *slab.Floor) { change(f); more(f) }
	}
	nowhere := func(f *slab.Floor) { f.Holes[2].X = evidence.Reading{} }
	untimed := scan("13", "88", "")
	untimed.ReadAt = evidence.Time{}
	outcomes{
		{"3 ft off", rows(scan("13", "88", "")), evidence.Met},
		{"3.01 ft off", rows(scan("13.01", "88", "")), evidence.NotMet},
		{"a lower one far off", rows(scan("13", "88", ""), scan("15", "87", "bare")), evidence.Met},
		{"a higher one far off", rows(scan("13", "88", ""), scan("15", "89", "bare")), evidence.NotMet},
		{"as high and far off", rows(scan("13", "88", ""), scan("15", "88.0", "bare")), evidence.NotMet},
		{"a higher one over the flooring", rows(scan("13", "88", ""), scan("15", "89", "oak")), evidence.Met},
		{"only over the flooring", rows(scan("13", "88", "oak")), evidence.NotNeeded},
		{"no reading", rows(scan("13", "88", ""), scan("15", "", "")), evidence.NotShown},
		{"no time", rows(untimed), evidence.NotShown},
		{"no place", rows(scan("", "88", "")), evidence.NotShown},
		{"water since", with(rows(scan("13", "88", "")), func(f *slab.Floor) { f.Wet = clock("03-01 09:01").First }), evidence.NotShown},
		{"water before", with(rows(scan("13", "88", "")), func(f *slab.Floor) { f.Wet = clock("03-01 09:00").First }), evidence.Met},
		{"not needed", with(rows(scan("13", "88", "")), func(f *slab.Floor) { f.NoScan = "wood" }), evidence.NotNeeded},
		{"no hole", with(rows(scan("13", "88", "")), func(f *slab.Floor) { f.Holes = nil }), evidence.NotShown},
		{"holes of another area", with(rows(scan("13", "88", "")), func(f *slab.Floor) {
			for i := range f.Holes {
				f.Holes[i].Area = "A2"
			}
		}), evidence.NotShown},
		{"a hole nowhere", with(rows(scan("15", "88", "")), nowhere), evidence.NotShown},
		{"a hole nowhere beside a near one", with(rows(scan("13", "88", "")), nowhere), evidence.Met},
		{
			"near and unread", with(rows(scan("13", "88", "")), func(f *slab.Floor) { f.Holes[0].RH = evidence.Reading{} }),
			evidence.NotShown,
		},
		{"two rows at one time, one far off", with(rows(scan("13", "88", "")), func(f *slab.Floor) {
			other := f.Holes[0]
			other.X = num("16.1", evidence.Foot)
			f.Holes = append(f.Holes, other)
		}), evidence.NotMet},
	}.hold(t, "scan-probed")
}

// Nothing is dropped in silence.
func TestUnused(t *testing.T) {
	f := sound()
	add := func(name, when string) *slab.Hole {
		h := holed(name, "70")
		h.ReadAt = clock(when)
		f.Holes = append(f.Holes, h)
		return &f.Holes[len(f.Holes)-1]
	}
	add("H1", "03-02 08:59")                                 // more than 24 h before, and after water
	add("H2", "03-02 09:00").SealedAt = clock("03-01 09:01") // had not waited
	add("H3", "03-02 09:00").SealedAt = clock("03-01 09:00") // judged
	add("H1", "02-20 09:00")                                 // before water
	add("H1", "03-05 00:00")                                 // covered by then
	add("H8", "03-03 09:00").Discarded = "leak"
	f.Wet, f.Leveled, f.Covered = clock("02-26 00:00").First, clock("03-03 08:00").First, day("03-04")
	early := f.PHs[0]
	early.ReadAt = clock("03-03 07:00")
	f.PHs = append(f.PHs, early)
	cm := f.Carbides[0]
	cm.ReadAt = clock("03-01 07:00")
	f.Carbides = append(f.Carbides, cm)
	dish := f.Dishes[0]
	dish.SetAt, dish.RetrievedAt = clock("02-27 07:00"), clock("03-02 07:00") // only holes are judged for a day
	f.Dishes = append(f.Dishes, dish)
	test := slab.Other{Test: "drop", Spot: "W1", ReadAt: clock("03-01 07:00")}
	later := test
	later.ReadAt = clock("03-02 07:00")
	f.Others = []slab.Other{test, later, {Test: "drop", ReadAt: clock("03-01 07:00")}}
	f.Scans = []slab.Scan{{ReadAt: clock("02-20 07:00")}, {ReadAt: clock("03-01 07:00")}, {}, {Over: "oak"}}
	want := []evidence.Unused{
		{Table: "Slab RH", Rows: 2, Why: "history of a hole"},
		{Table: "Slab RH", Rows: 1, Why: "before water"},
		{Table: "Slab RH", Rows: 1, Why: "after the day the slab was covered"},
		{Table: "Slab RH", Rows: 1, Why: "of a discarded hole"},
		{Table: "Slab MVER", Rows: 1, Why: "history of a dish"},
		{Table: "Slab pH", Rows: 1, Why: "before a leveler was placed"},
		{Table: "Slab CM", Rows: 1, Why: "history of a spot"},
		{Table: "Other tests", Rows: 1, Why: "history of a spot"},
		{Table: "Scan", Rows: 1, Why: "before water"},
		{Table: "Scan", Rows: 1, Why: "over the flooring in place"},
	}
	if got := f.Unused(); !slices.Equal(got, want) {
		t.Errorf("unused:\n%v\nwant\n%v", got, want)
	}
	f.NoHoles, f.NoDishes, f.NoPH, f.NoCM, f.NoScan = "no", "no", "no", "no", "no"
	rows := 0
	for _, u := range f.Unused() {
		rows += u.Rows
	}
	if all := len(f.Holes) + len(f.Dishes) + len(f.PHs) + len(f.Carbides) + len(f.Scans) + 1; rows != all {
		t.Errorf("%d rows unused where no test is needed, want %d: %v", rows, all, f.Unused())
	}
}

// floorOf is a floor of so many holes, half of them discarded over the limit
// beside the others, and as many scans that all read highest.
func floorOf(n int) slab.Floor {
	f := sound()
	f.Holes, f.Scans = nil, nil
	for i := range n {
		h := holed(fmt.Sprint("H", i), "70")
		h.X, h.Y = num(fmt.Sprint(10*(i/2)), evidence.Foot), num("5", evidence.Foot)
		if i%2 == 1 {
			h.RH, h.Discarded, h.ReadAt = num("80", evidence.RH), "leak", clock("03-01 08:00")
		}
		f.Holes = append(f.Holes, h)
		f.Scans = append(f.Scans, slab.Scan{Area: "A1", Spot: h.Hole, X: h.X, Y: h.Y, ReadAt: h.ReadAt, Reading: num("88", evidence.None)})
	}
	return f
}

func judgeAll(f slab.Floor) (all []evidence.Finding) {
	f = f.Sorted()
	for _, check := range slab.Checks() {
		all = append(all, check.Find(f))
	}
	return all
}

// Four times the holes allocate under six times as often: what is done to each
// does not grow with their number.
func TestGrowth(t *testing.T) {
	allocations := func(n int) float64 {
		f := floorOf(n)
		return testing.AllocsPerRun(1, func() { judgeAll(f) })
	}
	if small, large := allocations(200), allocations(800); large > 6*small {
		t.Errorf("200 holes allocate %v times, 800 %v times", small, large)
	}
}

func BenchmarkHoles(b *testing.B) {
	for _, n := range []int{2500, 10000} {
		f := floorOf(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				judgeAll(f)
			}
		})
	}
}
