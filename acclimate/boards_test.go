package acclimate_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// period is a season of climate C1, in F.
func period(name, temp, rh string) acclimate.Period {
	p := acclimate.Period{Climate: "C1", Name: name, Temp: num(temp, evidence.Fahrenheit), RH: num(rh, evidence.RH), Place: line(9)}
	p.Temp.Place, p.RH.Place = line(9), line(9)
	return p
}

// oven is an oven-dry reading of a board at an hour of the made-up log.
func oven(lot, piece string, hours float64, reading string) wood.Row {
	return wood.Row{
		Of: wood.OfFlooring, Lot: lot, Piece: piece, ReadAt: at(hours), Method: wood.OvenDry,
		Reading: num(reading, evidence.MC), Instrument: "O1", Place: line(20),
	}
}

// floored is a room of boards, its climate 6.2 % at 30 % RH and 9.2 % at 50:
// Wood Handbook Table 4-2 at 70 F. Its target is 7.7 %.
func floored(rows ...wood.Row) acclimate.Room {
	r := room(steady(0, 48, 6))
	r.Service = []acclimate.Period{period("winter", "70", "30"), period("summer", "70", "50")}
	r.Tolerance = evidence.Bound{Number: num("2.0", evidence.Points)}
	r.Boards = wood.Gather(rows, "red oak", time.Time{})
	return r
}

// sameByTree holds an answer against the one that its tree gives.
func sameByTree(t *testing.T, id string, r acclimate.Room) evidence.Finding {
	t.Helper()
	f := find(t, id, r)
	if f.Outcome != evidence.NotNeeded && f.Worked.Outcome() != f.Outcome {
		t.Errorf("%s is %s (%s), by its tree %s", id, f.Outcome, f.Reason, f.Worked.Outcome())
	}
	return f
}

// Wood Handbook Table 4-2 prints 6.2, 7.7 and 9.2 % at 70 F and 30, 40 and 50 %.
func TestTarget(t *testing.T) {
	target := acclimate.TargetOf([]acclimate.Period{
		period("summer", "70", "50"), period("spring", "70", "40"),
		period("winter", "70", "30"),
	})
	if target.Low.Value.Text() != "6.2" || target.High.Value.Text() != "9.2" || target.Mid.Value.Text() != "7.7" {
		t.Errorf("the target is %s to %s, %s", target.Low.Value.Text(), target.High.Value.Text(), target.Mid.Value.Text())
	}
	emc := target.Low.Args[0]
	if emc.Op != evidence.OpEMC || emc.Args[0].Op != evidence.OpTyped || emc.Args[0].Unit != evidence.Fahrenheit ||
		emc.Args[1].Unit != evidence.RH {
		t.Errorf("an EMC is worked out as %v", emc)
	}
	celsius := period("winter", "", "30")
	celsius.Temp = evidence.Typed("21.1", evidence.Celsius)
	celsius.Temp.Place = line(3)
	w, err := celsius.EMC()
	if err != nil || w.Value.Text() != "6.2" || w.Args[0].Op != evidence.OpConvert || w.Args[0].Value.Text() != "69.98" {
		t.Errorf("at 21.1 C it is %v (%v)", w, err)
	}
	for _, service := range [][]acclimate.Period{
		nil,
		{period("winter", "", "30")},
		{period("winter", "70", "")},
		{period("winter", "20", "30")},
	} {
		if got := acclimate.TargetOf(service); got.Lack == "" {
			t.Errorf("the target of %v is %s", service, got.Mid.Value.Text())
		}
	}
}

// Within 2.0 points of 7.7 %, the mean unrounded; guarded by 1 point.
func TestFlooringTarget(t *testing.T) {
	for _, c := range []struct {
		a, b    string
		guarded bool
		want    evidence.Outcome
		value   string
	}{
		{"9.7", "9.7", false, evidence.Met, "9.7"},
		{"9.7", "9.8", false, evidence.NotMet, "9.75"},
		{"5.7", "5.7", false, evidence.Met, "5.7"},
		{"5.6", "5.7", false, evidence.NotMet, "5.65"},
		{"8.7", "8.7", true, evidence.Met, "8.7"},
		{"8.7", "8.8", true, evidence.NotMet, "8.75"},
		{"6.7", "6.7", true, evidence.Met, "6.7"},
		{"6.6", "6.7", true, evidence.NotMet, "6.65"},
		{"8", "", false, evidence.NotShown, ""},
	} {
		r := floored(oven("K1", "B1", 48, c.a), oven("K1", "B2", 48, c.b))
		r.Acceptance.Guarded = c.guarded
		if f := sameByTree(t, "flooring-target", r); f.Outcome != c.want || f.Value != c.value {
			t.Errorf("a mean of %s and %s is %s, %s (%s); want %s, %s", c.a, c.b, f.Outcome, f.Value, f.Reason, c.want, c.value)
		}
	}
	two := floored(oven("K1", "B1", 48, "7.7"), oven("K2", "B1", 48, "9.8"))
	if f := sameByTree(t, "flooring-target", two); f.Outcome != evidence.NotMet || f.Limit != "5.7 to 9.7" {
		t.Errorf("each lot is judged by itself: %+v", f)
	}
	tie := floored(oven("K1", "B1", 48, "7.7"), oven("K1", "B1", 48, "9.8"))
	want(t, "read twice at one time", "flooring-target", tie, evidence.NotMet)
	none := floored()
	want(t, "no board", "flooring-target", none, evidence.NotShown, "no board was read")
	none.Service = nil
	want(t, "no board and no climate", "flooring-target", none, evidence.NotShown, "no board was read")
	unknown := floored(oven("K1", "B1", 48, "7.7"))
	unknown.Service = nil
	want(t, "no climate", "flooring-target", unknown, evidence.NotShown, "target")
	tile := floored(oven("K1", "B1", 48, "7.7"))
	tile.Boards.NoFlooring = "the flooring is not wood"
	for _, id := range []string{"flooring-target", "flooring-spread", "flooring-steady"} {
		want(t, "no wood", id, tile, evidence.NotNeeded, "not wood")
	}
	wet := floored()
	wet.Boards = wood.Gather([]wood.Row{oven("K1", "B1", 48, "7.7")}, "", at(49).First)
	for _, id := range []string{"flooring-target", "flooring-spread", "flooring-steady"} {
		want(t, "after water", id, wet, evidence.NotShown, evidence.WetSince)
		sameByTree(t, id, wet)
	}
}

// Advice where the manufacturer's own range comes first.
func TestTargetAdvises(t *testing.T) {
	r := floored(oven("K1", "B1", 48, "12"))
	if f := find(t, "flooring-target", r); !f.Deciding {
		t.Error("it decides")
	}
	r.TargetAdvises = true
	if f := find(t, "flooring-target", r); f.Deciding || f.Outcome != evidence.NotMet {
		t.Errorf("it advises: %+v", f)
	}
}

// Between 0.7 and 1.3 of 7.7 % are 5.39 and 10.01 %; one board in twenty may lie
// outside, and the unusable ones too.
func TestFlooringSpread(t *testing.T) {
	lot := func(n int, more ...string) acclimate.Room {
		var rows []wood.Row
		for i := range n {
			rows = append(rows, oven("K1", fmt.Sprint("B", i), 48, "7.7"))
		}
		for i, reading := range more {
			rows = append(rows, oven("K1", fmt.Sprint("C", i), 48, reading))
		}
		r := floored(rows...)
		r.Acceptance.Guarded = true // compared as recorded all the same
		return r
	}
	for _, c := range []struct {
		n    int
		more []string
		want evidence.Outcome
	}{
		{2, []string{"5.39", "10.01"}, evidence.Met},
		{2, []string{"5.38"}, evidence.NotMet},
		{2, []string{"10.02"}, evidence.NotMet},
		{19, []string{"10.02"}, evidence.Met},
		{18, []string{"10.02"}, evidence.NotMet},
		{38, []string{"10.02", "5"}, evidence.Met},
		{37, []string{"10.02", "5"}, evidence.NotMet},
		{18, []string{"10.02", ""}, evidence.NotShown},
		{17, []string{"10.02", ""}, evidence.NotMet},
		{3, []string{""}, evidence.NotShown},
		{0, []string{"", ""}, evidence.NotShown},
	} {
		if f := sameByTree(t, "flooring-spread", lot(c.n, c.more...)); f.Outcome != c.want {
			t.Errorf("%d boards and %q: %s (%s), want %s", c.n, c.more, f.Outcome, f.Reason, c.want)
		}
	}
	f := find(t, "flooring-spread", lot(19, "10.02"))
	if f.Value != "10.02" || f.Limit != "5.39 to 10.01" || f.Unit != evidence.MC {
		t.Errorf("it shows %+v", f)
	}
	want(t, "one of 20", "flooring-spread", lot(19, "10.02"), evidence.Met, "1 of 20 boards of lot K1 outside")
	want(t, "one unusable", "flooring-spread", lot(3, ""), evidence.NotShown, "0 of 4 boards of lot K1 outside", "1 unusable")
	tie := floored(oven("", "B1", 48, "7"), oven("", "B1", 48, "11"), oven("", "B1", 48, ""))
	want(t, "the worse of two", "flooring-spread", tie, evidence.NotMet, "1 of 1 board")
	tie = floored(oven("", "B1", 48, "7"), oven("", "B1", 48, ""))
	want(t, "a blank beside", "flooring-spread", tie, evidence.NotShown)
	sameByTree(t, "flooring-spread", floored(oven("K1", "B1", 48, "7"), oven("K2", "B1", 48, "11")))
	none := find(t, "flooring-spread", floored(oven("K1", "B1", 48, "")))
	if none.Outcome != evidence.NotShown || strings.Contains(none.Reason, "outside") {
		t.Errorf("no usable board: %s, %s", none.Outcome, none.Reason)
	}
}

// Means of two visits within 0.5 point; the last within 1.5 of the EMC of air at
// 70 F and 40 %, 7.7 % (Wood Handbook Table 4-2).
func TestFlooringSteady(t *testing.T) {
	for _, c := range []struct {
		before, now string
		want        evidence.Outcome
		value       string
	}{
		{"7.7", "7.7", evidence.Met, ""},
		{"7.2", "7.7", evidence.Met, "0.5"},
		{"8.2", "7.7", evidence.Met, "0.5"},
		{"7.1", "7.7", evidence.NotMet, "0.6"},
		{"8.3", "7.7", evidence.NotMet, "0.6"},
		{"9.2", "9.2", evidence.Met, "1.5"},
		{"9.3", "9.3", evidence.NotMet, "1.6"},
		{"6.2", "6.2", evidence.Met, "1.5"},
		{"6.1", "6.1", evidence.NotMet, "1.6"},
		{"", "7.7", evidence.NotShown, ""},
		{"7.7", "", evidence.NotShown, ""},
	} {
		r := floored(oven("K1", "B1", -30, c.before), oven("K1", "B1", 48, c.now))
		if f := sameByTree(t, "flooring-steady", r); f.Outcome != c.want || c.value != "" && f.Value != c.value || f.Deciding {
			t.Errorf("%s, then %s: %s, %s (%s); want %s, %s", c.before, c.now, f.Outcome, f.Value, f.Reason, c.want, c.value)
		}
	}
	once := floored(oven("K1", "B1", 48, "7.7"))
	want(t, "one visit", "flooring-steady", once, evidence.NotShown, "no visit")
	still := floored(oven("K1", "B1", -30, "7.7"), oven("K1", "B1", 48, "7.7"))
	still.Air = acclimate.AirRows{}
	want(t, "no air", "flooring-steady", still, evidence.NotShown, "air")
	for name, row := range map[string]acclimate.Air{
		"no humidity": airAt(47, "70", "", "AL1"), "no temperature": airAt(47, "", "40", "AL1"), "too dry": airAt(47, "70", "4.9", "AL1"),
	} {
		rows := append(steady(0, 48, 6), row)
		still.Air = acclimate.NewLog(rows).Of("A1", evidence.Date{})
		want(t, name, "flooring-steady", still, evidence.NotShown)
	}
	untimed := append(steady(0, 48, 6), acclimate.Air{Temp: num("70", evidence.Fahrenheit), RH: num("40", evidence.RH)})
	still.Air = acclimate.NewLog(untimed).Of("A1", evidence.Date{})
	want(t, "a row without a time", "flooring-steady", still, evidence.NotShown, "no time")
	// The mean air of the 24 h up to the latest reading: 36 and 44 % are 40 %.
	still.Air = acclimate.NewLog([]acclimate.Air{
		airAt(23.9, "70", "80", ""), airAt(24, "70", "36", ""),
		airAt(48, "70", "44", ""),
	}).Of("A1", evidence.Date{})
	want(t, "its mean", "flooring-steady", still, evidence.Met)
	tie := floored(oven("K1", "B1", -30, "7.7"), oven("K1", "B1", 48, "7.7"), oven("K1", "B1", 48, "8.3"))
	want(t, "read twice at one time", "flooring-steady", tie, evidence.NotMet)
	lower := floored(oven("K1", "B1", -30, "7.7"), oven("K1", "B1", 48, "7.7"), oven("K1", "B1", 48, "7.1"))
	want(t, "read twice, once lower", "flooring-steady", lower, evidence.NotMet)
	first := floored(oven("K1", "B1", -30, "7.7"), oven("K1", "B1", -30, "8.3"), oven("K1", "B1", 48, "7.7"))
	want(t, "read twice at the first visit", "flooring-steady", first, evidence.NotMet)
	if f := find(t, "flooring-steady", floored(oven("K1", "B1", -30, "7.7"), oven("K1", "B1", 48, "7.7"))); len(f.Worked.Room.Args) != 2 {
		t.Errorf("one pair of each kind is worked out as %v", f.Worked.Room)
	}
}

// Every period lies in the bounds that the flooring states.
func TestClimateRange(t *testing.T) {
	r := floored()
	want(t, "none stated", "climate-range", r, evidence.NotNeeded)
	r.StatedRH = both("30", "50", evidence.RH)
	want(t, "at both ends", "climate-range", r, evidence.Met)
	sameByTree(t, "climate-range", r)
	r.StatedRH = both("30.1", "50", evidence.RH)
	want(t, "under", "climate-range", r, evidence.NotMet, "winter", "is at 30 ")
	r.StatedRH = both("30", "49.9", evidence.RH)
	want(t, "over", "climate-range", r, evidence.NotMet, "summer")
	r.StatedRH = evidence.Limit{}
	r.StatedTemp = both("60", "70", evidence.Fahrenheit)
	want(t, "temperature", "climate-range", r, evidence.Met)
	r.StatedTemp = both("60", "69.9", evidence.Fahrenheit)
	want(t, "too warm", "climate-range", r, evidence.NotMet)
	r.Service[0].Temp = evidence.Reading{}
	r.StatedTemp = both("60", "70", evidence.Fahrenheit)
	want(t, "a blank", "climate-range", r, evidence.NotShown)
	r.Service = nil
	want(t, "no periods", "climate-range", r, evidence.NotShown)
}

// Boards of the week before a visit, outside the manufacturer's range or the
// spread around the target, and not read again.
func TestBoardsNotReadAgainAreNamed(t *testing.T) {
	rows := []wood.Row{
		oven("K1", "B1", 48, "7.7"), oven("K1", "B2", -30, "9.1"), oven("K1", "B3", -30, "10.02"), oven("K1", "B4", -30, "8"),
		oven("K1", "B5", -30, "5.38"),
	}
	names := func(r acclimate.Room) []string {
		var all []string
		for _, it := range r.BoardsNotReadAgain() {
			all = append(all, it.Name)
		}
		return all
	}
	r := floored(rows...)
	if got := names(r); !slices.Equal(got, []string{"board B3 of lot K1", "board B5 of lot K1"}) {
		t.Errorf("by the target they are %q", got)
	}
	r.Boards.Flooring = both("6", "9", evidence.MC)
	if got := names(r); !slices.Equal(got, []string{"board B2 of lot K1", "board B3 of lot K1", "board B5 of lot K1"}) {
		t.Errorf("by both they are %q", got)
	}
	r.Service = nil
	if got := names(r); len(got) != 3 {
		t.Errorf("without a target they are %q", got)
	}
	r.Boards.NoFlooring = "no wood"
	if got := names(r); len(got) != 0 {
		t.Errorf("where no board is judged they are %q", got)
	}
}
