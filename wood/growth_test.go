package wood_test

import (
	"fmt"
	"runtime"
	"testing"

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

// Four times as many boards take less than 6 times the memory: in one lot, and
// each board a lot of its own. The benchmark tells the time.
func TestManyBoards(t *testing.T) {
	for _, perLot := range []int{1, 1_000_000} {
		took := func(n int) uint64 {
			rows := manyBoards(n, perLot)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			judgeAll(rows)
			runtime.ReadMemStats(&after)
			return after.TotalAlloc - before.TotalAlloc
		}
		if small, large := took(150), took(600); large > 6*small {
			t.Errorf("lots of %d: 150 boards take %d bytes, 600 %d", perLot, small, large)
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
