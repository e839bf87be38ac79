package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// longer is a base record that has so many rows more of some table.
type longer struct {
	name, base string
	grow       func(t tables, n int)
}

// cells are the entries by which the i-th added row differs from the one it copies.
type cells func(i int) map[string]string

// copies adds n copies of the last row of a file, each with some cells of its own.
func (t tables) copies(file string, n int, own cells) {
	header, last := t[file][0], t[file][len(t[file])-1]
	for i := range n {
		row := slices.Grow(slices.Clone(last), len(header))[:len(header)]
		for column, entry := range own(i) {
			row[slices.Index(header, column)] = entry
		}
		t[file] = append(t[file], row)
	}
}

// numbered gives each added row a name of its own.
func numbered(column, head string) cells {
	return func(i int) map[string]string { return map[string]string{column: fmt.Sprint(head, i)} }
}

// minute is a time a while before the readings of the bases, another for each i.
func minute(i int) string {
	return time.Date(2026, time.March, 3, 9, 0, 0, 0, time.UTC).Add(-time.Duration(i) * time.Minute).Format("2006-01-02 15:04")
}

// hole is the i-th added hole, read by an instrument.
func hole(instrument string) cells {
	return func(i int) map[string]string {
		return map[string]string{
			"Hole": fmt.Sprint("H", 100+i), "X (ft)": fmt.Sprint(i % 100), "Y (ft)": fmt.Sprint(i / 100), "Instrument": instrument,
		}
	}
}

// longers are records that grow in one way each, or in two at once where one row
// asks about another.
func longers() []longer {
	const glued, laid, crawl = "slab-glue-down-wood", "slab-resilient", "wood-crawl"
	probes := func(t tables, kind string, n int) {
		t.copies("instruments.csv", n, func(i int) map[string]string {
			return map[string]string{"Instrument": fmt.Sprint("Q", i), "Kind": kind, "Calibrated on": "2026-01-05"}
		})
	}
	checks := func(t tables, of string, n int) {
		t.copies("instrument-checks.csv", n, func(i int) map[string]string {
			return map[string]string{"Instrument": of, "Checked at": minute(i)}
		})
	}
	return []longer{
		{"areas", glued, func(t tables, n int) { t.copies("areas.csv", n, numbered("Area", "Z")) }},
		{"holes", glued, func(t tables, n int) { t.copies("slab-rh.csv", n, hole("RP1")) }},
		{"holes beside checks of their probe", glued, func(t tables, n int) {
			t.copies("slab-rh.csv", n, hole("RP1"))
			checks(t, "RP1", n)
		}},
		{"holes of one single-use probe", glued, func(t tables, n int) {
			probes(t, "RH probe single-use", 1)
			t.copies("slab-rh.csv", n, hole("Q0"))
		}},
		{"holes each of a probe", glued, func(t tables, n int) {
			probes(t, "RH probe", n)
			t.copies("slab-rh.csv", n, func(i int) map[string]string { return hole(fmt.Sprint("Q", i))(i) })
		}},
		{"holes without an instrument beside probes", glued, func(t tables, n int) {
			probes(t, "RH probe", n)
			t.copies("slab-rh.csv", n, hole(""))
		}},
		{"rows of one hole", glued, func(t tables, n int) {
			t.copies("slab-rh.csv", n, func(i int) map[string]string {
				return map[string]string{"Read at": minute(i), "Sealed at": "2026-02-20 08:00"}
			})
		}},
		{"boards", glued, func(t tables, n int) { t.copies("wood.csv", n, numbered("Piece", "K")) }},
		{"boards beside checks of their meter", glued, func(t tables, n int) {
			t.copies("wood.csv", n, numbered("Piece", "K"))
			checks(t, "PM1", n)
		}},
		{"boards each of a lot", glued, func(t tables, n int) {
			t.copies("wood.csv", n, func(i int) map[string]string {
				return map[string]string{"Piece": fmt.Sprint("K", i), "Lot": fmt.Sprint("L", i+2)}
			})
		}},
		{"pieces of the subfloor", crawl, func(t tables, n int) { t.copies("wood.csv", n, numbered("Piece", "K")) }},
		{"surfaces", glued, func(t tables, n int) { t.copies("surface.csv", n, numbered("Spot", "K")) }},
		{"air", glued, func(t tables, n int) {
			t.copies("air.csv", n, func(i int) map[string]string { return map[string]string{"Read at": minute(i)} })
		}},
		{"periods", glued, func(t tables, n int) { t.copies("climates.csv", n, numbered("Period", "p")) }},
		{"dishes", laid, func(t tables, n int) { t.copies("slab-mver.csv", n, numbered("Dish", "K")) }},
		{"pH", laid, func(t tables, n int) { t.copies("slab-ph.csv", n, numbered("Spot", "K")) }},
		{"carbide", laid, func(t tables, n int) { t.copies("slab-cm.csv", n, numbered("Spot", "K")) }},
		{"other tests", laid, func(t tables, n int) { t.copies("other-tests.csv", n, numbered("Spot", "K")) }},
		{"scans", laid, func(t tables, n int) { t.copies("scan.csv", n, numbered("Spot", "K")) }},
	}
}

// took is how long a check of the record takes with so many rows more.
func (l longer) took(b *testing.B, n int) time.Duration {
	b.Helper()
	all, err := readTables(filepath.Join(bases, l.base))
	if err != nil {
		b.Fatal(err)
	}
	l.grow(all, n)
	dir := b.TempDir()
	if err := all.write(dir); err != nil {
		b.Fatal(err)
	}
	began := time.Now()
	if code := run([]string{toolName, "check", dir}, io.Discard, io.Discard); code > exitNoGo {
		b.Fatalf("exit code %d", code)
	}
	return time.Since(began)
}

// BenchmarkGrowth checks records that are n and 4 n rows longer in one way each. The
// ratio of the two is to stay under 6.
func BenchmarkGrowth(b *testing.B) {
	for _, l := range longers() {
		b.Run(l.name, func(b *testing.B) {
			const n = 2000
			var once, fourfold time.Duration
			for b.Loop() {
				once += l.took(b, n)
				fourfold += l.took(b, 4*n)
			}
			b.ReportMetric(once.Seconds()*1000/float64(b.N), "ms-n")
			b.ReportMetric(fourfold.Seconds()*1000/float64(b.N), "ms-4n")
			b.ReportMetric(fourfold.Seconds()/once.Seconds(), "ratio")
		})
	}
}
