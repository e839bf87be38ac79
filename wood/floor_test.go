package wood_test

import (
	"strings"
	"testing"
	"time"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// spot is a place in a record that is not there.
type spot string

func (s spot) String() string { return string(s) }

// read is a row of a piece, at so many minutes after a time, by the meter P1 on
// the scale of its own species.
func read(of, piece string, minutes int, reading string) wood.Row {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC).Add(time.Duration(minutes) * time.Minute)
	r := wood.Row{
		Of: of, Piece: piece, Method: wood.OvenDry, Instrument: "O1", Place: spot(of + " " + piece + " " + reading),
		ReadAt: evidence.Time{Written: at.Format(time.DateTime), First: at, Last: at},
	}
	if reading != "" {
		r.Reading = evidence.Typed(reading, evidence.MC)
		r.Reading.Place = spot("cell of " + piece)
	}
	return r
}

const (
	minute = 1
	hour   = 60
	day    = 24 * hour
)

func board(piece string, minutes int, reading string) wood.Row {
	return read(wood.OfFlooring, piece, minutes, reading)
}

func panel(piece string, minutes int, reading string) wood.Row {
	return read(wood.OfSubfloor, piece, minutes, reading)
}

// aside is the row with its board set aside.
func aside(r wood.Row, note string) wood.Row {
	r.SetAside, r.Note = true, note
	return r
}

// of is the row in a lot.
func of(lot string, r wood.Row) wood.Row {
	r.Lot = lot
	return r
}

// boards are so many boards of a lot at one time, each with one reading.
func boards(lot string, n, minutes int, reading string) []wood.Row {
	var rows []wood.Row
	for i := range n {
		rows = append(rows, of(lot, board(lot+string(rune('a'+i)), minutes, reading)))
	}
	return rows
}

// gathered is a floor of 75 ft2 with the usual limits.
func gathered(rows ...wood.Row) wood.Floor {
	f := wood.Gather(rows, "red oak", time.Time{})
	f.Size = evidence.Typed("75", evidence.SquareFoot)
	f.Subfloor = evidence.AtMost(wood.DefaultSubfloorMC())
	f.Difference = evidence.AtMost(wood.DefaultDifference(evidence.Typed("2.25", evidence.Inch), true))
	f.Flooring = evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed("6", evidence.MC), Whose: "STRIP"},
		Most:  evidence.Bound{Number: evidence.Typed("9", evidence.MC), Whose: "STRIP"},
	}
	f.Instruments = evidence.Instruments{
		"o1": {ID: "O1", Kinds: []string{evidence.OvenMeter}},
		"p1": {ID: "P1", Kinds: []string{evidence.PinMeter, evidence.Pinless}},
		"p2": {ID: "P2", Kinds: []string{evidence.PinMeter}, Uncertainty: evidence.Typed("0.5", evidence.None)},
	}
	return f
}

// finds is the answer of one check, whose tree says the same.
func finds(t *testing.T, f wood.Floor, id string) evidence.Finding {
	t.Helper()
	for _, c := range wood.Checks() {
		if c.ID == id {
			found := c.Find(f)
			if found.Outcome != evidence.NotNeeded && found.Worked.Outcome() != found.Outcome && id != "joists-dry" {
				t.Errorf("%s is %s (%s), by its tree %s", id, found.Outcome, found.Reason, found.Worked.Outcome())
			}
			return found
		}
	}
	t.Fatalf("no check %s", id)
	return evidence.Finding{}
}

// expect holds the answer of one check against an outcome and a value.
func expect(t *testing.T, f wood.Floor, id string, want evidence.Outcome, value string) {
	t.Helper()
	found := finds(t, f, id)
	if found.Outcome != want || value != "" && found.Value != value || found.Reason == "" && want != evidence.Met {
		t.Errorf("%s is %s, value %s, limit %s (%s); want %s, %s", id, found.Outcome, found.Value, found.Limit, found.Reason, want, value)
	}
}

// says holds a reason against words of it.
func says(t *testing.T, f wood.Floor, id, words string) {
	t.Helper()
	if found := finds(t, f, id); !strings.Contains(found.Reason, words) {
		t.Errorf("%s says %q, and not %q", id, found.Reason, words)
	}
}
