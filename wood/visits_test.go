package wood_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// names are what things are called.
func names(things []evidence.Judged[wood.Row]) string {
	all := ""
	for _, thing := range things {
		all += thing.Name + " "
	}
	return all
}

// A visit reaches back 72 h from its latest row; a board's latest row in it
// counts, and says whether the board is set aside.
func TestVisit(t *testing.T) {
	f := gathered(
		board("B1", 0, "7"), board("B2", -72*hour, "7.2"), board("B3", -72*hour-minute, "7.4"),
		board("B4", -hour, "9.5"), board("B4", -minute, "7.6"),
		aside(board("B5", -hour, "12"), "warped"), board("B5", 0, "7.1"),
		board("B6", -hour, "7.1"), aside(board("B6", 0, "12"), " "),
		aside(board("B7", -2*hour, "7.1"), "split"), aside(board("B8", -2*hour, "7.1"), "cup"),
	)
	lots := f.Lots()
	if len(lots) != 1 || names(lots[0].Boards) != "B1 B2 B4 B5 " || lots[0].Read != 7 || lots[0].SetAside != 3 {
		t.Fatalf("the visit is %+v", lots)
	}
	if lots[0].Unexplained != 1 || f.Unexplained() != 1 || len(lots[0].Aside) != 3 {
		t.Errorf("without a note: %d, set aside by %v", lots[0].Unexplained, lots[0].Aside)
	}
	expect(t, f, "flooring-mc", evidence.Met, "7")
	if got := f.Mean(lots[0]).Low.Value.Text(); got != "7.225" {
		t.Errorf("the mean is %s", got)
	}
}

// The spread of a visit is that of its boards; one board alone has none.
func TestSpreadOfAVisit(t *testing.T) {
	for _, c := range []struct {
		readings []string
		want     float64
	}{{[]string{"7"}, 0}, {[]string{"7", "9"}, math.Sqrt2}} {
		var rows []wood.Row
		for i, reading := range c.readings {
			rows = append(rows, board(fmt.Sprint("B", i), 0, reading))
		}
		visits := gathered(rows...).Lots()[0].Visits()
		if len(visits) != 1 || !(math.Abs(visits[0].SpreadPct-c.want) <= 1e-12) {
			t.Errorf("%v: %+v, want a spread of %v", c.readings, visits, c.want)
		}
	}
}

// A corrected value says what was read and how it was corrected; one as it was read
// says no more than itself.
func TestReasonOfACorrectedBoard(t *testing.T) {
	r := board("B1", 0, "9")
	plain := finds(t, gathered(r), "flooring-mc").Reason
	r.Method, r.Scale, r.Species, r.TempCorrected = wood.Pin, "douglas fir", "red oak", "yes"
	corrected := finds(t, gathered(r), "flooring-mc").Reason
	if strings.Contains(plain, "(read") || strings.Contains(plain, "()") || !strings.Contains(corrected, "% MC (read 9") {
		t.Errorf("as read: %s\ncorrected: %s", plain, corrected)
	}
}

// A corrected value is worked with numbers short enough for a cell: its slope has 6
// places, its start 9.
func TestPlacesOfACorrection(t *testing.T) {
	longest := map[string]int{}
	var walk func(w evidence.Working)
	walk = func(w evidence.Working) {
		label, _, _ := strings.Cut(w.Label, " of the correction")
		for places := 0; places < 12 && !w.Value.Round(places).Equal(w.Value); places++ {
			longest[label] = max(longest[label], places+1)
		}
		for _, a := range w.Args {
			walk(a)
		}
	}
	for _, reading := range []string{"8.1", "9.3", "10.7"} {
		r := board("B1", 0, reading)
		r.Method, r.Scale, r.Species, r.TempCorrected = wood.Pin, "douglas fir", "red oak", "yes"
		walk(finds(t, gathered(r), "flooring-mc").Worked.Value)
	}
	if longest["slope"] != 6 || longest["start"] != 9 {
		t.Errorf("numbers of the correction have so many places: %v", longest)
	}
}

// A row without a time may be the latest: its board is unusable, and its word
// on setting aside says nothing.
func TestRowWithoutATime(t *testing.T) {
	blank := aside(board("B1", 0, "7"), "warped")
	blank.ReadAt = evidence.Time{}
	f := gathered(board("B1", 0, "7"), blank, board("B2", 0, "7"), board("B3", 0, "7"))
	if lot := f.Lots()[0]; lot.SetAside != 0 || len(lot.Boards) != 3 || len(lot.Boards[0].Rows) != 2 {
		t.Errorf("the lot is %+v", lot)
	}
	expect(t, f, "flooring-mc", evidence.NotShown, "")
	expect(t, f, "flooring-count", evidence.NotShown, "2")
}

// Of two rows of a board at one time each check takes the worse.
func TestBoardReadTwiceAtOnce(t *testing.T) {
	f := gathered(
		board("B1", 0, "7"), board("B1", 0, "9.1"), board("B2", 0, "7"), aside(board("B3", 0, "7"), "x"), board("B3", 0, "7"),
		panel("P1", 0, "9"), panel("P1", 0, "11.9"), panel("P2", 0, "9.1"), panel("P3", 0, "9.2"),
	)
	if lot := f.Lots()[0]; lot.SetAside != 1 || lot.Read != 3 || len(lot.Boards) != 3 {
		t.Errorf("the lot is %+v", lot)
	}
	expect(t, f, "flooring-mc", evidence.NotMet, "9.1")
	// Means 7 to 7.7 against 9.1 to 10.0666...: apart by 1.4 to 3.07.
	expect(t, f, "wood-difference", evidence.Met, "3.07")
	// The highest, 11.9, against the median of the lower ones, 9.1.
	expect(t, f, "subfloor-spots", evidence.Met, "11.9")
	mean := f.Mean(f.Lots()[0])
	if low, high := mean.Low.Value.Text(), mean.High.Value.Text(); low != "7" || high != "7.7" || len(mean.Each()) != 2 {
		t.Errorf("the mean is %s to %s", low, high)
	}
	// One thing read twice is enough for two means of its side.
	one := gathered(board("B1", 0, "7"), board("B1", 0, "10"), panel("P1", 0, "9"))
	expect(t, one, "wood-difference", evidence.Met, "2")
	other := gathered(board("B1", 0, "8"), panel("P1", 0, "7"), panel("P1", 0, "9.5"))
	expect(t, other, "wood-difference", evidence.Met, "1.5")
}

// A lot whose whole last visit is set aside is sent back: it is not judged,
// whatever was read of it before.
func TestLotSentBack(t *testing.T) {
	rows := append(boards("K1", 3, 0, "7"), of("K2", aside(board("C1", 0, "14"), "wet")), of("K2", aside(board("C2", 0, "14"), "")))
	rows = append(rows, of("K2", board("C1", -100*hour, "12")))
	f := gathered(rows...)
	if len(f.Lots()) != 1 || len(f.SentBack()) != 1 || f.SentBack()[0].Title() != "lot K2" || f.Unexplained() != 1 {
		t.Fatalf("judged %v, sent back %v", f.Lots(), f.SentBack())
	}
	expect(t, f, "flooring-count", evidence.Met, "3") // one lot: it needs no ten
	expect(t, f, "flooring-mc", evidence.Met, "7")
	only := gathered(of("K2", aside(board("C1", 0, "14"), "wet")))
	for _, id := range []string{"flooring-count", "flooring-mc", "wood-difference"} {
		expect(t, only, id, evidence.NotShown, "")
		says(t, only, id, "every board read was set aside")
	}
	expect(t, gathered(), "flooring-count", evidence.NotShown, "")
	says(t, gathered(), "flooring-mc", "no board was read")
}

// Boards of the week before a visit, outside the limits and not read again.
func TestBoardsNotReadAgain(t *testing.T) {
	week := 7 * day
	f := gathered(
		board("B1", 0, "7"), board("B2", -10*hour, "7"), // the visit began 10 h before its end
		board("B3", -10*hour-week, "9.1"), board("B4", -10*hour-week-minute, "9.1"),
		board("B5", -80*hour, "9"), board("B6", -80*hour, "9.1"), board("B6", -80*hour+minute, "8.9"),
		board("B7", -80*hour, "5.9"), board("B1", -80*hour, "12"), board("B8", -80*hour, ""),
	)
	var got []string
	for _, it := range f.NotReadAgain(f.Flooring) {
		got = append(got, it.Name+" "+it.Written)
	}
	if want := []string{"board B3 9.1", "board B7 5.9"}; !slices.Equal(got, want) {
		t.Errorf("not read again are %q, want %q", got, want)
	}
	wide := evidence.AtMost(evidence.Bound{Number: evidence.Typed("8.95", evidence.MC)})
	if got := f.NotReadAgain(f.Flooring, wide); len(got) != 3 || got[1].Name != "board B5" {
		t.Errorf("by a second limit they are %v", got)
	}
}

// The visit before is the nearest that ended 72 h or more before the last one
// began.
func TestVisitBefore(t *testing.T) {
	for _, c := range []struct {
		minutes int
		mean    string
	}{{-hour - 72*hour, "8"}, {-hour - 72*hour - minute, "8"}, {-hour - 72*hour + minute, "11"}} {
		f := gathered(board("B1", 0, "7"), board("B2", -hour, "7"), board("B3", c.minutes, "8"), board("B1", -20*day, "11"))
		lot := f.Lots()[0]
		before := f.MeanBefore(lot)
		if before.Lack != "" || before.Low.Value.Text() != c.mean {
			t.Errorf("%d minutes before: %s (%s), want %s", c.minutes, before.Low.Value.Text(), before.Lack, c.mean)
		}
	}
	f := gathered(board("B1", 0, "7"), board("B1", -71*hour, "7"))
	if before := f.MeanBefore(f.Lots()[0]); before.Lack == "" || len(before.Each()) != 0 {
		t.Errorf("there is no visit before, and its mean is %v", before)
	}
}

// What came before water is not judged; at the very time it is.
func TestAfterWater(t *testing.T) {
	rows := []wood.Row{
		of("K1", board("B1", 0, "7")), of("K1", board("B2", -minute, "7")), of("K2", board("C1", -minute, "7")),
		of("K2", board("C2", -minute, "7")),
		panel("P1", 0, "9"), panel("P2", -minute, "9"), read(wood.OfJoist, "J1", -minute, "9"),
		read(wood.OfJoist, "J2", 0, "9"), read(wood.OfJoist, "J3", 0, "9"),
	}
	wet := rows[0].ReadAt.First
	f := wood.Gather(rows, "red oak", wet)
	dry := gathered(rows...)
	f.Size, f.Subfloor, f.Flooring, f.Difference, f.Instruments = dry.Size, dry.Subfloor, dry.Flooring, dry.Difference, dry.Instruments
	lots := f.Lots()
	if len(lots) != 2 || names(lots[0].Boards) != "B1 " || lots[1].Read != 0 || lots[1].Title() != "lot K2" {
		t.Fatalf("the lots are %+v", lots)
	}
	expect(t, f, "flooring-count", evidence.NotMet, "1")
	says(t, f, "flooring-count", "1 board usable")
	expect(t, f, "flooring-mc", evidence.NotShown, "")
	says(t, f, "flooring-mc", "lot K2: "+evidence.WetSince)
	expect(t, f, "subfloor-mc", evidence.NotShown, "")
	expect(t, f, "wood-difference", evidence.NotShown, "")
	f.BelowUnknown = false
	expect(t, f, "joists-dry", evidence.NotShown, "")
	all := wood.Gather(rows, "red oak", wet.Add(time.Minute))
	all.Size = dry.Size
	expect(t, all, "flooring-count", evidence.NotShown, "")
	says(t, all, "flooring-count", "water")
}
