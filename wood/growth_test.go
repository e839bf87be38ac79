package wood_test

import (
	"fmt"
	"testing"
	"time"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// manyBoards are n boards in lots of so many, each read by pins in the cold on
// another wood's scale, and as many subfloor pieces.
func manyBoards(n, perLot int) []wood.Row {
	var rows []wood.Row
	for i := range n {
		b := of(fmt.Sprint("K", i/perLot), board(fmt.Sprint("B", i), 0, "7.8"))
		b.Method, b.Scale, b.Species, b.TempCorrected = wood.Pin, "douglas fir", "red oak", "no"
		b.WoodTemp = evidence.Typed("66", evidence.Fahrenheit)
		rows = append(rows, b, panel(fmt.Sprint("P", i), 0, "8"))
	}
	return rows
}

func judgeAll(rows []wood.Row) {
	f := gathered(rows...)
	for _, c := range wood.Checks() {
		c.Find(f)
	}
}

// 10,000 boards take less than 5 s, and four times as many less than 6 times as
// long: in one lot, and each board a lot of its own.
func TestManyBoards(t *testing.T) {
	for _, perLot := range []int{1, 1_000_000} {
		took := func(n int) time.Duration {
			rows := manyBoards(n, perLot)
			best := time.Hour
			for range 3 {
				from := time.Now()
				judgeAll(rows)
				best = min(best, time.Since(from))
			}
			return best
		}
		small, large := took(2500), took(10000)
		t.Logf("lots of %d: %v, %v", perLot, small, large)
		if large > 5*time.Second || large > 6*small {
			t.Errorf("lots of %d: 2500 boards take %v, 10000 %v", perLot, small, large)
		}
	}
}

func BenchmarkBoards(b *testing.B) {
	for _, n := range []int{2500, 10000} {
		rows := manyBoards(n, 100)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				judgeAll(rows)
			}
		})
	}
}
