package wood_test

import (
	"fmt"
	"testing"
	"time"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// Each row belongs to the latest visit it can: one that ended within 72 h after
// it, and in which its board was not read later.
func TestVisits(t *testing.T) {
	t.Parallel()
	type board struct {
		piece string
		hours int
		mc    string
	}
	for _, c := range []struct {
		name   string
		boards []board
		want   []string // boards, mean and hours of each visit, the last first
	}{
		{"one visit over three days", []board{{"B1", 0, "8"}, {"B2", 24, "9"}, {"B3", 72, "10"}}, []string{"3 9.00 32"}},
		{"an hour more is a visit before", []board{{"B1", 0, "8"}, {"B2", 24, "9"}, {"B3", 73, "10"}}, []string{"2 9.50 48", "1 8.00 0"}},
		{
			"read again each third day",
			[]board{{"B1", 0, "12"}, {"B2", 0, "14"}, {"B1", 72, "11"}, {"B2", 72, "12"}, {"B1", 144, "9"}, {"B2", 144, "10"}},
			[]string{"2 9.50 144", "2 11.50 72", "2 13.00 0"},
		},
		{"one board of two read again", []board{{"B1", 0, "12"}, {"B2", 0, "14"}, {"B1", 24, "10"}}, []string{"2 12.00 12", "1 12.00 0"}},
		{"twice at one time counts once", []board{{"B1", 0, "8"}, {"B1", 0, "10"}, {"B2", 0, "12"}}, []string{"2 10.50 0"}},
		{"what says nothing is left out", []board{{"B1", 0, "8"}, {"B2", 0, "5"}}, []string{"1 8.00 0"}},
	} {
		from := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		var rows []wood.Row
		for _, b := range c.boards {
			at := from.Add(time.Duration(b.hours) * time.Hour)
			rows = append(rows, wood.Row{
				Of: wood.OfFlooring, Lot: "L", Piece: b.piece, Method: wood.Pin, Reading: evidence.Typed(b.mc, evidence.MC),
				Scale: "red oak", ReadAt: evidence.Time{Written: at.String(), First: at, Last: at},
			})
		}
		var got []string
		for _, v := range wood.Gather(rows, "red oak", time.Time{}).Lots()[0].Visits() {
			got = append(got, fmt.Sprintf("%d %.2f %.0f", v.Boards, v.MeanPct, v.At.Sub(from).Hours()))
		}
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %v, not %v", c.name, got, c.want)
		}
	}
}
