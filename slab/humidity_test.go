package slab_test

import (
	"slices"
	"testing"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// Every hole meets the limit, at equality too; none reads under 30 %.
func TestHoleHumidity(t *testing.T) {
	read := func(rh string) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Holes[1].RH = num(rh, evidence.RH) }
	}
	guarded := func(rh string) func(*slab.Floor) {
		return func(f *slab.Floor) { f.Acceptance.Guarded = true; read(rh)(f) }
	}
	outcomes{
		{"75", read("75"), evidence.Met},
		{"75.1", read("75.1"), evidence.NotMet},
		{"30", read("30"), evidence.Met},
		{"29.9", read("29.9"), evidence.NotShown},
		{"0", read("0"), evidence.NotShown},
		{"blank", read(""), evidence.NotShown},
		{"73 and 2", guarded("73"), evidence.Met},
		{"73.1 and 2", guarded("73.1"), evidence.NotMet},
		{"no instrument", func(f *slab.Floor) { f.Acceptance.Guarded, f.Holes[1].Instrument = true, "" }, evidence.NotShown},
		{"an unread hole beside one over", func(f *slab.Floor) { read("")(f); f.Holes[0].RH = num("80", evidence.RH) }, evidence.NotMet},
		{"two rows at one time, one over", func(f *slab.Floor) { f.Holes = append(f.Holes, holed("H1", "80")) }, evidence.NotMet},
		{"a row without a time", func(f *slab.Floor) {
			f.Holes = append(f.Holes, holed("H1", "70"))
			f.Holes[3].ReadAt = evidence.Time{}
		}, evidence.NotShown},
	}.hold(t, "slab-rh")
}

// A reading under 30 % is no part of a hole's history, nor one without a time.
func TestHistoryOfAHole(t *testing.T) {
	for _, c := range []struct {
		rh   string
		want int
	}{{"30", 1}, {"29.9", 0}, {"", 0}, {"80", 1}} {
		f := sound()
		f.Holes[1].RH = num(c.rh, evidence.RH)
		if got := len(f.Histories()[1].Rows); got != c.want {
			t.Errorf("%q %% RH: %d readings, want %d", c.rh, got, c.want)
		}
	}
	f := sound()
	if f.Holes[1].ReadAt = (evidence.Time{}); len(f.Histories()[1].Rows) != 0 {
		t.Error("without a time")
	}
}

// Reading again until it passes proves nothing: rows of the 24 h before that
// had waited count as well.
func TestReadAgain(t *testing.T) {
	before := func(change func(h *slab.Hole)) func(*slab.Floor) {
		return func(f *slab.Floor) {
			f.Holes[0].SealedAt, f.Holes[0].ReadAt = clock("03-01 08:00"), clock("03-03 09:00")
			h := holed("H1", "90")
			h.SealedAt, h.ReadAt = clock("03-01 08:00"), clock("03-02 09:00")
			change(&h)
			f.Holes = append(f.Holes, h)
		}
	}
	for id, all := range map[string]outcomes{
		"slab-rh": {
			{"24 h before", before(func(*slab.Hole) {}), evidence.NotMet},
			{"a second more", before(func(h *slab.Hole) { h.ReadAt = clock("03-02 08:59:59") }), evidence.Met},
			{"waited 24 h", before(func(h *slab.Hole) { h.SealedAt = clock("03-01 09:00") }), evidence.NotMet},
			{"waited a second less", before(func(h *slab.Hole) { h.SealedAt = clock("03-01 09:00:01") }), evidence.Met},
			{"not known when sealed", before(func(h *slab.Hole) { h.SealedAt = evidence.Time{} }), evidence.NotShown},
			{"blank", before(func(h *slab.Hole) { h.RH = evidence.Reading{} }), evidence.NotShown},
			{"within the limit", before(func(h *slab.Hole) { h.RH = num("75", evidence.RH) }), evidence.Met},
			{"under 30", before(func(h *slab.Hole) { h.RH = num("20", evidence.RH) }), evidence.NotShown},
			{"before water", func(f *slab.Floor) {
				before(func(*slab.Hole) {})(f)
				f.Wet = clock("03-02 09:01").First
			}, evidence.Met},
		},
		"slab-temp":  {{"blank in the row before", before(func(h *slab.Hole) { h.Temp = evidence.Reading{} }), evidence.Met}},
		"slab-depth": {{"blank in the row before", before(func(h *slab.Hole) { h.Depth = evidence.Reading{} }), evidence.Met}},
		"slab-holes": {{"blank in the row before", before(func(h *slab.Hole) { h.RH = evidence.Reading{} }), evidence.Met}},
	} {
		all.hold(t, id)
	}
}

// A wet hole that was discarded needs another, within 3 ft and sealed after its
// highest reading.
func TestDiscardedHole(t *testing.T) {
	beside := func(change func(out, hole *slab.Hole)) func(*slab.Floor) {
		return func(f *slab.Floor) {
			out := holed("H9", "80")
			out.ReadAt, out.Discarded = clock("03-01 08:00"), "aggregate"
			out.X, out.Y = num("10", evidence.Foot), num("10", evidence.Foot)
			f.Holes[0].X, f.Holes[0].Y = num("13", evidence.Foot), num("10", evidence.Foot)
			f.Holes[0].SealedAt = clock("03-01 08:01")
			change(&out, &f.Holes[0])
			f.Holes = append(f.Holes, out)
		}
	}
	move := func(h *slab.Hole, x, y string, u evidence.Unit) { h.X, h.Y = num(x, u), num(y, u) }
	history := func(more slab.Hole) func(*slab.Floor) {
		return func(f *slab.Floor) {
			beside(func(out, hole *slab.Hole) {})(f)
			more.Hole, more.X, more.Y = "h9", num("10", evidence.Foot), num("10", evidence.Foot)
			f.Holes = append(f.Holes, more)
		}
	}
	later := holed("H9", "81")
	later.ReadAt = clock("03-02 08:00")
	lower := holed("H9", "20")
	lower.ReadAt = clock("03-02 08:00")
	outcomes{
		{"3 ft", beside(func(out, hole *slab.Hole) {}), evidence.Met},
		{"3.01 ft", beside(func(out, hole *slab.Hole) { hole.X = num("13.01", evidence.Foot) }), evidence.NotShown},
		{"3 ft the other way", beside(func(out, hole *slab.Hole) { move(hole, "10", "7", evidence.Foot) }), evidence.Met},
		{"3 ft above", beside(func(out, hole *slab.Hole) { move(hole, "10", "13", evidence.Foot) }), evidence.Met},
		{"3 ft to the left", beside(func(out, hole *slab.Hole) { hole.X = num("7", evidence.Foot) }), evidence.Met},
		{"across", beside(func(out, hole *slab.Hole) { move(hole, "12.2", "12.2", evidence.Foot) }), evidence.NotShown},
		{"in meters", beside(func(out, hole *slab.Hole) {
			move(hole, "3.048", "3.048", evidence.Meter)
		}), evidence.Met},
		{"sealed at that time", beside(func(out, hole *slab.Hole) { hole.SealedAt = clock("03-01 08:00") }), evidence.NotShown},
		{"not known when sealed", beside(func(out, hole *slab.Hole) { hole.SealedAt = evidence.Time{} }), evidence.NotShown},
		{"not known when read", beside(func(out, hole *slab.Hole) { out.ReadAt = evidence.Time{} }), evidence.NotShown},
		{"no X", beside(func(out, hole *slab.Hole) { hole.X = evidence.Reading{} }), evidence.NotShown},
		{"no Y of its own", beside(func(out, hole *slab.Hole) { out.Y = evidence.Reading{} }), evidence.NotShown},
		{"no X, 1 ft from zero", beside(func(out, hole *slab.Hole) {
			out.X, hole.X = num("1", evidence.Foot), evidence.Reading{Unit: evidence.Foot}
		}), evidence.NotShown},
		{"no Y of its own, 1 ft from zero", beside(func(out, hole *slab.Hole) {
			out.Y, hole.Y = evidence.Reading{Unit: evidence.Foot}, num("1", evidence.Foot)
		}), evidence.NotShown},
		{"of another area", beside(func(out, hole *slab.Hole) { out.Area = "A2" }), evidence.NotShown},
		{"at the limit", beside(func(out, hole *slab.Hole) { out.RH, out.X = num("75", evidence.RH), evidence.Reading{} }), evidence.Met},
		{"over it", beside(func(out, hole *slab.Hole) { out.RH, out.X = num("75.1", evidence.RH), evidence.Reading{} }), evidence.NotShown},
		{"read under 30", beside(func(out, hole *slab.Hole) { out.RH, out.X = num("20", evidence.RH), evidence.Reading{} }), evidence.Met},
		{"a higher reading later", history(later), evidence.NotShown},
		{"a lower reading later", history(lower), evidence.Met},
		{"water does not undo it", func(f *slab.Floor) {
			beside(func(out, hole *slab.Hole) { out.X = evidence.Reading{} })(f)
			f.Wet = clock("03-02 08:00").First
		}, evidence.NotShown},
	}.hold(t, "slab-rh")

	f := sound()
	history(later)(&f)
	if got := f.Unreplaced(); len(got) != 1 || got[0] != "discarded hole H9" {
		t.Errorf("to be replaced: %q", got)
	}
	out := f.Discards()
	if len(out) != 1 || out[0].Name != "H9" || !slices.Equal(out[0].Words, []string{"aggregate"}) || len(out[0].Highest) != 1 ||
		out[0].Highest[0].RH.Written != "81" {
		t.Errorf("discarded: %+v", out)
	}
	if n := len(f.DiscardedHoles()); n != 1 {
		t.Errorf("%d discarded holes", n)
	}
}
