package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"firstboard/report/gather"
)

// manyRecords are so many records made of the bases, each with a job of its own,
// and one in seven with a hole over its limit: the folder they stand in.
func manyRecords(tb testing.TB, n int) string {
	tb.Helper()
	names, err := os.ReadDir(bases)
	if err != nil {
		tb.Fatal(err)
	}
	root := tb.TempDir()
	for i := range n {
		record, err := readTables(filepath.Join(bases, names[i%len(names)].Name()))
		if err != nil {
			tb.Fatal(err)
		}
		record["job.csv"][1][1] = fmt.Sprint("Job ", i)
		if holes := record["slab-rh.csv"]; i%7 == 0 && holes != nil {
			if err := record.set("slab-rh.csv", 2, "RH (%)", "91.5"); err != nil {
				tb.Fatal(err)
			}
		}
		dir := filepath.Join(root, fmt.Sprint(i%10), fmt.Sprint("job", i))
		if err := os.MkdirAll(dir, 0o755); err != nil {
			tb.Fatal(err)
		}
		if err := record.write(dir); err != nil {
			tb.Fatal(err)
		}
	}
	return root
}

// BenchmarkGather takes n and 4 n small records: 4 n takes under 6 times n.
func BenchmarkGather(b *testing.B) {
	for _, n := range []int{250, 1000} {
		dir := manyRecords(b, n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				out := filepath.Join(b.TempDir(), "verdicts.xlsx")
				var faults bytes.Buffer
				code := run([]string{toolName, "gather", dir, "-o", out, "--jsonl", out + ".jsonl"}, io.Discard, &faults)
				if code != exitNoGo {
					b.Fatalf("exit code %d: %s", code, faults.String())
				}
			}
			b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N*n), "ms/record")
		})
	}
}

// addBlankLines makes a file longer without a row more.
func addBlankLines(t *testing.T, path string, lines int) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err == nil {
		err = os.WriteFile(path, append(data, bytes.Repeat([]byte("\n"), lines)...), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// Of a record with a long log and long files only its rows are kept: their texts
// are no parts of the files they were read from.
func TestGatheredRowsLetTheirRecordsGo(t *testing.T) {
	const records, rows, most = 8, 5000, 20_000
	var found []candidate
	for range records {
		dir := longLog(t, rows)
		for _, file := range []string{"areas.csv", "job.csv", "instruments.csv", "products.csv"} {
			addBlankLines(t, filepath.Join(dir, file), 100_000)
		}
		found = append(found, candidate{path: dir, shown: "job"})
	}
	live := func() int64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.GC()
		runtime.ReadMemStats(&m)
		return int64(m.HeapAlloc)
	}
	before := live()
	parts, unread := readAll(found, 2, io.Discard, readOne)
	each := (live() - before) / records
	if len(parts) != records || len(unread) != 0 {
		t.Fatalf("%d were read, %d not", len(parts), len(unread))
	}
	if each > most {
		t.Errorf("%d bytes are held for a record whose log has %d rows, more than %d", each, rows, most)
	}
	t.Logf("%d bytes for each record", each)
	runtime.KeepAlive(parts)
}

func TestAFailureOnOneRecordIsThatRecordsAlone(t *testing.T) {
	found := []candidate{{path: "/one", shown: "one"}, {path: "/two", shown: "two"}, {path: "/three", shown: "three"}}
	parts, unread := readAll(found, 2, io.Discard, func(f candidate) result {
		if f.shown == "two" {
			var none []int
			_ = none[len(f.shown)]
		}
		return result{}
	})
	if len(parts) != 2 || len(unread) != 1 {
		t.Fatalf("%d were read and %d not; want 2 and 1", len(parts), len(unread))
	}
	u := unread[0]
	if u.Record != "two" || u.What != gather.Faulty || !strings.Contains(u.Why, "failed while it judged this record: runtime error") {
		t.Errorf("told as %+v", u)
	}
}
