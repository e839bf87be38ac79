package acclimate_test

import (
	"fmt"
	"runtime"
	"testing"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// logOf is a log of n rows, the last at hour 48, as long as the window that is
// held over it: every row is judged.
func logOf(n int) ([]acclimate.Air, acclimate.Room) {
	rows := make([]acclimate.Air, n)
	for i := range rows {
		rows[i] = airAt(48-float64(n-1-i)/60, []string{"70", "70.5", "69.8"}[i%3], []string{"40", "41.2"}[i%2],
			[]string{"AL1", "AL2"}[i%7/6])
		rows[i].Place = line(i)
	}
	r := room(rows)
	r.Held = num(fmt.Sprint(n/60-1), evidence.Hour)
	return rows, r
}

// judgeAir puts all checks of the air to an area of a job.
func judgeAir(b testing.TB, rows []acclimate.Air, r acclimate.Room, areas int) {
	log := acclimate.NewLog(rows)
	for i := range areas {
		r.Air = log.Of(fmt.Sprintf("A%d", i), evidence.Date{})
		for _, id := range []string{"air-range", "air-held", "air-usual", "surface-dew"} {
			if f := find2(r, id); f.Outcome == evidence.NotMet {
				b.Fatalf("%s: %s", f.ID, f.Reason)
			}
		}
		if len(r.JudgedAir()) == 0 {
			b.Fatal("no row is judged")
		}
	}
}

func find2(r acclimate.Room, id string) evidence.Finding {
	for _, c := range acclimate.Checks() {
		if c.ID == id {
			return c.Find(r)
		}
	}
	return evidence.Finding{}
}

func BenchmarkAir(b *testing.B) {
	for _, n := range []int{10_000, 40_000, 160_000} {
		rows, r := logOf(n)
		r.NoDew = "nothing is glued"
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				judgeAir(b, rows, r, 1)
			}
		})
	}
}

func BenchmarkFiveAreas(b *testing.B) {
	rows, r := logOf(200_000)
	r.NoDew = "nothing is glued"
	b.ReportAllocs()
	for b.Loop() {
		judgeAir(b, rows, r, 5)
	}
}

func BenchmarkSurfaces(b *testing.B) {
	rows, r := logOf(300_000)
	for _, n := range []int{500, 2_000} {
		r.Surfaces = nil
		for i := range n {
			r.Surfaces = append(r.Surfaces, spotAt(fmt.Sprintf("S%d", i), 48-float64(i), "66"))
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				r.Air = acclimate.NewLog(rows).Of("A1", evidence.Date{})
				if f := find2(r, "surface-dew"); f.Outcome != evidence.Met {
					b.Fatal(f.Reason)
				}
			}
		})
	}
}

// Four times the rows take less than six times the memory. Time is told by the
// benchmarks: a test of it would fail on a busy machine.
func TestAirGrowsWithItsRows(t *testing.T) {
	bytes := func(n int) uint64 {
		rows, r := logOf(n)
		r.Surfaces = []acclimate.Surface{spotAt("S1", 47, "66"), spotAt("S2", 40, "66")}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		judgeAir(t, rows, r, 1)
		runtime.ReadMemStats(&after)
		return after.TotalAlloc - before.TotalAlloc
	}
	if few, many := bytes(10_000), bytes(40_000); many > 6*few {
		t.Errorf("10,000 rows take %d bytes and 40,000 take %d", few, many)
	}
}
