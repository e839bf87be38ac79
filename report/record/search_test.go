package record

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// A folder with a table is a record and is looked at no further; hidden names
// are passed over, and what stands there itself comes before what is linked.
func TestSearch(t *testing.T) {
	root := t.TempDir()
	for _, name := range []string{
		"job10/areas.csv", "job10/inner/areas.csv", "job2/AREAS.CSV", "b.xlsx", "c.XLSM", "~$b.xlsx", ".hidden/areas.csv",
		".x.xlsx", "notes/readings.csv", "notes/list.pdf", "slips/slabs_rh.csv", "deep/er/air.csv",
	} {
		path := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, link := range []struct{ from, to string }{{"a-link", "deep"}, {"loop", "."}, {"gone", "nowhere"}} {
		if err := os.Symlink(link.to, filepath.Join(root, link.from)); err != nil {
			t.Fatal(err)
		}
	}
	var got []string
	for _, path := range Search(root) {
		rel, err := filepath.Rel(root, path)
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, filepath.ToSlash(rel))
	}
	want := []string{"b.xlsx", "c.XLSM", "deep/er", "job2", "job10", "slips"}
	if !slices.Equal(got, want) {
		t.Errorf("found %q, want %q", got, want)
	}
	for _, alone := range []string{filepath.Join(root, "job2"), filepath.Join(root, "b.xlsx"), filepath.Join(root, "nowhere")} {
		if got := Search(alone); !slices.Equal(got, []string{alone}) {
			t.Errorf("%s: found %q", alone, got)
		}
	}
}
