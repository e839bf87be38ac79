package slab_test

import (
	"slices"
	"strings"
	"testing"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// Enough usable holes; a hole without a reading may be one; without a size
// nothing can be told.
func TestEnoughHoles(t *testing.T) {
	wide := func(size string, u evidence.Unit) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Sizes[0] = num(size, u) }
	}
	outcomes{
		{"1000 ft2", wide("1000", evidence.SquareFoot), evidence.Met},
		{"1000.1 ft2", wide("1000.1", evidence.SquareFoot), evidence.NotMet},
		{"100 m2", wide("100", evidence.SquareM), evidence.Met},
		{"100.1 m2", wide("100.1", evidence.SquareM), evidence.NotMet},
		{"no size", wide("", evidence.SquareFoot), evidence.NotShown},
		{"one unread", func(f *slab.Floor) { f.Holes[1].RH = evidence.Reading{} }, evidence.NotShown},
		{"one untimed", func(f *slab.Floor) { f.Holes[1].ReadAt = evidence.Time{} }, evidence.NotShown},
		{"two of three", func(f *slab.Floor) { f.Holes = f.Holes[:2] }, evidence.NotMet},
		{"one discarded", func(f *slab.Floor) { f.Holes[1].Discarded = "leak" }, evidence.NotMet},
		{"water", func(f *slab.Floor) { f.Wet = clock("03-03 09:01").First }, evidence.NotShown},
		{"water before", func(f *slab.Floor) { f.Wet = clock("03-03 09:00").First }, evidence.Met},
		{"covered before", func(f *slab.Floor) { f.Covered = day("03-02") }, evidence.NotShown},
		{"covered that day", func(f *slab.Floor) { f.Covered = day("03-03") }, evidence.Met},
	}.hold(t, "slab-holes")
}

// Two holes at one place count once, whatever unit tells the place; the usable
// one stands.
func TestHolesAtOnePlace(t *testing.T) {
	put := func(i, j int, x, y evidence.Reading) func(*slab.Floor) {
		return func(f *slab.Floor) {
			f.Holes[i].X, f.Holes[i].Y = num("1", evidence.Foot), num("2", evidence.Foot)
			f.Holes[j].X, f.Holes[j].Y = x, y
		}
	}
	outcomes{
		{"one place", put(0, 1, num("1", evidence.Foot), num("2.0", evidence.Foot)), evidence.NotMet},
		{"one place in inches", put(0, 1, num("12", evidence.Inch), num("24", evidence.Inch)), evidence.NotMet},
		{"another X", put(0, 1, num("1.0001", evidence.Foot), num("2", evidence.Foot)), evidence.Met},
		{"another Y", put(0, 1, num("1", evidence.Foot), num("2.00001", evidence.Foot)), evidence.Met},
		{"no Y", put(0, 1, num("1", evidence.Foot), num("", evidence.Foot)), evidence.Met},
		{"of another area", func(f *slab.Floor) {
			put(0, 1, num("1", evidence.Foot), num("2", evidence.Foot))(f)
			f.Holes[1].Area, f.Sizes = "A2", append(f.Sizes, num("500", evidence.SquareFoot))
		}, evidence.Met},
		{"a fourth, unread, at the place of a read one", func(f *slab.Floor) {
			f.Holes = append(f.Holes, holed("H0", ""))
			put(2, 3, num("1", evidence.Foot), num("2", evidence.Foot))(f)
		}, evidence.Met},
		{"two unread ones at one place", func(f *slab.Floor) {
			f.Sizes[0] = num("2001", evidence.SquareFoot)
			f.Holes = append(f.Holes, holed("H4", ""), holed("H5", ""))
			put(3, 4, num("1", evidence.Foot), num("2", evidence.Foot))(f)
		}, evidence.NotMet},
	}.hold(t, "slab-holes")
}

// Areas of one zone: their sizes are added, and their holes judged together. A
// hole of the same name in another area is another.
func TestZone(t *testing.T) {
	two := func(size string, u evidence.Unit) func(*slab.Floor) {
		return func(f *slab.Floor) {
			f.Sizes = append(f.Sizes, num(size, u))
			f.Holes[2].Area, f.Holes[2].Hole = " a2", "H1"
		}
	}
	outcomes{
		{"1000 ft2 in all", two("500", evidence.SquareFoot), evidence.Met},
		{"1000.1 ft2 in all", two("500.1", evidence.SquareFoot), evidence.NotMet},
		{"another unit", two("46.4", evidence.SquareM), evidence.Met},
		{"another unit and more", two("46.5", evidence.SquareM), evidence.NotMet},
		{"a blank size", two("", evidence.SquareFoot), evidence.NotShown},
	}.hold(t, "slab-holes")
	f := sound()
	f.Sizes[0] = num("500.0", evidence.SquareFoot)
	if got := find(t, f, "slab-holes").Reason; !strings.HasSuffix(got, " on 500.0 ft2") {
		t.Errorf("one size is told as it was typed, not: %s", got)
	}
	two("500", evidence.SquareFoot)(&f)
	if got := find(t, f, "slab-holes"); got.Value != "3" || got.Reason != "3 holes usable; 3 are asked for on 1000 ft2" {
		t.Errorf("%s: %s", got.Value, got.Reason)
	}
	f.Holes[2].RH = num("80", evidence.RH)
	if got := find(t, f, "slab-rh"); got.Outcome != evidence.NotMet || got.Value != "80" {
		t.Errorf("a wet hole in the next room: %s, %s", got.Outcome, got.Reason)
	}
	var names []string
	for _, hole := range f.JudgedHoles() {
		names = append(names, hole.Name)
	}
	if got := evidence.List(names); got != "H1, H2 and H1 of a2" {
		t.Errorf("the holes are %s", got)
	}
	slices.Reverse(f.Holes)
	if got := f.JudgedHoles(); got[0].Name != "H1" || got[2].Name != "H1 of a2" {
		t.Errorf("in another order the holes begin with %s", got[0].Name)
	}
	slices.Reverse(f.Holes)
	if got := f.NameOf(f.Holes[2]); got != "H1 of a2" {
		t.Errorf("the hole of the next room is %s", got)
	}
	if got := f.NameOf(f.Holes[0]); got != "H1" {
		t.Errorf("the area's own hole is %s", got)
	}
}

// One hole within 3 ft of each exterior wall.
func TestEdge(t *testing.T) {
	far := func(f *slab.Floor) {
		for i := range f.Holes {
			f.Holes[i].ToWall = num("3.1", evidence.Foot)
		}
	}
	first := func(change func(h *slab.Hole)) func(*slab.Floor) {
		return func(f *slab.Floor) { far(f); change(&f.Holes[0]) }
	}
	outcomes{
		{"at the wall", first(func(h *slab.Hole) { h.ToWall = num("0", evidence.Foot) }), evidence.Met},
		{"3 ft", first(func(h *slab.Hole) { h.ToWall = num("3", evidence.Foot) }), evidence.Met},
		{"0.9144 m", first(func(h *slab.Hole) { h.ToWall = num("0.9144", evidence.Meter) }), evidence.Met},
		{"0.9145 m", first(func(h *slab.Hole) { h.ToWall = num("0.9145", evidence.Meter) }), evidence.NotMet},
		{"3.1 ft", far, evidence.NotMet},
		{"an unknown distance", first(func(h *slab.Hole) { h.ToWall = evidence.Reading{} }), evidence.NotShown},
		{"near and unread", first(func(h *slab.Hole) { h.ToWall, h.RH = num("1", evidence.Foot), evidence.Reading{} }), evidence.NotShown},
		{
			"at 3 ft and unread", first(func(h *slab.Hole) { h.ToWall, h.RH = num("3", evidence.Foot), evidence.Reading{} }),
			evidence.NotShown,
		},
		{"far and unread", first(func(h *slab.Hole) { h.RH = evidence.Reading{} }), evidence.NotMet},
		{"one unknown beside a near one", func(f *slab.Floor) { f.Holes[1].ToWall = evidence.Reading{} }, evidence.Met},
		{"two rows at one time, one of them far", func(f *slab.Floor) {
			far(f)
			near := f.Holes[0]
			near.ToWall = num("1", evidence.Foot)
			f.Holes = append(f.Holes, near)
		}, evidence.NotMet},
		{"water", func(f *slab.Floor) { f.Wet = clock("03-04 00:00").First }, evidence.NotShown},
		{"no wall", func(f *slab.Floor) { f.ExteriorWalls = num("0", evidence.None) }, evidence.NotNeeded},
		{"a blank", func(f *slab.Floor) { f.ExteriorWalls = evidence.Reading{} }, evidence.NotShown},
		{"a blank where no hole is needed", func(f *slab.Floor) {
			f.ExteriorWalls, f.NoHoles = evidence.Reading{}, "no"
		}, evidence.NotNeeded},
		{"suspended", func(f *slab.Floor) { f.Kind = "suspended" }, evidence.NotNeeded},
		{"on grade", func(f *slab.Floor) { f.Kind = slab.OnGrade }, evidence.Met},
		{"below grade", func(f *slab.Floor) { f.Kind = slab.BelowGrade }, evidence.Met},
	}.hold(t, "slab-edge")
	f := sound()
	far(&f)
	if got := find(t, f, "slab-edge").Worked.Value; len(got.Args) != 3 || got.Args[2].Value.Text() != "3.1" {
		t.Errorf("beside 0 and 3 ft the nearest hole at 3.1 ft is told, and not %v", got)
	}
}

// Of several walls each is named by a hole near it.
func TestEdgeOfSeveralWalls(t *testing.T) {
	named := func(count string, walls ...[]string) func(*slab.Floor) {
		return func(f *slab.Floor) {
			f.ExteriorWalls = num(count, evidence.None)
			for i := range f.Holes {
				f.Holes[i].Walls = walls[i]
			}
		}
	}
	with := func(f func(*slab.Floor), more func(*slab.Floor)) func(*slab.Floor) {
		return func(floor *slab.Floor) { f(floor); more(floor) }
	}
	off := func(feet string) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Holes[2].ToWall = num(feet, evidence.Foot) }
	}
	n, e, none := []string{"north"}, []string{"east"}, []string(nil)
	outcomes{
		{"two of two", named("2", n, e, e), evidence.Met},
		{"one of two", named("2", n, []string{" North"}, n), evidence.NotMet},
		{"more than two", named("2", n, e, []string{"south"}), evidence.Met},
		{"two of three", named("3", n, e, e), evidence.NotMet},
		{"a corner", named("3", []string{"north", "west"}, e, e), evidence.Met},
		{"a name twice", named("2", []string{"north", "north"}, n, n), evidence.NotMet},
		{"a missing name", named("2", n, n, none), evidence.NotShown},
		{"a missing name beside enough", named("2", n, e, none), evidence.Met},
		{"a missing name far off", with(named("2", n, n, none), off("9")), evidence.NotMet},
		{"a named wall far off", with(named("2", n, n, e), off("3.01")), evidence.NotMet},
		{
			"an unknown distance", with(named("2", n, n, e), func(f *slab.Floor) { f.Holes[2].ToWall = evidence.Reading{} }),
			evidence.NotShown,
		},
		{"rows at one time that name two walls", with(named("2", n, e, n), func(f *slab.Floor) {
			other := f.Holes[1]
			other.Walls = n
			f.Holes = append(f.Holes, other)
		}), evidence.NotMet},
	}.hold(t, "slab-edge")
	f := sound()
	named("2", n, n, n)(&f)
	got, reason := find(t, f, "slab-edge"), "1 of 2 exterior walls has a hole within 3 ft"
	if got.Value != "1" || got.Limit != "2" || got.Unit != evidence.Walls || got.Reason != reason {
		t.Errorf("%s of %s %s: %s", got.Value, got.Limit, got.Unit, got.Reason)
	}
}

// 40 % or 20 % of the thickness, within 10 % of that depth or 1/8 in.
func TestHoleDepth(t *testing.T) {
	for _, c := range []struct {
		thick, depth evidence.Reading
		two          bool
		want         evidence.Outcome
	}{
		{num("4", evidence.Inch), num("1.44", evidence.Inch), false, evidence.Met},
		{num("4", evidence.Inch), num("1.439", evidence.Inch), false, evidence.NotMet},
		{num("4", evidence.Inch), num("1.76", evidence.Inch), false, evidence.Met},
		{num("4", evidence.Inch), num("1.761", evidence.Inch), false, evidence.NotMet},
		{num("4", evidence.Inch), num("0.675", evidence.Inch), true, evidence.Met},
		{num("4", evidence.Inch), num("0.674", evidence.Inch), true, evidence.NotMet},
		{num("4", evidence.Inch), num("0.925", evidence.Inch), true, evidence.Met},
		{num("4", evidence.Inch), num("0.926", evidence.Inch), true, evidence.NotMet},
		{num("0.25", evidence.Foot), num("1.075", evidence.Inch), false, evidence.Met},
		{num("0.25", evidence.Foot), num("1.074", evidence.Inch), false, evidence.NotMet},
		{num("50", evidence.Millimeter), num("16.825", evidence.Millimeter), false, evidence.Met},
		{num("50", evidence.Millimeter), num("16.824", evidence.Millimeter), false, evidence.NotMet},
		{num("5", evidence.Centimeter), num("2.3175", evidence.Centimeter), false, evidence.Met},
		{num("5", evidence.Centimeter), num("2.3176", evidence.Centimeter), false, evidence.NotMet},
		{num("0.1", evidence.Meter), num("4.4", evidence.Centimeter), false, evidence.Met},
		{num("0.1", evidence.Meter), num("4.41", evidence.Centimeter), false, evidence.NotMet},
		{num("", evidence.Inch), num("1.6", evidence.Inch), false, evidence.NotShown},
		{num("4", evidence.Inch), num("", evidence.Inch), false, evidence.NotShown},
	} {
		f := sound()
		f.Thickness, f.TwoFaces, f.Holes = c.thick, c.two, f.Holes[:1]
		f.Holes[0].Depth = c.depth
		if got := find(t, f, "slab-depth"); got.Outcome != c.want {
			t.Errorf("%s in %s: %s (%s), want %s", c.depth, c.thick, got.Outcome, got.Reason, c.want)
		}
		f.Holes[0].Thickness, f.Thickness = c.thick, num("40", evidence.Inch)
		if got := find(t, f, "slab-depth"); c.thick.Shown() && got.Outcome != c.want {
			t.Errorf("%s in %s at the hole: %s (%s), want %s", c.depth, c.thick, got.Outcome, got.Reason, c.want)
		}
	}
}

// A hole is read 24 h after sealing, to the second; only its latest row is asked.
func TestHoleWait(t *testing.T) {
	sealed := func(from, to string) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Holes[0].SealedAt, f.Holes[0].ReadAt = clock(from), clock(to) }
	}
	outcomes{
		{"24 h", sealed("03-02 08:00", "03-03 08:00"), evidence.Met},
		{"a second less", sealed("03-02 08:00", "03-03 07:59:59"), evidence.NotMet},
		{"not known when sealed", sealed("", "03-03 08:00"), evidence.NotShown},
		{"not known when read", sealed("03-02 08:00", ""), evidence.NotShown},
		{"an earlier row too soon", func(f *slab.Floor) {
			f.Holes = append(f.Holes, holed("H1", "70"))
			f.Holes[3].ReadAt = clock("03-02 09:00")
		}, evidence.Met},
		{"a second row at the same time", func(f *slab.Floor) {
			f.Holes = append(f.Holes, holed("H1", "70"))
			f.Holes[3].SealedAt = clock("03-03 08:00")
		}, evidence.NotMet},
	}.hold(t, "slab-wait")
	f := sound()
	if got, want := f.ReadableFrom(f.Holes[0]), clock("03-03 08:00").First; !got.Equal(want) {
		t.Errorf("readable from %s, want %s", got, want)
	}
}

// The concrete keeps the temperatures of the air, as read and without the
// probe's uncertainty.
func TestConcreteTemp(t *testing.T) {
	warm := func(n string, u evidence.Unit) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Acceptance.Guarded, f.Holes[0].Temp = true, num(n, u) }
	}
	outcomes{
		{"60 F", warm("60", evidence.Fahrenheit), evidence.Met},
		{"59.9 F", warm("59.9", evidence.Fahrenheit), evidence.NotMet},
		{"80 F", warm("80", evidence.Fahrenheit), evidence.Met},
		{"80.1 F", warm("80.1", evidence.Fahrenheit), evidence.NotMet},
		{"15.5 C", warm("15.5", evidence.Celsius), evidence.NotMet},
		{"not known", warm("", evidence.Fahrenheit), evidence.NotShown},
	}.hold(t, "slab-temp")
}

// What a plan asks for: the walls that have no hole near them, read or not.
func TestWallsLacking(t *testing.T) {
	for _, c := range []struct {
		says    string
		change  func(*slab.Floor)
		lacking int
		unknown bool
	}{
		{"one wall", func(*slab.Floor) {}, 0, false},
		{"one wall, holes unread", func(f *slab.Floor) {
			for i := range f.Holes {
				f.Holes[i].RH = evidence.Reading{}
			}
		}, 0, false},
		{"no hole", func(f *slab.Floor) { f.Holes = nil }, 1, false},
		{"three walls, names missing", func(f *slab.Floor) { f.ExteriorWalls = num("3", evidence.None) }, 3, true},
		{"three walls, one named", func(f *slab.Floor) {
			f.ExteriorWalls = num("3", evidence.None)
			for i := range f.Holes {
				f.Holes[i].Walls = []string{"north"}
			}
		}, 2, false},
		{"two walls, a distance missing", func(f *slab.Floor) {
			f.ExteriorWalls, f.Holes[0].ToWall = num("2", evidence.None), evidence.Reading{}
			for i := range f.Holes {
				f.Holes[i].Walls = []string{"north"}
			}
		}, 1, true},
		{"water", func(f *slab.Floor) { f.Wet = clock("03-04 00:00").First }, 1, false},
		{"not needed", func(f *slab.Floor) { f.Holes, f.NoHoles = nil, "wood" }, 0, false},
		{"suspended", func(f *slab.Floor) { f.Holes, f.Kind = nil, "suspended" }, 0, false},
		{"not recorded", func(f *slab.Floor) { f.Holes, f.ExteriorWalls = nil, evidence.Reading{} }, 0, false},
	} {
		f := sound()
		c.change(&f)
		if lacking, unknown := f.WallsLacking(f.JudgedHoles()); lacking != c.lacking || unknown != c.unknown {
			t.Errorf("%s: %d lacking, unknown %v", c.says, lacking, unknown)
		}
	}
}
